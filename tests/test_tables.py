"""Large tables: rows by their first sign, and single rows searched for."""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe import tables
from inscribe.errors import TableError

COLUMNS = ("char", "strokes", "on", "kun", "names", "senses", "rank")
HEADER = "# invented\n\t\n" + "\t".join(COLUMNS) + "\n"


@pytest.fixture
def glossary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a table of the user's that stands before the packaged one."""
    monkeypatch.setattr(tables, "_user_folders", [tmp_path])
    path = tmp_path / "characters.tsv"
    path.write_bytes((HEADER + "行\t6\tコウ\t\t\t\t\n海\t9\tカイ\tうみ").encode())
    return path


@pytest.mark.parametrize("char", ["行", "水", "龠", "彳"])
def test_a_row_searched_for_is_the_row_that_is_listed(char: str) -> None:
    listed = {}
    for cells, place in tables.rows("characters", COLUMNS):
        listed.setdefault(cells[0], (cells, place))
    assert tables.Search("characters", COLUMNS).first_about(char) == listed[char]


def test_rows_by_first_sign_are_the_rows_that_are_listed() -> None:
    rows = tables.Rows("signature_words", _columns("signature_words"))
    listed = list(tables.rows("signature_words", _columns("signature_words")))
    assert sorted(row for sign in rows.signs() for row in rows.about(sign)) == sorted(listed)


def test_the_users_row_comes_first(glossary: Path) -> None:
    search = tables.Search("characters", COLUMNS)
    cells, place = search.first_about("行") or ((), None)
    assert cells[2] == "コウ"
    assert place is not None
    assert (place.file, place.line) == (str(glossary), 4)
    assert (search.first_about("水") or ((), None))[0][2] == "スイ"


def test_a_last_row_without_a_line_end_is_found_whole(glossary: Path) -> None:
    with pytest.raises(TableError, match="expected 7 cells separated by tabs, found 4"):
        tables.Search("characters", COLUMNS).first_about("海")
    glossary.write_bytes(f"{HEADER}海\t9\tカイ\tうみ\t\t\t7".encode())
    cells, _ = tables.Search("characters", COLUMNS).first_about("海") or ((), None)
    assert cells == ("海", "9", "カイ", "うみ", "", "", "7")


def test_what_no_table_has_is_not_found() -> None:
    assert tables.Search("characters", COLUMNS).first_about("ん") is None


def test_a_table_with_other_columns_is_refused(glossary: Path) -> None:
    glossary.write_text("char\tstrokes\n行\t6\n", encoding="utf-8")
    with pytest.raises(TableError, match="the column names differ"):
        tables.Search("characters", COLUMNS)


def _columns(name: str) -> tuple[str, ...]:
    from inscribe.reading.words import signature_words

    return signature_words._COLUMNS[name]
