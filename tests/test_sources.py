"""The library of source texts: files in, one sound SQLite file, and the right text found again."""

from __future__ import annotations

import json
import os
import random
import re
import signal
import sqlite3
import subprocess
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings, strategies as st

from inscribe.errors import InputError, Place
from inscribe.notation import parse
from inscribe.record import CopiedText as RecordSource
from inscribe.sources import adding, importers, index, keys
from inscribe.sources.library import Library
from inscribe.sources.of_record import words_of
from inscribe.sources.passages import passages_of
from inscribe.sources.query import grams_of, kana_of_romanised, query_of
from inscribe.sources.ranking import NO_SOURCE, find
from inscribe.sources.texts import SourceText, source_text

VERSE = Path(__file__).parent / "data" / "verse_dev.tsv"
KANA = st.text(
    "あいうえおかきくけこさしすせそたちつてとなにぬねのはひふへほまみむめもやゆよらりるれろわ",
    min_size=1,
)


def text(identity: str, *lines: str) -> SourceText:
    return source_text(identity, "\n".join(lines), Place("test"))


def poems(most: int) -> list[SourceText]:
    rows = [line.split("\t") for line in VERSE.read_text("utf-8").splitlines() if line[:1] != "#"]
    header, rows = rows[0], rows[1 : most + 1]
    kana = header.index("kana_historical")
    return [text(f"verse-{row[0]}", row[kana]) for row in rows]


@pytest.fixture
def library(tmp_path: Path) -> Library:
    opened = Library(tmp_path / "l.sqlite", create=True)
    texts = [*poems(120), text("couplet", "国破れて山河在り", "城春にして草木深し")]
    adding.add_texts(opened, texts, len(texts))
    return opened


def best(library: Library, query: str) -> str | None:
    hits = find(library, parse(query), 3)
    return hits[0].text.id if hits and hits[0].score >= NO_SOURCE else None


@pytest.mark.parametrize(
    ("query", "wanted"),
    [
        ("春霞立てるやいつこみよし野のよしのの山に雪はふりつゝ", "verse-3"),
        ("はるかすみたてるやいつこ", "verse-3"),
        ("□霞□てるやい□こみ□し野□よ□のの山□雪はふ□つゝ", "verse-3"),
        ("立てるやいつこ", "verse-3"),
        ("雪はふりつつ春霞立てるや［　　］", "verse-3"),
        ("雪はふりつつみよし野の春霞立てるやいつこ", "verse-3"),
        ("袖ひちて結ひし水の氷れるを", "verse-2"),
    ],
)
def test_a_text_is_found_however_it_is_spelled_or_damaged(
    query: str, wanted: str, library: Library
) -> None:
    assert best(library, query) == wanted


def test_a_romanised_fragment_is_found(library: Library) -> None:
    assert best(library, kana_of_romanised("harugasumi tateru ya izuko")) == "verse-3"


def test_chinese_verse_is_found_by_its_signs(library: Library) -> None:
    assert best(library, "國破山河在") == "couplet"


def test_no_source_is_an_answer(library: Library) -> None:
    assert best(library, "於東都應需造之嘉永六年") is None
    assert best(library, "いろはにほへと") is None


def test_scores_are_probabilities_and_hits_tell_their_place(library: Library) -> None:
    hits = find(library, parse("城春草木深"), 5)
    assert all(0 <= hit.score <= 1 for hit in hits)
    assert [hit.rank for hit in hits] == list(range(1, len(hits) + 1))
    assert hits[0].text.id == "couplet"
    assert "fit line" in hits[0].why


def test_two_lines_out_of_a_long_text_are_found_with_their_place(tmp_path: Path) -> None:
    lines = [poem.lines[0] for poem in poems(120)]
    with Library(tmp_path / "l.sqlite", create=True) as opened:
        long = text("long", *lines)
        adding.add_texts(opened, [long], 1)
        hits = find(opened, parse(f"{lines[70]}{lines[71]}"), 1)
    assert hits[0].text.id == "long"
    assert hits[0].first_line <= 70
    assert hits[0].last_line >= 71
    assert hits[0].last_line - hits[0].first_line < 12


def test_a_text_without_a_legible_sign_cannot_be_looked_for(library: Library) -> None:
    with pytest.raises(InputError, match="no legible sign"):
        find(library, parse("□□［　　］"))


def test_adding_the_same_again_changes_nothing(library: Library) -> None:
    again = adding.add_texts(library, poems(120), 120)
    assert (again.new, again.changed, again.unchanged) == (0, 0, 120)
    changed = library.add([(text("verse-3", "はなのいろは"), passages_of(text("verse-3", "はな")))])
    assert (changed.new, changed.changed) == (0, 1)
    assert best(library, "はるかすみたてるやいつこみよしののよしののやまに") is None


def test_removed_texts_are_found_no_more(library: Library) -> None:
    library.remove(["verse-3"])
    assert best(library, "はるかすみたてるやいつこみよしののよしののやまに") is None
    with pytest.raises(InputError, match="no text verse-3"):
        library.remove(["verse-1", "verse-3"])
    assert best(library, "としのうちにはるはきにけりひととせを") == "verse-1"


def test_many_small_additions_are_merged_and_lose_nothing(tmp_path: Path) -> None:
    with Library(tmp_path / "l.sqlite", create=True) as opened:
        for poem in poems(40):
            adding.add_texts(opened, [poem], 1)
        segments = opened.db.execute("SELECT COUNT(*) FROM segments").fetchone()[0]
        assert segments <= index.MOST_OF_A_SIZE + 1
        assert opened.size == 40
        for poem in poems(40):
            assert find(opened, parse(poem.lines[0]), 1)[0].text.id == poem.id


FILES = {
    "a.txt": ("はなのいろは\nうつりにけりな\n", ["a"]),
    "b.jsonl": (
        '{"id": "b1", "text": "はな／いろ", "book": "x"}\n\n{"id": 2, "text": "つき"}\n',
        ["b1", "2"],
    ),
    "c.csv": ("id,text,title\nc1,はな,Flower\n", ["c1"]),
    "d.tsv": ("# a comment\nid\ttext\nd1\tはな\n", ["d1"]),
    "e.toml": ('[[text]]\nid = "e1"\ntext = "はな"\n', ["e1"]),
    "f.xml": (
        '<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader><fileDesc><titleStmt>'
        "<title>A B</title>"
        '</titleStmt></fileDesc></teiHeader><text><body><lg xml:id="f1"><l>は<note>x</note>な</l>'
        "<l>いろ</l></lg><lg><l>つき</l></lg></body></text></TEI>",
        ["f1", "f:2"],
    ),
}


@pytest.mark.parametrize("name", sorted(FILES))
def test_each_kind_of_file_is_read(name: str, tmp_path: Path) -> None:
    content, ids = FILES[name]
    path = tmp_path / name
    path.write_text(content, "utf-8")
    assert [found.id for found in importers.texts_in(path)] == ids


def test_notes_are_left_out_of_tei_and_titles_kept(tmp_path: Path) -> None:
    path = tmp_path / "f.xml"
    path.write_text(FILES["f.xml"][0], "utf-8")
    first = next(importers.texts_in(path))
    assert first.lines == ("はな", "いろ")
    assert first.title == "A B"


@pytest.mark.parametrize("unit", importers.UNITS)
def test_plain_text_is_divided_as_asked(unit: str, tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_text("はな\nいろ\n\nつき\n", "utf-8")
    found = [(t.id, t.lines) for t in importers.texts_in(path, unit=unit)]
    assert (
        found
        == {
            "file": [("a", ("はな", "いろ", "つき"))],
            "paragraph": [("a:1", ("はな", "いろ")), ("a:4", ("つき",))],
            "line": [("a:1", ("はな",)), ("a:2", ("いろ",)), ("a:4", ("つき",))],
        }[unit]
    )


@pytest.mark.parametrize(
    ("name", "content", "ids"),
    [
        ("a.tsv", "# heading\nnumber\ttext\n7\t花\n8\t月\n", ["a:7", "a:8"]),
        ("a.csv", "text,title\n花,x\n月,y\n", ["a:2", "a:3"]),
        (
            "a.jsonl",
            '{"text": "花", "number": 3}\n\n{"text": "月"}\n',
            ["a:3", "a:3"],
        ),  # told when they are added
        ("a.toml", '[[text]]\ntext = "花"\n[[text]]\ntext = "月"\nid = "own"\n', ["a:1", "own"]),
    ],
)
def test_a_text_without_an_id_is_called_by_its_number(
    name: str, content: str, ids: list[str], tmp_path: Path
) -> None:
    path = tmp_path / name
    path.write_text(content, "utf-8")
    assert [text.id for text in importers.texts_in(path)] == ids


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("a.jsonl", '{"id": "x"}\n', "the text has no text … line 1"),
        ("a.jsonl", '{"id": "x", "text": "は"}\n{bad\n', "the line is not JSON … line 2, column 2"),
        ("a.jsonl", '{"id": "x", "text": 3}\n', "the text of a text must be a string"),
        ("a.jsonl", '["x"]\n', "must be an object"),
        ("a.jsonl", '{"id": "x", "text": "\\ud800"}\n', "U+D800"),
        ("a.csv", "id,words\n", "must name the columns"),
        ("a.toml", "[[text]\n", "not TOML"),
        ("a.txt", " \n", "is empty"),
        ("a.xml", "<TEI>", "not well-formed"),
        ("a.xml", "<TEI/>", "no TEI text"),
        ("a.xml", '<!DOCTYPE a [<!ENTITY b "c">]><a/>', "document type"),
        ("a.doc", "x", "kind of file is not known"),
    ],
)
def test_bad_files_are_named_and_nothing_is_added(
    name: str, content: str, said: str, tmp_path: Path
) -> None:
    path = tmp_path / name
    path.write_text(content, "utf-8")
    library = tmp_path / "l.sqlite"
    run = cli("add", str(path), "--library", str(library))
    assert run.returncode == 2
    assert all(part in run.stderr for part in said.split(" … "))
    assert not library.exists()


def cli(*arguments: str, given: str = "") -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "inscribe", "source", *arguments]
    return subprocess.run(
        command, input=given, capture_output=True, text=True, check=False, encoding="utf-8"
    )


def test_the_commands_from_adding_to_removing(tmp_path: Path) -> None:
    library = str(tmp_path / "l.sqlite")
    given = '{"id": "p1", "text": "はなのいろは／うつりにけりな", "note": "n"}\n'
    added = cli("add", "-", "--library", library, given=given)
    assert "1 added, 0 replaced, 0 already there" in added.stderr
    assert cli("list", "--library", library).stdout.startswith("p1  はなのいろは")
    exported = cli("export", "--library", library).stdout
    assert json.loads(exported) == {"id": "p1", "text": "はなのいろは\nうつりにけりな", "note": "n"}
    lines = cli(
        "find",
        "--lines",
        "--format",
        "jsonl",
        "--library",
        library,
        given="花の色は\n（\nhana no iro\n",
    ).stdout.splitlines()
    answers = [json.loads(line) for line in lines]
    assert answers[0]["query"] == "花の色は"
    assert answers[0]["found"] is True
    assert answers[0]["hits"][0]["id"] == "p1"
    assert set(answers[0]["hits"][0]) >= {"rank", "id", "title", "score", "text", "why"}
    assert answers[1]["line"] == 2
    assert "error" in answers[1]
    assert answers[2]["hits"][0]["id"] == "p1"
    shown = cli("find", "--text", "花の色はうつりに", "--library", library).stdout
    assert "p1" in shown
    assert "花=はな" in shown
    assert cli("remove", "p1", "--library", library).returncode == 0
    assert cli("remove", "p1", "--library", library).returncode == 2
    assert cli("find", "--text", "花", "--library", str(tmp_path / "no")).returncode == 2


def test_two_texts_of_one_id_in_one_input_are_refused(tmp_path: Path) -> None:
    run = cli("add", "-", "--library", str(tmp_path / "l"), given='{"id":"a","text":"は"}\n' * 2)
    assert run.returncode == 2
    assert "two texts have the id a" in run.stderr


def test_a_file_that_is_no_library_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "l.sqlite"
    path.write_text("not a database, but long enough to be read as one" * 30, "utf-8")
    run = cli("list", "--library", str(path))
    assert run.returncode == 2
    assert "library cannot be used" in run.stderr


@pytest.mark.skipif(os.name != "posix", reason="types commands into sh")
@pytest.mark.parametrize("named", ["1", "0"])
def test_a_library_of_an_older_layout_is_carried_over_by_the_command_named(
    named: str, tmp_path: Path
) -> None:
    """The first libraries kept no signs of passages, and called themselves of layout 1."""
    path = tmp_path / "my texts.sqlite"
    given = (
        '{"id":"a","text":"春過ぎて夏来にけらし","title":"Summer"}\n{"id":"b","text":"花の色は"}\n'
    )
    assert cli("add", "-", "--library", str(path), given=given).returncode == 0
    with sqlite3.connect(path) as db:
        db.execute("UPDATE about SET value = ?", (named,))
        if named == "1":
            db.execute("ALTER TABLE passages DROP COLUMN signs")
    db.close()
    for asked in (["find", "--text", "春過て夏"], ["add", "-"], ["list"]):
        refused = cli(*asked, "--library", str(path), given=given)
        assert refused.returncode == 2
        assert "written by another version" in refused.stderr
    command = re.sub(r"\s+", " ", refused.stderr).partition("into a new one: ")[2].strip()
    typed = command.replace("inscribe", f"{sys.executable} -m inscribe")
    subprocess.run(["sh", "-c", typed], cwd=tmp_path, check=True, capture_output=True)
    found = cli(
        "find", "--text", "春過て夏来に", "--library", str(tmp_path / "my texts-new.sqlite")
    )
    assert "Summer" in found.stdout


@pytest.mark.skipif(os.name != "posix", reason="needs kill -9")
def test_a_kill_at_any_moment_leaves_a_sound_library(tmp_path: Path) -> None:
    rng = random.Random(5)
    source = tmp_path / "s.jsonl"
    made = ("".join(rng.choices("あいうえおかきくけこさしすせそ", k=31)) for _ in range(4000))
    source.write_text(
        "".join(json.dumps({"id": f"t{n}", "text": t}) + "\n" for n, t in enumerate(made)), "utf-8"
    )
    library = tmp_path / "l.sqlite"
    command = [sys.executable, "-m", "inscribe", "source", "add", str(source)]
    for _ in range(4):
        process = subprocess.Popen(
            [*command, "--library", str(library)], stderr=subprocess.DEVNULL, start_new_session=True
        )
        time.sleep(rng.uniform(0.05, 0.8))
        os.killpg(process.pid, signal.SIGKILL)
        process.wait()
        if library.exists():
            held = sqlite3.connect(library).execute("PRAGMA integrity_check").fetchone()[0]
            assert held == "ok"
    assert subprocess.run([*command, "--library", str(library)], check=False).returncode == 0
    with Library(library) as opened:
        assert len(opened) == 4000
        assert opened.is_sound()


@given(KANA)
def test_keys_are_idempotent_and_blind_to_spelling(kana: str) -> None:
    once = keys.letters(kana)
    assert keys.letters(once) == once
    joined = keys.run_together(once)
    assert keys.run_together(joined) == joined or len(joined) > len(kana)
    assert keys.letters(kana.replace("か", "が")) == once


@given(KANA, st.integers(0, 60))
def test_a_query_asks_for_grams_of_the_text_it_is_from(kana: str, cut: int) -> None:
    if len(kana) < 3:
        return
    signs = list(kana)
    signs[cut % len(signs)] = "□"
    damaged = "".join(signs)
    asked = set().union(*grams_of(query_of(parse(damaged))))
    own = index.grams_of(keys.run_together(keys.letters(damaged)))
    assert own <= asked or "う" in damaged or "ふ" in damaged


@settings(max_examples=30)
@given(st.lists(KANA.filter(lambda k: len(k) < 40), min_size=1, max_size=8, unique=True))
def test_what_is_added_is_kept_and_exported(lines: list[str]) -> None:
    texts = [text(f"t{n}", line) for n, line in enumerate(lines)]
    with TemporaryDirectory() as folder, Library(Path(folder, "l"), create=True) as opened:
        adding.add_texts(opened, texts, len(texts))
        assert list(opened.texts()) == texts
        assert opened.is_sound()


def test_a_source_named_by_id_is_read_in_the_notation_its_record_gives(tmp_path: Path) -> None:
    worn = "夢か<を>現か"  # supplied in Leiden's notation, written out in the Japanese
    with Library(tmp_path / "library.sqlite", create=True) as held:
        adding.add_texts(held, [SourceText("worn", (worn,))], 1)
        assert words_of(RecordSource(id="other"), held) is None
        by_id = words_of(RecordSource(id="worn", notation="leiden"), held)
    assert by_id == words_of(RecordSource(text=worn, notation="leiden"), None)
    assert by_id != parse(worn)


def test_the_listing_stands_in_columns(tmp_path: Path) -> None:
    file = tmp_path / "library.sqlite"
    with Library(file, create=True) as held:
        texts = [SourceText("a", ("夢かうつつか",), "夢"), SourceText("longer-id", ("花の色は",))]
        adding.add_texts(held, texts, 2)
    shown = cli("list", "--library", str(file)).stdout.splitlines()
    assert shown == ["a          夢  夢かうつつか", "longer-id      花の色は"]


def test_a_folder_is_no_library_and_no_text(tmp_path: Path) -> None:
    file = str(tmp_path / "library.sqlite")
    with Library(Path(file), create=True):
        pass
    for asked in (
        ("list", "--library", str(tmp_path)),
        ("find", str(tmp_path), "--library", file),
        ("find", str(tmp_path / "nothing"), "--library", file),
    ):
        run = cli(*asked)
        assert run.returncode == 2
        assert "it is a folder" in run.stderr or "use --text" in run.stderr
