"""Several dated inscriptions of one object: what each says about the others.

Three rules, all judgements to be checked on the object: a part that bears a date existed by then,
so the earliest inscription bounds the object and later ones are additions or later statements; two
ages given by one carver must give one year of birth; and a sexagenary year without an era is read
so that both hold where it can be.

>>> from inscribe.dates import resolve
>>> found = compared([resolve("嘉永六年行年七十"), resolve("甲寅 行年七十一")])
>>> [reading.year for reading in found.readings], found.agreement
([1853, 1854], 'agrees')
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import combinations
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.dates import calendar
from inscribe.dates.meaning.account import candidate_text
from inscribe.dates.model import Agreement, DateReading, iso

if TYPE_CHECKING:
    from inscribe.keys import DatesKeys

Named = Sequence[tuple[str, DateReading]]


@dataclass(frozen=True, slots=True)
class Comparison:
    """The readings, narrowed by each other, and what follows for the object.

    ``not_after``: the object existed by that day, if its earliest inscription is what it seems.

    >>> from inscribe import compare_dates, resolve_date
    >>> compare_dates([resolve_date("嘉永六年癸丑"), resolve_date("安政二年")])
    <Comparison of 2 dates: unchecked>
    """

    readings: tuple[DateReading, ...]
    not_after: date | None = None
    birth_years: tuple[int, ...] = ()
    agreement: Agreement = "unchecked"
    statements: tuple[str, ...] = ()

    def __repr__(self) -> str:
        return f"<Comparison of {notebook.counted(len(self.readings), 'date')}: {self.agreement}>"

    def to_dict(self) -> DatesKeys:
        """Return it as ``inscribe date --format json`` prints several dates."""
        return {
            "dates": [reading.to_dict() for reading in self.readings],
            "not_after": iso(self.not_after),
            "birth_years": list(self.birth_years),
            "agreement": self.agreement,
            "statements": list(self.statements),
        }


def compared(
    readings: Sequence[DateReading], names: Sequence[str] = (), born: int | None = None
) -> Comparison:
    """Return what the dates of one object's inscriptions say together.

    ``names`` are what the inscriptions are called in the statements ("inscription 1" and so on
    where none are given). The ages are taken to be one carver's; where they cannot be, the
    agreement is "conflict". ``born`` is the maker's year of birth where it is known otherwise.

    >>> from inscribe import compare_dates, resolve_date
    >>> texts = "嘉永六年行年三十歳", "安政二年行年三十二歳"
    >>> both = compare_dates([resolve_date(text) for text in texts])
    >>> both.agreement, both.birth_years
    ('agrees', (1824,))
    """
    births = _common_births(readings, born)
    narrowed = tuple(_narrowed(reading, births) for reading in readings)
    agreement: Agreement = "unchecked"
    if births is not None:
        agreement = "agrees" if births else "conflict"
    dated = [reading for reading in narrowed if reading.last_day]
    earliest = min(dated, key=lambda reading: reading.last_day or date.max, default=None)
    called = names or [f"inscription {number}" for number in range(1, len(readings) + 1)]
    named = list(zip(called, narrowed, strict=True))
    statements = (*_of_the_order(named), *_of_the_births(named, births, born))
    return Comparison(
        narrowed,
        earliest.last_day if earliest else None,
        tuple(sorted(births or ())),
        agreement,
        statements,
    )


def _births(reading: DateReading) -> set[int]:
    """Return the years of birth a reading allows."""
    if reading.birth_year is not None:
        return {reading.birth_year}
    return {each.birth_year for each in reading.candidates if each.birth_year is not None}


def _common_births(readings: Sequence[DateReading], born: int | None) -> set[int] | None:
    """Return the years of birth that all ages allow; None where there are not two to compare."""
    given = [births for reading in readings if (births := _births(reading))]
    if born is not None and given:
        given.append({born})
    return set.intersection(*given) if len(given) > 1 else None


def _narrowed(reading: DateReading, births: set[int] | None) -> DateReading:
    """Drop the candidates that another inscription's age rules out."""
    if not births or reading.year is not None:
        return reading
    left = tuple(each for each in reading.candidates if each.birth_year in births)
    if not left or len(left) == len(reading.candidates):
        return reading
    years = ", ".join(str(each.year) for each in left)
    why = f"with what else is known of the carver's age, {years} is left"
    suggestions = tuple(candidate_text(each) for each in left) if len(left) > 1 else ()
    reading = replace(
        reading, candidates=left, suggestions=suggestions, why=f"{reading.why}; {why}"
    )
    if len(left) > 1:
        return reading
    only = left[0]
    era, romaji, number = only.eras[0] if len(only.eras) == 1 else (None, None, None)
    return replace(
        reading,
        year=only.year,
        year_sexagenary=calendar.pair_of_year(only.year),
        era=era,
        era_romaji=romaji,
        year_of_era=number,
        first_day=only.first_day,
        last_day=only.last_day,
        birth_year=only.birth_year,
    )


def _of_the_order(readings: Named) -> list[str]:
    """Return which inscription comes before which, and what that means."""
    found = []
    for (one, first), (two, second) in combinations(readings, 2):
        order = _order(first, second)
        if order == 0:
            found.append(f"{one} and {two} may be of the same time")
        elif order is not None:
            early, late = (one, two) if order < 0 else (two, one)
            found.append(
                f"{early} is earlier than {late}: if both are genuine, {late} was added later, or "
                "repeats or recalls a date"
            )
        elif first.candidates or second.candidates:
            found += _possible_order(one, first, two, second)
    return found


def _order(first: DateReading, second: DateReading) -> int | None:
    """Return -1, 0 (their days overlap) or 1; None where a year is not known."""
    if first.first_day and first.last_day and second.first_day and second.last_day:
        if first.last_day < second.first_day:
            return -1
        return 1 if second.last_day < first.first_day else 0
    if first.year is None or second.year is None:
        return None
    return (first.year > second.year) - (first.year < second.year)


def _possible_order(one: str, first: DateReading, two: str, second: DateReading) -> list[str]:
    """Say which candidates of an uncertain year lie before and after a certain one."""
    if first.year is None and second.year is None:
        return []
    if first.year is not None:
        return _possible_order(two, second, one, first)
    assert second.year is not None
    before = [each.year for each in first.candidates if each.year <= second.year]
    after = [each.year for each in first.candidates if each.year > second.year]
    parts = []
    if before:
        parts.append(f"{before[-1]} if it is not later than {two} ({second.year})")
    if after:
        parts.append(f"{after[0]} if it was added after it")
    return [f"{one} is most likely of " + ", or ".join(parts)] if parts else []


def _of_the_births(readings: Named, births: set[int] | None, born: int | None) -> list[str]:
    """Return what the ages say together, and with the year of birth known otherwise."""
    if births:
        years = ", ".join(str(year) for year in sorted(births))
        return [f"the ages agree: born {years}"]
    if births is not None:
        given = [(name, _births(reading)) for name, reading in readings if _births(reading)]
        if born is not None:
            given.append(("known otherwise", {born}))
        each = "; ".join(f"{name}: {', '.join(map(str, sorted(years)))}" for name, years in given)
        return [f"the ages cannot be one carver's (born {each})"]
    aged = [(name, each) for name, each in readings if each.age and not _births(each)]
    if born is not None:
        return [_of_a_known_birth(name, reading, born) for name, reading in aged]
    dated = [(name, each) for name, each in readings if each.year is not None]
    return [_of_an_age(one, age, two, date) for one, age in aged for two, date in dated]


def _of_an_age(name: str, aged: DateReading, other: str, dated: DateReading) -> str:
    assert aged.age is not None
    assert dated.year is not None
    birth = aged.age.birth_year(dated.year)
    return f"if {name} is of the time of {other} ({dated.year}), its carver was born in {birth}"


def _of_a_known_birth(name: str, aged: DateReading, born: int) -> str:
    assert aged.age is not None
    year = born + aged.age.years - (0 if aged.age.western else 1)
    return f"{name}: someone born in {born} was {aged.age.years} in {year}"
