"""What is said of days, months and numerals: counted from sources outside or by hand."""

from __future__ import annotations

import re
import unicodedata

import pytest

from inscribe.dates import find, resolve
from inscribe.dates.written.numerals import value_of


@pytest.mark.parametrize("sign", "一二三四五六七八九十百千壱壹弐貳参參肆伍陸柒漆捌玖拾佰廿卅")
def test_a_numeral_is_worth_what_unicode_says(sign: str) -> None:
    assert value_of(sign) == {"漆": 7}.get(sign, int(unicodedata.numeric(sign, 0)))


# 廾, 卄, 念, 陌 and 阡 are no numerals in Unicode: common practice, from memory.
@pytest.mark.parametrize(
    ("sign", "worth"),
    [("廾", 20), ("卄", 20), ("念", 20), ("丗", 30), ("卌", 40), ("陌", 100), ("阡", 1000)],
)
def test_a_sign_for_tens_or_more_is_worth_them(sign: str, worth: int) -> None:
    assert value_of(sign) == worth


@pytest.mark.parametrize("sign", "肆柒捌玖")
def test_a_formal_numeral_counts_years(sign: str) -> None:
    assert resolve(f"天保{sign}年").year_of_era == int(unicodedata.numeric(sign))


@pytest.mark.parametrize(
    ("pair", "said"), [("甲申", "it was day 9"), ("甲子", "the month had no such day")]
)
def test_the_pair_of_a_day_that_the_month_had_not(pair: str, said: str) -> None:
    found = resolve(f"嘉永六年二月三十日{pair}")
    assert f"the day is called {pair}, but {said}, by computation" in found.why


@pytest.mark.parametrize(("day", "agrees"), [("二", True), ("三", False)])
def test_the_last_month_of_the_old_calendar_had_two_days(day: str, agrees: bool) -> None:
    found = resolve(f"明治五年十二月{day}日")
    assert ("the month had only 2 days" not in found.why) == agrees
    assert (found.agreement == "conflict") != agrees


@pytest.mark.parametrize(
    ("carved", "month", "year"),
    [
        ("嘉永六年八月三日翌月五日", 9, 1853),
        ("嘉永六年八月三日同月五日", 8, 1853),
        ("嘉永六年十二月三日翌月五日", 1, 1854),
    ],
)
def test_a_month_is_told_from_the_date_before(carved: str, month: int, year: int) -> None:
    _, second = find(carved)
    assert (second.year, second.month, second.day) == (year, month, 5)


def test_a_number_before_a_month_is_no_age() -> None:
    for carved in ("行年三月嶺暁", "時年三月"):
        found = resolve(carved)
        assert (found.age, found.month) == (None, 3)


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        (
            "天保三年癸巳",
            "癸巳 is 安永二年 (1773): the sexagenary year is right and the era year is not",
        ),
        (
            "嘉永六年甲寅",
            "甲寅 is 寛政六年 (1794): the sexagenary year is right and the era year is not,"
            " the same year of another era",
        ),
    ],
)
def test_the_year_of_another_era_that_a_pair_may_mean(carved: str, said: str) -> None:
    assert said in resolve(carved).suggestions


def test_a_notebook_shows_what_was_resolved() -> None:
    found = resolve("嘉永六年甲寅")
    shown = re.sub("<[^>]+>", "|", found._repr_html_())
    for name, value in (
        ("as carved", "嘉永六年甲寅"),
        ("reading", "Kaei rokunen kinoe-tora"),
        ("year", "1853"),
        ("days", "1853-02-08 to 1854-01-28"),
        ("agreement", "conflict"),
        ("consider", "; ".join(found.suggestions)),
    ):
        assert re.search(rf"\|{name}\|+\s*\|*{re.escape(value)}\|", shown), (name, shown)
