"""The header of a TEI document: the object, who read it, whom and what it names."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.report import (
    AS_INSCRIBED,
    NO_ATTRIBUTION,
    XML_LANG,
    add,
    append_text,
    dates_of,
    places_named,
)
from inscribe.report.entries import JAPANESE, ROMANISED, date_text
from inscribe.report.tei.facsimile import number
from inscribe.report.tei.legend import add_legend
from inscribe.report.tei.stretches import days

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.entry import Entry
    from inscribe.record import Inscription, Maker
    from inscribe.report import Style

KANA = "ja-Hira"
NOT_PUBLISHED = "Exported from records; not published."


def add_corpus_header(root: ET.Element, style: Style) -> None:
    """Add the header of several documents together."""
    description = add(add(root, "teiHeader"), "fileDesc")
    add(add(description, "titleStmt"), "title", "Inscriptions")
    _add_publication(description, style)
    add(add(description, "sourceDesc"), "p", "Objects described in the documents of this corpus.")


def add_header(root: ET.Element, entry: Entry, style: Style) -> ET.Element:
    """Add the header of the document of one object and return it."""
    header = add(root, "teiHeader")
    description = add(header, "fileDesc")
    titles = add(description, "titleStmt")
    add(titles, "title", f"{entry.record.id} {entry.record.title}".strip())
    _add_readers(titles, entry)
    _add_publication(description, style)
    _add_notes(description, entry, style)
    _add_object(add(add(description, "sourceDesc"), "msDesc"), entry, style)
    signs = (s for each in entry.inscriptions for s in each.inscription.transcription.signs)
    add_legend(header, signs)
    _add_profile(header, entry, style)
    return header


def _add_readers(titles: ET.Element, entry: Entry) -> None:
    for at, each in enumerate(entry.inscriptions, start=1):
        for reader in each.inscription.readers:
            stated = add(titles, "respStmt", n=str(at))
            when = {"when": reader.on.isoformat()} if reader.on else {}
            add(stated, "resp", f"reading of inscription {at}", **when)
            add(stated, "name", reader.by)


def _add_publication(description: ET.Element, style: Style) -> None:
    published = add(description, "publicationStmt")
    if not (style.institution or style.rights):
        add(published, "p", NOT_PUBLISHED)
        return
    add(published, "authority", style.institution or "not stated")
    if style.rights:
        add(add(add(published, "availability"), "licence"), "p", style.rights)


def _add_notes(description: ET.Element, entry: Entry, style: Style) -> None:
    remarks = entry.record.remarks.strip()
    if not (entry.cautions or remarks):
        return
    notes = add(description, "notesStmt")
    for caution in entry.cautions:
        add(notes, "note", style.caution(caution), type="caution")
    if remarks:
        add(notes, "note", remarks, type="remarks")


def _add_object(described: ET.Element, entry: Entry, style: Style) -> None:
    identified = add(described, "msIdentifier")
    if style.institution:
        add(identified, "repository", style.institution)
    add(identified, "idno", entry.record.id)
    if entry.record.title:
        add(identified, "msName", entry.record.title)
    physical = add(described, "physDesc")
    form = add(physical, "objectDesc")
    support = add(add(add(form, "supportDesc"), "support"), "p")
    add(support, "objectType", entry.record.kind)
    _add_dimensions(support, entry)
    _add_layouts(form, [each.inscription for each in entry.inscriptions])
    _add_hands(physical, [each.inscription for each in entry.inscriptions])
    _add_origin(described, entry, style)


def _add_dimensions(support: ET.Element, entry: Entry) -> None:
    sizes = entry.record.measurements
    known: tuple[tuple[str, dict[str, str], float | None], ...] = (
        ("dim", {"type": "length"}, sizes.length),
        ("height", {}, sizes.height),
        ("width", {}, sizes.width),
        ("depth", {}, sizes.thickness),
        ("dim", {"type": "diameter"}, sizes.diameter),
    )
    if any(value is not None for _, _, value in known):
        dimensions = add(support, "dimensions", type="object", unit="mm")
        for tag, attributes, value in known:
            if value is not None:
                add(dimensions, tag, number(value), **attributes)


def _add_layouts(form: ET.Element, inscriptions: Sequence[Inscription]) -> None:
    layouts = add(form, "layoutDesc")
    for at, inscription in enumerate(inscriptions, start=1):
        count = len(inscription.transcription.columns)
        layout = add(layouts, "layout", n=str(at))
        append_text(layout, f"{inscription.place}; columns: {count}. ")
        if inscription.plate:
            plate = add(layout, "dimensions", type="plate", unit="mm")
            add(plate, "height", number(inscription.plate.height))
            add(plate, "width", number(inscription.plate.width))


def _add_hands(physical: ET.Element, inscriptions: Sequence[Inscription]) -> None:
    told = [
        (at, inscription)
        for at, inscription in enumerate(inscriptions, start=1)
        if inscription.hand or inscription.execution
    ]
    if told:
        hands = add(physical, "handDesc")
        for at, inscription in told:
            note = add(hands, "handNote", n=str(at))
            for key in ("hand", "execution"):
                if said := getattr(inscription, key):
                    if len(note):
                        append_text(note, ", ")
                    add(note, "term", said, type=key)


def _add_origin(described: ET.Element, entry: Entry, style: Style) -> None:
    """Add when and where the object was made, as its inscriptions say."""
    dates = list(dates_of(entry))
    places = [place for each in entry.inscriptions for place in places_named(each)]
    if not (dates or places):
        return
    origin = add(add(described, "history"), "origin")
    for date in dates:
        _add_date(origin, date, style)
    for place in places:
        named = add(add(origin, "p", "Named in the inscription: "), "placeName", type="attested")
        append_text(named, place.text)
        named.set(XML_LANG, JAPANESE)


def _add_date(origin: ET.Element, date: DateReading, style: Style) -> None:
    dated = add(origin, "p", f"{AS_INSCRIBED[0].upper()}{AS_INSCRIBED[1:]}: ")
    add(dated, "origDate", date.text, evidence="internal-date", **days(date)).set(
        XML_LANG, JAPANESE
    )
    append_text(dated, f" {date_text(date, style)}")


def _add_profile(header: ET.Element, entry: Entry, style: Style) -> None:
    profile = add(header, "profileDesc")
    used = add(profile, "langUsage")
    for tag, said in (
        (JAPANESE, "the inscriptions"),
        (KANA, "their reading in kana"),
        (ROMANISED, "their reading in Latin letters"),
        (style.language, "translations and remarks"),
    ):
        add(used, "language", said, ident=tag)
    if entry.record.maker:
        _add_maker(profile, entry.record.maker)


def _add_maker(profile: ET.Element, maker: Maker) -> None:
    person = add(add(add(profile, "particDesc"), "listPerson"), "person", role="maker")
    if maker.name:
        add(person, "persName", maker.name)
    for tag, year in (("birth", maker.born), ("death", maker.died)):
        if year is not None:
            add(person, tag, when=f"{year:04}")
    active = {"from": maker.active_from, "to": maker.active_to}
    if years := {key: f"{year:04}" for key, year in active.items() if year is not None}:
        add(person, "floruit", **years)
    add(person, "note", NO_ATTRIBUTION, type="caution")
    if maker.remarks.strip():
        add(person, "note", maker.remarks.strip(), type="remarks")
