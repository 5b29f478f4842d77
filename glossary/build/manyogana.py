"""Build glossary/kana/manyogana.tsv: kanji used for their sound, from hentaigana and a hand list.

Runs after hentaigana.
"""

from __future__ import annotations

from sources import by_hand, table

from inscribe.tables import SEPARATOR


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    found: dict[tuple[str, str], tuple[str, str]] = {}
    for _, kana, parent, name in table("hentaigana"):
        for sound in kana.split(SEPARATOR) if parent and "KATAKANA" not in name else []:
            found[sound, parent] = ("kana", "Unicode")
    for (line,) in by_hand("manyogana_by_hand.txt"):
        kana, _, kanji = line.partition(" ")
        for use, chars in zip(("on", "kun"), kanji.split("|"), strict=True):
            for char in chars:
                found.setdefault((kana, char), (use, "common practice"))
    return {"manyogana": [(char, kana, *row) for (kana, char), row in sorted(found.items())]}
