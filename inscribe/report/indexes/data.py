"""Indexes and translations as data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from inscribe.cautions import caution
from inscribe.report.entries import csv_table

if TYPE_CHECKING:
    from inscribe.indexing import IndexHeading, IndexKind, TranslatedText
    from inscribe.keys import IndexesKeys, TranslationsKeys

COLUMNS = ["index", "heading", "romaji", "note", "form", "object", "file", "inscription", "place"]
TRANSLATED = ["kind", "text", "translation", "object", "file", "inscription", "place"]


def indexes_as_json(
    found: Mapping[IndexKind, Sequence[IndexHeading]], records: int, unread: Sequence[str] = ()
) -> IndexesKeys:
    """Return the headings of each index, with their forms and where they stand."""
    return {
        "records": records,
        "unread": list(unread),
        "indexes": {kind: [each.to_dict() for each in some] for kind, some in found.items()},
        "cautions": [caution("attribution")] if "persons" in found else [],
    }


def indexes_as_csv(found: Mapping[IndexKind, Sequence[IndexHeading]]) -> str:
    """Return a row for each place of each form."""
    rows = [
        {
            "index": kind,
            "heading": heading.text,
            "romaji": heading.romaji,
            "note": heading.note,
            "form": form.text,
            **where.to_dict(),
        }
        for kind, headings in found.items()
        for heading in headings
        for form in heading.forms
        for where in form.where
    ]
    return _table(rows, COLUMNS)


def translations_as_json(found: Iterable[TranslatedText], records: int) -> TranslationsKeys:
    """Return each text or formula with its translations, and where it has none."""
    return {"records": records, "texts": [each.to_dict() for each in found]}


def translations_as_csv(found: Iterable[TranslatedText]) -> str:
    """Return a row for each inscription, the translation empty where it has none."""
    rows = [
        {"kind": each.kind, "text": each.text, "translation": words, **one.to_dict()}
        for each in found
        for words, where in (*each.translations, ("", each.without))
        for one in where
    ]
    return _table(rows, TRANSLATED)


def _table(rows: Sequence[Mapping[str, Any]], columns: list[str]) -> str:
    return csv_table([{key: str(row[key]) for key in columns} for row in rows], columns)
