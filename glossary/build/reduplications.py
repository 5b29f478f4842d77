"""Build glossary/reduplications.tsv: the kana words that are commonly doubled.

A word of two or three kana counts as one where UniDic has its double as a single entry (いろいろ,
with the second half voiced or not: さまざま); words in historical spelling are added by hand.
Run: python glossary/build/reduplications.py
"""

from __future__ import annotations

import itertools
import unicodedata
from collections import defaultdict
from collections.abc import Iterator

import fugashi
from sources import GLOSSARY, write

HEADER = """\
# Words of two or more kana that are commonly doubled: where one stands before 〱 or 〲, it is what
# the mark repeats.
# Columns: unit; doubled (how the double is said, one or two ways); source (UniDic = its double is
#   one entry there; common practice = added by hand).
# Sources: UniDic 2.1.2 (unidic-lite 1.0.8, BSD licence); glossary/build/reduplications_by_hand.txt
#   (common practice, from memory).
# Rebuild: python glossary/build/reduplications.py
unit\tdoubled\tsource
"""
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


def main() -> None:
    """Write the table."""
    lines = (GLOSSARY / "build" / "reduplications_by_hand.txt").read_text("utf-8").splitlines()
    doubles: dict[str, list[str]] = defaultdict(list)
    for unit, double in doubled(fugashi.Tagger()):
        doubles[unit].append(double)
    source = dict.fromkeys(doubles, "UniDic")
    for line in lines:
        unit = line.rstrip("*")
        if unit and not line.startswith("#") and unit not in doubles:
            second = voiced(unit[0]) + unit[1:] if line.endswith("*") else unit
            doubles[unit], source[unit] = [unit + second], "common practice"
    rows = [(unit, " ".join(doubles[unit]), source[unit]) for unit in sorted(doubles)]
    write("reduplications", HEADER, rows)


if __name__ == "__main__":
    main()
