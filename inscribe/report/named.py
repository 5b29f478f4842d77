"""Whom and what an inscription names: the signer and the places of its signature, its dates.

Everything here is what the metal says. A signature is no attribution, and a date on the object is a
date as inscribed; every format that hands them on says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, NamedTuple

from inscribe.reading.words import PERSON_PARTS

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.reading import Interpretation
    from inscribe.reading.words import SignaturePart
    from inscribe.terms import Role

NO_ATTRIBUTION = "named in the signature, no attribution"
AS_INSCRIBED = "as inscribed"
SIGNER = "signer"
PLACE = "place"


class Person(NamedTuple):
    """A person as a signature names one: the parts of the name in the order of the metal."""

    parts: tuple[tuple[str, SignaturePart], ...]  # (key, part)
    role: str = SIGNER

    @property
    def text(self) -> str:
        """The name as carved."""
        return "".join(part.text for _, part in self.parts)

    @property
    def romaji(self) -> str:
        """The name in Latin letters, as read first."""
        return " ".join(part.romaji for _, part in self.parts if part.romaji)


def signers(each: InscriptionEntry) -> list[Person]:
    """Return the persons who sign an inscription, in the order of the metal.

    Under a poem one may have composed or written it and another carved it: the role says so, and
    is "signer" of who carved it, or where the text does not tell.
    """
    found = []
    for role, parts in signatures(each.interpretation):
        named = [(key, parts[key]) for key in PERSON_PARTS if key in parts and parts[key].text]
        if named:
            named.sort(key=lambda keyed: keyed[1].first)
            found.append(Person(tuple(named), SIGNER if role in (None, "carved") else role))
    return found


def places_named(each: InscriptionEntry) -> list[SignaturePart]:
    """Return the places that signatures name: where the signers lived or worked."""
    return [parts[PLACE] for _, parts in signatures(each.interpretation) if PLACE in parts]


def signatures(
    read: Interpretation,
) -> Iterator[tuple[Role | None, Mapping[str, SignaturePart]]]:
    """Yield the parts of each signature, with what its person did, in the order of the metal."""
    signed = [passage for passage in read.passages if passage.signature]
    for passage in signed:
        yield passage.role, passage.signature or {}
    if not signed and read.signature:
        yield None, read.signature


def dates_of(entry: Entry) -> Iterator[DateReading]:
    """Yield the dates of all inscriptions that are resolved to days, those that agree first."""
    found = [
        date
        for each in entry.inscriptions
        for date in each.interpretation.dates
        if date.first_day and date.last_day and date.sure
    ]
    yield from sorted(found, key=lambda date: date.agreement == "conflict")
