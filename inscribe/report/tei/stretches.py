"""Which signs of an inscription name a person, a place or a day."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from inscribe.report import places_named, signers
from inscribe.report.tei.edition import NamedStretch

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.entry import InscriptionEntry


def stretches_of(each: InscriptionEntry) -> Iterator[NamedStretch]:
    """Yield the names as the inscription has them (``attested``), and its dates."""
    for person in signers(each):
        for key, part in person.parts:
            said = {"type": "attested", "role": person.role, "subtype": key}
            yield NamedStretch(part.first, part.last, "persName", said)
    for place in places_named(each):
        yield NamedStretch(place.first, place.last, "placeName", {"type": "attested"})
    for date in each.interpretation.dates:
        yield NamedStretch(date.first, date.last, "date", days(date))


def days(date: DateReading) -> dict[str, str]:
    """Return the days that enclose a date, as attributes; a contradiction makes them doubtful."""
    if not (date.first_day and date.last_day):
        return {}
    found = {"notBefore": date.first_day.isoformat(), "notAfter": date.last_day.isoformat()}
    return found | ({"cert": "low"} if date.agreement == "conflict" else {})
