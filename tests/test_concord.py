"""The concordance: every form and spelling found, each once, and a cache that never lies."""

from __future__ import annotations

import csv
import functools
import io
import json
import os
import sqlite3
import time
import zlib
from collections.abc import Sequence
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe import tables
from inscribe.cli import cli
from inscribe.concordance import Clusters, clustered, clusters_of_folder, concord
from inscribe.concordance.clustering import clusters
from inscribe.concordance.documents import Document, document_of_text, rows_of
from inscribe.concordance.finding import ConcordanceQuery, query_of, search
from inscribe.concordance.folder import Collection, collection
from inscribe.concordance.in_library import library_collection
from inscribe.concordance.passing import may_have
from inscribe.concordance.tally import ORDERS, counts, ordered
from inscribe.errors import InputError
from inscribe.keeping import store as kept_texts
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.texts import SourceText
from inscribe.sources.words import found_by, found_by_of_row

EXAMPLES = Path(__file__).parent.parent / "examples"


def found(text: str, asked: str, **options: bool) -> list[tuple[str, str]]:
    hits = search([document_of_text("A", text)], query_of(asked, **options))
    return [(hit.match, hit.how) for hit in hits]


@pytest.mark.parametrize(
    ("text", "asked", "expected"),
    [
        ("夢としりせは(者)", "夢", [("夢", "same signs")]),
        ("夢としりせは(者)", "ゆめ", [("夢", "same sound")]),
        ("夢としりせは(者)", "yume", [("夢", "same sound")]),
        ("武州住綾國作", "国", [("國", "another form")]),
        ("秋風そ吹く", "ぞ", [("そ", "same sound")]),
        ("今日来すは明日は雪とそ降りなまし", "けふ", [("今日", "same sound")]),
        ("今日来すは明日は雪とそ降りなまし", "kyō", [("今日", "same sound")]),
        ("武州住綾国作", "豊", []),
        ("花咲けば思ひ出づらむ", "咲く", [("咲け", "inflected")]),
        ("花さけば人ぞ恋しき", "恋し", [("恋しき", "inflected")]),
        ("夢としりせば", "知る", [("しり", "inflected")]),
    ],
)
def test_a_word_is_found_in_any_form(text: str, asked: str, expected: list[object]) -> None:
    assert found(text, asked) == expected


@pytest.mark.parametrize(
    ("text", "asked", "expected"),
    [
        ("嶺暁（花押）", "花", []),
        ("嶺暁（花押）", "押", []),
        ("花の嶺暁（花押）", "花", [("花", "same signs")]),
        ("嶺暁（花押）", "花押", [("（花押）", "same signs")]),
        ("嶺暁（印「山花」）（印）", "印", []),
        ("嶺暁（印「山花」）", "山花", [("（印「山花」）", "same signs")]),
        ("嶺⿰木黑作", "黒", []),
        ("嶺⿰木黑作", "⿰木黑", [("⿰木黑", "same signs")]),
    ],
)
def test_a_mark_of_the_transcriber_is_no_carved_word(
    text: str, asked: str, expected: list[object]
) -> None:
    assert found(text, asked) == expected


def test_a_pattern_sees_no_mark_of_the_transcriber() -> None:
    assert found("嶺暁（花押）", "[花押（）]", pattern=True) == []
    assert found("嶺暁（花押）花作", "花.", pattern=True) == [("花作", "pattern")]


def test_exact_asks_for_signs_and_not_for_sounds() -> None:
    assert found("夢としりせは(者)", "ゆめ", exact=True) == []
    assert found("武州住綾國作", "国", exact=True) == [("國", "another form")]


def test_a_pattern_sees_current_forms() -> None:
    assert found("武州住綾國作之", "住.国", pattern=True) == [("住綾國", "pattern")]


NASTY = [
    *("(.|.)*x", "(.?){25}x$", "((.+))+x", "(.*)*x", "(花|花)*x", "(.*){10}x", "(.{0,50}){20}x"),
    *(
        ".*.*.*.*.*.*x",
        "(([花]*)*)*x",
        "(花+花+)+x",
        "(.?.?)*x",
        "(花?){200}x",
        "(.+)(.+)(.+)(.+)x",
    ),
    *("(?:.|花)*?x", "((花|.)+?)+x", "(.*花){12}x", "^(.+)*$x"),
]


@pytest.mark.parametrize("asked", NASTY)
def test_no_pattern_takes_longer_than_the_text_is_long(asked: str) -> None:
    query = query_of(asked, pattern=True)
    held = document_of_text("x", "花" * 200 + "の")
    begun = time.monotonic()
    assert list(search([held] * 20, query)) == []
    assert time.monotonic() - begun < 5


def test_a_pattern_may_repeat_a_repetition() -> None:
    assert found("武州住綾國作之", "(住(.)+)+作", pattern=True) == [("住綾國作", "pattern")]
    assert found("花の色は", r"\p{Hiragana}.", pattern=True) == [("の色", "pattern")]


@pytest.mark.parametrize("asked", ["(", "*", "a" * 300, "(?=x)", r"(.)\1", r"\w", r"花\b", r"\C"])
def test_a_pattern_that_cannot_be_used_is_told(asked: str) -> None:
    with pytest.raises(InputError):
        query_of(asked, pattern=True)


def test_nothing_to_look_for() -> None:
    with pytest.raises(InputError):
        query_of("  ")


@given(st.text("花夢ゆめはなの國国々ゝ□、", min_size=1, max_size=20), st.data())
@settings(max_examples=60, deadline=None)
def test_every_stretch_of_a_text_is_found_where_it_stands(text: str, data: st.DataObject) -> None:
    document = document_of_text("A", text)
    start = data.draw(st.integers(0, len(document.normal) - 1))
    end = data.draw(st.integers(start + 1, len(document.normal)))
    asked = document.normal[start:end]
    if not asked.strip():
        return
    hits = list(search([document], query_of(asked, exact=True)))
    assert any(hit.first <= document.origin[start] <= hit.last for hit in hits)
    for hit in hits:
        assert hit.before + hit.match + hit.after == document.carved
    assert len({(hit.first, hit.last) for hit in hits}) == len(hits)


def test_counts_and_orders_keep_every_hit() -> None:
    held = [document_of_text(name, text) for name, text in (("A", "花の花"), ("B", "夢の花"))]
    hits = list(search(held, query_of("花")))
    for order in ORDERS:
        assert sorted(map(id, ordered(hits, order))) == sorted(map(id, hits))
    for by in counts(hits).values():
        assert sum(by.values()) == len(hits) == 3


def test_the_same_text_in_other_spellings_is_one_cluster() -> None:
    texts = {
        "A": "世の中に絶えて桜のなかりせば春の心はのどけからまし",
        "B": "よの中にたえてさくらのなかりせは春のこゝろは□とけからまし",
        "C": "山里は秋こそことに寂しけれ鹿の鳴く音に目をさましつつ",
        "D": "武州住霜蹊作",
        "E": "江戸住霜蹊造之",
    }
    made = clusters(document_of_text(name, text) for name, text in texts.items())
    kinds = {(each.kind, tuple(member.object for member in each.members)) for each in made}
    assert kinds == {("text", ("A", "B")), ("signature", ("D", "E"))}


def write(folder: Path, name: str, text: str) -> Path:
    file = folder / f"{name}.toml"
    head = f'id = "{name}"\nkind = "tsuba"\n'
    file.write_text(f'{head}[[inscription]]\nplace = "front"\ntext = "{text}"\n', "utf-8")
    return file


def objects(folder: Path, cache: Path) -> list[tuple[str, str]]:
    return [(d.object, d.carved) for d in collection(folder, cache=cache).documents]


def test_the_cache_follows_every_change(tmp_path: Path) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    folder.mkdir()
    first = write(folder, "A", "武州住霜蹊作")
    assert objects(folder, cache) == [("A", "武州住霜蹊作")]
    read: list[int] = []
    collection(folder, lambda done, count: read.append(done), cache=cache)
    assert read == []  # nothing was read again
    write(folder, "B", "江戸住")
    write(folder, "A", "武州住霜蹊造")
    os.utime(first, ns=(1, 1))  # a change of the same size is told by its time
    assert objects(folder, cache) == [("A", "武州住霜蹊造"), ("B", "江戸住")]
    first.unlink()
    assert objects(folder, cache) == [("B", "江戸住")]
    assert objects(folder, cache) == [("B", "江戸住")]


@pytest.mark.parametrize("damage", [b"", b"{", b"\xff\xfe" * 4000, b"SQLite format 3\0" * 300])
def test_a_damaged_cache_is_left_aside(tmp_path: Path, damage: bytes) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    folder.mkdir()
    write(folder, "A", "武州住霜蹊作")
    expected = objects(folder, cache)
    next(cache.glob("kept-*.sqlite")).write_bytes(damage)
    assert objects(folder, cache) == expected
    assert objects(folder, cache) == expected


def test_damage_inside_the_cache_is_noticed(tmp_path: Path) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    folder.mkdir()
    write(folder, "A", "武州住霜蹊作")
    expected = objects(folder, cache)
    kept = next(cache.glob("kept-*.sqlite"))
    name = zlib.crc32(os.fsencode(folder / "A.toml"))
    for broken in ('{"rows": [["A"]], "problem": ""}', "[]", "{", '{"rows": [[1, 2]]}'):
        for checksum in (0, zlib.crc32(broken.encode(), name)):
            with closing(sqlite3.connect(kept)) as opened, opened:
                question = "update made set value = ?, checksum = ? where what = 'documents'"
                assert opened.execute(question, (broken, checksum)).rowcount == 1
            assert objects(folder, cache) == expected


def test_a_cache_that_cannot_be_written_is_done_without(tmp_path: Path) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    folder.mkdir()
    write(folder, "A", "武州住霜蹊作")
    cache.write_text("a file stands where the folder should be", "utf-8")
    assert objects(folder, cache) == [("A", "武州住霜蹊作")]


def test_the_cache_lies_where_it_is_asked_to_and_only_its_owner_can_read_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    folder.mkdir(mode=0o700)
    write(folder, "A", "武州住霜蹊作")
    monkeypatch.setenv("INSCRIBE_CACHE", str(cache))
    collection(folder)
    held = list(cache.iterdir())
    assert [file.name[:5] for file in held] == ["kept-"]
    if os.name == "posix":
        assert held[0].stat().st_mode & 0o077 == 0
        assert cache.stat().st_mode & 0o077 == 0


def test_the_caches_used_longest_ago_are_removed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(kept_texts, "MOST_FILES", 2)
    cache = tmp_path / "cache"
    folders = [tmp_path / name for name in "abc"]
    for age, folder in enumerate(folders):
        folder.mkdir()
        write(folder, "A", "武州住霜蹊作")
        objects(folder, cache)
        for file in cache.iterdir():
            os.utime(file, (1000 + age, 1000 + age))
        objects(folders[0], cache)  # used again each time
    left = {str(kept_texts.store_file(folder, cache)) for folder in (folders[0], folders[2])}
    assert {str(file) for file in cache.iterdir()} == left
    monkeypatch.setattr(kept_texts, "MOST_BYTES", 1)
    (cache / "verse.dic").write_text("another's", "utf-8")
    write(folders[0], "B", "江戸住")
    objects(folders[0], cache)
    assert {file.name for file in cache.iterdir()} == {
        str(kept_texts.store_file(folders[0], cache)).rpartition("/")[2],
        "verse.dic",
    }


@pytest.mark.skipif(os.name != "posix", reason="permissions as POSIX has them")
def test_what_an_older_version_let_others_read_is_removed(tmp_path: Path) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    folder.mkdir()
    cache.mkdir()
    old = cache / "kept-0123456789abcdef01234567.sqlite"
    old.write_text("{}", "utf-8")
    old.chmod(0o644)
    write(folder, "A", "武州住霜蹊作")
    objects(folder, cache)
    assert not old.exists()


def test_a_bad_record_is_named_and_the_rest_are_read(tmp_path: Path) -> None:
    write(tmp_path, "A", "武州住霜蹊作")
    (tmp_path / "B.toml").write_text("id = ", "utf-8")
    held = collection(tmp_path, keep=False)
    assert [d.object for d in held.documents] == ["A"]
    assert len(held.unread) == 1
    assert "B.toml" in held.unread[0]


def test_the_library_is_looked_through_and_followed(tmp_path: Path) -> None:
    file = tmp_path / "library.sqlite"
    for number, text in enumerate(("花の色は", "夢としりせば")):
        with Library(file, create=True) as held:
            adding.add_texts(held, [SourceText(f"text-{number}", (text,))], 1)
        found = library_collection(file)
        assert found.records == number + 1
        assert library_collection(file).documents[-1].carved == text
    hits = search(found.documents, query_of("ゆめ"))
    assert [hit.document.object for hit in hits] == ["text-1"]


POEMS = (
    "花の色は移りにけりないたづらに／我が身世にふるながめせしまに",
    "夢としりせばさめざらましを",
    "天の原ふりさけ見れば春日なる／三笠の山に出でし月かも",
    "ゆめ路には足もやすめず通へども",
    "⿰木黑の花咲く夢の庭",
    "東路の道の果てなる常陸帯の",
    "思ひつつ（花押）ゆめと",
)
ASKED = (
    "夢",
    "ゆめ",
    "yume",
    "思う",
    "見る",
    "花",
    "花押",
    "michi",
    "hanasaku",
    "咲く",
    "tōro",
    "無",
)


def with_poems(file: Path, texts: Sequence[str] = POEMS) -> None:
    with Library(file, create=True) as held:
        added = [SourceText(f"t{number}", (text,)) for number, text in enumerate(texts)]
        adding.add_texts(held, added, len(added))


def places(query: ConcordanceQuery, held: Collection) -> list[tuple[str, int, int]]:
    return [(hit.document.object, hit.first, hit.last) for hit in search(held.documents, query)]


def test_texts_in_which_a_word_cannot_be_are_left_out_and_no_others(tmp_path: Path) -> None:
    file = tmp_path / "library.sqlite"
    with_poems(file)
    whole = library_collection(file)
    queries = [query_of(word) for word in ASKED] + [query_of("[春夢].", pattern=True)]
    found = 0
    for query in queries:
        for keep in (True, False):
            held = library_collection(file, query=query, keep=keep)
            hits = places(query, held)
            assert hits == places(query, whole)
            assert held.records == len(POEMS)
            assert {name for name, _, _ in hits} <= {each.object for each in held.documents}
            assert len(held.documents) < len(POEMS)
            found += len(hits)
    assert found > 2 * len(ASKED)


def read_anew(file: Path) -> int:
    """Return how many texts of a library had to be read."""
    heard: list[int] = []
    library_collection(file, lambda done, count: heard.append(count))
    assert heard == [len(heard)] * len(heard)
    return len(heard)


def test_a_text_is_read_when_it_is_added_and_never_again(tmp_path: Path) -> None:
    file = tmp_path / "library.sqlite"
    for texts in (POEMS[:3], POEMS[:5], ("夢の世に", *POEMS[1:5])):
        with_poems(file, texts)
        assert read_anew(file) == 0
    with Library(file) as held:
        held.remove(["t0", "t4"])
    left = library_collection(file)
    assert [each.object for each in left.documents] == ["t1", "t2", "t3"]
    with sqlite3.connect(file) as opened:
        assert opened.execute("select count(*) from words").fetchone() == (3,)


def test_what_is_missing_or_damaged_or_of_another_program_is_read_once(tmp_path: Path) -> None:
    file = tmp_path / "library.sqlite"
    with_poems(file)
    whole = library_collection(file)
    for damage, count in (
        ("drop table words", len(POEMS)),
        ("delete from words where text = 2", 1),
        ("update words set row = '[\"夢\",[]]' where text in (1, 3)", 2),
        ("update words set row = '' where text = 4", 1),
        ("update words set seal = (select seal from words where text = 1)", len(POEMS) - 1),
    ):
        with sqlite3.connect(file) as opened:
            opened.execute(damage)
        assert read_anew(file) == count, damage
        assert library_collection(file) == whole, damage
        assert read_anew(file) == 0, damage


def test_tables_of_ones_own_are_heeded_in_texts_added_before(tmp_path: Path) -> None:
    file, own = tmp_path / "library.sqlite", tmp_path / "glossary"
    with_poems(file)
    own.mkdir()
    (own / "name_preferences.tsv").write_text("name\treadings\n", "utf-8")
    assert read_anew(file) == 0
    tables.add_folder(own)
    try:
        assert read_anew(file) == len(POEMS)
    finally:
        tables.remove_folder(own)


def test_a_library_that_cannot_be_written_is_read_all_the_same(tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    folder.mkdir()
    file = folder / "library.sqlite"
    with_poems(file)
    whole = library_collection(file)
    with sqlite3.connect(file) as opened:  # what can be read and not written
        opened.execute("drop table words")
        opened.execute("create view words as select 0 as text, x'' as seal, '' as row")
    for keep in (True, False):
        assert library_collection(file, keep=keep) == whole
        assert read_anew(file) == len(POEMS)


@settings(max_examples=40)
@given(st.lists(st.text("夢ゆめ花の□■々ゝ「」『』（）()／。、木黑⿰ 國", max_size=12), max_size=4))
def test_any_lines_are_found_by_their_signs(lines: list[str]) -> None:
    kept = [line for line in lines if line.strip()] or ["夢"]
    found = found_by(SourceText("any", tuple(kept)))
    assert found_by_of_row(found.to_row()) == found
    assert len(found.normal) == len(found.origin)
    for first, last, _, _ in found.words:
        assert 0 <= first <= last < len(found.signs)


def test_marks_of_speech_are_shown_and_divide_no_word() -> None:
    found = found_by(SourceText("speech", ("人の「夢に見し」といふ",)))
    assert "".join(found.signs) == "人の「夢に見し」といふ"
    assert ("ゆめ", "夢") in {
        (key, "".join(found.signs[a : b + 1])) for a, b, key, _ in found.words
    }


def run(*arguments: str) -> str:
    result = CliRunner().invoke(cli, ["concord", *arguments, "--no-cache"], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.stdout


def test_words_stand_one_below_the_other(tmp_path: Path) -> None:
    write(tmp_path, "A", "武州住霜蹊作")
    write(tmp_path, "B", "江戸神田住帆影造之")
    lines = [line for line in run(str(tmp_path), "住").splitlines() if "【" in line]
    places = {sum(2 if char > "ÿ" else 1 for char in line[: line.index("【")]) for line in lines}
    assert len(lines) == 2
    assert len(places) == 1


def test_csv_is_safe_in_a_spreadsheet(tmp_path: Path) -> None:
    file = write(tmp_path, "A", "武州住霜蹊作")
    text = file.read_text("utf-8").replace('"front"', '"=1+1"')
    file.write_text(text, "utf-8")
    rows = list(csv.DictReader(io.StringIO(run(str(tmp_path), "住", "--format", "csv"))))
    assert [(row["place"], row["match"], row["first_sign"]) for row in rows] == [
        ("'=1+1", "住", "3")
    ]


def test_counts_and_clusters_as_csv() -> None:
    assert "by,value,hits" in run(str(EXAMPLES), "作", "--counts", "--format", "csv")
    assert "signature" in run(str(EXAMPLES), "--clusters", "--format", "csv")


def test_clusters_are_kept_until_a_record_changes(tmp_path: Path) -> None:
    records, cache = tmp_path / "records", tmp_path / "cache"
    records.mkdir()
    for name, text in (("A", "武州住嶺曉作"), ("B", "嶺暁"), ("C", "江戸住嶺暁刻")):
        made = f'id = "{name}"\nkind = "kozuka"\n\n[[inscription]]\nplace = "back"\n'
        made += f'text = "{text}"\n'
        (records / f"{name}.toml").write_text(made, "utf-8")
    read: list[int] = []

    def found() -> Clusters:
        return clusters_of_folder(records, lambda done, _: read.append(done), cache=cache)

    before = found()
    assert [len(each.members) for each in before.clusters] == [3]
    read.clear()
    assert (found(), read) == (before, [])
    assert before.clusters == clustered(collection(records, keep=False)).clusters
    (records / "C.toml").unlink()
    assert [len(each.members) for each in found().clusters] == [2]


@pytest.mark.parametrize("arguments", [(), ("x",), ("nowhere", "夢"), ("a", "b", "--clusters")])
def test_wrong_use_is_told(arguments: tuple[str, ...]) -> None:
    result = CliRunner().invoke(cli, ["concord", *arguments])
    assert isinstance(result.exception, InputError)


def test_a_word_before_its_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"there is no folder 夢, but .* is one"):
        CliRunner().invoke(
            cli, ["concord", "夢", str(tmp_path)], catch_exceptions=False, standalone_mode=False
        )


@pytest.mark.parametrize(
    ("asked", "found_in"),
    [("reigyo", "嶺曉"), ("reigyō", "嶺曉"), ("kozu", "古圖"), ("noriito", "")],
)
def test_latin_letters_need_no_macrons(asked: str, found_in: str) -> None:
    shown = run("examples", asked)
    assert f"【{found_in}】" in shown if found_in else "found by its signs" in shown


def test_a_macron_asks_for_a_long_vowel() -> None:
    document = document_of_text("a", "文政七年乙酉三月日嶺曉作之")
    assert not list(search([document], query_of("rēgyō")))
    assert [hit.how for hit in search([document], query_of("reigyo"))] == ["sound but for length"]
    assert [hit.how for hit in search([document], query_of("reigyō"))] == ["same sound"]


@functools.cache
def example_documents() -> tuple[Document, ...]:
    return collection(EXAMPLES).documents


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a cache that has the examples."""
    cache = tmp_path_factory.mktemp("cache")
    collection(EXAMPLES, cache=cache)
    return cache


ASKED = [
    "夢",
    "ゆめ",
    "yume",
    "reigyo",
    "rogaku",
    "咲く",
    "思ふ",
    "の",
    "nite",
    "こころ",
    "花の",
    "zzz",
]


@pytest.mark.parametrize("asked", [*ASKED, "(花押)"])
@pytest.mark.parametrize("how", [{}, {"exact": True}, {"pattern": True}])
def test_a_folder_gives_what_its_collection_gives(
    asked: str, how: dict[str, bool], kept: Path
) -> None:
    query = query_of(asked, **how)
    whole = concord(collection(EXAMPLES, cache=kept), query)
    streamed = concord(collection(EXAMPLES, query=query, cache=kept), query)
    assert streamed.to_dict() == whole.to_dict()
    anew = concord(collection(EXAMPLES, query=query, keep=False), query)
    assert anew.to_dict() == whole.to_dict()


@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_no_record_that_has_a_word_is_passed_over(data: st.DataObject) -> None:
    document = data.draw(st.sampled_from(example_documents()))
    first = data.draw(st.integers(0, len(document.words) - 1)) if document.words else None
    if first is None:
        return
    last = data.draw(st.integers(first, min(first + 3, len(document.words) - 1)))
    words = document.words[first : last + 1]
    start, end = words[0][0], words[-1][1]
    stretch = "".join(
        c for c, at in zip(document.normal, document.origin, strict=True) if start <= at <= end
    )
    for asked in (stretch, "".join(sound for _, _, sound, _ in words)):
        if not asked.strip():
            continue
        query = query_of(asked)
        worth = may_have(query)
        assert worth is not None
        if list(search([document], query)):
            assert worth(json.dumps(rows_of([document]), separators=(",", ":")))


def test_what_is_passed_over_is_not_taken_apart(
    kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    taken: list[str] = []
    real = kept_texts.json.loads

    def noted(text: str) -> object:
        taken.append(text)
        return real(text)

    monkeypatch.setattr(kept_texts.json, "loads", noted)
    found = collection(EXAMPLES, query=query_of("夢"), cache=kept)
    with_rows = [text for text in taken if '"rows"' in text]
    assert found.documents
    assert found.records > 10
    assert len(with_rows) < found.records / 2


def test_counts_name_signatures_and_no_carvers() -> None:
    for arguments in (("reigyō",), ("reigyō", "--counts")):
        shown = run("examples", *arguments)
        assert "by signature" in shown
        assert "by carver" not in shown
    assert "is not an attribution" in run("examples", "reigyō")
    assert "carver" in json.loads(run("examples", "reigyō", "--format", "json"))["counts"]


def test_a_signature_of_two_persons_is_of_two() -> None:
    text = "霞たちこのめも春の雪ふれは／花なきさとも花そちりける／楓畦書／鷺坂苗道刻之（花押）"
    document = document_of_text("A", text)
    assert document.names == ("鷺坂苗道", "楓畦")
    hits = search([document], query_of("雪"))
    assert counts(hits)["carver"] == {"楓畦": 1, "鷺坂苗道": 1}
    beside = document_of_text("B", "楓畦刻之")
    assert [each.title for each in clusters([document, beside]) if each.kind == "signature"] == [
        "楓畦"
    ]
