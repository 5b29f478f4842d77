"""Build characters.tsv: strokes, readings and senses of kanji, from KANJIDIC2 and Unihan.

Needs the Debian packages kanjidic-xml and unicode-data; runs after the tables of forms.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET

from sources import kanjidic, listed, table, unihan

MOST_SENSES = 4

Row = tuple[str, ...]


def entry_row(entry: ET.Element) -> Row:
    """Return the row of one entry of KANJIDIC2."""
    readings = {
        kind: [r.text or "" for r in entry.iter("reading") if r.get("r_type") == kind]
        for kind in ("ja_on", "ja_kun")
    }
    names = [name.text or "" for name in entry.iter("nanori")]
    senses = [m.text or "" for m in entry.iter("meaning") if m.get("m_lang") is None]
    return (
        entry.findtext("literal", ""),
        listed(count.text or "" for count in entry.iter("stroke_count")),
        listed(readings["ja_on"]),
        listed(readings["ja_kun"]),
        listed(names),
        listed(sense.replace(";", ",") for sense in senses[:MOST_SENSES]),
        entry.findtext("misc/freq", ""),
    )


def commonest_first(row: Row) -> tuple[int, Row]:
    """Return the key by which the rows of common characters come before those of the others."""
    return int(row[6] or 9999), row


def forms_named() -> set[str]:
    """Return every single character that a table of forms names."""
    names = ("old_forms", "variants", "merged", "related_forms", "simplified")
    return {cell for name in names for row in table(name) for cell in row[:2] if len(cell) == 1}


def built() -> dict[str, list[Row]]:
    """Return the rows of the table."""
    rows = [entry_row(entry) for entry in kanjidic()]
    missing = forms_named() - {row[0] for row in rows}
    for char, _, strokes in unihan("IRGSources", "kTotalStrokes"):
        if char in missing:
            rows.append((char, strokes.split(" ")[0], "", "", "", "", ""))
    return {"characters": sorted(rows, key=commonest_first)}
