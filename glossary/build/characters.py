"""Build glossary/characters.tsv: strokes, readings and senses of kanji, from KANJIDIC2 and Unihan.

Run after the tables of forms: python glossary/build/characters.py
"""

from __future__ import annotations

import xml.etree.ElementTree as ET

from sources import kanjidic, table, unihan, write

HEADER = """\
# Kanji: strokes, readings and senses.
# Columns: char; strokes (the usual count first, then other counts in use); on; kun (a full stop
#   before what is usually written in kana, a hyphen where something else is joined on); names
#   (readings in names); senses (at most four, English); rank (by frequency in newspapers, where
#   known). Several values of a cell are separated by spaces, senses by semicolons. The rows of the
#   commonest stand first, where a search finds them soonest.
# Sources: KANJIDIC2 of the Electronic Dictionary Research and Development Group (Debian package
#   kanjidic-xml, CC BY-SA 4.0); strokes of the forms it lacks: kTotalStrokes of Unihan 15.0
#   (Unicode licence v3), counted on the Chinese shape.
# Licence: CC BY-SA 4.0.
# Rebuild: python glossary/build/characters.py (after the tables of forms)
char\tstrokes\ton\tkun\tnames\tsenses\trank
"""
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
        " ".join(count.text or "" for count in entry.iter("stroke_count")),
        " ".join(readings["ja_on"]),
        " ".join(readings["ja_kun"]),
        " ".join(names),
        "; ".join(sense.replace(";", ",") for sense in senses[:MOST_SENSES]),
        entry.findtext("misc/freq", ""),
    )


def commonest_first(row: Row) -> tuple[int, Row]:
    """Return the key by which the rows of common characters come before those of the others."""
    return int(row[6] or 9999), row


def forms_named() -> set[str]:
    """Return every single character that a table of forms names."""
    names = ("old_forms", "variants", "merged", "related_forms", "simplified")
    return {cell for name in names for row in table(name) for cell in row[:2] if len(cell) == 1}


def main() -> None:
    """Write the table."""
    rows = [entry_row(entry) for entry in kanjidic()]
    missing = forms_named() - {row[0] for row in rows}
    for char, _, strokes in unihan("IRGSources", "kTotalStrokes"):
        if char in missing:
            rows.append((char, strokes.split(" ")[0], "", "", "", "", ""))
    write("characters", HEADER, sorted(rows, key=commonest_first))


if __name__ == "__main__":
    main()
