"""The tables of the date words: every row can be used, and its letters fit its kana."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import jaconv
import pytest

from inscribe import tables
from inscribe.dates.calendar import cycle, eras, lunisolar
from inscribe.dates.written.lookalikes import lookalikes
from inscribe.dates.written.scanning import scan
from inscribe.dates.written.vocabulary import signs, words_from
from inscribe.errors import TableError

WITH_READINGS = {
    "month_names": ("name", "month", "kana", "romaji"),
    "day_words": ("word", "kind", "days", "kana", "romaji"),
    "festivals": ("name", "month", "day", "kana", "romaji"),
    "solar_terms": ("term", "first", "last", "kana", "romaji"),
    "date_words": ("word", "kind", "value", "kana", "romaji"),
}


def plain(romaji: str) -> str:
    """Return letters without macrons, marks and doubled vowels, to compare two spellings."""
    for long, short in zip("āīūēōĀĪŪĒŌ", "aiueoaiueo", strict=True):
        romaji = romaji.replace(long, short)
    letters = re.sub(r"[^a-z]", "", romaji.lower())
    return re.sub(r"u+", "u", re.sub(r"o[ou]*", "o", letters)).replace("tch", "cch")


@pytest.mark.parametrize("name", WITH_READINGS)
def test_the_letters_of_a_table_fit_its_kana(name: str) -> None:
    for cells, place in tables.rows(name, WITH_READINGS[name]):
        kana, romaji = cells[-2], cells[-1].partition("; ")[0]
        expected = plain(jaconv.kana2alphabet(kana))
        if kana.endswith("は"):
            expected = expected.removesuffix("ha") + "wa"
        assert plain(romaji) == expected, place


def test_the_letters_of_the_eras_fit_their_kana() -> None:
    for era in eras.by_name().values():
        assert plain(era.romaji) == plain(jaconv.kana2alphabet(era.kana)), era.name


def test_months_and_days_of_the_tables_exist() -> None:
    for (_, month, _, _), place in tables.rows("month_names", WITH_READINGS["month_names"]):
        assert 1 <= int(month) <= 12, place
    for (_, month, day, _, _), place in tables.rows("festivals", WITH_READINGS["festivals"]):
        assert lunisolar.to_gregorian(
            lunisolar.LunarDay(1853, int(month), False, min(int(day), 29))
        ), place
    for (_, first, last, _, _), place in tables.rows("solar_terms", WITH_READINGS["solar_terms"]):
        assert date.fromisoformat(f"1853-{first}") < date.fromisoformat(f"1853-{last}"), place


def test_every_word_is_found_as_itself() -> None:
    for sign in signs():
        for word in words_from(sign):
            (token,) = scan(word.text)
            assert token.text == word.text


def test_the_signs_of_the_cycle_are_complete_and_in_order() -> None:
    signs = cycle.signs()
    assert "".join(s for s in signs if signs[s].kind == "stem") == cycle.STEMS
    assert "".join(s for s in signs if signs[s].kind == "branch") == cycle.BRANCHES
    assert [signs[s].place for s in cycle.BRANCHES] == list(range(12))


def test_look_alikes_are_pairs_of_different_signs() -> None:
    assert all(len(pair) == 2 for pair in lookalikes())


def test_every_year_of_the_months_table_can_be_used() -> None:
    for year in range(lunisolar.FIRST_YEAR, lunisolar.LAST_YEAR + 1):
        assert lunisolar.months_of(year)


@pytest.mark.parametrize(
    "row",
    [
        "1853\t1853-02-30\t\t大小大大大小大小大小小大\t",
        "1853\t1853-02-08\t\t大小大\t",
        "1853\t1853-02-08\tx\t大小大大大小大小大小小大\t",
        "1853\t1853-02-08\t\t大小大大大小大小大小小X\t",
    ],
)
def test_a_bad_row_is_refused_with_its_place(
    row: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    table = tmp_path / "months.tsv"
    table.write_text("year\tnew_year\tleap\tlengths\tdoubtful\n" + row + "\n", "utf-8")
    monkeypatch.setattr(tables, "_user_folders", [])
    tables.add_folder(tmp_path)
    try:
        with pytest.raises(TableError, match=r"months\.tsv, line 2"):
            lunisolar.months_of(1853)
    finally:
        tables._user_folders.clear()
        for forget in tables._forgetters:
            forget()


BAD_ROWS = [
    ("month_names", "name\tmonth\tkana\tromaji", "花月\t13\tかげつ\tkagetsu"),
    ("month_names", "name\tmonth\tkana\tromaji", "\t1\tかげつ\tkagetsu"),
    ("day_words", "word\tkind\tdays\tkana\tromaji", "花日\tpart\tx-y\tかじつ\tkajitsu"),
    ("festivals", "name\tmonth\tday\tkana\tromaji", "花日\t4\t31\tかじつ\tkajitsu"),
    ("solar_terms", "term\tfirst\tlast\tkana\tromaji", "花日\t4-1\t4-3\tかじつ\tkajitsu"),
    ("date_words", "word\tkind\tvalue\tkana\tromaji", "花年\tsame\tyear\tかねん\tkanen"),
    ("date_words", "word\tkind\tvalue\tkana\tromaji", "花齢\tage\tmany\tかれい\tkarei"),
]


@pytest.mark.parametrize(("name", "header", "row"), BAD_ROWS)
def test_a_row_that_cannot_be_reckoned_with_names_its_place(
    name: str, header: str, row: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / f"{name}.tsv").write_text(f"{header}\n{row}\n", encoding="utf-8")
    monkeypatch.setattr(tables, "_user_folders", [])
    tables.add_folder(tmp_path)
    try:
        with pytest.raises(TableError, match=rf"{name}\.tsv, line 2"):
            words_from(row[0])
    finally:
        for forget in tables._forgetters:
            forget()
