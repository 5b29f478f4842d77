"""Restoring signatures: how high the truth ranks, by the class of word that the masked sign is in.

    python tests/benchmarks/restore_signatures.py [--half measure|look] [--lost]

Three sets of invented signatures: tests/data/signatures.tsv, tests/data/signatures_masked.tsv
(written for this, with names of signs that seldom stand in names), and signatures_fresh.tsv. Every
sign is masked in turn, no source and no collection is known. Signs of names cannot be told without
either: the last line leaves them out. ``--lost`` shows what came first instead (for the half that
may be looked at).
"""

from __future__ import annotations

import argparse
from collections import defaultdict

import restore as bench
from authors import told

from inscribe import dates, forms, notation
from inscribe.reading.signatures.split import divisions
from inscribe.restoring import restore

SETS = ("signatures.tsv", "signatures_masked.tsv", "signatures_fresh.tsv")
NAMES = ("name", "art_name", "surname", "common_name")
NUMERALS, CYCLE = "一二三四五六七八九十元廿", "甲乙丙丁戊己庚辛壬癸子丑寅卯辰巳午未申酉戌亥"


def classes(text: str) -> dict[int, str]:
    """Return the class of each sign of a signature, by index, as the reader divides it."""
    normal = forms.normalise(notation.parse(text))
    found = [""] * len(normal.text)
    for piece in divisions(normal.text)[0].pieces:
        found[piece.first : piece.last + 1] = [piece.kind] * (piece.last + 1 - piece.first)
    for date in dates.find(normal.text):
        kind = "age" if date.year is None and found[date.first] != "date" else "date"
        for at in range(date.first, date.last + 1):
            sort = _sort_in_date(normal.text[at])
            found[at] = f"{kind}, {sort}" if sort else kind
    found = ["之" if char == "之" else kind for char, kind in zip(normal.text, found, strict=True)]
    return dict(zip(normal.origin, found, strict=True))


def _sort_in_date(char: str) -> str:
    return "numeral" if char in NUMERALS else "cycle" if char in CYCLE else ""


def ranks(half: str, name: str, *, lost: bool) -> dict[str, list[int]]:
    """Return the ranks of the truth by class of sign."""
    found: defaultdict[str, list[int]] = defaultdict(list)
    for row in bench.rows(name):
        if row[0] != half or row[-1] == "verse":
            continue
        kinds = classes(row[1])
        for at, truth in bench.current(row[1]).items():
            masked = bench.masked(row[1], {at})
            best = restore(masked, sign=at, most=10, register="signature").lacunae[0].candidates
            rank = next((each.rank for each in best if each.text == truth), 9999)
            found[kinds[at]].append(rank)
            if lost and rank > 1:
                first = " ".join(f"{c.text} {c.probability:.2f}" for c in best[:5])
                print(f"{kinds[at]:14} {notation.render(masked)} {truth} {rank}: {first}")
    return found


def line(name: str, found: list[int]) -> str:
    """Return one line of the table."""
    count = len(found) or 1
    first, ten = sum(r == 1 for r in found) / count, sum(r <= 10 for r in found) / count
    return f"{name:30} {len(found):5} {first:7.3f} {ten:7.3f}"


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--half", choices=("look", "measure"), default="measure")
    parser.add_argument("--lost", action="store_true")
    options = parser.parse_args()
    for name in SETS:
        found = ranks(options.half, name, lost=options.lost and options.half == "look")
        print(told(f"{name}, {options.half}"))
        print(f"{f'{name}, {options.half}':30} {'signs':>5} {'first':>7} {'in 10':>7}")
        for kind, each in sorted(found.items(), key=lambda item: -len(item[1])):
            print(line(f"  {kind}", each))
        print(line("all", [rank for each in found.values() for rank in each]))
        others = [rank for kind, each in found.items() if kind not in NAMES for rank in each]
        print(line("all but names", others))


if __name__ == "__main__":
    main()
