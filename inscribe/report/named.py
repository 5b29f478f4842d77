"""Whom and what an inscription names: the signer and the places of its signature, its dates.

Everything here is what the metal says. A signature is no attribution, and a date on the object is a
date as inscribed; every format that hands them on says so.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from inscribe.reading.words import PERSON_PARTS

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.reading.words import SignaturePart

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


def signer(each: InscriptionEntry) -> Person | None:
    """Return the person whose signature an inscription bears, where it names one."""
    parts = each.interpretation.signature or {}
    found = [(key, parts[key]) for key in PERSON_PARTS if key in parts and parts[key].text]
    found.sort(key=lambda keyed: keyed[1].first)
    return Person(tuple(found)) if found else None


def place_named(each: InscriptionEntry) -> SignaturePart | None:
    """Return the place that a signature names: where the signer lived or worked."""
    return (each.interpretation.signature or {}).get(PLACE)


def dates_of(entry: Entry) -> Iterator[DateReading]:
    """Yield the dates of all inscriptions that are resolved to days, those that agree first."""
    found = [
        date
        for each in entry.inscriptions
        for date in each.interpretation.dates
        if date.first_day and date.last_day and date.sure
    ]
    yield from sorted(found, key=lambda date: date.agreement == "conflict")
