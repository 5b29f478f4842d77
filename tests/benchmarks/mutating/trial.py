"""One fault tried: a forked process imports the faulty module and runs the tests that reach it.

The process that forks has imported the libraries the tests need, but nothing of the package; so the
child imports the package as it is, but for one module, whose code is compiled from the faulty tree.
Decorators, constants, defaults and what other modules took from it are all of the faulty one.
"""

from __future__ import annotations

import ast
import contextlib
import importlib.abc
import importlib.machinery
import json
import os
import resource
import signal
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[3]
LIBRARIES = (
    "pytest", "hypothesis", "hypothesis.strategies", "click.testing", "numpy", "fugashi", "jaconv",
    "unidic_lite", "rich.console", "rich.table", "jinja2", "rapidfuzz", "tomlkit", "re2", "sqlite3",
    "platformdirs", "xml.etree.ElementTree", "html5lib", "lxml.etree", "jsonschema", "decimal",
)  # fmt: skip
FEW = 2  # seconds of the processor that a start of pytest takes, at least
MEMORY = 16 << 30  # bytes of address space that a child may have


@dataclass(frozen=True)
class Outcome:
    """What became of a trial.

    Attributes:
        state: "caught", "survived", "hung" (longer than its tests ever take), "unreached" (no
            test runs the line).
        by: the test that failed first, or why the module could not be imported.
        tests: how many tests were run.
        seconds: seconds of the processor.
    """

    state: str
    by: str
    tests: int
    seconds: float


class _Loader(importlib.machinery.SourceFileLoader):
    """Loads a module from a tree instead of its file."""

    tree: ast.Module

    def get_code(self, fullname: str) -> Any:
        return compile(self.tree, self.path, "exec", dont_inherit=True)


class _Finder(importlib.abc.MetaPathFinder):
    """Finds the one module that has a fault."""

    def __init__(self, module: str, tree: ast.Module) -> None:
        self.module, self.tree = module, tree

    def find_spec(self, fullname: str, path: Any, target: Any = None) -> Any:
        if fullname != self.module:
            return None
        spec = importlib.machinery.PathFinder.find_spec(fullname, path, target)
        assert spec is not None
        assert spec.origin is not None
        loader = _Loader(fullname, spec.origin)
        loader.tree = self.tree
        spec.loader = loader
        return spec


class _Chosen:
    """A pytest plugin: the chosen tests only, in the order given, as long as there is time."""

    def __init__(self, tests: Sequence[str], budget: float) -> None:
        self.place = {test: place for place, test in enumerate(tests)}
        self.budget = budget
        self.ran = 0
        self.failed = ""

    def pytest_collection_modifyitems(self, config: Any, items: list[Any]) -> None:
        from hypothesis import settings

        settings.register_profile(
            "trial", settings.get_profile("house"), database=None, derandomize=True
        )
        settings.load_profile("trial")
        items[:] = sorted(
            (item for item in items if item.nodeid in self.place),
            key=lambda item: self.place[item.nodeid],
        )

    def pytest_runtest_logreport(self, report: Any) -> None:
        self.ran += report.when == "call"
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def pytest_collectreport(self, report: Any) -> None:
        if report.failed and not self.failed:
            self.failed = f"{report.nodeid} cannot be collected"

    def pytest_runtest_logfinish(self, nodeid: str) -> None:
        if time.process_time() > self.budget:
            _say(self)
            os._exit(0)


_pipe = -1


def _say(chosen: _Chosen) -> None:
    os.write(_pipe, json.dumps([chosen.failed, chosen.ran, time.process_time()]).encode())


def ready() -> None:
    """Import what every trial needs, and keep compiled modules."""
    os.chdir(ROOT)
    sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests/outside")]
    for name in LIBRARIES:
        with contextlib.suppress(ImportError):
            import_module(name)


def tried(module: str, tree: ast.Module, tests: Sequence[str], budget: float) -> Outcome:
    """Try a faulty module on tests, at most ``budget`` seconds of the processor."""
    if not tests:
        return Outcome("unreached", "", 0, 0.0)
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        _run(module, tree, tests, budget, writing)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        said = pipe.read()
    _, status = os.waitpid(child, 0)
    if not said:
        hung = os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGXCPU, signal.SIGALRM)
        how = f"ended by signal {os.WTERMSIG(status)}" if os.WIFSIGNALED(status) else "ended"
        return Outcome("hung" if hung else "caught", how, 0, budget)
    by, ran, seconds = json.loads(said)
    return Outcome("caught" if by else "survived", by, ran, seconds)


def _run(module: str, tree: ast.Module, tests: Sequence[str], budget: float, pipe: int) -> None:
    """Run the tests in this process, say what became of them, and end it."""
    global _pipe
    _pipe = pipe
    limit = int(3 * budget) + FEW
    resource.setrlimit(resource.RLIMIT_CPU, (limit, limit + 2))
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    signal.alarm(20 * limit)
    log = os.open(os.devnull, os.O_WRONLY)
    os.dup2(log, 1)
    os.dup2(log, 2)
    sys.meta_path.insert(0, _Finder(module, tree))
    chosen = _Chosen(tests, budget)
    try:
        import pytest

        files = sorted({test.partition("::")[0] for test in tests})
        options = ["-o", "addopts=", "-x", "-q", "-p", "no:xdist", "-p", "no:cacheprovider"]
        code = pytest.main([*options, "--doctest-modules", *files], plugins=[chosen])
        if code not in (0, 1, 5) and not chosen.failed:
            chosen.failed = f"pytest ended with {int(code)}"
    except BaseException as error:  # whatever a fault brings about is what is asked for
        chosen.failed = chosen.failed or f"{type(error).__name__}: {error}"
    _say(chosen)
    os._exit(0)
