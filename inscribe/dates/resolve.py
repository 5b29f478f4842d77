"""From what is written to what it means: the year, the days, and whether the parts agree."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from inscribe.dates import calendar, cycle, eras
from inscribe.dates.candidates import candidates_of
from inscribe.dates.conflict import explanations_of
from inscribe.dates.expression import Expression
from inscribe.dates.interval import day_of_pair, interval_of
from inscribe.dates.model import DateReading, Precision

Between = tuple[int, int]
DEFAULT_RANGE: Between = (1600, 1912)
FIRST_GREGORIAN_YEAR = 1873


def resolved(
    expression: Expression, text: str, between: Between | None, before: DateReading | None = None
) -> DateReading:
    """Return what ``expression`` (found in ``text``) means.

    ``between`` narrows the years a sexagenary year without an era may mean (western years, both
    included); ``before`` is the date that "the same year" refers to.
    """
    reading = _as_written(expression, text)
    if expression.same:
        reading = _with_reference(reading, expression, before)
    reading = _with_year(reading, expression, between or DEFAULT_RANGE)
    reading = _with_month(reading, expression)
    reading = _with_days(reading, expression)
    reading = _with_birth(reading)
    reading = _with_explanations(reading, expression, between)
    return _with_words(reading, expression, between)


def _as_written(expression: Expression, text: str) -> DateReading:
    era = eras.by_name().get(expression.era or "")
    first, last = expression.first, expression.last
    months = expression.months
    single = months[0] if months and months[0] == months[1] else None
    return DateReading(
        text=text[first : last + 1],
        era=era.name if era else None,
        era_romaji=era.romaji if era else None,
        year_of_era=expression.number if era else None,
        sexagenary=_pair_as_written(expression.stem, expression.branch),
        month=single,
        leap=expression.leap,
        day=expression.day,
        day_word=expression.day_word,
        first=first,
        last=last,
        zodiac=expression.branch if expression.stem is None else None,
        season=expression.season,
        month_name=expression.month_word,
        day_sexagenary=_pair_as_written(expression.day_stem, expression.day_branch),
        age=expression.age,
        sure=expression.sure,
        pieces=expression.pieces,
    )


def _pair_as_written(stem: str | None, branch: str | None) -> str | None:
    return stem + branch if stem and branch else None


def _with_reference(
    reading: DateReading, expression: Expression, before: DateReading | None
) -> DateReading:
    """Take over the year (and month) that 同年, 同月, 翌年 refer to."""
    if before is None or before.year is None:
        caution = "it refers to a date named before it, and none is known"
        return replace(reading, cautions=(*reading.cautions, caution))
    year, month, day, leap = before.year, reading.month, reading.day, reading.leap
    for unit, offset in expression.same:
        if unit == "year":
            year += offset
        else:
            month, leap = month or before.month, leap or (before.leap and offset == 0)
            if unit == "month" and offset and before.month:
                year, month = (
                    year + (before.month + offset - 1) // 12,
                    (before.month + offset - 1) % 12 + 1,
                )
            if unit == "day":
                day = (before.day or 0) + offset if before.day else None
    named = next(((e, n) for e, n in eras.of_year(year) if e.name == before.era), None)
    named = named or next(reversed(eras.of_year(year)), None)
    reading = replace(reading, year=year, month=month, day=day, leap=leap)
    if named and reading.era is None:
        era, number = named
        reading = replace(reading, era=era.name, era_romaji=era.romaji, year_of_era=number)
    return reading


def _with_year(reading: DateReading, expression: Expression, between: Between) -> DateReading:
    """Set the western year and the agreement of era year and sexagenary year."""
    era = eras.by_name().get(expression.era or "")
    if era and expression.number:
        reading = replace(reading, year=era.western(expression.number))
        if not era.has(era.western(expression.number)):
            return replace(reading, agreement="conflict")
    elif expression.epoch is not None and expression.number:
        reading = replace(reading, year=expression.number + expression.epoch)
    if expression.branch is None:
        return reading
    if reading.year is not None:
        return replace(reading, agreement=_agreement(reading.year, expression))
    return _with_candidates(reading, expression, between)


def _agreement(year: int, expression: Expression) -> str:
    branch = expression.branch
    assert branch is not None
    agrees = year in cycle.years_of(expression.stem, branch, year, year)
    return "agrees" if agrees else "conflict"


def _with_candidates(reading: DateReading, expression: Expression, between: Between) -> DateReading:
    """Set the years a sexagenary or zodiac year without a number may mean."""
    found = candidates_of(expression, between)
    impossible = expression.stem is not None and not _pair_exists(expression)
    if expression.era and not expression.number:
        agreement = "agrees" if found else "conflict"
    else:
        agreement = "conflict" if impossible else "unchecked"
    reading = replace(reading, candidates=found, agreement=agreement)
    if len(found) != 1:
        return reading
    only = found[0]
    reading = replace(reading, year=only.year)
    named = next((each for each in only.eras if each[0] == expression.era), None)
    if named is None and len(only.eras) == 1:
        named = only.eras[0]
    if named is None:
        return reading
    era, romaji, number = named
    return replace(reading, era=era, era_romaji=romaji, year_of_era=number)


def _pair_exists(expression: Expression) -> bool:
    if expression.stem is None or expression.branch is None:
        return False
    return cycle.index_of(expression.stem, expression.branch) is not None


def _with_month(reading: DateReading, expression: Expression) -> DateReading:
    """Set the number of a bare leap month, and say where a leap month does not exist."""
    year = reading.year
    if not expression.leap or year is None or not calendar.is_tabulated(year):
        return reading
    there = calendar.leap_month(year)
    if reading.month is None and there is not None:
        return replace(reading, month=there)
    if reading.month == there:
        return reading
    return replace(reading, agreement="conflict")


def _with_days(reading: DateReading, expression: Expression) -> DateReading:
    """Set the Gregorian days and how precise they are."""
    reading = day_of_pair(reading, expression)
    interval = interval_of(reading, expression)
    return replace(
        reading,
        day=interval.day if interval.day is not None else reading.day,
        first_day=interval.first,
        last_day=interval.last,
        precision=interval.precision,
        agreement="conflict" if interval.impossible else reading.agreement,
        cautions=(*reading.cautions, *interval.cautions),
    )


def _with_birth(reading: DateReading) -> DateReading:
    age = reading.age
    if age is None:
        return reading
    candidates = tuple(
        replace(each, birth_year=age.birth_year(each.year)) for each in reading.candidates
    )
    birth = age.birth_year(reading.year) if reading.year is not None else None
    return replace(reading, birth_year=birth, candidates=candidates)


def _with_explanations(
    reading: DateReading, expression: Expression, between: Between | None
) -> DateReading:
    if reading.agreement != "conflict":
        return reading
    found = explanations_of(reading, expression, between or DEFAULT_RANGE)
    return replace(reading, explanations=found, suggestions=tuple(each.text for each in found))


def _with_words(
    reading: DateReading, expression: Expression, between: Between | None
) -> DateReading:
    from inscribe.dates.account import account_of, suggestions_of

    reading = replace(reading, suggestions=suggestions_of(reading))
    return replace(reading, why=account_of(reading, expression, between))


_ = (date, timedelta, Precision)
