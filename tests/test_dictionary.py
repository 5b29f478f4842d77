"""User dictionaries: compiled once, whole or not at all, rebuilt when a source changes."""

from __future__ import annotations

import os
import shutil
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from pathlib import Path
from shlex import quote

import dictionary_rows
import pytest

from inscribe.errors import InputError
from inscribe.reading import lexicon, prose
from inscribe.reading.mecab import compiling, shipped, unidic
from inscribe.reading.prose.current import old_words
from inscribe.reading.verse import tagger as verse_tagger


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    place = tmp_path / 'somebody\'s "cache" folder'
    monkeypatch.setenv("INSCRIBE_CACHE", str(place))
    return place


@pytest.fixture
def table(tmp_path: Path) -> Path:
    path = tmp_path / "words.tsv"
    path.write_text("one", encoding="utf-8")
    return path


def read(path: Path, text: str) -> list[tuple[str, str]]:
    import fugashi

    tagger = fugashi.GenericTagger(
        f"-d {quote(str(unidic.folder()))} -u {quote(str(path))} -r {os.devnull}"
    )
    return [(word.surface, word.feature_raw) for word in tagger(text)]


def shown(folder: Path) -> set[str]:
    """Return what lies in a folder but for what is hidden."""
    return {path.name for path in folder.iterdir() if path.name[0] != "."}


def test_words_are_found(folder: Path, table: Path) -> None:
    path = compiling.dictionary("words", [table], dictionary_rows.write)
    assert path.parent == folder
    assert ("てふてふ", "蝶々") in read(path, "てふてふの")
    assert ('"、,', "marks") in read(path, '花"、,花')


def test_built_once_until_a_source_changes(folder: Path, table: Path) -> None:
    first = compiling.dictionary("words", [table], dictionary_rows.write)
    assert compiling.dictionary("words", [table], lambda _: pytest.fail("built twice")) == first
    table.write_text("two", encoding="utf-8")
    second = compiling.dictionary("words", [table], dictionary_rows.write)
    assert second != first
    assert shown(folder) == {first.name, second.name}


def test_only_the_newest_are_kept(folder: Path, table: Path) -> None:
    made = []
    for number in range(5):
        table.write_text(str(number), encoding="utf-8")
        made.append(compiling.dictionary("words", [table], dictionary_rows.write))
        os.utime(made[-1], (number + 1, number + 1))
    made.append(
        compiling.dictionary("word", [table], dictionary_rows.write)
    )  # another name, left alone
    assert shown(folder) == {path.name for path in made[-4:]}
    seals = {path.name for path in folder.iterdir()} - shown(folder)
    assert seals == {f".{path.name}.seal" for path in made[-4:]}


def test_a_damaged_file_is_built_again(folder: Path, table: Path) -> None:
    path = compiling.dictionary("words", [table], dictionary_rows.write)
    path.write_bytes(path.read_bytes()[:-10])
    assert compiling.dictionary("words", [table], dictionary_rows.write) == path
    assert ("てふてふ", "蝶々") in read(path, "てふてふ")


def test_a_cache_that_cannot_be_made(table: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INSCRIBE_CACHE", str(table / "below a file"))
    path = compiling.dictionary("words", [table], dictionary_rows.write)
    assert ("てふてふ", "蝶々") in read(path, "てふてふ")


def test_entries_mecab_refuses(folder: Path, table: Path) -> None:
    with pytest.raises(InputError, match="could not be compiled"):
        compiling.dictionary("refused", [table], dictionary_rows.write_what_mecab_refuses)
    assert list(folder.iterdir()) == []


def test_two_at_once(folder: Path, table: Path) -> None:
    def build(_: int) -> Path:
        return compiling.dictionary("words", [table], dictionary_rows.write)

    with ThreadPoolExecutor(2) as pool:
        first, second = pool.map(build, range(2))
    assert first == second
    assert shown(folder) == {first.name}


def test_a_reading_with_such_a_cache(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from inscribe.reading.prose import current as modern

    monkeypatch.setattr(modern, "_write_parts", dictionary_rows.write_respelt)
    modern._tagger.cache_clear()
    try:
        assert modern.modern_spelling("てふてふの") == "ちょうちょうの"
    finally:
        modern._tagger.cache_clear()


def test_words_that_came_with_the_package_are_not_gathered_again(
    folder: Path,
    table: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    parts = tmp_path / "parts"
    parts.mkdir()
    dictionary_rows.write(parts)
    name = compiling.keyed("words", [table])
    shipped.pack(parts, tmp_path / f"{name}.zip")
    shipped.pack(parts, tmp_path / "again.zip")
    assert (tmp_path / f"{name}.zip").read_bytes() == (tmp_path / "again.zip").read_bytes()
    monkeypatch.setattr(shipped, "FOLDER", tmp_path)
    path = compiling.dictionary("words", [table], lambda _: pytest.fail("gathered"))
    assert ("てふてふ", "蝶々") in read(path, "てふてふの")
    assert "seconds" not in capsys.readouterr().err
    table.write_text("a table of the user's", encoding="utf-8")
    other = compiling.dictionary("words", [table], dictionary_rows.write_frog)
    assert ("てふてふ", "蝶々") not in read(other, "てふてふの")


def test_what_is_shipped_bears_the_names_of_the_dictionaries_in_use() -> None:
    assert lexicon.verse_dictionary().name == lexicon.gathering()[0]
    assert old_words().stem == prose.gathering()[0]


@pytest.mark.parametrize("terminal", [True, False])
def test_whoever_waits_for_a_dictionary_is_told_once(
    folder: Path,
    table: Path,
    terminal: bool,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: terminal)
    compiling.dictionary("words", [table], dictionary_rows.write)
    compiling.dictionary("words", [table], dictionary_rows.write)
    told = capsys.readouterr()
    assert told.err.count("preparing the dictionary “words”") == 1
    assert ("compiling them" in told.err) == terminal  # the steps beside the bar
    assert terminal or told.err.count("\n") == 1
    assert told.out == ""


def test_who_wants_no_remarks_is_not_told(
    folder: Path, table: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("inscribe.remarks._wanted", False)
    compiling.dictionary("words", [table], dictionary_rows.write)
    assert capsys.readouterr().err == ""


def test_what_a_stopped_run_left_half_made_is_cleared_away(
    folder: Path, table: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    left, other = folder / ".words-1-x", folder / ".word-1-x"
    for each in (left, other):
        each.mkdir(parents=True)
    compiling.dictionary("words", [table], dictionary_rows.write)
    assert left.exists()  # another run may be at it
    monkeypatch.setattr(compiling, "_ABANDONED", -1)
    table.write_text("two", encoding="utf-8")
    compiling.dictionary("words", [table], dictionary_rows.write)
    assert not left.exists()
    assert other.exists()


def write_parts(folder: Path) -> None:
    """Write the parts of a dictionary of one word, with UniDic's own costs and classes."""
    source = unidic.folder()
    for name in ("matrix.bin", "unk.dic", "char.bin"):
        (folder / name).write_bytes((source / name).read_bytes())
    (folder / "dicrc").write_text("cost-factor = 700\nbos-feature = BOS/EOS\n", encoding="utf-8")
    (folder / "entries.csv").write_text("てふ,5128,5128,0,butterfly\n", encoding="utf-8")
    (folder / "more.more").write_text("はな,5128,5128,0,flower\n", encoding="utf-8")


def broken_parts(folder: Path) -> None:
    raise InputError("a table is wrong")


def test_a_whole_dictionary_is_built_once(folder: Path, table: Path) -> None:
    path = compiling.dictionary_folder("whole", [table], write_parts)
    assert sorted(p.name for p in path.iterdir()) == [
        "char.bin",
        "dicrc",
        "matrix.bin",
        "more.dic",
        "seal",
        "sys.dic",
        "unk.dic",
    ]
    assert compiling.dictionary_folder("whole", [table], broken_parts) == path
    assert [p.name for p in folder.iterdir()] == [path.name]


@pytest.mark.parametrize("name", ["dicrc", "matrix.bin", "more.dic", "seal", "sys.dic"])
@pytest.mark.parametrize("keep", [0, 7])
def test_a_whole_dictionary_cut_short_is_built_again(
    name: str, keep: int, folder: Path, table: Path
) -> None:
    path = compiling.dictionary_folder("whole", [table], write_parts)
    held = {p.name: p.read_bytes() for p in path.iterdir()}
    (path / name).write_bytes(held[name][:keep])
    assert compiling.dictionary_folder("whole", [table], write_parts) == path
    assert {p.name: p.read_bytes() for p in path.iterdir()} == held


def test_what_goes_wrong_in_the_other_process_is_told(folder: Path, table: Path) -> None:
    with pytest.raises(InputError, match="a table is wrong"):
        compiling.dictionary_folder("broken", [table], broken_parts)
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize("name", ["dicrc", "matrix.bin", "more.dic", "sys.dic", "char.bin"])
def test_a_whole_dictionary_written_over_is_built_again(
    name: str, folder: Path, table: Path
) -> None:
    path = compiling.dictionary_folder("whole", [table], write_parts)
    held = (path / name).read_bytes()
    (path / name).write_bytes(b"\xa5" * len(held))
    assert compiling.dictionary_folder("whole", [table], write_parts) == path
    assert (path / name).read_bytes() == held


def test_a_dictionary_written_over_is_built_again(folder: Path, table: Path) -> None:
    path = compiling.dictionary("words", [table], dictionary_rows.write)
    held = path.read_bytes()
    path.write_bytes(held[:8] + b"\xa5" * (len(held) - 8))
    assert compiling.dictionary("words", [table], dictionary_rows.write) == path
    assert path.read_bytes() == held


@pytest.mark.parametrize("name", ["matrix.bin", "sys.dic"])
def test_a_change_that_keeps_size_and_time_is_noticed(name: str, folder: Path, table: Path) -> None:
    path = compiling.dictionary_folder("whole", [table], write_parts)
    assert compiling.dictionary_folder("whole", [table], broken_parts) == path
    time, held = (path / name).stat(), (path / name).read_bytes()
    (path / name).write_bytes(held[:-1] + bytes([held[-1] ^ 1]))
    os.utime(path / name, ns=(time.st_atime_ns, time.st_mtime_ns))
    assert compiling.dictionary_folder("whole", [table], write_parts) == path
    assert (path / name).read_bytes() == held


def test_a_dictionary_copied_elsewhere_is_used_as_it_is(
    folder: Path, table: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = compiling.dictionary_folder("whole", [table], write_parts)
    other = folder.parent / "copy"
    shutil.copytree(folder, other)
    monkeypatch.setenv("INSCRIBE_CACHE", str(other))
    assert compiling.dictionary_folder("whole", [table], broken_parts) == other / path.name


@pytest.mark.skipif(os.name != "posix", reason="owners as POSIX has them")
@pytest.mark.parametrize("whose", ["another user's", "everybody's"])
@pytest.mark.parametrize("what", ["folder", "file"])
def test_what_another_may_have_written_is_not_loaded(
    whose: str, what: str, folder: Path, table: Path
) -> None:
    path = compiling.dictionary("words", [table], dictionary_rows.write)
    harmed = folder if what == "folder" else path
    if whose == "everybody's":
        harmed.chmod(0o777)
    elif os.geteuid() == 0:
        os.chown(harmed, 12345, 12345)
    else:
        pytest.skip("only root can give a file away")
    found = compiling.dictionary("words", [table], dictionary_rows.write)
    assert ("てふてふ", "蝶々") in read(found, "てふてふの")
    for each in (found, found.parent):
        assert each.stat().st_uid != 12345
        assert not each.stat().st_mode & 0o002


def test_a_dictionary_cleared_away_meanwhile_is_opened_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folders = iter([tmp_path / "gone", verse_tagger._verse_folder()])
    monkeypatch.setattr(verse_tagger, "_verse_folder", lambda: next(folders))
    tagger = verse_tagger.from_folder(partial(verse_tagger._opened, True, "-F '%m\\n' -E ''"))
    assert tagger.parse("春の夜").split() == ["春", "の", "夜"]


def test_a_dictionary_that_cannot_be_opened_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(verse_tagger, "_verse_folder", lambda: tmp_path / "gone")
    with pytest.raises(InputError, match="cannot be opened"):
        verse_tagger.from_folder(partial(verse_tagger._opened, False, ""))
