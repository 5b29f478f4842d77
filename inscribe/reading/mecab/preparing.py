"""Telling the user that a dictionary is being made, which the first reading has to wait for.

A terminal gets a sentence and a bar that moves, with the step at hand and the time gone by; a pipe
or a log gets the sentence only. ``--quiet`` silences both.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from inscribe import remarks

Tell = Callable[[str], None]  # hears the name of each step as it begins


@contextmanager
def preparing(name: str, *, is_slow: bool) -> Iterator[Tell]:
    """Say that the dictionary ``name`` is being made; give a function that hears each step."""
    if sys.stderr is None or not remarks.are_wanted():
        yield lambda step: None
        return
    sentence = f"preparing the dictionary “{name}” from UniDic and the tables, this once"
    wait = "; it takes some ten seconds" * is_slow
    print(sentence + wait, file=sys.stderr, flush=True)
    if not sys.stderr.isatty():
        yield lambda step: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("{task.description}"), BarColumn(), TimeElapsedColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("", total=None)
        yield lambda step: bar.update(task, description=step)
