"""The dates on an object against the years of a person.

A poem may be cut long after its poet's death, and so may what is made after another's model; who
signs, carves, writes or orders was alive. Nobody is named on metal before birth.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from inscribe.persons.model import ListedPerson

if TYPE_CHECKING:
    from inscribe.dates import DateReading

OUTLIVES = frozenset({"composed", "model", "relation"})  # roles in which one is named after death

Evidence = tuple[str, str]  # a key of the table of evidence, and the word or year it is about


def evidence_of_dates(
    person: ListedPerson, role: str | None, dates: Iterable[DateReading], *, signs: bool
) -> Iterator[Evidence]:
    """Yield what the dates say: whether they lie in a life, and an age with the year of birth.

    Args:
        person: who may be named.
        role: what the person did, where that is known.
        dates: the dates on the object.
        signs: whether the age on the object is that of who is named.
    """
    sure = [date for date in dates if date.year is not None and date.sure]
    span = person.lived
    if span and sure:
        yield from _of_years([date.year for date in sure if date.year], span, role)
    for date in sure:
        if signs and date.birth_year is not None and person.birth:
            slack = 2 if date.age is None or not date.age.about else 10
            near = person.birth.earliest - slack < date.birth_year < person.birth.latest + slack
            yield ("age-agrees" if near else "age-differs"), str(date.birth_year)


def _of_years(years: list[int], span: tuple[int, int], role: str | None) -> Iterator[Evidence]:
    born, died = span
    if early := [year for year in years if year < born]:
        yield "life-before", str(early[0])
    elif late := [year for year in years if year > died]:
        if role not in OUTLIVES:
            yield "life-after", str(late[0])
    else:
        yield "life-agrees", str(years[0])


def outside(found: Iterable[Evidence], person: ListedPerson) -> str:
    """Return how a date or an age contradicts the years of a person; nothing if none does."""
    says = {
        "life-before": "{year} is before the life of {who}",
        "life-after": "{year} is after the life of {who}",
        "age-differs": "by the age born {year}, not {who}",
    }
    years = f" ({person.years})" if person.years else ""
    for key, year in found:
        if key in says:
            return says[key].format(year=year, who=f"{person.name}{years}")
    return ""
