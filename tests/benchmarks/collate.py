"""How well real differences are told from spelling, against plain character alignment.

Run: python tests/benchmarks/collate.py [--all] [--list]

The constants of ``inscribe.collation.align.differences.whole_words`` were set on odd-numbered
poems; the figures are of the even-numbered ones (``--all``: of both).

Each method gets the same pairs (see collate_pairs.py) and returns the spans that differ. A real
difference is found if a span touches it; a span is right if it touches a real difference; a span
is exact if it has the same signs on both sides. A poem is flagged if any span is reported.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
from collate_pairs import Change, Pair, pairs

Spans = list[tuple[tuple[int, int], tuple[int, int]]]


def by_inscribe(copy: str, source: str) -> Spans:
    from inscribe.collation import collate_texts

    groups = collate_texts(copy, source).groups
    return [
        ((g.copy.start, g.copy.end), (g.source.start, g.source.end))
        for g in groups
        if g.is_substantive
    ]


def by_opcodes(copy: str, source: str) -> Spans:
    from rapidfuzz.distance import Levenshtein

    steps = Levenshtein.opcodes(copy, source)
    return [
        ((s.src_start, s.src_end), (s.dest_start, s.dest_end)) for s in steps if s.tag != "equal"
    ]


def by_biopython(copy: str, source: str) -> Spans:
    from Bio.Align import PairwiseAligner

    aligner = PairwiseAligner(mode="global", match_score=1, mismatch_score=-1, gap_score=-1)
    codes = {char: n for n, char in enumerate(dict.fromkeys(copy + source))}
    alphabet = [chr(0x4E00 + n) for n in codes.values()]
    aligner.alphabet = "".join(alphabet)
    one, other = ("".join(chr(0x4E00 + codes[c]) for c in text) for text in (copy, source))
    blocks = aligner.align(one, other)[0].aligned
    spans: Spans = []
    i = j = 0
    for (a, b), (c, d) in [*zip(*blocks, strict=True), ((len(copy),) * 2, (len(source),) * 2)]:
        if a > i or c > j:
            spans.append(((int(i), int(a)), (int(j), int(c))))
        for offset in range(b - a):
            if copy[a + offset] != source[c + offset]:
                spans.append(((a + offset, a + offset + 1), (c + offset, c + offset + 1)))
        i, j = b, d
    return [((int(a), int(b)), (int(c), int(d))) for (a, b), (c, d) in spans]


def touches(span: tuple[tuple[int, int], tuple[int, int]], change: Change) -> bool:
    """Whether a span and a real difference share a sign (or a place, where one is empty)."""
    for (a, b), (c, d) in zip(span, (change.copy, change.source), strict=True):
        if (a < d and c < b) or (min(b - a, d - c) == 0 and a <= d and c <= b):
            return True
    return False


def figures(made: list[Pair], method: Callable[[str, str], Spans]) -> dict[str, float]:
    found = right = reported = real = exact = flagged = truly = hit = 0
    started = time.process_time()
    answers = [method(pair.copy, pair.source) for pair in made]
    seconds = time.process_time() - started
    for pair, spans in zip(made, answers, strict=True):
        real += len(pair.changes)
        reported += len(spans)
        found += sum(any(touches(s, c) for s in spans) for c in pair.changes)
        right += sum(any(touches(s, c) for c in pair.changes) for s in spans)
        exact += sum((c.copy, c.source) in spans for c in pair.changes)
        flagged += bool(spans)
        truly += bool(spans and pair.changes)
        hit += bool(pair.changes)
    return {
        "recall": found / real,
        "precision": right / reported if reported else 1.0,
        "exact": exact / real,
        "flagged right": truly / flagged if flagged else 1.0,
        "poems found": truly / hit,
        "seconds": seconds,
    }


METHODS = {
    "inscribe": by_inscribe,
    "rapidfuzz opcodes": by_opcodes,
    "biopython PairwiseAligner": by_biopython,
}


def main() -> None:
    made = [p for p in pairs() if "--all" in sys.argv or int(p.name.split()[0]) % 2 == 0]
    by_inscribe("春は", "はるも")  # load the tables before the clock runs
    print(f"{len(made)} pairs, {sum(bool(p.changes) for p in made)} with a real difference")
    table = {name: figures(made, method) for name, method in METHODS.items()}
    columns = [name for name in next(iter(table.values())) if name != "seconds"]
    print(f"{'':28}" + "".join(f"{column:>15}" for column in columns) + f"{'time ratio':>15}")
    unit = table["biopython PairwiseAligner"]["seconds"]
    for name, row in table.items():
        cells = "".join(f"{row[column]:15.3f}" for column in columns)
        print(f"{name:28}{cells}{row['seconds'] / unit:15.2f}")
    if "--list" in sys.argv:
        list_wrong(made)


def list_wrong(made: list[Pair]) -> None:
    """Print every pair where a span is not exact."""
    for pair in made:
        spans = by_inscribe(pair.copy, pair.source)
        if {(c.copy, c.source) for c in pair.changes} != set(spans):
            truth = [
                (pair.copy[slice(*c.copy)], pair.source[slice(*c.source)]) for c in pair.changes
            ]
            told = [(pair.copy[slice(*a)], pair.source[slice(*b)]) for a, b in spans]
            print(pair.name, pair.copy, pair.source, "TRUE", truth, "TOLD", told)


if __name__ == "__main__":
    main()
