"""Closed streams and folders that cannot be written: told in a sentence, gone round if possible."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import dictionary_rows
import pytest

from inscribe.errors import InputError
from inscribe.reading.mecab import compiling, places
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.texts import SourceText

ROOT = Path(__file__).parent.parent
NOBODY = 65534

posix = pytest.mark.skipif(os.name != "posix", reason="a shell closes the streams")


def run(arguments: str, closing: str) -> subprocess.CompletedProcess[str]:
    command = f'exec "$0" -m inscribe {arguments} {closing}'
    return subprocess.run(
        ["sh", "-c", command, sys.executable],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


@posix
@pytest.mark.parametrize(
    "arguments",
    [
        *("read -", "read --lines", "restore -", "restore --lines", "date -", "sign -"),
        *("collate - examples/DEMO-003.toml", "collate --pairs -", "new /nowhere/x.toml"),
        "source add - --library /nowhere/l.sqlite",
    ],
)
def test_a_closed_standard_input_is_told(arguments: str) -> None:
    done = run(arguments, "<&-")
    assert done.returncode == 2
    assert "standard input is closed" in done.stderr
    assert "Traceback" not in done.stderr


@posix
def test_a_closed_standard_input_nobody_asks_for() -> None:
    done = run("read --text 嶺暁作", "<&-")
    assert done.returncode == 0
    assert "Reigyō" in done.stdout


@posix
@pytest.mark.parametrize(
    "arguments",
    [
        *("read --text 嶺暁作", "read --lines examples/signatures.txt", "check examples"),
        *("entry examples", "name 嶺暁", "schema record", "--help"),
    ],
)
def test_a_closed_standard_output_is_told(arguments: str) -> None:
    done = run(arguments, ">&-")
    assert done.returncode == 2
    said = [line for line in done.stderr.splitlines() if not line.startswith("preparing the")]
    assert len(said) == 1
    assert said[0].startswith("inscribe: standard output is closed")


@posix
def test_a_file_is_written_whole_where_all_streams_are_closed(tmp_path: Path) -> None:
    file = tmp_path / "entry.md"
    done = run(f"entry examples/DEMO-001.toml -o {file}", "<&- >&- 2>&-")
    assert done.returncode == 0
    assert file.read_text("utf-8") == run("entry examples/DEMO-001.toml", "").stdout
    assert list(tmp_path.iterdir()) == [file]


@contextmanager
def read_only(folder: Path) -> Iterator[None]:
    """Take from the folder, and from this process if it is root, the right to write there."""
    is_root = os.geteuid() == 0
    for above in (folder, *folder.parents):
        if is_root and above.owner() == "root" and above != Path("/"):
            above.chmod(above.stat().st_mode | 0o055)
    folder.chmod(0o555)
    if is_root:
        os.seteuid(NOBODY)
    try:
        yield
    finally:
        if is_root:
            os.seteuid(0)
        folder.chmod(0o755)


@posix
def test_a_library_in_a_read_only_folder_is_searched(tmp_path: Path) -> None:
    file = tmp_path / "of us? 100%.sqlite"
    with Library(file, create=True) as library:
        adding.add_texts(library, [SourceText("mine", ("花の色は",))], 1)
    with read_only(tmp_path):
        with Library(file) as library:
            assert [text.id for text in library.texts()] == ["mine"]
        with pytest.raises(InputError, match="readonly"), Library(file) as library:
            library.remove(["mine"])
    assert [path.name for path in tmp_path.iterdir()] == [file.name]


@posix
def test_texts_that_wait_beside_a_read_only_library_are_not_passed_over(tmp_path: Path) -> None:
    file = tmp_path / "l.sqlite"
    with Library(file, create=True) as library:
        adding.add_texts(library, [SourceText("mine", ("花の色は",))], 1)
    file.with_name("l.sqlite-wal").write_bytes(b"waiting")
    with read_only(tmp_path), pytest.raises(InputError, match=r"l\.sqlite-wal"):
        Library(file)


@pytest.fixture
def told() -> Iterator[None]:
    places._told.cache_clear()
    yield
    places._told.cache_clear()


@pytest.mark.usefixtures("told")
@pytest.mark.parametrize("name", ["ours, not theirs", "a file"])
def test_a_cache_of_no_use_is_gone_round_and_told_once(
    name: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    cache = tmp_path / name
    if name == "a file":
        cache.write_text("in the way")
    monkeypatch.setenv("INSCRIBE_CACHE", str(cache))
    for table in ("one", "two"):
        (tmp_path / table).write_text(table)
        made = compiling.dictionary("words", [tmp_path / table], dictionary_rows.write)
        assert "," not in str(made)
        assert cache not in made.parents
    assert capsys.readouterr().err.count("cannot be used") == 1


@pytest.mark.usefixtures("told")
def test_a_full_cache_is_gone_round(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A process that compiles in a folder without room tells it by its last line."""
    monkeypatch.setenv("INSCRIBE_CACHE", str(tmp_path))
    compiled = compiling._compile

    def without_room(arguments: str, work: Path, made_name: str, path: Path) -> Path:
        if tmp_path in path.parents:
            raise InputError("could not be compiled: [Errno 28] No space left on device")
        return compiled(arguments, work, made_name, path)

    monkeypatch.setattr(compiling, "_compile", without_room)
    made = compiling.dictionary("words", [Path(__file__)], dictionary_rows.write)
    assert made.is_file()
    assert tmp_path not in made.parents
    assert "No space left on device" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []
