"""Why a month or a day may not agree with the rest of its date, and what to read instead."""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.dates import calendar
from inscribe.dates.meaning.mistakes import pair_weight, year_name
from inscribe.dates.model import SEASONS, DateReading, Explanation
from inscribe.dates.written import Expression, as_kanji, value_of


def of_the_leap_month(reading: DateReading) -> Iterator[Explanation]:
    """The year had no such leap month."""
    year, month = reading.year, reading.month
    if not reading.leap or year is None or month is None:
        return
    if not calendar.is_tabulated(year) and year <= calendar.LAST_YEAR:
        return
    there = calendar.leap_month(year) if calendar.is_tabulated(year) else None
    if there == month:
        return
    written = f"閏{as_kanji(month)}月"
    if there is not None:
        read = f"閏{as_kanji(there)}月"
        text = f"read {read} for {written}: the leap month of {year} stood after month {there}"
        weight = 0.6 if abs(there - month) == 1 else 0.45
        yield Explanation("leap month", written, read, year, weight, text)
    read = f"{as_kanji(month)}月"
    text = f"read {read} for {written}: {year} had no leap month {month}"
    yield Explanation("leap month", written, read, year, 0.4, text)
    for near in range(year - 10, year + 11):
        if near != year and calendar.is_tabulated(near) and calendar.leap_month(near) == month:
            era, number = calendar.of_year(near)[-1]
            name = year_name(era, number)
            weight = 0.38 - abs(near - year) / 100
            text = f"{written} occurred in {name} ({near})"
            yield Explanation("leap month", str(year), name, near, weight, text)


def of_the_season(reading: DateReading) -> Iterator[Explanation]:
    """The month does not lie in the season written beside it."""
    season, month = reading.season, reading.month
    if not season or month is None or season[-1] not in SEASONS:
        return
    right = SEASONS[(month - 1) // 3]
    if right == season[-1]:
        return
    text = f"read {right} for {season}: month {month} lies in {right}"
    yield Explanation("season", season, right, reading.year, 0.5, text)
    turn = SEASONS.index(season[-1]) * 3 + (month - 1) % 3 + 1
    read = f"{as_kanji(turn)}月"
    text = f"read {read} for {as_kanji(month)}月: it has the same place in {season[-1]}"
    yield Explanation("month", f"{as_kanji(month)}月", read, reading.year, 0.35, text)


def of_the_odd_month(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """A number above 12 stands before 月: one sign too many, or a year's number runs into it."""
    written = expression.odd_month
    if not written:
        return
    for lost in range(len(written)):
        left = written[:lost] + written[lost + 1 :]
        month = value_of(left)
        if month and month <= 12:
            text = f"read {left}月 for {written}月: one sign too many"
            yield Explanation("month", f"{written}月", f"{left}月", reading.year, 0.5, text)
    text = f"no month has the number {value_of(written)}: look at {written} again"
    yield Explanation("month", f"{written}月", "", reading.year, 0.1, text)


def of_the_misplaced(
    reading: DateReading, word: str, month: int, day: int | None
) -> Iterator[Explanation]:
    """A festival, or a month's name, stands beside another month or another day."""
    year, right = reading.year, f"{as_kanji(month)}月"
    if reading.month is not None and reading.month != month:
        written = f"{as_kanji(reading.month)}月"
        text = f"read {right} for {written}: {word} is of month {month}"
        yield Explanation("month", written, right, year, 0.5, text)
    elif reading.day is not None and day is not None:
        written, right = f"{as_kanji(reading.day)}日", f"{as_kanji(day)}日"
        text = f"read {right} for {written}: {word} is day {day}"
        yield Explanation("day", written, right, year, 0.5, text)
    text = f"look at {word} again: another word may stand there"
    yield Explanation("day", word, "", year, 0.3, text)


def of_the_day(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The month had no such day, or the day had another sexagenary name."""
    day, written, year = reading.day or expression.day, reading.day_sexagenary, reading.year
    if day is None and not written:
        where = "that year" if reading.month is None else f"month {reading.month} of that year"
        text = f"{reading.day_word} does not fall in {where}"
        yield Explanation("day", reading.day_word or "", "", year, 0.3, text)
    month = None
    if year is not None and reading.month is not None:
        month = calendar.month_of(year, reading.month, reading.leap)
    if day is not None and (month is None or day > month.length):
        yield from _of_the_number(day, month.length if month else 31, year)
    elif day is not None and written and month:
        right = calendar.pair(calendar.day_index(month.first_day) + day - 1)
        wrong = [(a, b) for a, b in zip(written, right, strict=True) if a != b]
        weight, _ = pair_weight(wrong, 2)
        text = f"read {right} for {written}: day {day} of that month was {right}"
        yield Explanation("sexagenary day", written, right, year, weight, text)
    if written and month:
        yield from _months_with_day(reading, written)


def _of_the_number(day: int, length: int, year: int | None) -> Iterator[Explanation]:
    """Return the days left when one sign of the number is dropped, and the month's last."""
    written = as_kanji(day)
    for lost in range(len(written)):
        left = written[:lost] + written[lost + 1 :]
        if (number := value_of(left)) and number <= length:
            text = f"read {left}日 for {written}日: one sign too many"
            yield Explanation("day", written, left, year, 0.45, text)
    text = f"the month ended before day {day}: look at the number again"
    yield Explanation("day", written, "", year, 0.3, text)


def _months_with_day(reading: DateReading, written: str) -> Iterator[Explanation]:
    """Another month of the year had a day of that name (and number)."""
    assert reading.year is not None
    for month in calendar.months_of(reading.year):
        index = calendar.day_index(month.first_day)
        days = [
            day for day in range(1, month.length + 1) if calendar.pair(index + day - 1) == written
        ]
        if not days or reading.day not in (None, days[0]):
            continue
        name = f"{'閏' if month.leap else ''}{as_kanji(month.number)}月"
        weight = 0.4 - abs(month.number - (reading.month or 0)) / 50
        text = f"{written} was day {days[0]} of {name} in that year"
        yield Explanation("month", str(reading.month), name, reading.year, weight, text)
