"""Tables, JSON Lines and pairs: whatever would be lost is an error with its line, and nothing is
added."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from hypothesis import given, strategies as st
from test_collate_cli import run as collate
from test_sources import cli

from inscribe.errors import InputError
from inscribe.strict import table_rows

MANY = "".join(f"{n},はな{n},x\n" for n in range(7, 3001))


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        (
            "a.csv",
            f'id,text,title\n1,は,x\n2,な,x\n\n\n6,"いろ,x\n{MANY}',
            "the qu … line 6, column 3",
        ),
        ("a.csv", 'id,text\n6,"いろ\n7,"は"\n', "the quote opened here is not … line 2, column 3"),
        ("a.csv", 'id,text\n6,"い\nろ"\n7,"は\n8,な\n', "the quote opened … line 4, column 3"),
        ("a.csv", 'id,text,title\n6,"い","は\n7,な,x\n', "the quote opened … line 2, column 7"),
        ("a.csv", 'id,text\n6,"い"ろ\n', "the quote opened here is not closed … line 2, column 3"),
        ("a.csv", 'id,text\n6,"いろ\n7,は"\n', "a quote opened in this row takes in … line 2"),
        ("a.csv", 'id,text,title\n6,"いろ,x\n7,は,x\n8,な",x\n', "a quote opened in this … line 2"),
        ("a.tsv", 'id\ttext\n6\t"いろ\n7\tは\n', "the quote opened … line 2, column 3"),
        (
            "a.csv",
            "id,text\n6,いろ,は\n",
            "the row has 3 cells … line 2",
        ),
        ("a.csv", "id,text,title\n6,い,ろ,は\n", "the row has 4 cells … line 2"),
        ("a.csv", "# x\nid,text,title\n6,いろ\n", "the row has 2 cells … line 3"),
        ("a.csv", "id,text,text\n6,い,ろ\n", "two columns are called “text” … line 1"),
        ("a.csv", "id,text,Text\n6,い,ろ\n", "two columns are called “text” … line 1"),
        ("a.csv", "id,text,note,note\n6,い,ろ,は\n", "two columns are called “note”"),
        ("a.csv", "id,text,\n6,い,ろ\n", "cell 3 is in a column without a name … line 2"),
        ("a.jsonl", '{"text": "い", "text": "ろ"}\n', "the key “text” stands there twice … line 1"),
        ("a.jsonl", '{"text": "い"}\n{"id": 1, "text": "い", "id": 2}\n', "the key “id” … line 2"),
        ("a.jsonl", '{"text": "い", "x": {"y": 1, "y": 2}}\n', "the key “y” stands there twice"),
        ("a.jsonl", '{"id": 7, "text": "い"}\n{"id": "7", "text": "ろ"}\n', "are one id"),
        ("a.toml", 'title = "x"\n[[text]]\ntext = "い"\n', "the key “title” stands outside"),
        ("a.toml", '[[poem]]\ntext = "い"\n', "there is no text in"),
    ],
)
def test_what_would_be_lost_is_told_and_nothing_is_added(
    name: str, content: str, said: str, tmp_path: Path
) -> None:
    sound = tmp_path / "sound.jsonl"
    sound.write_text('{"id": "s", "text": "は"}\n', "utf-8")
    path = tmp_path / name
    path.write_text(content, "utf-8")
    library = tmp_path / "l.sqlite"
    run = cli("add", str(sound), str(path), "--library", str(library))
    assert (run.returncode, run.stdout) == (2, "")
    assert all(part in run.stderr for part in said.split(" … "))
    assert name in run.stderr
    assert not library.exists()


@pytest.mark.parametrize(
    ("content", "texts"),
    [
        ('id,text\n1,"い\nろ"\n\n2,は\n,\n', ["い\nろ", "は"]),
        ('text,id\n"い\nろ",1\nは,2\n', ["い\nろ", "は"]),
        ('id,text,title\n1,"い\nろ",x\n2,は,y\n', ["い\nろ", "は"]),
        ('id,text,\n1,"い, ""ろ""",\n', ['い, "ろ"']),
        ('id,text\n1,い"ろ\n', ['い"ろ']),
        ("id,text\n1,い", ["い"]),
    ],
)
def test_what_is_well_written_is_read(content: str, texts: list[str]) -> None:
    assert [row["text"] for _, row in table_rows(content, "a.csv", ",", ())] == texts


CELLS = st.text(st.sampled_from('はな"\n,\t x'), max_size=6)


@given(st.lists(st.tuples(CELLS, CELLS), max_size=5))
def test_every_cell_is_kept_or_the_table_refused(rows: list[tuple[str, str]]) -> None:
    file = io.StringIO()
    csv.writer(file, lineterminator="\n", quoting=csv.QUOTE_ALL).writerows([("id", "text"), *rows])
    try:
        found = [(row["id"], row["text"]) for _, row in table_rows(file.getvalue(), "a", ",", ())]
    except InputError as refused:
        found = [("refused", refused.message)]
    wanted = [row for row in rows if any(cell.strip() for cell in row)]
    assert found in (wanted, [("refused", "a quote opened in this row takes in the rows below it")])


@given(st.text(st.sampled_from('はな"\n,x'), max_size=30))
def test_no_sign_of_a_table_is_dropped(body: str) -> None:
    try:
        rows = list(table_rows(f"a,b\n{body}", "a.csv", ",", ()))
    except InputError as refused:
        lines = body.count("\n") + 1
        assert refused.place.line in range(2, lines + 2)  # noqa: PT017
        return
    signs = "".join(cell for _, row in rows for cell in row.values())
    for sign in "はなx":
        assert signs.count(sign) == body.count(sign)


def test_which_texts_are_replaced_is_told(tmp_path: Path) -> None:
    library = str(tmp_path / "l.sqlite")
    lines = "".join(f'{{"id": {n}, "text": "は"}}\n' for n in range(30))
    assert cli("add", "-", "--library", library, given=lines).stderr.startswith("30 added")
    one = cli("add", "-", "--library", library, given='{"id": "7", "text": "な"}\n')
    assert one.stderr.splitlines()[0].startswith("0 added, 1 replaced, 0 already there")
    assert one.stderr.splitlines()[1] == "replaced, the words before are gone: 7"
    many = cli("add", "-", "--library", library, given=lines.replace("は", "に"))
    assert many.stderr.splitlines()[1].endswith("19 and 10 more")
    assert cli("add", "-", "--library", library, "--quiet", given=lines).stderr == ""


def test_an_empty_input_is_told(tmp_path: Path) -> None:
    run = cli("add", "-", "--library", str(tmp_path / "l.sqlite"))
    assert run.returncode == 2
    assert "there is no text in it; standard input" in run.stderr


def test_a_doubled_key_of_a_pair_is_refused() -> None:
    lines = '{"copy": "夢", "source": "夢", "copy": "花"}\n{"copy": "夢", "source": "夢"}\n'
    result = collate("--pairs", "-", stdin=lines)
    bad, good = map(json.loads, result.stdout.splitlines())
    assert "the key “copy” stands there twice" in bad["error"]
    assert good["fidelity"]["same"] == 1
