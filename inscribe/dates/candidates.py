"""The years that a sexagenary or zodiac year without a number may mean."""

from __future__ import annotations

from inscribe.dates import calendar, cycle, eras
from inscribe.dates.expression import Expression
from inscribe.dates.model import Candidate


def candidates_of(expression: Expression, between: tuple[int, int]) -> tuple[Candidate, ...]:
    """Return the candidates in order: of the era where one is named, else between two years.

    A leap month named beside it leaves only the years that had that leap month.
    """
    first, last = between
    era = eras.by_name().get(expression.era or "")
    if era:
        first, last = era.first, era.last
    if expression.branch is None:
        return ()
    years = cycle.years_of(expression.stem, expression.branch, first, last)
    return tuple(candidate(year, expression) for year in years if _fits(year, expression))


def _fits(year: int, expression: Expression) -> bool:
    if not expression.leap or not calendar.is_tabulated(year):
        return True
    there = calendar.leap_month(year)
    return there is not None and (expression.months is None or expression.months[0] == there)


def candidate(year: int, expression: Expression) -> Candidate:
    """Return one candidate with its eras and the days its months took up in that year."""
    named = tuple((era.name, era.romaji, number) for era, number in eras.of_year(year))
    months = expression.months or (None, None)
    days = calendar.days_of(year, months[0], months[1], expression.leap)
    first, last = days if days else (None, None)
    return Candidate(year, named, first, last)
