"""How well composed inscriptions are divided into passages and read.

Run: python tests/benchmarks/passages.py [--set look|measure|all] [--misses] [--file FILE ...]

The inscriptions are invented, by eleven authors who did not see each other's (composed_*;
their first line has the conventions). Of the fourth (composed_e) only the half that was looked at
lies here. The third (composed_d) wrote when the program was nearly as it is: when its half
"measure" was first read, 88% were divided right, 93% of the passages were in their kind, 78% of the
signatures and 62% of the whole readings right; of the fifth's (composed_f) 90, 97, 87 and 52%, of
the sixth's (composed_g) 80, 90, 43 and 20%, of the seventh's (composed_h) 93, 97, 88 and 83%; of
all 80 of the eighth's (composed_i) 96, 98, 88 and 60%; of all 80 of the ninth's (composed_j) 91,
95, 81 and 69%; of all 80 of the tenth's (composed_k), who lists every combination of readings that
may be right, 96, 100, 94 and 79%; the 40 of the eleventh (composed_n: a text, who wrote it, who
carved it) are given without readings: 75% divided, 98% of the kinds. Constants were set on the
``look`` halves
alone, and only their misses are ever shown.
Of each inscription is asked:

divided     whether the passages are the right stretches of signs
kind        of the right passages, those most of whose signs are in a passage of their kind
signatures  of the right signatures, those found as a passage and read as one of the right readings
first 3     of the right signatures, those of which a right reading is among the first three
reading     whether the whole romanised reading is right

Letters are compared without case, spaces, hyphens and marks; macrons count, (kaō) is left out. A
program that knows no passages is asked for the reading alone.
"""

from __future__ import annotations

import argparse
import json
import re
import time
import unicodedata
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from authors import told

from inscribe.notation import parse
from inscribe.reading import read_text

DATA = Path(__file__).parent.parent / "data"
SETS = {
    "look": tuple(f"composed_{author}_look.jsonl" for author in "abdefghijkn"),
    "measure": tuple(f"composed_{author}_measure.jsonl" for author in "abdfghijkn"),
}
INSIDE = "break inside a column"
AT_COLUMNS = "breaks at columns"


class Marks(NamedTuple):
    """What is right of one inscription: (right, of how many) each."""

    divided: tuple[int, int]
    kind: tuple[int, int]
    signatures: tuple[int, int]
    first_3: tuple[int, int]
    reading: tuple[int, int]


def letters(text: str) -> str:
    """Return the letters of a romanised text, macrons kept."""
    plain = unicodedata.normalize("NFC", text.lower()).replace("(kaō)", "")
    return re.sub("[^a-zāīūēō]", "", plain)


def rows(path: Path) -> Iterator[dict[str, Any]]:
    """Yield the inscriptions of a file."""
    for line in path.read_text("utf-8").splitlines():
        row = json.loads(line)
        if "text" in row:
            yield row


def spans_of(row: dict[str, Any]) -> list[tuple[int, int]]:
    """Return the first and last sign of each passage."""
    spans, first = [], 0
    for part in row["parts"]:
        count = len(parse(part["text"]).signs)
        spans.append((first, first + count - 1))
        first += count
    return spans


def accepted(part: dict[str, Any]) -> set[str]:
    """Return the letters of the right readings of a passage."""
    by_sound = part.get("by_sound", ())
    others = [by_sound] if isinstance(by_sound, str) else by_sound
    ways = (part["romaji"], *part.get("romaji_alternatives", ()), *others)
    return {letters(each) for each in ways}


def reads_right(found: str, parts: Sequence[dict[str, Any]]) -> bool:
    """Whether letters are one right reading of each passage, one after the other."""
    rests = {letters(found)}
    for part in parts:
        ways = accepted(part)
        rests = {r.removeprefix(w) for r in rests for w in ways if r.startswith(w)}
    return "" in rests


def has_break_inside(row: dict[str, Any]) -> bool:
    """Whether two passages meet inside a column."""
    ends = {parse_end.signs[0].index for parse_end in parse(row["text"]).columns}
    return any(first not in ends for first, _ in spans_of(row))


def kind_at(found: Sequence[Any], first: int, last: int) -> str:
    """Return the kind of the passage that has most of the signs."""
    shared = [min(p.last, last) - max(p.first, first) + 1 for p in found]
    return str(found[shared.index(max(shared))].kind)


def marked(row: dict[str, Any]) -> Marks:
    """Return what is right of one inscription."""
    read = read_text(row["text"])
    spans, parts = spans_of(row), row["parts"]
    found = getattr(read, "passages", ())
    by_span = {(p.first, p.last): p for p in found}
    kinds = [
        bool(found) and kind_at(found, *span) == part["kind"]
        for span, part in zip(spans, parts, strict=True)
    ]
    given = all("romaji" in part for part in parts)
    signed = [
        [letters(p.romaji) in accepted(part) for p in by_span[span].proposals]
        if span in by_span
        else [False]
        for span, part in zip(spans, parts, strict=True)
        if part["kind"] == "signature" and "romaji" in part
    ]
    return Marks(
        (list(by_span) == spans, 1),
        (sum(kinds), len(kinds)),
        (sum(right[0] for right in signed), len(signed)),
        (sum(any(right[:3]) for right in signed), len(signed)),
        (given and reads_right(read.proposals[0].romaji, parts), given),
    )


def shown(name: str, marks: Sequence[Marks]) -> str:
    """Return one line of the table."""
    cells = []
    for column in zip(*marks, strict=True):
        right, of = (sum(figures) for figures in zip(*column, strict=True))
        cells.append(f"{right:4d}/{of:<4d} {right / of if of else 1:4.0%}")
    return f"{name:24}" + "  ".join(cells)


def _miss(row: dict[str, Any], marks: Marks) -> str:
    read = read_text(row["text"])
    found = [f"{p.kind}:{p.text}" for p in getattr(read, "passages", ())]
    wanted = [f"{p['kind']}:{p['text']}" for p in row["parts"]]
    lines = [f"{row['id']} {row['class']} {row['text']}"]
    if not marks.divided[0] or marks.kind[0] != marks.kind[1]:
        lines += [f"   found  {' | '.join(found)}", f"   wanted {' | '.join(wanted)}"]
    if not marks.reading[0]:
        wanted_reading = " | ".join(part.get("romaji", "") for part in row["parts"])
        lines += [f"   read   {read.proposals[0].romaji}", f"   wanted {wanted_reading}"]
    return "\n".join(lines)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--set", choices=(*SETS, "all"), default="all")
    parser.add_argument("--file", nargs="*", default=(), help="other files of the same form")
    parser.add_argument("--misses", action="store_true", help="show those of the set look")
    options = parser.parse_args()
    chosen = SETS if options.set == "all" else {options.set: SETS[options.set]}
    files = {name: [DATA / each for each in names] for name, names in chosen.items()}
    if options.file:
        files = {"look": [Path(each) for each in options.file]}
    for name, paths in files.items():
        groups: dict[str, list[Marks]] = {}
        start = time.perf_counter()
        for path in paths:
            for row in rows(path):
                marks = marked(row)
                inside = INSIDE if has_break_inside(row) else AT_COLUMNS
                for group in ("all", inside, f"class {row['class']}", path.stem):
                    groups.setdefault(group, []).append(marks)
                if options.misses and name == "look" and not all(r == n for r, n in marks):
                    print(_miss(row, marks))
        seconds = time.perf_counter() - start
        print("\n".join(told(path.stem) for path in paths))
        print(f"{name}: {len(groups['all'])} inscriptions, {seconds:.1f} s")
        print(f"{'':24}" + "  ".join(f"{each:14}" for each in Marks._fields))
        print("\n".join(shown(group, groups[group]) for group in sorted(groups)))


if __name__ == "__main__":
    main()
