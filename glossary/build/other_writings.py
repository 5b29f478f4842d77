"""Build other_writings.tsv from EDICT: writings of one word that nothing but EDICT shows to be so.

They have no character in common, and neither their characters nor the dictionary of verse tell
that they are one word, as 籬 and 間狭 are (凩 and 木枯 have one dictionary form, 浪 and 波 one
meaning). EDICT gives the writings of an entry one gloss. Needs the Debian package edict.
"""

from __future__ import annotations

import re
from collections import defaultdict
from itertools import combinations

from sources import EDICT, lines_of

from inscribe.collation.align.searching.homophones import seem_other_words
from inscribe.forms import normalise_text
from inscribe.scripts import is_kanji

_ENTRY = re.compile(r"(\S{1,3}) \[([\u3041-\u3096]{1,8})\] /(.*)/")
_USUAL = "/(P)"
_NOT_SO = ("(iK)", "(oik)")


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table, in the order of their signs."""
    alike: defaultdict[tuple[str, str], set[str]] = defaultdict(set)
    for line in lines_of(EDICT):
        entry = _ENTRY.match(line)
        if entry and any(map(is_kanji, entry[1])) and not any(mark in line for mark in _NOT_SO):
            alike[entry[2], entry[3].replace(_USUAL, "")].add(normalise_text(entry[1]).text)
    found = {
        pair
        for written in alike.values()
        for pair in combinations(sorted(written), 2)
        if seem_other_words(*pair)
    }
    return {"other_writings": sorted(found)}
