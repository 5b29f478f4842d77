"""The account a cataloguer reads: what was made of a date, in sentences."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from inscribe import notebook
from inscribe.dates import calendar
from inscribe.dates.meaning.interval import first_day_of
from inscribe.dates.model import CandidateYear, DateReading
from inscribe.dates.written import Expression

MOST_CANDIDATES = 12
LAST_DAY = "30"  # in the tables
_LUNISOLAR_UNTIL = 1872
_OPEN_END = 9999


def account_of(
    reading: DateReading, expression: Expression, between: tuple[int, int] | None
) -> str:
    """Return why the date means what it is said to mean, in a few sentences."""
    sentences = [
        *_of_the_year(reading, expression, between),
        *_of_the_agreement(reading, expression),
        *_of_the_names(reading),
        *_of_the_days(reading),
        *_of_the_age(reading),
        *reading.cautions,
    ]
    return "; ".join(sentences)


def suggestions_of(reading: DateReading) -> tuple[str, ...]:
    """Return what the cataloguer may consider: ways out of a conflict, or the candidates."""
    found = [each.text for each in reading.explanations]
    if len(reading.candidates) > 1 and "unknown_era" not in {p.kind for p in reading.pieces}:
        found += [candidate_text(each) for each in reading.candidates]
    found += _of_the_era_change(reading)
    return tuple(found)


def candidate_text(candidate: CandidateYear) -> str:
    """Return a candidate as ``1853 (Kaei 6)``."""
    names = " / ".join(f"{romaji} {number}" for _, romaji, number in candidate.eras)
    return f"{candidate.year} ({names})" if names else str(candidate.year)


def _of_the_year(
    reading: DateReading, expression: Expression, between: tuple[int, int] | None
) -> Iterator[str]:
    era = calendar.by_name().get(reading.era or "")
    year = reading.year
    if era and expression.number and year is not None:
        named = f"{era.romaji} {expression.number}"
        first = "" if expression.number == 1 else f"{era.romaji} 1 began in {era.first}, so "
        yield f"{first}{named} is {year}"
    elif expression.epoch and year is not None:
        yield f"counted from 660 BC, year {expression.number} is {year}"
    elif expression.same and year is not None:
        yield f"the year ({year}) is taken from the date before it"
    where = f"in {era.romaji}" if expression.era and era else _range_text(between)
    if any(piece.kind == "unknown_era" for piece in reading.pieces):
        return
    if len(reading.candidates) == 1 and year is not None:
        yield f"{year} is the only year {where} that fits {_written_year(expression)}"
    elif len(reading.candidates) > 1:
        number = len(reading.candidates)
        narrow = "" if expression.era or between else ", narrow them with --between"
        yield f"{_written_year(expression)} fits {notebook.counted(number, 'year')} {where}{narrow}"
    if between and year is not None and not between[0] <= year <= between[1]:
        yield f"{year} lies outside {between[0]}-{between[1]}"
    if expression.era_part and era:
        end = f"to {era.last}" if era.last < _OPEN_END else "on"
        yield f"{era.romaji} was counted from {era.first} {end}"
    if era and era.note:
        yield f"{era.romaji}: {era.note}"


def _written_year(expression: Expression) -> str:
    """Return what is written of the year, in so far as it narrows it."""
    kinds = ("era", "damaged_era", "unknown_era", "year_number", "damaged_number", "unread", "year")
    pair = ("stem", "branch", "animal", "cycle_like")
    named = "".join(
        piece.text
        for piece in expression.pieces
        if piece.kind.endswith(pair) or piece.kind in kinds
    )
    return named or "what is written"


def _range_text(between: tuple[int, int] | None) -> str:
    return f"between {between[0]} and {between[1]}" if between else "between 1600 and 1912"


def _of_the_agreement(reading: DateReading, expression: Expression) -> Iterator[str]:
    era, year = calendar.by_name().get(expression.era or ""), reading.year
    if era and year is not None and expression.number and not era.has(year):
        yield f"{era.romaji} had only {notebook.counted(era.years, 'year')}"
    if era and expression.numbers and not reading.candidates:
        years = notebook.counted(era.years, "year")
        yield f"{era.romaji} had only {years}, none of them {expression.number_text}"
    written = reading.sexagenary or reading.zodiac or expression.stem
    if written is None or year is None:
        if expression.stem and expression.branch:
            if calendar.index_of(expression.stem, expression.branch) is None:
                yield f"{written} is no pair of the sexagenary cycle"
            elif era and not reading.candidates:
                yield f"no year of {era.romaji} was {written}"
        return
    right = calendar.pair_of_year(year)
    if expression.number or expression.same:
        verb = "is" if written in right else "is not"
        yield f"{year} {verb} {written}" + ("" if verb == "is" else f" but {right}")


def _of_the_names(reading: DateReading) -> Iterator[str]:
    """Say which month or day a name stands for."""
    for piece in reading.pieces:
        if piece.kind == "month":
            yield f"{piece.text} is month {piece.value}"
        elif piece.kind == "festival":
            month, _, day = piece.value.partition("-")
            last = "its last day" if day == LAST_DAY else f"day {day}"
            yield f"{piece.text} is month {month}, {last}"
        elif piece.kind == "day" and piece.value and "-" not in piece.value:
            last = "the last day" if piece.value == LAST_DAY else f"day {piece.value}"
            yield f"{piece.text} is {last} of the month"


def _of_the_days(reading: DateReading) -> Iterator[str]:
    first, last, year = reading.first_day, reading.last_day, reading.year
    if year is None or first is None or last is None:
        return
    if year <= _LUNISOLAR_UNTIL and reading.month is not None:
        name = f"leap month {reading.month}" if reading.leap else f"month {reading.month}"
        if first.year > year:
            yield f"{name} of that year fell in {first.year}"
        elif last.year > year:
            yield f"{name} of that year ran over into {last.year}"


def _of_the_age(reading: DateReading) -> Iterator[str]:
    age = reading.age
    if age is None:
        return
    about = "about " if age.about else ""
    if reading.birth_year is not None:
        counted = "by birthdays" if age.western else "by calendar years, one at birth"
        yield f"aged {about}{age.years} ({counted}): born {about}{reading.birth_year}"
    elif len(reading.candidates) > 1:
        births = ", ".join(str(each.birth_year) for each in reading.candidates[:MOST_CANDIDATES])
        yield f"aged {about}{age.years}: born {births} respectively"
    else:
        yield f"aged {about}{age.years}, counted by calendar years; no year of birth without a date"


def _of_the_era_change(reading: DateReading) -> list[str]:
    """Return a remark where the days lie before their era began or after it ended."""
    era = calendar.by_name().get(reading.era or "")
    start = first_day_of(era) if era else None
    following = calendar.after(era) if era else None
    end = first_day_of(following) if following else None
    if era is None or reading.month is None or reading.year is None:
        return []
    if start and reading.last_day and reading.last_day < start:
        return [
            f"{era.romaji} was proclaimed only on {_days(start)}: written later than it says, "
            f"or {_other(reading, era)}"
        ]
    if (
        following
        and end
        and reading.first_day
        and reading.first_day >= end
        and era.has(reading.year)
    ):
        return [
            f"{following.romaji} had been proclaimed on {_days(end)}: the news had not arrived, "
            "or the era is wrong"
        ]
    return []


def _other(reading: DateReading, era: calendar.Era) -> str:
    assert reading.year is not None
    others = [(e, n) for e, n in calendar.of_year(reading.year) if e.start < era.start]
    names = " or ".join(f"{e.romaji} {n}" for e, n in others)
    return f"{names} was meant" if names else "another era was meant"


def _days(day: date) -> str:
    if calendar.FIRST_YEAR < day.year <= calendar.LAST_YEAR:
        lunar = calendar.of_day(day)
        leap = "leap month" if lunar.leap else "month"
        return f"{day.isoformat()} ({leap} {lunar.month}, day {lunar.day})"
    return day.isoformat()
