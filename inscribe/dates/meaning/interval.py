"""The Gregorian days that enclose a date, as narrowly as what is written allows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import NamedTuple

from inscribe.dates import calendar
from inscribe.dates.calendar import Month
from inscribe.dates.model import DateReading, Part, Precision
from inscribe.dates.written import Expression

FIRST_GREGORIAN_YEAR = 1873
LONGEST = 30  # days of a lunisolar month
LARGEST_DAY = 31  # of the Gregorian calendar
LAST_YEAR = 9998  # whose days, and those of the year that follows, have four-figure years


class Interval(NamedTuple):
    """The first and last day, what they are the days of, and what to beware of."""

    first: date | None = None
    last: date | None = None
    precision: Precision = "none"
    day: int | None = None
    impossible: bool = False
    cautions: tuple[str, ...] = ()


def interval_of(reading: DateReading, expression: Expression) -> Interval:
    """Return the days of ``reading``; none where its year is not known or not tabulated."""
    year = reading.year
    if reading.day is not None and reading.day > LARGEST_DAY:
        caution = f"no month has a day {reading.day}"
        whole = interval_of(replace(reading, day=None), expression)
        return whole._replace(impossible=True, cautions=(*whole.cautions, caution))
    if year is None:
        return _without_year(reading, expression)
    if year > LAST_YEAR:
        caution = f"no carving bears a date of the year {year}"
        return Interval(cautions=(caution,))
    if expression.term and reading.day is None:
        return _of_term(year, expression.term, reading.month)
    if year >= FIRST_GREGORIAN_YEAR:
        return _gregorian(reading, expression, year)
    if not calendar.is_tabulated(year):
        caution = "months before 1600 are not tabulated: only the year is given"
        return Interval(precision="year", cautions=(caution,))
    if reading.leap and reading.month is None:
        caution = f"the year {year} had no leap month"
        return _of_year(reading, expression, year)._replace(impossible=True, cautions=(caution,))
    if expression.odd_month:
        return _of_year(reading, expression._replace(months=None), year)
    if reading.month is not None:
        return _of_month(reading, expression, year)
    return _of_year(reading, expression, year)


def _without_year(reading: DateReading, expression: Expression) -> Interval:
    if reading.era is None or expression.number:
        return Interval()
    era = calendar.by_name()[reading.era]
    if expression.stem or expression.branch:
        return Interval()
    first, last = first_day_of(era), last_day_of(era)
    return Interval(first, last, "era")


def first_day_of(era: calendar.Era) -> date | None:
    """Return the Gregorian first day of an era, or None before 1600."""
    year, month, day = era.start
    if year >= FIRST_GREGORIAN_YEAR:
        return date(year, month, day)
    return calendar.to_gregorian(calendar.LunarDay(year, month, False, day))


def last_day_of(era: calendar.Era) -> date | None:
    """Return the day before the next era began, or None before 1600 and for the present era."""
    following = calendar.after(era)
    start = first_day_of(following) if following else None
    return start - timedelta(1) if start else None


def in_force(year: int, days: tuple[date, date] | None) -> Sequence[tuple[calendar.Era, int]]:
    """Return the eras of a year that were in force on any of ``days``, each with its year number.

    Where the days are not known, or no era fits them, all eras of the year are returned.
    """
    named = calendar.of_year(year)
    if days is None:
        return named
    found = [(era, number) for era, number in named if _overlaps(era, days)]
    return found or named


def _overlaps(era: calendar.Era, days: tuple[date, date]) -> bool:
    start, end = first_day_of(era), last_day_of(era)
    return (start is None or start <= days[1]) and (end is None or days[0] <= end)


def _of_term(year: int, term: tuple[str, str], month: int | None) -> Interval:
    """Return the days on which a solar term can fall in the lunisolar year."""
    if year < calendar.FIRST_YEAR:
        return Interval(precision="year")
    spans = []
    for western in (year, year + 1):
        first, last = (date.fromisoformat(f"{western:04}-{day}") for day in term)
        spans.append((first, last))
    if year >= FIRST_GREGORIAN_YEAR or not calendar.is_tabulated(year):
        return Interval(*spans[0], "part of month")
    whole = calendar.days_of(year, month)
    assert whole is not None or month is not None
    if whole is None:
        return Interval(impossible=True)
    for first, last in spans:
        low, high = max(first, whole[0]), min(last, whole[1])
        if low <= high:
            return Interval(low, high, "part of month")
    if month is not None:
        return Interval(*whole, "month", impossible=True)
    caution = "the term does not fall in that lunisolar year"
    return Interval(*whole, "year", impossible=True, cautions=(caution,))


def _gregorian(reading: DateReading, expression: Expression, year: int) -> Interval:
    month, day = reading.month, reading.day
    months = (month, month) if month else expression.months
    if expression.odd_month:
        months = None
    if reading.leap:
        caution = "from 1873 on the calendar is the Gregorian one and has no leap months"
        return Interval(date(year, 1, 1), date(year, 12, 31), "year", None, True, (caution,))
    if months is None:
        first, last = _clamped(reading, date(year, 1, 1), date(year, 12, 31))
        return Interval(first, last, "year")
    first, last = date(year, months[0], 1), _month_end(year, months[1])
    if month is None:
        return Interval(first, last, "season")
    pseudo = Month(year, month, False, first, last.day, False)
    return _within(pseudo, day, expression.days)


def _month_end(year: int, month: int) -> date:
    following = date(year + month // 12, month % 12 + 1, 1)
    return following - timedelta(1)


def _of_month(reading: DateReading, expression: Expression, year: int) -> Interval:
    assert reading.month is not None
    month = calendar.month_of(year, reading.month, reading.leap)
    if month is None:
        month = calendar.month_of(year, reading.month)
        plain = _within(month, reading.day, expression.days) if month else Interval()
        name = f"閏{reading.month}"
        there = calendar.leap_month(year)
        had = f"its leap month was leap month {there}" if there else "it had no leap month"
        caution = f"the year {year} had no leap month {reading.month} ({name}): {had}"
        return plain._replace(impossible=True, cautions=(caution, *plain.cautions))
    return _within(month, reading.day, expression.days)


def _within(month: Month, day: int | None, days: tuple[int, int] | None) -> Interval:
    """Return the days of a month, of a part of it, or the one day."""
    if day is not None:
        return _one_day(month, day)
    cautions = _doubts_of(month)
    if days is None:
        return Interval(month.first_day, month.last_day, "month", cautions=cautions)
    if days[0] == days[1]:  # the month's last day, whatever its number
        return Interval(month.last_day, month.last_day, "day", month.length, False, cautions)
    first = month.first_day + timedelta(days[0] - 1)
    last = month.first_day + timedelta(min(days[1], month.length) - 1)
    return Interval(first, last, "part of month", cautions=cautions)


def _one_day(month: Month, day: int) -> Interval:
    cautions = _doubts_of(month)
    if day <= month.length:
        found = month.first_day + timedelta(day - 1)
        return Interval(found, found, "day", day, cautions=cautions)
    if day == month.length + 1 == LONGEST and calendar.may_be_longer(month):
        caution = "by computation the month had 29 days; it may have had 30"
        return Interval(month.last_day, month.last_day, "day", day, cautions=(*cautions, caution))
    caution = f"the month had only {month.length} days"
    return Interval(month.first_day, month.last_day, "month", day, True, (*cautions, caution))


def _doubts_of(month: Month) -> tuple[str, ...]:
    if not month.doubtful:
        return ()
    return (
        "the month's first day is computed and may be a day off: the new moon fell close to the "
        "change of day",
    )


def _of_year(reading: DateReading, expression: Expression, year: int) -> Interval:
    months = expression.months
    days = calendar.days_of(year, *(months or (None, None)))
    assert days is not None
    first, last = _clamped(reading, *days)
    return Interval(first, last, "season" if months else "year")


def _clamped(reading: DateReading, first: date, last: date) -> tuple[date, date]:
    """Return the part of a year in which its era was in force, or all of it where none was."""
    era = calendar.by_name().get(reading.era or "")
    if era is None:
        return first, last
    start, end = first_day_of(era), last_day_of(era)
    low = max(first, start) if start else first
    high = min(last, end) if end else last
    return (low, high) if low <= high else (first, last)


def with_day_of_pair(reading: DateReading, expression: Expression) -> DateReading:
    """Set the day that a sexagenary day names within its month, or check the day written."""
    branch, year = expression.day_branch, reading.year
    if branch is None or year is None or reading.month is None:
        return reading
    month = calendar.month_of(year, reading.month, reading.leap)
    if month is None:
        return reading
    names = [
        calendar.pair(calendar.day_index(month.first_day) + day) for day in range(month.length)
    ]
    found = [day for day, name in enumerate(names, 1) if name.endswith(branch)]
    if expression.day_turn and found:
        return replace(reading, day=found[expression.day_turn - 1])
    if expression.day_stem is None:
        listed = ", ".join(str(day) for day in found)
        caution = f"the days of {branch} in that month were {listed}, by computation"
        return replace(reading, cautions=(*reading.cautions, caution))
    written = expression.day_stem + branch
    found = [day for day in found if names[day - 1] == written]
    if reading.day in found or (reading.day is None and found):
        return replace(reading, day=found[0])
    there = f"it was day {found[0]}" if found else "the month had no such day"
    if reading.day is not None and reading.day <= month.length:
        there = f"that day was {names[reading.day - 1]}"
    caution = f"the day is called {written}, but {there}, by computation"
    conflicts: tuple[Part, ...] = (*reading.conflicts, "day")
    cautions = (*reading.cautions, caution)
    return replace(reading, agreement="conflict", conflicts=conflicts, cautions=cautions)
