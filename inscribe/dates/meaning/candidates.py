"""The years that a sexagenary or zodiac year, or a damaged date, may mean."""

from __future__ import annotations

from functools import partial

from inscribe.dates import calendar
from inscribe.dates.meaning.interval import in_force
from inscribe.dates.model import CandidateYear
from inscribe.dates.written import Expression, eras_like, pairs_meant

UNREAD = "□"
DEFAULT_RANGE = (1600, 1912)


def candidates_of(
    expression: Expression, between: tuple[int, int] | None
) -> tuple[CandidateYear, ...]:
    """Return the candidates in order: of the era where one is named, else between two years.

    Whatever else is written narrows them: the number of the year, a leap month that only some of
    the years had.
    """
    if not says_something_of_the_year(expression):
        return ()
    first, last = _range(expression, between)
    found = tuple(
        candidate(year, expression) for year in range(first, last + 1) if _fits(year, expression)
    )
    if expression.unknown_era is None:
        return found
    return tuple(sorted(found, key=partial(_unlikeness, expression.unknown_era)))


def _unlikeness(written: str, found: CandidateYear) -> float:
    """Return how far from what is written the most alike of a candidate's eras is."""
    shares = {like.era: like.share for like in eras_like(written)}
    return 1 - max((shares.get(name, 0.0) for name, _, _ in found.eras), default=0.0)


def says_something_of_the_year(expression: Expression) -> bool:
    """Return whether the expression narrows the year without naming it."""
    return any(
        (
            expression.stem,
            expression.branch,
            expression.odd_pair,
            expression.numbers,
            (expression.damaged_era or expression.unknown_era) and expression.number,
        )
    )


def _range(expression: Expression, between: tuple[int, int] | None) -> tuple[int, int]:
    era = calendar.by_name().get(expression.era or "")
    if era:
        return era.first, min(era.last, era.first + 99)
    return between or DEFAULT_RANGE


def _fits(year: int, expression: Expression) -> bool:
    return (
        _era_fits(year, expression)
        and pair_fits(year, expression)
        and _leap_month_fits(year, expression)
    )


def _era_fits(year: int, expression: Expression) -> bool:
    numbers = expression.numbers or ((expression.number,) if expression.number else ())
    named = expression.era or expression.damaged_era or expression.unknown_era
    if not numbers and not named:
        return True
    return any(
        _name_fits(era.name, expression) and (not numbers or number in numbers)
        for era, number in calendar.of_year(year)
    )


def _name_fits(name: str, expression: Expression) -> bool:
    if expression.era:
        return name == expression.era
    if expression.unknown_era is not None:
        return any(like.era == name for like in eras_like(expression.unknown_era))
    if expression.damaged_era is None:
        return True
    damaged = expression.damaged_era
    same_length = len(name) == len(damaged)
    return same_length and all(b in (UNREAD, a) for a, b in zip(name, damaged, strict=True))


def pair_fits(year: int, expression: Expression) -> bool:
    """Return whether the sexagenary year as written is that of ``year``."""
    right = calendar.pair_of_year(year)
    if expression.odd_pair:
        return right in pairs_meant(expression.odd_pair)
    stem_fits = expression.stem is None or right[0] == expression.stem
    return stem_fits and (expression.branch is None or right[1] == expression.branch)


def _leap_month_fits(year: int, expression: Expression) -> bool:
    if not expression.leap or not calendar.is_tabulated(year):
        return True
    there = calendar.leap_month(year)
    return there is not None and (expression.months is None or expression.months[0] == there)


def candidate(year: int, expression: Expression) -> CandidateYear:
    """Return one candidate with its eras and the days its months took up in that year."""
    numbers = expression.numbers or ((expression.number,) if expression.number else ())
    months = expression.months or (None, None)
    days = calendar.days_of(year, months[0], months[1], expression.leap)
    named = tuple(
        (era.name, era.romaji, number)
        for era, number in in_force(year, days)
        if _name_fits(era.name, expression) and (not numbers or number in numbers)
    )
    first, last = days if days else (None, None)
    return CandidateYear(year, named, first, last)
