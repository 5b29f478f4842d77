"""The collection as linked data: JSON-LD in terms of the CIDOC CRM, in the shape of Linked Art.

The CRM is chosen over schema.org since it can say what matters here: an object *carries* a text,
and the text *refers to* a person and a time; nothing says that the person made the object. The
context stands in the document itself, so that it can be read where there is no network. Classes
and properties are those of CIDOC CRM 7.1; names of terms follow Linked Art.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from inscribe import notation
from inscribe.report import AS_INSCRIBED, NO_ATTRIBUTION, concepts, places_named, signers
from inscribe.report.entries import date_text

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.report import Style

Json = dict[str, Any]

CRM = "http://www.cidoc-crm.org/cidoc-crm/"
_CLASSES = {
    "HumanMadeObject": "E22_Human-Made_Object",
    "LinguisticObject": "E33_Linguistic_Object",
    "Identifier": "E42_Identifier",
    "Name": "E41_Appellation",
    "Type": "E55_Type",
    "Language": "E56_Language",
    "Person": "E21_Person",
    "Place": "E53_Place",
    "TimeSpan": "E52_Time-Span",
    "Dimension": "E54_Dimension",
    "MeasurementUnit": "E58_Measurement_Unit",
    "VisualItem": "E36_Visual_Item",
}
_PROPERTIES = {
    "identified_by": "P1_is_identified_by",
    "classified_as": "P2_has_type",
    "content": "P190_has_symbolic_content",
    "carries": "P128_carries",
    "refers_to": "P67_refers_to",
    "referred_to_by": "P67i_is_referred_to_by",
    "has_translation": "P73_has_translation",
    "shows_features_of": "P130_shows_features_of",
    "language": "P72_has_language",
    "note": "P3_has_note",
    "begin_of_the_begin": "P82a_begin_of_the_begin",
    "end_of_the_end": "P82b_end_of_the_end",
    "dimension": "P43_has_dimension",
    "value": "P90_has_value",
    "unit": "P91_has_unit",
}
CONTEXT: Json = {
    "crm": CRM,
    "id": "@id",
    "type": "@type",
    "_label": "http://www.w3.org/2000/01/rdf-schema#label",
    **{name: f"crm:{code}" for name, code in (_CLASSES | _PROPERTIES).items()},
}


def entries_as_linked(entries: list[Entry], style: Style) -> str:
    """Return the objects as one JSON-LD document with a graph."""
    graph = [_object(entry, style) for entry in entries]
    made = json.dumps({"@context": CONTEXT, "@graph": graph}, ensure_ascii=False, indent=2)
    return notation.written_out(made)


def _object(entry: Entry, style: Style) -> Json:
    record = entry.record
    base = f"{style.address.rstrip('/')}/{quote(record.id, safe='')}"
    names = [{"type": "Identifier", "content": record.id}]
    if record.title:
        names.append({"type": "Name", "content": record.title})
    sizes = [(name, getattr(record.measurements, name)) for name in _SIZES]
    return {
        "id": base,
        "type": "HumanMadeObject",
        "_label": record.title or record.id,
        "identified_by": names,
        "classified_as": _types("kind", record.kind),
        "dimension": [_dimension(name, size) for name, size in sizes if size is not None],
        "carries": [
            _text(each, f"{base}/inscription/{number}", style)
            for number, each in enumerate(entry.inscriptions, start=1)
        ],
        **({"note": record.remarks.strip()} if record.remarks.strip() else {}),
    }


_SIZES = ("length", "width", "height", "thickness", "diameter")


def _dimension(name: str, size: float) -> Json:
    return {
        "type": "Dimension",
        "classified_as": [{"type": "Type", "_label": name}],
        "value": size,
        "unit": {"type": "MeasurementUnit", "_label": "mm"},
    }


def _types(field: str, word: str) -> list[Json]:
    """Return a word as a type, with the identifiers that a user's table gives it."""
    known = concepts(field, word)
    plain: Json = {"type": "Type", "_label": word}
    return [plain | {"id": each.identifier} for each in known] or [plain]


def _text(each: InscriptionEntry, name: str, style: Style) -> Json:
    inscription = each.inscription
    types = [
        t for f in ("hand", "execution") for t in _types(f, getattr(inscription, f)) if t["_label"]
    ]
    made: Json = {
        "id": name,
        "type": "LinguisticObject",
        "_label": inscription.place,
        "content": notation.print_out(inscription.transcription),
        "language": [{"type": "Language", "_label": "ja"}],
        "classified_as": types,
        "refers_to": _named(each, name, style),
        "referred_to_by": _remarks(each, style),
    }
    if translation := inscription.translation.strip():
        language = {"type": "Language", "_label": style.language}
        made["has_translation"] = [
            {"type": "LinguisticObject", "content": translation, "language": [language]}
        ]
    if source := inscription.source:
        said = ", ".join(filter(None, (source.author, source.work, source.number, source.title)))
        about: Json = {"type": "LinguisticObject", "_label": said or source.id}
        if source.text:
            about["content"] = source.text
        made["shows_features_of"] = [about]
    return made


def _remarks(each: InscriptionEntry, style: Style) -> list[Json]:
    """Return the reading, which is a text about the inscription."""
    romaji = each.reading.romaji
    if not romaji:
        return []
    language = [{"type": "Language", "_label": "ja-Latn"}]
    types = [{"type": "Type", "_label": style.label("romaji")}]
    made = {"type": "LinguisticObject", "content": romaji}
    return [made | {"language": language, "classified_as": types}]


def _named(each: InscriptionEntry, name: str, style: Style) -> list[Json]:
    """Return whom, where and when the text names; a signature is no attribution."""
    found: list[Json] = []
    for person in signers(each):
        label = person.romaji or person.text
        found.append({"type": "Person", "_label": label, "note": NO_ATTRIBUTION})
    for place in places_named(each):
        found.append({"type": "Place", "_label": place.romaji or place.text})
    for number, date in enumerate(each.interpretation.dates, start=1):
        if date.first_day and date.last_day and date.sure:
            found.append(
                {
                    "id": f"{name}/date/{number}",
                    "type": "TimeSpan",
                    "_label": f"{date.text}: {date_text(date, style)}",
                    "begin_of_the_begin": f"{date.first_day.isoformat()}T00:00:00Z",
                    "end_of_the_end": f"{date.last_day.isoformat()}T23:59:59Z",
                    "note": AS_INSCRIBED,
                }
            )
    return found
