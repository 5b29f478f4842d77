"""A day of the Gregorian calendar as a carver would have dated it."""

from __future__ import annotations

from datetime import date

from inscribe.dates import calendar
from inscribe.dates.meaning.interval import FIRST_GREGORIAN_YEAR, in_force
from inscribe.dates.meaning.mistakes import year_name
from inscribe.dates.written import as_kanji


def as_carved(day: date) -> str:
    """Return ``day`` by era, sexagenary year, month and day, in full.

    Raises:
        InputError: the day lies before 1600-02-15, where no months are tabulated.

    >>> as_carved(date(1853, 7, 8)), as_carved(date(1833, 1, 1))
    ('嘉永六年癸丑六月三日', '天保三年壬辰閏十一月十一日')
    """
    if day.year >= FIRST_GREGORIAN_YEAR:
        lunar = calendar.LunarDay(day.year, day.month, False, day.day)
    else:
        lunar = calendar.of_day(day)
    era, number = in_force(lunar.year, (day, day))[-1]
    pair = calendar.pair_of_year(lunar.year)
    month = f"{'閏' if lunar.leap else ''}{as_kanji(lunar.month)}月"
    return f"{year_name(era, number)}{pair}{month}{as_kanji(lunar.day)}日"
