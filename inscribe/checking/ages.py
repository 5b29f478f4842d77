"""When those who signed were born, by their ages at the date.

Ages are counted by calendar years, one at birth, unless an inscription counts otherwise; common
practice, as in ``inscribe.dates``.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe.concordance import Document

YEARS = 1  # by which two birth years may differ: ages are not always carved in the year they name


class Birth(NamedTuple):
    """A person's year of birth, by an age that is carved with a date."""

    name: str
    born: int
    age: int
    year: int
    at_birth: int  # the age in the year of birth: 1, or 0 where it is counted from the birthday


def births(document: Document) -> Iterator[Birth]:
    """Yield the years of birth that follow from the ages and the date of an inscription."""
    years = [date.year for date in document.said.dates if date.sure and date.year is not None]
    year = years[0] if years else document.year
    for signing in document.said.signings:
        if signing.age is not None and year is not None:
            born = year - signing.age + signing.at_birth
            yield Birth(signing.name, born, signing.age, year, signing.at_birth)


def against_life(document: Document, name: str, born: int | None) -> Iterator[str]:
    """Yield where an age at a date does not agree with the year of birth that a record gives."""
    for each in births(document):
        if born is not None and abs(each.born - born) > YEARS:
            then = born + each.age - each.at_birth
            whose = name or "the maker"
            yield (
                f"{each.age} in {each.year} is born about {each.born}; the record says that "
                f"{whose} was born in {born}, and so {each.age} in {then}"
            )
