"""The tables of the date words: every row can be used, and its letters fit its kana."""

from __future__ import annotations

import re
from datetime import date

import jaconv
import pytest

from inscribe import tables
from inscribe.dates.calendar import cycle, eras, lunisolar
from inscribe.dates.written.lookalikes import lookalikes
from inscribe.dates.written.scanning import scan
from inscribe.dates.written.vocabulary import signs, words_from

WITH_READINGS = ("month_names", "day_words", "festivals", "solar_terms", "date_words")


def plain(romaji: str) -> str:
    """Return letters without macrons, marks and doubled vowels, to compare two spellings."""
    for long, short in zip("āīūēōĀĪŪĒŌ", "aiueoaiueo", strict=True):
        romaji = romaji.replace(long, short)
    letters = re.sub(r"[^a-z]", "", romaji.lower())
    return re.sub(r"u+", "u", re.sub(r"o[ou]*", "o", letters)).replace("tch", "cch")


@pytest.mark.parametrize("name", WITH_READINGS)
def test_the_letters_of_a_table_fit_its_kana(name: str) -> None:
    for row in tables.rows(name):
        kana, romaji = row["kana"], row["romaji"].partition(";")[0]
        expected = plain(jaconv.kana2alphabet(kana))
        if kana.endswith("は"):
            expected = expected.removesuffix("ha") + "wa"
        assert plain(romaji) == expected, row


def test_the_letters_of_the_eras_fit_their_kana() -> None:
    for era in eras.by_name().values():
        assert plain(era.romaji) == plain(jaconv.kana2alphabet(era.kana)), era.name


def test_days_of_the_tables_exist() -> None:
    for row in tables.rows("festivals"):
        month, day = int(row["month"]), min(int(row["day"]), 29)
        assert lunisolar.to_gregorian(lunisolar.LunarDay(1853, month, False, day)), row
    for row in tables.rows("solar_terms"):
        first, last = (date.fromisoformat(f"1853-{row[end]}") for end in ("earliest", "latest"))
        assert first < last, row


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
