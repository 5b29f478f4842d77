"""The glossary keeps to its description, and what a user gives is held to it too."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner

import inscribe
from inscribe import tables
from inscribe.cli import cli
from inscribe.descriptions import described, described_tables, problems_in, problems_of
from inscribe.errors import InscribeError, ProblemsError, TableError
from inscribe.forms import normalise_text
from inscribe.reading.names.ranking import readings
from inscribe.reading.words.lexical import without_marks_of_repetition

PACKAGE = Path(inscribe.__file__).parent
BUILD = tables.PACKAGED / "build"
# Columns for people: `inscribe glossary show` gives them, no stage reckons with them.
EXPLAINING = {"gloss", "note", "source", "example"}
LICENCES = {
    *("GPL-3.0-or-later", "CC0-1.0", "CC-BY-SA-4.0", "Unicode-3.0", "BSD-3-Clause"),
}
READ_IN_CURRENT_FORMS = (
    *("signature_parts", "signature_words", "signature_formulas", "provinces", "cities", "titles"),
    *("techniques", "subjects", "works", "poets", "poets_ranks", "passage_roles"),
    *("name_preferences", "name_endings"),
)
CODE = {path: path.read_text(encoding="utf-8") for path in PACKAGE.rglob("*.py")}


def test_every_table_is_described_and_lies_in_a_folder_of_its_subject() -> None:
    files = sorted(tables.PACKAGED.glob("**/*.tsv"))
    files = [file for file in files if file.parent != BUILD]
    assert {file.stem for file in files} == set(described_tables())
    assert len(files) == len(described_tables())
    assert {file.parent.name for file in files} == set(tables.subjects())


@pytest.mark.parametrize("name", described_tables())
def test_a_table_keeps_to_its_description(name: str) -> None:
    table = described(name)
    assert [str(problem) for problem in problems_of(table, table.file)] == []
    with table.file.open(encoding="utf-8") as file:
        header = next(line for line in file if not line.startswith("#"))
    assert tuple(header.rstrip("\n").split("\t")) == tuple(table.columns)


@pytest.mark.parametrize("name", described_tables())
def test_a_description_is_whole(name: str) -> None:
    table = described(name)
    assert table.about
    assert table.source
    assert table.licence in LICENCES
    assert set(table.key) <= set(table.columns)
    assert not table.rebuild or (BUILD / table.rebuild).is_file()
    for column in table.columns.values():
        assert column.about or column.kind, column.name


@pytest.mark.parametrize("name", described_tables())
def test_no_table_and_no_column_is_dead(name: str) -> None:
    readers = [text for text in CODE.values() if f'"{name}"' in text]
    assert readers
    _first, *others = described(name).columns  # rows are looked up by the first
    for column in set(others) - EXPLAINING:
        assert any(f'"{column}"' in text or f"'{column}'" in text for text in readers), column


@pytest.mark.parametrize("name", READ_IN_CURRENT_FORMS)
def test_words_of_signatures_stand_in_current_forms(name: str) -> None:
    """A reading never sees another form than ``inscribe.forms`` gives it."""
    written = {without_marks_of_repetition(row["written"]) for row in tables.rows(name)}
    assert {each for each in written if normalise_text(each).text != each} == set()


def test_code_keeps_no_column_names_and_no_caches_of_its_own() -> None:
    before = {"descriptions.py", "late.py"}
    later = {
        path: text
        for path, text in CODE.items()
        if path.name not in before and path.parent.name != "tables"
    }
    reader = re.compile(r'tables\.(rows|Rows|Search)\("\w+", ')
    assert not [path for path, text in later.items() if reader.search(text)]
    assert not [p for p, text in later.items() if "lru_cache" in text]
    assert not [p for p, text in later.items() if "raise TableError" in text]


REFUSED = [
    ("names", "嶺曉\tmineaki\t\t", "the kana “mineaki” cannot stand there … expected hiragana"),
    ("names", "嶺曉\t\t\t", "the kana is missing"),
    ("names", "嶺曉\tみねあき\tsword\t", "art, common, surname, given, place"),
    ("name_preferences", "晴\tmiddle\tはる:1", "expected one of first, last, stem"),
    ("name_preferences", "晴\tfirst\tはる", "KANA:WEIGHT"),
    ("name_endings", "斎\tart\tさい\t\tmuch", "a number from 0 to 1"),
    ("name_elements", "晴\t:3\t\t\t", "KANA:WEIGHT"),
    ("surnames", "三\t三輪=みわ", "WRITTEN=KANA:COST"),
    ("signature_words", "作\tverbb\tさく\t\t\t", "expected one of verb"),
    ("labels", "widht\tWidth\t幅", "length, width"),
    ("signature_formulas", "於\topener\tplaces\t{} に\t{} に\t\tat\t0", "one of place, patron"),
    ("titles", "\tかみ\toffice\t\t", "the written is missing"),
    ("month_names", "花月\t13\tかげつ\tkagetsu", "a month, 1 to 12"),
    ("day_words", "花日\tpart\tx-y\tかじつ\tkajitsu", "two days of a lunisolar month"),
    ("day_words", "花日\tauspicious\t3\tかじつ\tkajitsu", "expected nothing"),
    ("festivals", "花日\t4\t31\tかじつ\tkajitsu", "1 to 30"),
    ("solar_terms", "花日\t4-1\t4-3\tかじつ\tkajitsu", "month and day as 02-05"),
    ("date_words", "花年\tsame\tyear\tかねん\tkanen", "the unit and how many on"),
    ("date_words", "花齢\tage\tmany\tかれい\tkarei", "an age"),
    ("months", "1853\t1853-02-30\t\t大小大大大小大小大小小大\t", "a day as 1600-02-15"),
    ("months", "1853\t1853-02-08\t\t大小大\t", "twelve lengths"),
    ("months", "1853\t1853-02-08\tx\t大小大大大小大小大小小大\t", "a month, 1 to 12"),
    ("months", "1853\t1853-02-08\t\t大小大大大小大小大小小X\t", "大, 小 or 二"),
    ("repeat_marks", "々\tkanj\tno\t", "kanji, kana, several"),
    ("numbers", "廿\ttwenty\t", "a whole number of zero or more"),
    ("parts", "舩\tleft:舟 right\tmine", "POSITION:PART"),
    ("parts", "舩\tleft:舟(\tmine", "POSITION:PART"),
    ("characters", "舩\tten\t\t\t\t\t", "a whole number"),
    ("variants", "舩\t船", "expected 4 cells"),
    ("chinese_words", "聞\tき\t四段-キ行\t名詞\tを\t", "a classical conjugation, as 四段-カ行"),
    ("chinese_words", "聞\tき\t四段-カ行\t動詞\tを\t", "one of 名詞, 未然形"),
    ("sayings", "花紅\thana akashi\tverse\t", "kana, proper names in katakana"),
    ("compounds", "花紅柳緑\tはな, やなぎ\t\t", "hiragana, a space between words"),
    ("misread_formulas", "舩\t船舟\t", "one sign"),
    ("outside_marks", "△ ▲\t□\tno mark", "marks, without spaces"),
    ("concepts", "colour\tred\thttps://example.org/1\t", "one of kind, hand"),
    ("concepts", "kind\ttsuba\t12\tours", "a URI"),
    ("verse_groups", "夏 来\tなつ き\t名詞 動詞 名詞", "not divided alike"),
    ("historical_words", "けふ-\tきょう\t\t", "both spellings end with -, or neither"),
]


@pytest.mark.parametrize(("name", "row", "said"), REFUSED)
def test_a_users_row_is_refused_with_its_place_and_what_is_allowed(
    user_table: Callable[..., None], name: str, row: str, said: str
) -> None:
    with pytest.raises(TableError, match=rf"{name}\.tsv, line 2") as caught:
        user_table(name, row)
    assert all(part in str(caught.value) for part in said.split(" … "))


def test_a_key_may_stand_only_once(user_table: Callable[..., None]) -> None:
    with pytest.raises(TableError, match=r"花 first stands in line 2 already; .*line 3"):
        user_table("name_preferences", "花\tfirst;last\tはな:2", "花\tfirst\tか:1")


@pytest.mark.parametrize(
    ("file", "header", "said"),
    [
        ("name.tsv", "written\tkana", "did you mean names"),
        ("names.tsv", "written\treading", "no column “reading” … the columns are written, kana"),
        ("names.tsv", "written\tkind", "the column kana is missing"),
        ("names.tsv", "kana\twritten", "the columns stand in another order"),
        ("names.tsv", "", "no line of column names"),
    ],
)
def test_an_unknown_file_or_column_is_refused(
    tmp_path: Path, file: str, header: str, said: str
) -> None:
    (tmp_path / file).write_text(header + "\n", encoding="utf-8")
    with pytest.raises(InscribeError) as caught:
        inscribe.add_glossary(tmp_path)
    assert all(part in str(caught.value) for part in said.split(" … "))
    assert file in str(caught.value)
    assert tmp_path not in tables.folders()


def test_several_problems_are_told_at_once(user_table: Callable[..., None]) -> None:
    with pytest.raises(ProblemsError) as caught:
        user_table("names", "嶺曉\tmineaki\t\t", "綾郷\t\t\t")
    assert [error.place.line for error in caught.value.errors] == [2, 3]


def test_a_folder_has_effect_after_first_use(user_table: Callable[..., None]) -> None:
    text = "嶺曉作"
    assert "Harumichi" not in inscribe.read_text(text).proposals[0].romaji
    assert readings("嶺曉")[0].romaji != "Harumichi"
    user_table("names", "嶺曉\tはるみち\t\t")
    assert readings("嶺暁")[0].romaji == "Harumichi"
    assert "Harumichi" in inscribe.read_text(text).proposals[0].romaji


def test_a_users_table_may_lie_in_a_folder_of_its_subject(tmp_path: Path) -> None:
    (tmp_path / "names").mkdir()
    (tmp_path / "names" / "names.tsv").write_text("written\tkana\n嶺曉\tmineaki\n", "utf-8")
    assert [error.place.line for error in problems_in(tmp_path)] == [2]


def test_the_command_lists_the_tables_and_shows_one() -> None:
    listed = CliRunner().invoke(cli, ["glossary", "show"]).output
    assert all(f"  {name} " in listed for name in described_tables())
    shown = CliRunner().invoke(cli, ["glossary", "show", "numbers"]).output
    assert "CC0-1.0" in shown
    assert "a whole number of zero or more" in shown
    wrong = CliRunner().invoke(cli, ["glossary", "show", "number"])
    assert "did you mean numbers" in str(wrong.exception)


def test_the_command_checks_a_folder(tmp_path: Path) -> None:
    (tmp_path / "names.tsv").write_text("written\tkana\n嶺曉\tみねあき\n", "utf-8")
    good = CliRunner().invoke(cli, ["glossary", "check", str(tmp_path)], standalone_mode=False)
    assert (good.return_value, good.output) == (0, "1 table: 0 problems\n")
    (tmp_path / "months.tsv").write_text("written\n", "utf-8")
    (tmp_path / "name.tsv").write_text("written\n", "utf-8")
    bad = CliRunner().invoke(cli, ["glossary", "check", str(tmp_path)], standalone_mode=False)
    assert bad.return_value == 1
    assert bad.output.endswith("3 tables: 2 problems\n")
