"""Which tests run which lines of the code, recorded once with coverage's contexts.

Every test of the files named is run in this process, and what it reached is kept: for each file of
the package and each line, the tests that ran it. What the program keeps between tests is forgotten
before each file of tests, so that a value made once is seen by one test of every file.
"""

from __future__ import annotations

import json
import os
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[3]
EXAMPLES = 10  # of a property while it is recorded: they show which lines it reaches


@dataclass(frozen=True)
class Reach:
    """What was recorded.

    Attributes:
        tests: the test of each number, as pytest names it.
        seconds: how long each took (of the processor, while it was recorded).
        lines: for each file of the package, the numbers of the tests that ran each line.
    """

    tests: list[str]
    seconds: list[float]
    lines: dict[str, dict[int, list[int]]]

    def of(self, file: str, lines: range) -> set[int]:
        """Return the tests that ran any of the lines of a file."""
        by_line = self.lines.get(file, {})
        return {test for line in lines for test in by_line.get(line, ())}

    def joined(self, other: Reach) -> Reach:
        """Return what both recorded, the tests of ``other`` after these."""
        after = len(self.tests)
        lines = {file: {n: list(t) for n, t in found.items()} for file, found in self.lines.items()}
        for file, by_line in other.lines.items():
            here = lines.setdefault(file, {})
            for line, tests in by_line.items():
                here.setdefault(line, []).extend(test + after for test in tests)
        return Reach(self.tests + other.tests, self.seconds + other.seconds, lines)

    def write(self, path: Path) -> None:
        path.write_text(
            json.dumps({"tests": self.tests, "seconds": self.seconds, "lines": self.lines})
        )

    @classmethod
    def read(cls, path: Path) -> Reach:
        data = json.loads(path.read_text())
        lines = {
            file: {int(line): tests for line, tests in by_line.items()}
            for file, by_line in data["lines"].items()
        }
        return cls(data["tests"], data["seconds"], lines)


class Recorder:
    """A pytest plugin that switches coverage's context with each test that passes."""

    def __init__(self, cover: Any) -> None:
        self.cover = cover
        self.seconds: dict[str, float] = {}
        self.failed: set[str] = set()
        self._began = 0.0
        self._file = ""

    def pytest_collection_modifyitems(self) -> None:
        from hypothesis import settings

        settings.register_profile("few", settings.get_profile("house"), max_examples=EXAMPLES)
        settings.load_profile("few")

    def pytest_runtest_logstart(self, nodeid: str) -> None:
        file = nodeid.partition("::")[0]
        if file != self._file:
            self._file = file
            from inscribe import tables

            tables.forget()
        self.cover.switch_context(nodeid)
        self._began = time.process_time()

    def pytest_runtest_logreport(self, report: Any) -> None:
        if report.failed or report.skipped:
            self.failed.add(report.nodeid)
            if report.failed:
                print(f"\nfailed, not used: {report.nodeid}\n{str(report.longrepr)[-600:]}")

    def pytest_runtest_logfinish(self, nodeid: str) -> None:
        self.seconds[nodeid] = time.process_time() - self._began
        self.cover.switch_context("")


def record(test_files: list[str], package_folders: list[str], path: Path) -> Reach:
    """Run the tests of the files and keep what each reached in the folders of the package."""
    import coverage
    import pytest

    os.chdir(ROOT)
    sys.path[:0] = [str(ROOT), str(ROOT / "tests")]
    include = [
        f"{ROOT}/{folder}/*" if "." not in folder else f"{ROOT}/{folder}"
        for folder in package_folders
    ]
    cover = coverage.Coverage(data_file=None, include=include, config_file=False)
    recorder = Recorder(cover)
    cover.start()
    options = ["-o", "addopts=", "-q", "-p", "no:xdist", "-p", "no:cacheprovider"]
    pytest.main([*options, "--doctest-modules", *test_files], plugins=[recorder])
    cover.stop()
    reach = _reach(cover.get_data(), recorder)
    reach.write(path)
    return reach


def _reach(data: Any, recorder: Recorder) -> Reach:
    tests = [test for test in recorder.seconds if test not in recorder.failed]
    number = {test: place for place, test in enumerate(tests)}
    lines: dict[str, dict[int, list[int]]] = {}
    for file in data.measured_files():
        by_line = {
            line: sorted(number[test] for test in contexts if test in number)
            for line, contexts in data.contexts_by_lineno(file).items()
        }
        lines[str(Path(file).relative_to(ROOT))] = by_line
    return Reach(tests, [recorder.seconds[test] for test in tests], lines)
