"""Build proverbs.tsv: the proverbs of EDICT that are written in kanji and kana, with their reading.

Needs the Debian package edict. Proverbs in kanji alone are words, which compounds.py has.
"""

from __future__ import annotations

import re

from sources import EDICT, lines_of

from inscribe.forms import normalise_text

PROVERB = re.compile(r"(\S+) \[([ぁ-ゖー]+)\] /.*?\(proverb\) ([^/]+)/")
KANJI, KANA = re.compile("[一-鿿々]"), re.compile("[ぁ-ゖ]")
LEAST, MOST = 2, 40  # kanji of a proverb, for one is no mark of it; its signs


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    found: dict[tuple[str, str], str] = {}
    for line in lines_of(EDICT):
        entry = PROVERB.match(line)
        if entry is None or len(entry[1]) > MOST or not KANA.search(entry[1]):
            continue
        written = normalise_text(entry[1]).text
        if len(KANJI.findall(written)) >= LEAST:
            found.setdefault((written, entry[2]), entry[3].strip())
    return {"proverbs": [(*key, gloss) for key, gloss in sorted(found.items())]}
