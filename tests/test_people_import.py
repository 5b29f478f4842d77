"""A list of persons made of another list: mapped, told, and nothing lost."""

from __future__ import annotations

import csv
import io
import re
import unicodedata
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe import add_glossary, read_text, tables
from inscribe.cli import cli
from inscribe.descriptions import described, problems_in, problems_of_row
from inscribe.errors import InputError, InscribeError
from inscribe.persons import (
    as_table,
    as_toml,
    imported_people,
    of_toml,
    people_of_tei,
    with_persons,
)

LIST = """Nr,Name,姓,よみ,俳号,俳号よみ,工銘,生没年,職,Sammlung,Geb.
7,Uan,鵜蔵,うくら,雨蛙庵（うああん）、雨庵,うあん,,1712-1780,俳人,Kabinett 3,
8,,稗抜,ひえぬき,,,露嶽 つゆたけ,c. 1790-1861,金工,,1790?
9,,,,,,露岳,正徳二年-,金工;Händler,,
8,,,,,,露岳斎,,,,1795
,X,葎田,,,,a b,,,,1800
"""


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp932", "utf-16", "euc_jp"])
def test_a_list_in_any_usual_encoding_becomes_people(tmp_path: Path, encoding: str) -> None:
    source, target = tmp_path / "list.csv", tmp_path / "own" / "people.tsv"
    target.parent.mkdir()
    source.write_bytes(LIST.replace("ä", "a").encode(encoding))
    arguments = ["people", "import", str(source), "-o", str(target)]
    result = CliRunner().invoke(cli, arguments, standalone_mode=False)
    assert result.return_value == 1, result.output  # there are cells to be looked at
    assert list(problems_in(target.parent)) == []
    rows = list(csv.DictReader(io.StringIO(target.read_text("utf-8")), delimiter="\t"))
    assert [row["id"] for row in rows] == ["7", "8", "9", "row-6"]
    assert rows[0]["pen"] == "雨蛙庵=うああん;雨庵=うあん"
    assert (rows[0]["birth"], rows[0]["death"], rows[0]["role"]) == ("1712", "1780", "composed")
    assert (rows[1]["birth"], rows[1]["art"]) == ("about 1790", "露嶽=つゆたけ;露岳斎")
    assert "Kabinett 3" in rows[0]["note"]
    assert "1795" in rows[1]["note"]
    assert "line 5: birth: 8 has birth about 1790 already" in result.stderr
    assert "工銘: “a b” cannot stand in art" in result.stderr


def test_the_mapping_is_proposed_put_right_and_used_again(tmp_path: Path) -> None:
    source, mapping = tmp_path / "list.csv", tmp_path / "columns.toml"
    source.write_text("No,Zeichen\n1,露岳\n", "utf-8")
    run = CliRunner()
    run.invoke(cli, ["people", "import", str(source), "--propose", "-o", str(mapping)])
    assert of_toml(mapping.read_text("utf-8"), "") == {"No": "id", "Zeichen": "note"}
    mapping.write_text('"Zeichen" = "art"\n', "utf-8")
    for given_map in (str(mapping), "Zeichen=art"):
        result = run.invoke(cli, ["people", "import", str(source), "--map", given_map])
        assert "1\t\t\t\t\t露岳\t" in result.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--map", "Kunst=art"], "there is no column “Kunst”"),
        (["--map", "Zeichen=arts"], "cannot go to “arts”"),
        (["--encoding", "ascii"], "no text in any encoding"),
        (["--map", "none.toml"], "none.toml"),
    ],
)
def test_what_cannot_be_done_is_said(tmp_path: Path, arguments: list[str], said: str) -> None:
    source = tmp_path / "list.csv"
    source.write_text("No,Zeichen\n1,露岳\n", "utf-8")
    result = CliRunner().invoke(cli, ["people", "import", str(source), *arguments])
    assert said in str(result.exception)


TEI = """<TEI xmlns="http://www.tei-c.org/ns/1.0"><standOff><listPerson>
<person xml:id="p1"><persName xml:lang="en">Uan</persName><persName type="pen">雨蛙庵</persName>
<persName type="pen" xml:lang="ja-Hira">うああん</persName><birth when="1712-03-01"/>
<death when="1780" cert="low"/><residence>江戸</residence><occupation>俳人</occupation>
<note>invented</note><faith>none</faith></person>
<person xml:id="p2"><persName><surname>稗抜</surname><addName type="art">露嶽</addName></persName>
<floruit from="1810" to="1850"/></person>
<listRelation><relation name="teacher" active="#p1" passive="#p2"/></listRelation>
</listPerson></standOff></TEI>"""


def test_a_list_of_tei_becomes_people() -> None:
    first, second = people_of_tei(TEI, "persons.xml").rows
    assert (first["id"], first["name"], first["pen"]) == ("p1", "Uan", "雨蛙庵=うああん")
    assert (first["birth"], first["death"], first["place"]) == ("1712", "about 1780", "江戸")
    assert first["role"] == "composed"
    assert "faith: none" in first["note"]
    assert (second["surname"], second["art"], second["active"]) == ("稗抜", "露嶽", "1810-1850")
    assert second["teacher"] == "p1"


def test_tei_without_persons_is_refused() -> None:
    with pytest.raises(InputError, match="there is no person in it"):
        people_of_tei('<TEI xmlns="http://www.tei-c.org/ns/1.0"/>', "a.xml")


CELL = st.one_of(
    st.text("露岳雨庵、;（）() うあァ?=-–1780年約c.|#\t\n\"'＝", max_size=12),
    st.sampled_from(["1712-1780", "c. 1712", "正徳二年", "露岳（ろがく）", "俳人", "?", "#1"]),
    st.text(max_size=6),
)
HEADINGS = ["id", "俳号", "よみ", "生没年", "born", "fl.", "職", "住", "師", "Kasten", "note"]


def words(text: str) -> set[str]:
    """Return the runs of letters and digits of a text, kana as hiragana: what must not be lost."""
    plain = unicodedata.normalize("NFKC", text)
    plain = "".join(chr(ord(c) - 0x60) if "ァ" <= c <= "ヶ" else c for c in plain)
    return set(re.findall(r"\w+", plain))


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(CELL, min_size=11, max_size=11), min_size=1, max_size=4))
def test_nothing_of_a_list_is_lost_and_what_is_made_can_be_used(rows: list[list[str]]) -> None:
    held = io.StringIO()
    writer = csv.writer(held, lineterminator="\n")
    writer.writerows([HEADINGS, *rows])
    try:
        found = imported_people(held.getvalue(), "list.csv")
    except InputError:
        return  # a table that cannot be read is refused whole
    text = as_table(found.rows)
    for row in rows:
        for cell in row:
            missing = {word for word in words(cell) if word not in words(text) | {""}}
            assert all(any(word in other for other in words(text)) for word in missing), cell
    table = described("people")
    for made in found.rows:
        assert list(problems_of_row(table, made)) == []
        assert not made["id"].startswith("#")
        assert not any("\t" in value or "\n" in value for value in made.values())
    assert len({made["id"] for made in found.rows}) == len(found.rows)
    assert text.count("\n") == len(found.rows) + 1


@given(st.dictionaries(st.text(max_size=8), st.sampled_from(["art", "pen", "note"]), max_size=5))
def test_a_mapping_comes_back(mapping: dict[str, str]) -> None:
    assert of_toml(as_toml(mapping), "a.toml") == mapping


def test_a_tei_list_is_read_directly_from_a_glossary_folder(tmp_path: Path) -> None:
    (tmp_path / "people.xml").write_text(TEI, encoding="utf-8")
    add_glossary(tmp_path)
    try:
        persons = with_persons([read_text("雨蛙庵書")])[0].persons
        first = read_text("雨蛙庵書").proposals[0].romaji
    finally:
        tables.remove_folder(tmp_path)
    assert [(each.id, each.kinds) for each in persons] == [("p1", ("pen name",))]
    assert first.startswith("Uān")


@pytest.mark.parametrize(
    ("others", "content", "said"),
    [
        (("people.tsv",), TEI, "people stands in two files"),
        ((), "<TEI", "not well-formed"),
        ((), '<TEI xmlns="http://www.tei-c.org/ns/1.0"/>', "there is no person in it"),
    ],
)
def test_a_tei_list_that_cannot_be_used_is_refused(
    tmp_path: Path, others: tuple[str, ...], content: str, said: str
) -> None:
    (tmp_path / "people.xml").write_text(content, encoding="utf-8")
    for name in others:
        (tmp_path / name).write_text("id\n", encoding="utf-8")
    with pytest.raises(InscribeError, match=said):
        add_glossary(tmp_path)
    assert tmp_path not in tables.folders()
