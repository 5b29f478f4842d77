"""Entries as JSON: the record's facts beside what the stages found."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from inscribe import notation
from inscribe.report.json.collation import collation_as_json
from inscribe.report.json.reading import reading_as_json

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry


def entries_as_json(entries: list[Entry]) -> str:
    """Return one object, or a list of them where there are several entries."""
    made = [entry_as_json(entry) for entry in entries]
    return json.dumps(made[0] if len(made) == 1 else made, ensure_ascii=False, indent=2)


def entry_as_json(entry: Entry) -> dict[str, Any]:
    """Return one entry as plain data."""
    record = entry.record
    sizes = record.measurements
    names = ("length", "width", "height", "thickness", "diameter")
    return {
        "id": record.id,
        "kind": record.kind,
        "title": record.title,
        "measurements_mm": {
            name: value for name in names if (value := getattr(sizes, name)) is not None
        },
        "inscriptions": [_inscription(each) for each in entry.inscriptions],
        "remarks": record.remarks.strip(),
        "cautions": list(entry.cautions),
    }


def _inscription(each: InscriptionEntry) -> dict[str, Any]:
    inscription = each.inscription
    source = inscription.source
    named = {
        key: value
        for key in ("id", "title", "author", "work", "number")
        if (value := getattr(source, key, ""))
    }
    return {
        "place": inscription.place,
        "hand": inscription.hand,
        "execution": inscription.execution,
        "as_carved": notation.render(inscription.transcription),
        "reading": reading_as_json(each.interpretation),
        "translation": inscription.translation.strip(),
        "source": named or None,
        "missing_source": each.missing_source,
        "collation": collation_as_json(each.collation) if each.collation else None,
        "readers": [
            {
                "by": reader.by,
                "on": reader.on.isoformat() if reader.on else None,
                "text": reader.text,
                "romaji": reader.romaji,
                "remarks": reader.remarks,
            }
            for reader in inscription.readers
        ],
        "remarks": inscription.remarks.strip(),
    }
