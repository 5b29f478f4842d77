"""Build prose_usual.tsv: words in kanji of several readings of which EDICT marks one as usual.

Needs the Debian package edict. EDICT marks a reading (P) that lists of frequent words have: of 鉄
てつ, and not くろがね. Where several are marked so, it does not tell which is meant.
"""

from __future__ import annotations

import re
from collections import defaultdict

from sources import EDICT, lines_of

from inscribe.forms import normalise_text

WORD = re.compile(r"([一-鿿]{1,3}) \[([ぁ-ゖー]+)\] /(.*)/")
USUAL = "/(P)"


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    found: dict[str, dict[str, bool]] = defaultdict(dict)
    for line in lines_of(EDICT):
        if entry := WORD.match(line):
            ways = found[normalise_text(entry[1]).text]
            ways[entry[2]] = ways.get(entry[2], False) or USUAL in line
    rows = []
    for word, ways in sorted(found.items()):
        usual = [kana for kana, is_usual in ways.items() if is_usual]
        if len(ways) > len(usual) == 1:
            rows.append((word, *usual))
    return {"prose_usual": rows}
