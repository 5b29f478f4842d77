"""All accuracy benchmarks in one table: ``python tests/benchmarks [--quick]``.

A row is a set of texts: who wrote it, whether its rows were looked at while the program was made
or only measured, how many were right, and what a general-purpose tool has right in the same run
(pykakasi for readings, difflib for differences in wording). ``--quick`` takes every tenth text,
each text once and for the first time, so the seconds are those of first sight; ``--only WORD`` the
sets whose name has the word. Only totals are printed. What takes long, or has tables of its own,
is named below the table.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parents[1])]

from authors import author, how  # noqa: E402

EVERY = 10
OTHERS = {
    "passages": "composed inscriptions divided, by five authors",
    "collate": "recall and precision of differences, beside plain alignment",
    "collate_manuscripts": "false alarms on manuscripts",
    "space": "verdicts on plates simulated by three authors, each measured on the others'",
    "find": "sources found, beside rapidfuzz and SQLite FTS5",
    "restore": "signs that were masked",
    "worn": "worn texts as read fills them, with and without a library",
    "chances": "how far chances can be trusted",
    "date_slips": "slips in dates; a generator of this project's: a check, no result",
    "division": "surnames; its own tables: a check, no result",
    "measuring": "plates drawn for it: a check, no result; no measured plates can be had",
    "mutants": "faults in the code that the tests notice",
    "falsified": "false cells of tables that the tests notice",
}


@dataclass(frozen=True)
class Row:
    """One line of the table."""

    name: str
    texts: int
    right: float
    peer: float
    of: str
    seconds: float


def readings(every: int, only: str) -> Iterator[Row]:
    """Yield the sets of texts with readings: how many are read right as a whole."""
    import chances
    import reading
    import signatures
    import usual

    peer = usual.pykakasi_reader()
    ours = usual.inscribe_reader()
    sets = [
        (name, [(case.text, frozenset(case.right)) for case in cases], reading.letters)
        for name, cases in chances.cases(last=True).items()
    ]
    for path in usual.FILES:
        if path.exists() and "formulas_look" not in path.name and "s_measure" not in path.name:
            name = path.stem.replace("_look", ", look").replace("_measure", ", measure")
            rows = [(row.carved, row.right) for row in usual.rows(path)]
            sets.append((name, rows, usual.letters))
    for path in signatures.FILES:
        name = path.stem.replace("_look", ", look").replace("_measure", ", measure")
        cases_of_file = [(each.text, frozenset(each.right)) for each in signatures.of_file(path)]
        sets.append((name, cases_of_file, signatures.letters))
    for name, cases, letters in sets:
        if only in name and (some := cases[::every]):
            began = time.perf_counter()
            right = sum(letters(ours(text)[0]) in truth for text, truth in some)
            took = time.perf_counter() - began
            theirs = sum(letters(peer(text)[0]) in truth for text, truth in some)
            yield Row(name, len(some), right / len(some), theirs / len(some), "pykakasi", took)


def differences(every: int, only: str) -> Iterator[Row]:
    """Yield the sets of copies with an apparatus: the share of its entries that are exact."""
    import printed

    for path in (path for path in printed.FILES if path.exists()):
        name = path.stem.replace("_look", ", look").replace("_measure", ", measure")
        if only in name:
            rows = [json.loads(line) for line in path.read_text("utf-8").splitlines()][::every]
            began = time.perf_counter()
            exact, *_ = printed.figures(rows, printed.by_phrases_of_words)
            took = time.perf_counter() - began
            theirs, *_ = printed.figures(rows, printed.by_characters)
            yield Row(name, len(rows), exact, theirs, "difflib", took)


TABLES: tuple[Callable[[int, str], Iterator[Row]], ...] = (readings, differences)


def main() -> None:
    parser = argparse.ArgumentParser(prog="python tests/benchmarks", description=__doc__)
    parser.add_argument("--quick", action="store_true", help="every tenth text")
    parser.add_argument("--only", default="", help="sets whose name has this word")
    asked = parser.parse_args()
    print(f"{'set':<40}{'texts':>6}{'right':>7}{'peer':>7}  {'peer is':<10}{'how':<11}", end="")
    print(f"{'s':>6}  by")
    for table in TABLES:
        for row in table(EVERY if asked.quick else 1, asked.only):
            print(
                f"{row.name:<40}{row.texts:>6}{row.right:>7.0%}{row.peer:>7.0%}  {row.of:<10}"
                f"{how(row.name):<11}{row.seconds:>6.1f}  {author(row.name)}",
                flush=True,
            )
    print("\nWith tables of their own, python tests/benchmarks/NAME.py:")
    for name, about in OTHERS.items():
        print(f"  {name:<22}{about}")


if __name__ == "__main__":
    main()
