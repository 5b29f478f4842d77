"""The making of the object as its inscriptions tell it: who is named, where, and when."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report import (
    AS_INSCRIBED,
    NO_ATTRIBUTION,
    SIGNER,
    Person,
    dates_of,
    places_named,
    signers,
)
from inscribe.report.entries import JAPANESE, ROMANISED, date_text
from inscribe.report.lido.parts import add_concept, add_part, add_text

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.entry import Entry
    from inscribe.reading.words import SignaturePart
    from inscribe.record import Maker
    from inscribe.report import Style

NAMED = "named in the inscription"


def add_making(described: ET.Element, entry: Entry, style: Style) -> None:
    """Add the event of making, where an inscription names a person, a place or a day."""
    people = [person for each in entry.inscriptions for person in signers(each)]
    places = [place for each in entry.inscriptions for place in places_named(each)]
    dates = list(dates_of(entry))
    maker = entry.record.maker
    if not (people or places or dates or maker):
        return
    made = add_part(add_part(described, "eventWrap"), "eventSet")
    event = add_part(made, "event")
    add_concept(event, "eventType", "event", "production")
    for person in _different(people):
        _add_actor(event, person, maker if person.role == SIGNER else None, style)
    if maker and not people:
        _add_catalogued(event, maker, style)
    if dates:
        _add_date(event, dates[0], style)
    for place in {place.text: place for place in places}.values():
        _add_place(event, place)
    for date in dates[1:]:
        noted = add_part(event, "eventDescriptionSet", **{"lido:type": AS_INSCRIBED})
        add_text(noted, "descriptiveNoteValue", _said(date, style), style.language)


def _different(people: list[Person]) -> list[Person]:
    return list({person.text: person for person in people}.values())


def _add_actor(event: ET.Element, person: Person, maker: Maker | None, style: Style) -> None:
    actors = add_part(event, "eventActor")
    shown = f"{person.romaji} ({person.text}), {NO_ATTRIBUTION}"
    add_text(actors, "displayActorInRole", shown, style.language)
    in_role = add_part(actors, "actorInRole")
    actor = add_part(in_role, "actor")
    names = add_part(actor, "nameActorSet")
    add_text(names, "appellationValue", person.text, JAPANESE, **{"lido:pref": "alternate"})
    add_text(names, "appellationValue", person.romaji, ROMANISED, **{"lido:pref": "preferred"})
    if maker:
        _add_life(actor, maker)
    add_concept(in_role, "roleActor", "role", person.role)
    add_text(in_role, "attributionQualifierActor", NO_ATTRIBUTION, "en")


def _add_catalogued(event: ET.Element, maker: Maker, style: Style) -> None:
    """Add whom the record takes the signature to name, where the reading found no name."""
    actors = add_part(event, "eventActor")
    name = maker.name or "unnamed"
    add_text(actors, "displayActorInRole", f"{name}, {NO_ATTRIBUTION}", style.language)
    in_role = add_part(actors, "actorInRole")
    actor = add_part(in_role, "actor")
    add_part(add_part(actor, "nameActorSet"), "appellationValue", name)
    _add_years(actor, maker)
    add_text(in_role, "attributionQualifierActor", NO_ATTRIBUTION, "en")


def _add_life(actor: ET.Element, maker: Maker) -> None:
    """Add the name under which a record catalogues the person, and the years it gives."""
    if maker.name:
        catalogued = add_part(actor, "nameActorSet")
        add_part(catalogued, "appellationValue", maker.name)
        add_part(catalogued, "sourceAppellation", "as catalogued")
    _add_years(actor, maker)


def _add_years(actor: ET.Element, maker: Maker) -> None:
    for kind, first, last in (
        ("lived", maker.born, maker.died),
        ("active", maker.active_from, maker.active_to),
    ):
        if first is not None or last is not None:
            years = add_part(actor, "vitalDatesActor", **{"lido:type": kind})
            if first is not None:
                add_part(years, "earliestDate", f"{first:04}")
            if last is not None:
                add_part(years, "latestDate", f"{last:04}")


def _add_date(event: ET.Element, date: DateReading, style: Style) -> None:
    assert date.first_day is not None
    assert date.last_day is not None
    dated = add_part(event, "eventDate")
    add_text(dated, "displayDate", _said(date, style), style.language)
    days = add_part(dated, "date")
    for tag, day in (("earliestDate", date.first_day), ("latestDate", date.last_day)):
        add_part(days, tag, day.isoformat(), **{"lido:source": AS_INSCRIBED})


def _said(date: DateReading, style: Style) -> str:
    doubt = "; its parts contradict each other" if date.agreement == "conflict" else ""
    return f"{date.text}, {AS_INSCRIBED}{doubt}: {date_text(date, style)}"


def _add_place(event: ET.Element, part: SignaturePart) -> None:
    placed = add_part(event, "eventPlace", **{"lido:type": NAMED})
    add_text(placed, "displayPlace", f"{part.romaji} ({part.text}), {NAMED}", "en")
    names = add_part(add_part(placed, "place"), "namePlaceSet")
    add_text(names, "appellationValue", part.text, JAPANESE, **{"lido:pref": "alternate"})
    add_text(names, "appellationValue", part.romaji, ROMANISED, **{"lido:pref": "preferred"})
