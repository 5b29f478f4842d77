"""Doing something again whenever a file is saved."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

import click

from inscribe.cli.showing.results import write_result
from inscribe.cli.showing.voice import told
from inscribe.errors import InputError, InscribeError, Place

EVERY = 0.2  # seconds between two looks at the file


def watch(path: Path, shown: Callable[[], str], saves: Iterator[None] | None = None) -> None:
    """Print what ``shown`` returns, and again each time the file is saved, until Ctrl-C.

    An error in the file is printed on standard error, and watching goes on.

    Raises:
        InputError: there is no such file to begin with.
    """
    if not path.is_file():
        raise InputError("there is no such file to watch", Place(str(path)), "check the path")
    try:
        for _ in saves or saved(path):
            _show(path, shown)
    except KeyboardInterrupt:
        click.echo("stopped", err=True)


def _show(path: Path, shown: Callable[[], str]) -> None:
    click.clear()  # does nothing where the result is not a terminal
    click.echo(f"{datetime.now():%H:%M:%S} {path}; Ctrl-C to stop", err=True)
    try:
        text = shown()
    except InscribeError as error:
        click.echo(told(error), err=True)
    else:
        write_result(text, None, force=False)


def saved(path: Path, wait: Callable[[float], None] = time.sleep) -> Iterator[None]:
    """Yield once, and again after each change of the file, once it stands still.

    An editor may write a file in several steps, or take it away and put another in its place: a
    change counts when two looks in a row see the same, and the file is there.
    """
    last = seen = _state(path)
    yield
    while True:
        wait(EVERY)
        now = _state(path)
        if now is not None and now == seen and now != last:
            last = now
            yield
        seen = now


def _state(path: Path) -> tuple[int, int, int] | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return (found.st_mtime_ns, found.st_size, found.st_ino)
