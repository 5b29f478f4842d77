"""The lunisolar calendar 1600-1872, day by day, from glossary/dates/months.tsv.

>>> days_of(1854, 12)
(datetime.date(1855, 1, 18), datetime.date(1855, 2, 16))
>>> of_day(date(1853, 7, 8))
LunarDay(year=1853, month=6, leap=False, day=3)
"""

from __future__ import annotations

from bisect import bisect_right
from datetime import date, timedelta
from typing import NamedTuple

from inscribe import tables
from inscribe.errors import InputError

FIRST_YEAR, LAST_YEAR = 1600, 1872
_LENGTHS = {"大": 30, "小": 29, "二": 2}


class LunarDay(NamedTuple):
    """A day of the lunisolar calendar."""

    year: int
    month: int
    leap: bool
    day: int


class Month(NamedTuple):
    """One month: its first day, its length, and whether that first day may be a day off."""

    year: int
    number: int
    leap: bool
    first_day: date
    length: int
    doubtful: bool

    @property
    def last_day(self) -> date:
        """Its last day."""
        return self.first_day + timedelta(self.length - 1)


@tables.cached()
def _rows() -> dict[int, tables.Row]:
    found: dict[int, tables.Row] = {}
    for row in tables.rows("months"):
        found.setdefault(int(row["year"]), row)
    return found


@tables.cached()
def months_of(year: int) -> tuple[Month, ...]:
    """Return the months of a lunisolar year in order; none if it is not tabulated."""
    row = _rows().get(year)
    if row is None:
        return ()
    names = [(number, False) for number in range(1, 13)]
    if leap := int(row["leap"] or 0):
        names.insert(leap, (leap, True))
    first, unsure = date.fromisoformat(row["new_year"]), tables.listed(row["doubtful"])
    months = []
    for (number, is_leap), sign in zip(names, row["lengths"], strict=True):
        length = _LENGTHS[sign]
        doubt = f"閏{number}" if is_leap else str(number)
        months.append(Month(year, number, is_leap, first, length, doubt in unsure))
        first += timedelta(length)
    return tuple(months)


@tables.cached()
def _in_order() -> tuple[tuple[Month, ...], tuple[date, ...]]:
    months = tuple(month for year in sorted(_rows()) for month in months_of(year))
    return months, tuple(month.first_day for month in months)


def month_of(year: int, number: int, leap: bool = False) -> Month | None:
    """Return the month, or None where there is none of that name or it is not tabulated."""
    wanted = (number, leap)
    return next((m for m in months_of(year) if (m.number, m.leap) == wanted), None)


def may_be_longer(month: Month) -> bool:
    """Return whether a month of 29 days may have had 30: a first day at either end is doubtful."""
    months, starts = _in_order()
    following = bisect_right(starts, month.first_day)
    return month.doubtful or (following < len(months) and months[following].doubtful)


def leap_month(year: int) -> int | None:
    """Return the number of the leap month of ``year``, or None if it has none."""
    return next((month.number for month in months_of(year) if month.leap), None)


def is_tabulated(year: int) -> bool:
    """Return whether the months of the lunisolar ``year`` are known."""
    return FIRST_YEAR <= year <= LAST_YEAR and year in _rows()


def days_of(
    year: int, first: int | None = None, last: int | None = None, leap: bool = False
) -> tuple[date, date] | None:
    """Return the Gregorian days that enclose the year, or its months ``first`` to ``last``.

    A run of several months includes the leap months between them.
    """
    if not is_tabulated(year):
        return None
    months = months_of(year)
    if first is not None:
        last = first if last is None else last
        if first == last:
            months = tuple(m for m in months if m.number == first and m.leap == leap)
        else:
            months = tuple(m for m in months if first <= m.number <= last)
    return (months[0].first_day, months[-1].last_day) if months else None


def to_gregorian(day: LunarDay) -> date | None:
    """Return the Gregorian date of a lunisolar day, or None if there is no such day."""
    month = month_of(day.year, day.month, day.leap)
    if month is None or not 1 <= day.day <= month.length:
        return None
    return month.first_day + timedelta(day.day - 1)


def of_day(day: date) -> LunarDay:
    """Return the lunisolar day of a Gregorian date from 1600-02-15 to 1872-12-31.

    Raises:
        InputError: the date lies outside the tabulated years.
    """
    months, starts = _in_order()
    index = bisect_right(starts, day) - 1
    if index < 0 or day > months[-1].last_day:
        span = f"{months[0].first_day} to {months[-1].last_day}"
        raise InputError(f"{day} lies outside the tabulated calendar", hint=f"it covers {span}")
    month = months[index]
    return LunarDay(month.year, month.number, month.leap, (day - month.first_day).days + 1)
