"""Entries as LIDO 1.1: work type, titles, inscriptions, measurements and the record's own data.

Of LIDO only what a record holds is filled in; the rest is the museum system's to add.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.report.xml import XML_LANG, add, document

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry

LIDO = "http://www.lido-schema.org"


def entries_as_lido(entries: list[Entry]) -> str:
    """Return one ``lidoWrap`` document with a ``lido`` for each entry."""
    root = ET.Element("lido:lidoWrap", {"xmlns:lido": LIDO})
    for entry in entries:
        _lido(root, entry)
    return document(root)


def _lido(root: ET.Element, entry: Entry) -> None:
    record = entry.record
    lido = _add(root, "lido")
    _add(lido, "lidoRecID", record.id, **{"lido:type": "local"})
    described = _add(lido, "descriptiveMetadata")
    described.set(XML_LANG, "en")
    kinds = _add(_add(described, "objectClassificationWrap"), "objectWorkTypeWrap")
    _add(_add(kinds, "objectWorkType"), "term", record.kind)
    identified = _add(described, "objectIdentificationWrap")
    titles = _add(_add(identified, "titleWrap"), "titleSet")
    _add(titles, "appellationValue", record.title or record.kind)
    inscriptions = _add(identified, "inscriptionsWrap")
    for each in entry.inscriptions:
        _inscription(inscriptions, each)
    _measurements(identified, entry)
    administered = _add(lido, "administrativeMetadata")
    administered.set(XML_LANG, "en")
    about = _add(administered, "recordWrap")
    _add(about, "recordID", record.id, **{"lido:type": "local"})
    _add(_add(about, "recordType"), "term", "item")
    _add(_add(_add(about, "recordSource"), "legalBodyName"), "appellationValue", "not stated")


def _inscription(parent: ET.Element, each: InscriptionEntry) -> None:
    part = _add(parent, "inscriptions")
    carved = notation.print_out(each.inscription.transcription)
    for lang, text in (
        ("ja", carved),
        ("ja-Hira", each.reading.kana),
        ("ja-Latn", each.reading.romaji),
    ):
        _add(part, "inscriptionTranscription", text).set(XML_LANG, lang)
    for kind, text in _descriptions(each):
        described = _add(part, "inscriptionDescription", **{"lido:type": kind})
        _add(described, "descriptiveNoteValue", text).set(XML_LANG, "en")


def _descriptions(each: InscriptionEntry) -> list[tuple[str, str]]:
    inscription = each.inscription
    made = ", ".join(filter(None, (inscription.hand, inscription.execution)))
    dates = "; ".join(f"{date.text}: {date.why}" for date in each.interpretation.dates)
    found = [
        ("place", inscription.place),
        ("hand and execution", made),
        ("translation", inscription.translation.strip()),
        ("date", dates),
        ("remarks", inscription.remarks.strip()),
    ]
    return [(kind, text) for kind, text in found if text]


def _measurements(parent: ET.Element, entry: Entry) -> None:
    sizes = entry.record.measurements
    known = [
        (name, value)
        for name in ("length", "width", "height", "thickness", "diameter")
        if (value := getattr(sizes, name)) is not None
    ]
    if not known:
        return
    sets = _add(parent, "objectMeasurementsWrap")
    for name, value in known:
        measured = _add(_add(sets, "objectMeasurementsSet"), "objectMeasurements")
        one = _add(measured, "measurementsSet")
        _add(one, "measurementType", name)
        _add(one, "measurementUnit", "mm")
        _add(one, "measurementValue", f"{value:g}")


def _add(parent: ET.Element, tag: str, text: str = "", **attributes: str) -> ET.Element:
    return add(parent, f"lido:{tag}", text, **attributes)
