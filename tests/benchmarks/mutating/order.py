"""The tests that reach a fault, in the order in which they are tried."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import Path

from mutating.operators import Fault
from mutating.reach import Reach

ROOT = Path(__file__).parents[3]
SLOW = ("tests/test_entry.py", "tests/test_tei.py")  # their tests show every part at once: last
ANSWERS = ("_answers.py", "_sentences.py", "_messages.py", "_values.py")
LONG = 2.0  # seconds of a test that is tried last
NEAR = 20  # tests of a line; with fewer, those of its function are run too, then of its module


def reaching(
    reach: Reach, file: str, fault: Fault, noticing: Mapping[str, int]
) -> list[tuple[str, float]]:
    """Return the tests that run the line of a fault, each with its seconds.

    The tests that have noticed other faults of the module come first. Those that run the line
    itself come before those that run its function or module; of both, those of whole answers come
    first, file by file, for those of a file share what they look at, then of each other file one,
    the fastest, then of each file another: so tests of many kinds are tried early.

    Args:
        reach: which tests run which lines.
        file: where the fault is.
        fault: the fault.
        noticing: how many other faults of the module each test has noticed.
    """
    line = reach.of(file, [fault.line])
    near: set[str] = set()
    if fault.function == (0, 0):
        near = {test for lines in _naming(file, fault.name) for test in reach.of(*lines)}
    elif len(line) < NEAR:
        near = reach.of(file, range(fault.function[0] + 1, fault.function[1] + 1))
    if len(line | near) < NEAR:
        near |= reach.of(file)
    whole = {test for test in line | near if is_whole(test)}
    ordered = [
        *_by_files(reach, whole & line),
        *_mixed(reach, line - whole),
        *_by_files(reach, whole - line),
        *_mixed(reach, near - line - whole),
    ]
    ordered.sort(key=lambda test: -noticing.get(test, 0))
    return [(test, reach.seconds[test]) for test in ordered]


def is_whole(test: str) -> bool:
    """Whether a test holds whole answers."""
    return test.partition("::")[0].endswith(ANSWERS)


def _by_files(reach: Reach, tests: set[str]) -> list[str]:
    """Return tests file by file, the file with the fastest tests first."""
    files: dict[str, list[str]] = {}
    for test in sorted(tests, key=lambda test: (reach.seconds[test], test)):
        files.setdefault(test.partition("::")[0], []).append(test)

    def mean(file: str) -> float:
        return sum(reach.seconds[test] for test in files[file]) / len(files[file])

    return [test for file in sorted(files, key=mean) for test in files[file]]


def _mixed(reach: Reach, tests: set[str]) -> list[str]:
    """Return tests so that every file has its turn, the fastest of each first; slow ones last."""
    turns = Counter[str]()
    placed = []
    for test in sorted(tests, key=lambda test: (reach.seconds[test], test)):
        of_file = test.partition("::")[0]
        turns[of_file] += 1
        last = of_file in SLOW or reach.seconds[test] > LONG
        placed.append((last, turns[of_file], reach.seconds[test], test))
    return [placed_test[-1] for placed_test in sorted(placed)]


def _naming(file: str, name: str) -> Iterator[tuple[str, range]]:
    """Yield the lines of functions that name a constant or class, in the whole package."""
    for path in [file, *(str(p.relative_to(ROOT)) for p in (ROOT / "inscribe").rglob("*.py"))]:
        text = (ROOT / path).read_text("utf-8")
        if name.partition(".")[0] in text:
            for node in ast.walk(ast.parse(text)):
                if isinstance(node, ast.FunctionDef):
                    names = {n.id for n in ast.walk(node) if isinstance(n, ast.Name)}
                    if name in names:
                        yield path, range(node.lineno + 1, (node.end_lineno or node.lineno) + 1)
