"""A date as plain lines for a terminal, a pipe or a file."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from datetime import date

from inscribe.dates import DateReading
from inscribe.dates.meaning import Comparison, words
from inscribe.report.terminal.wrapping import fitted

_LABEL = 12
MOST = 12
_MONTHS = {"春": "spring", "夏": "summer", "秋": "autumn", "冬": "winter"}


def date_as_text(reading: DateReading) -> str:
    """Return what a date says and how it was found, a fact a line."""
    return "".join(f"{line}\n" for line in _lines(reading))


def comparison_as_text(comparison: Comparison) -> str:
    """Return several dates of one object, and then what they say together."""
    parts = [date_as_text(reading) for reading in comparison.readings]
    lines = [_fact("together", statement) for statement in comparison.statements]
    if comparison.not_after:
        lines.append(_fact("not after", f"{comparison.not_after} (the earliest inscription)"))
    return "\n".join([*parts, "".join(f"{line}\n" for line in lines)])


def _lines(reading: DateReading) -> Iterator[str]:
    yield _fact("as carved", reading.text)
    yield _fact("reading", " ".join(word.romaji for word in words(reading)))
    if reading.year is not None:
        yield _fact("year", f"{reading.year}{_in_era(reading)}{_next_year(reading)}")
    if month := _month(reading):
        yield _fact("month", month)
    if reading.day is not None or reading.day_word:
        parts = (str(reading.day) if reading.day is not None else "", reading.day_word or "")
        yield _fact("day", " ".join(part for part in parts if part))
    if reading.first_day and reading.last_day:
        yield _fact("days", _span(reading.first_day, reading.last_day))
    if reading.age:
        yield _fact("age", _age(reading))
    yield _fact("agreement", reading.agreement)
    yield _fact("why", reading.why)
    yield from _numbered("consider", reading.suggestions)
    if len(reading.suggestions) > MOST:
        yield _fact("", f"and {len(reading.suggestions) - MOST} more")


def _fact(label: str, text: str, indent: int = 0) -> str:
    safe = "".join(sign for sign in text if unicodedata.category(sign)[0] != "C")
    return fitted(f"{label:<{_LABEL}}{safe}".rstrip(), _LABEL + indent)


def _numbered(label: str, texts: Sequence[str]) -> Iterator[str]:
    for number, text in enumerate(texts[:MOST], 1):
        yield _fact(label if number == 1 else "", f"{number}. {text}", indent=3)


def _in_era(reading: DateReading) -> str:
    if not reading.era_romaji or not reading.year_of_era:
        return ""
    return f" ({reading.era_romaji} {reading.year_of_era}, {reading.era})"


def _next_year(reading: DateReading) -> str:
    """Say where the days lie in the western year after the one the Japanese year began in."""
    first, year = reading.first_day, reading.year
    return f"; the days lie in {first.year}" if first and year and first.year > year else ""


def _month(reading: DateReading) -> str:
    if reading.month is None:
        return _MONTHS.get(reading.season or "", reading.season or "")
    leap = "leap " if reading.leap else ""
    name = f" ({reading.month_name})" if reading.month_name else ""
    return f"{leap}{reading.month}{name}"


def _span(first: date, last: date) -> str:
    calendar = "in the Gregorian calendar"
    return f"{first} {calendar}" if first == last else f"{first} to {last} {calendar}"


def _age(reading: DateReading) -> str:
    assert reading.age is not None
    about = "about " if reading.age.about else ""
    born = f", born {about}{reading.birth_year}" if reading.birth_year is not None else ""
    return f"{about}{reading.age.years}{born}"
