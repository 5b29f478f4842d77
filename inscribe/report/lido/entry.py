"""Entries as LIDO 1.1: what the object is, what it bears, what that says of its making.

Of LIDO only what a record holds is filled in; the rest is the museum system's to add. What an
inscription names (a maker, a place, a date) is handed on as named there, never as an attribution.
Concepts have identifiers where the user's table ``concepts.tsv`` gives them.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.report import XML_LANG, Style, document
from inscribe.report.entries import JAPANESE, ROMANISED, passages_in_a_line, words_in_a_line
from inscribe.report.lido.making import add_making
from inscribe.report.lido.parts import add_concept, add_part, add_text
from inscribe.report.lido.resources import add_resources
from inscribe.report.lido.sources import add_related_works

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry

LIDO = "http://www.lido-schema.org"
KANA = "ja-Hira"
NOT_STATED = "not stated"


def entries_as_lido(entries: list[Entry], style: Style | None = None) -> str:
    """Return one ``lidoWrap`` document with a ``lido`` for each entry.

    ``style`` says whose records these are, under what terms, and in what language.

    >>> from inscribe import entry_of, load_record
    >>> entry = entry_of(load_record("examples/DEMO-003.toml"))
    >>> ">DEMO-003</lido:lidoRecID>" in entries_as_lido([entry])
    True
    """
    root = ET.Element("lido:lidoWrap", {"xmlns:lido": LIDO})
    for entry in entries:
        _add_lido(root, entry, style or Style())
    return notation.written_out(document(root))


def _add_lido(root: ET.Element, entry: Entry, style: Style) -> None:
    lido = add_part(root, "lido")
    add_part(lido, "lidoRecID", entry.record.id, **{"lido:type": "local"})
    described = add_part(lido, "descriptiveMetadata")
    described.set(XML_LANG, style.language)
    kinds = add_part(add_part(described, "objectClassificationWrap"), "objectWorkTypeWrap")
    add_concept(kinds, "objectWorkType", "kind", entry.record.kind)
    _add_identification(described, entry, style)
    add_making(described, entry, style)
    add_related_works(described, entry, style)
    _add_administration(lido, entry, style)


def _add_identification(described: ET.Element, entry: Entry, style: Style) -> None:
    record = entry.record
    identified = add_part(described, "objectIdentificationWrap")
    titles = add_part(add_part(identified, "titleWrap"), "titleSet")
    add_text(titles, "appellationValue", record.title or record.kind, style.language)
    inscriptions = add_part(identified, "inscriptionsWrap")
    for each in entry.inscriptions:
        _add_inscription(inscriptions, each, style)
    if style.institution:
        kept = add_part(add_part(identified, "repositoryWrap"), "repositorySet")
        _add_legal_body(kept, "repositoryName", style.institution)
        add_part(kept, "workID", record.id)
    if record.remarks.strip():
        notes = add_part(add_part(identified, "objectDescriptionWrap"), "objectDescriptionSet")
        add_text(notes, "descriptiveNoteValue", record.remarks.strip(), style.language)
    _add_measurements(identified, entry)


def _add_inscription(parent: ET.Element, each: InscriptionEntry, style: Style) -> None:
    """Add what is carved and how it is read, then what is said of it."""
    part = add_part(parent, "inscriptions", **{"lido:type": each.interpretation.register})
    for label, language, text in (
        ("transcription", JAPANESE, notation.print_out(each.inscription.transcription)),
        ("reading in kana", KANA, each.reading.kana),
        ("reading in Latin letters", ROMANISED, each.reading.romaji),
        ("translation", style.language, each.inscription.translation.strip()),
    ):
        if text:
            add_text(part, "inscriptionTranscription", text, language, **{"lido:label": label})
    for kind, text in _descriptions(each, style):
        described = add_part(part, "inscriptionDescription", **{"lido:type": kind})
        add_text(described, "descriptiveNoteValue", text, style.language)


def _descriptions(each: InscriptionEntry, style: Style) -> list[tuple[str, str]]:
    inscription = each.inscription
    made = ", ".join(filter(None, (inscription.hand, inscription.execution)))
    dates = "; ".join(f"{date.text}: {date.why}" for date in each.interpretation.dates)
    readers = "; ".join(
        f"{reader.by}, {reader.on.isoformat()}" if reader.on else reader.by
        for reader in inscription.readers
    )
    persons = "; ".join(
        f"{named.text}: {named.why} ({named.chance:.2f})" for named in each.interpretation.persons
    )
    found = [
        ("place", inscription.place),
        ("hand and execution", made),
        ("words with glosses", words_in_a_line(each)),
        ("passages", passages_in_a_line(each, style)),
        ("date", dates),
        ("may name, no attribution", persons),
        ("read by", readers),
        ("remarks", inscription.remarks.strip()),
    ]
    return [(kind, text) for kind, text in found if text]


def _add_measurements(parent: ET.Element, entry: Entry) -> None:
    sizes = entry.record.measurements
    known = [
        (name, value)
        for name in ("length", "width", "height", "thickness", "diameter")
        if (value := getattr(sizes, name)) is not None
    ]
    if not known:
        return
    sets = add_part(parent, "objectMeasurementsWrap")
    for name, value in known:
        measured = add_part(add_part(sets, "objectMeasurementsSet"), "objectMeasurements")
        one = add_part(measured, "measurementsSet")
        add_text(one, "measurementType", name, "en")
        add_text(one, "measurementUnit", "mm", "en")
        add_part(one, "measurementValue", f"{value:g}")


def _add_administration(lido: ET.Element, entry: Entry, style: Style) -> None:
    administered = add_part(lido, "administrativeMetadata")
    administered.set(XML_LANG, style.language)
    about = add_part(administered, "recordWrap")
    add_part(about, "recordID", entry.record.id, **{"lido:type": "local"})
    add_concept(about, "recordType", "record", "item")
    _add_legal_body(about, "recordSource", style.institution or NOT_STATED)
    if style.rights:
        add_concept(add_part(about, "recordRights"), "rightsType", "rights", style.rights)
    if days := [r.on for each in entry.inscriptions for r in each.inscription.readers if r.on]:
        about_record = add_part(about, "recordInfoSet")
        last = max(days).isoformat()
        add_part(about_record, "recordMetadataDate", last, **{"lido:type": "last reading"})
    add_resources(administered, entry, style)


def _add_legal_body(parent: ET.Element, tag: str, name: str) -> None:
    add_part(add_part(add_part(parent, tag), "legalBodyName"), "appellationValue", name)
