"""A bar for work that takes more than a moment."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from time import monotonic
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from rich.progress import Progress

BAR_AFTER = 1.0  # seconds of work before a progress bar is worth its while


@contextmanager
def progress_shown(what: str, *, quiet: bool) -> Iterator[Callable[[int, int | None], None]]:
    """Give a function that hears how many of how many are done, and shows a bar for it.

    Where it is not known how many there are (None), the bar tells how many are done.
    The bar stands on standard error, once the work has taken a second and if that is a terminal.
    """
    if quiet or not sys.stderr.isatty():
        yield lambda done, count: None
        return
    bar = _Bar(what)
    try:
        yield bar.show
    finally:
        bar.close()


class _Bar:
    """A bar that appears only when the work turns out to take a while."""

    def __init__(self, what: str) -> None:
        self._what = what
        self._begun = monotonic()
        self._progress: Progress | None = None

    def show(self, done: int, count: int | None) -> None:
        if self._progress is None:
            if monotonic() - self._begun < BAR_AFTER:
                return
            from rich.console import Console
            from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

            columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
            self._progress = Progress(*columns, console=Console(stderr=True), transient=True)
            self._progress.start()
            self._progress.add_task(self._what, total=None)
        self._progress.update(self._progress.task_ids[0], completed=done, total=count)

    def close(self) -> None:
        if self._progress is not None:
            self._progress.stop()
