"""Which tests run which lines of the code, recorded once for each file of tests.

What a file of tests reached is kept in the cache folder under what the file and the modules that it
reached say, so that only what has changed is run again: the file itself, or a module that gets a
fault. Which tests run the lines of a module does not change when another module does. What the
program keeps between tests is forgotten before each file, so that a value made once is seen by one
test of every file.
"""

from __future__ import annotations

import hashlib
import json
import time
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[3]


@dataclass(frozen=True)
class Reach:
    """What was recorded.

    Attributes:
        seconds: how long each test took, of the processor.
        lines: for each file of the package and line, the tests that ran it.
    """

    seconds: dict[str, float] = field(default_factory=dict)
    lines: dict[str, dict[int, list[str]]] = field(default_factory=dict)

    def of(self, file: str, lines: Iterable[int] | None = None) -> set[str]:
        """Return the tests that ran any of the lines of a file, or any line at all."""
        by_line = self.lines.get(file, {})
        return {
            test for line in (by_line if lines is None else lines) for test in by_line.get(line, ())
        }

    def take(self, part: dict[str, Any]) -> None:
        """Add what was recorded of one file of tests."""
        tests = list(part["seconds"])
        self.seconds.update(part["seconds"])
        for file, by_line in part["lines"].items():
            here = self.lines.setdefault(file, defaultdict(list))
            for line, numbers in by_line.items():
                here[int(line)] += [tests[number] for number in numbers]


@cache
def _digest(file: str) -> str:
    path = ROOT / file
    return hashlib.sha256(path.read_bytes()).hexdigest()[:16] if path.exists() else ""


def kept_of(file: str, folder: Path, faulty: Iterable[str]) -> dict[str, Any] | None:
    """Return what was recorded of a file of tests, as far as it is still true.

    None where the file has changed, or one of the ``faulty`` modules that its tests reached.
    """
    path = folder / (file.replace("/", "_") + ".json")
    if not path.exists():
        return None
    part: dict[str, Any] = json.loads(path.read_text())
    changed = {name for name, digest in part["digests"].items() if _digest(name) != digest}
    if file in changed or not changed.isdisjoint(faulty):
        return None
    return {**part, "lines": {n: lines for n, lines in part["lines"].items() if n not in changed}}


def record(file: str, items: list[Any], modules: list[str], folder: Path, run: Any) -> None:
    """Run the tests of a file and keep what each reached of the modules.

    ``run`` runs one test and says whether it passed.
    """
    import coverage

    cover = coverage.Coverage(
        data_file=None, include=[str(ROOT / name) for name in modules], config_file=False
    )
    cover.start()
    seconds: dict[str, float] = {}
    for item in items:
        cover.switch_context(item.nodeid)
        began = time.process_time()
        passed = run(item)
        took = time.process_time() - began
        cover.switch_context("")
        if passed:
            seconds[item.nodeid] = took
    cover.stop()
    lines = _lines(cover.get_data(), seconds)
    digests = {name: _digest(name) for name in (file, *lines)}
    part = {"digests": digests, "seconds": seconds, "lines": lines}
    path = folder / (file.replace("/", "_") + ".json")
    path.with_suffix(".part").write_text(json.dumps(part))
    path.with_suffix(".part").replace(path)


def _lines(data: Any, seconds: dict[str, float]) -> dict[str, dict[int, list[int]]]:
    numbers = {test: number for number, test in enumerate(seconds)}
    lines: dict[str, dict[int, list[int]]] = {}
    for file in data.measured_files():
        found = {
            line: [numbers[test] for test in contexts if test in numbers]
            for line, contexts in data.contexts_by_lineno(file).items()
        }
        lines[str(Path(file).relative_to(ROOT))] = {n: tests for n, tests in found.items() if tests}
    return {file: by_line for file, by_line in lines.items() if by_line}
