"""The process that tries faults: pytest, which has collected the tests, instead of running them.

Every trial is a fork of it, in which package, tests and libraries are loaded already. What the
program keeps of its tables is forgotten in each fork, for a fault may change it; the folders of
compiled dictionaries stay.
"""

from __future__ import annotations

import contextlib
import os
import pkgutil
import sys
from collections import defaultdict
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[3]
LONGEST = 3.0  # seconds of the processor of a test that is recorded
EXAMPLES = 5  # of a property while it is recorded: they show which lines it reaches
TRIED = 20  # of a property while a fault is tried: a hundred took most of the budget
WARM = ("武州住嶺暁作", "天保三年壬辰仲秋吉日", "霧はれて野山の露も光りけり", "天下泰平を祈る")


class Session:
    """A pytest plugin: ``work`` is done with the collected tests in place of running them."""

    def __init__(self, work: Callable[[dict[str, list[Any]]], None]) -> None:
        self.work = work

    def pytest_runtestloop(self, session: Any) -> bool:
        by_file = defaultdict(list)
        for item in session.items:
            by_file[item.nodeid.partition("::")[0]].append(item)
        self.work(by_file)
        return True


def collected(files: list[str], work: Callable[[dict[str, list[Any]]], None]) -> None:
    """Collect the tests of the files, and do some work with them, by their files."""
    import pytest

    os.chdir(ROOT)
    options = ["-o", "addopts=", "-q", "-s", "-p", "no:xdist", "-p", "no:cacheprovider"]
    pytest.main([*options, "--doctest-modules", *files], plugins=[Session(work)])


def ready() -> None:
    """Load all of the package, and what the first readings load of files that do not change."""
    import inscribe
    from inscribe.notation import parse
    from inscribe.reading import read

    for each in pkgutil.walk_packages(inscribe.__path__, "inscribe."):
        if not each.name.endswith("__main__"):
            import_module(each.name)
    for text in WARM:
        read(parse(text)).to_dict()


def forget(module: str = "") -> None:
    """Forget what was made of the tables by a module, and by the rooms that may import it.

    Rooms import one way only (``ORDER`` of ``tests/test_house.py``), so that what the rooms before
    it keep stays true. Without a module, everything is forgotten.
    """
    from inscribe import tables
    from inscribe.tables import glossary_folders

    if not module:
        tables.forget()
        return
    place = _place(module)
    for clear in glossary_folders._forgetters:
        kept = getattr(clear, "__self__", None)
        of = getattr(getattr(kept, "__wrapped__", None), "__module__", "")
        if not of or _place(of) >= place:
            clear()


def _place(module: str) -> int:
    """Return the place of a module's room in the order of imports; the last where it has none."""
    from test_house import ORDER

    name = module.removeprefix("inscribe.")
    while name and name not in ORDER:
        name = name.rpartition(".")[0]
    return ORDER.index(name) if name else len(ORDER)


def keep_apart(cache: Path) -> None:
    """Let a trial find nothing in the cache that another one kept, but for the dictionaries.

    What is kept of a folder is kept under what the files of the program say, and no fault stands
    there.
    """
    own = cache / "trials" / str(os.getppid())
    own.mkdir(parents=True, exist_ok=True)
    for kept in own.glob("kept-*"):
        kept.unlink()
    for each in cache.iterdir():
        if not each.name.startswith(("kept-", "trials", "reach", "mutants-")):
            with contextlib.suppress(FileExistsError):
                (own / each.name).symlink_to(each)
    os.environ["INSCRIBE_CACHE"] = str(own)


def with_examples(most: int) -> None:
    """Let properties be tried on so many examples, the same each time."""
    from hypothesis import settings

    house = settings.get_profile("house")
    settings.register_profile("trial", house, database=None, derandomize=True, max_examples=most)
    settings.load_profile("trial")


def refuse_processes() -> None:
    """Let no other process have a part: the work of workers is done here, programs fail a test.

    What runs elsewhere is not recorded, and starting it is what costs most.
    """
    import subprocess

    from inscribe import workers

    workers.count = lambda: 1
    workers.on_all_cores = lambda work, things, size: map(work, things)

    def refuse(*_: object, **__: object) -> None:
        raise OSError("no processes while faults are tried")

    subprocess.Popen.__init__ = refuse  # type: ignore[assignment, method-assign]


def passes(item: Any, following: Any = None) -> bool:
    """Run a test; whether it passed (one that is skipped, or takes too long, did not)."""
    import signal

    def too_long(*_: object) -> None:
        raise TimeoutError

    signal.signal(signal.SIGPROF, too_long)
    signal.setitimer(signal.ITIMER_PROF, LONGEST)
    try:
        passed = all(report.passed for report in _reports(item, following))
        signal.setitimer(signal.ITIMER_PROF, 0)
    except Exception:  # the time was over while hypothesis or pytest themselves were at work
        signal.setitimer(signal.ITIMER_PROF, 0)
        item.session._setupstate.teardown_exact(None)
        return False
    return passed


def fails_not(item: Any, following: Any = None) -> bool:
    """Run a test; whether it did not fail. What the ``following`` one needs too is kept."""
    return not any(report.failed for report in _reports(item, following))


def _reports(item: Any, following: Any) -> list[Any]:
    from _pytest.runner import runtestprotocol

    return runtestprotocol(item, log=False, nextitem=following)


def in_workers(jobs: int, work: Callable[[int], None]) -> None:
    """Do the work in so many forks, each told its number, and wait for them."""
    children = []
    for number in range(jobs):
        child = os.fork()
        if child == 0:
            try:
                work(number)
            except BaseException as error:
                print(f"a worker ended: {type(error).__name__}: {error}", file=sys.stderr)
                os._exit(1)
            os._exit(0)
        children.append(child)
    for child in children:
        os.waitpid(child, 0)
