"""Build glossary/kana/reduplications.tsv: the kana words that are commonly doubled.

A word of two or three kana counts as one where UniDic has its double as a single entry (いろいろ,
with the second half voiced or not: さまざま); words in historical spelling are added by hand.
Needs fugashi and unidic-lite.
"""

from __future__ import annotations

import itertools
import unicodedata
from collections import defaultdict
from collections.abc import Iterator

import fugashi
from sources import by_hand, listed

KANA = [chr(code) for code in range(0x3042, 0x3094) if chr(code) not in "ぃぅぇぉゎゃゅょっを"]
INSIDE = [*KANA, "っ"]


def voiced(kana: str) -> str:
    """Return a kana with its voicing mark, or itself where it takes none."""
    composed = unicodedata.normalize("NFC", kana + "\u3099")
    return composed if len(composed) == 1 else kana


def doubled(tagger: fugashi.Tagger) -> Iterator[tuple[str, str]]:
    """Yield words of two and three kana with their doubles, where UniDic has these as words."""
    for length in (2, 3):
        for kana in itertools.product(KANA, *([INSIDE] * (length - 1))):
            unit = "".join(kana)
            for double in dict.fromkeys((unit * 2, unit + voiced(unit[0]) + unit[1:])):
                words = tagger(double)
                if len(words) == 1 and not words[0].is_unk:
                    yield unit, double


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    doubles: dict[str, list[str]] = defaultdict(list)
    for unit, double in doubled(fugashi.Tagger()):
        doubles[unit].append(double)
    source = dict.fromkeys(doubles, "UniDic")
    for (line,) in by_hand("reduplications_by_hand.txt"):
        unit = line.rstrip("*")
        if unit not in doubles:
            second = voiced(unit[0]) + unit[1:] if line.endswith("*") else unit
            doubles[unit], source[unit] = [unit + second], "common practice"
    rows = [(unit, listed(doubles[unit]), source[unit]) for unit in sorted(doubles)]
    return {"reduplications": rows}
