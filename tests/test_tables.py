"""Large tables: rows by their first sign, and single rows searched for."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from inscribe import tables
from inscribe.errors import TableError

COLUMNS = ("written", "strokes", "on", "kun", "names", "gloss", "rank")
HEADER = "# invented\n\t\n" + "\t".join(COLUMNS) + "\n"


@pytest.fixture
def glossary(tmp_path: Path) -> Iterator[Path]:
    """Return a table of the user's that stands before the packaged one."""
    path = tmp_path / "characters.tsv"
    path.write_bytes((HEADER + "行\t6\tコウ\t\t\t\t\n海\t9\tカイ\tうみ").encode())
    tables.add_folder(tmp_path)
    yield path
    tables.remove_folder(tmp_path)


@pytest.mark.parametrize("char", ["行", "水", "龠", "彳"])
def test_a_row_searched_for_is_the_row_that_is_listed(char: str) -> None:
    listed = {}
    for row in tables.rows("characters"):
        listed.setdefault(row["written"], row)
    assert tables.Search("characters").first_about(char) == listed[char]


def test_rows_by_first_sign_are_the_rows_that_are_listed() -> None:
    rows = tables.Rows("signature_words")
    by_sign = [tuple(row.values()) for sign in rows.signs() for row in rows.about(sign)]
    assert sorted(by_sign) == sorted(tuple(r.values()) for r in tables.rows("signature_words"))


def test_a_row_found_by_halving_is_the_row_that_is_listed(tmp_path: Path) -> None:
    every = list(tables.rows("name_dictionary"))
    assert [row["written"] for row in every] == sorted(row["written"] for row in every)
    found = tables.Sorted("name_dictionary")
    for row in (*every[::5000], every[-1]):
        assert found.first_about(row["written"]) == row
        assert found.first_about(row["written"] + "犬犬犬") is None
    assert found.first_about("") is None
    (tmp_path / "name_dictionary.tsv").write_text("written\tsurname\n綾綾郷\tあやや\n", "utf-8")
    tables.add_folder(tmp_path)
    try:
        own = tables.Sorted("name_dictionary")
        assert (own.first_about("綾綾郷") or {})["surname"] == "あやや"
        assert own.first_about(every[0]["written"]) == every[0]
    finally:
        tables.remove_folder(tmp_path)


def test_the_users_row_comes_first(glossary: Path) -> None:
    search = tables.Search("characters")
    assert (search.first_about("行") or {})["on"] == "コウ"
    assert (search.first_about("水") or {})["on"] == "スイ"


def test_a_last_row_without_a_line_end_is_found_whole(glossary: Path) -> None:
    with pytest.raises(TableError, match="expected 7 cells separated by tabs, found 4"):
        tables.Search("characters").first_about("海")
    glossary.write_bytes(f"{HEADER}海\t9\tカイ\tうみ\t\t\t7".encode())
    row = tables.Search("characters").first_about("海") or {}
    assert tuple(row.values()) == ("海", "9", "カイ", "うみ", "", "", "7")


def test_what_no_table_has_is_not_found() -> None:
    assert tables.Search("characters").first_about("ん") is None


def test_what_a_users_table_leaves_out_is_empty(glossary: Path) -> None:
    glossary.write_text("written\tstrokes\n行\t6\n", encoding="utf-8")
    row = tables.Search("characters").first_about("行") or {}
    assert row == dict.fromkeys(COLUMNS, "") | {"written": "行", "strokes": "6"}


def test_what_was_kept_is_forgotten_when_folders_change(tmp_path: Path) -> None:
    calls = []

    @tables.cached(2)
    def length(name: str) -> int:
        calls.append(name)
        return len(name)

    assert [length("a"), length("a"), length("bb")] == [1, 1, 2]
    assert calls == ["a", "bb"]
    tables.add_folder(tmp_path)
    tables.remove_folder(tmp_path)
    assert length("a") == 1
    assert calls == ["a", "bb", "a"]
