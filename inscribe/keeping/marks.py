"""What tells that a file has changed, or the program that looks at it."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import NamedTuple

from inscribe import __version__, tables

PACKAGE = Path(__file__).parent.parent


class FileMark(NamedTuple):
    """Size and time of change (ns) of a file; -1 where there is none."""

    size: int
    changed: int

    def __str__(self) -> str:
        return f"{self.size} {self.changed}"


def mark_of(path: Path) -> FileMark:
    """Return the mark of a file."""
    try:
        found = path.stat()
    except OSError:
        return FileMark(-1, -1)
    return FileMark(found.st_size, found.st_mtime_ns)


def content_of(path: Path) -> str:
    """Return a hash of what a file holds, or nothing where it cannot be read."""
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return ""


def mark_of_all(marks: Iterable[object]) -> str:
    """Return one mark for many, in their order."""
    found = hashlib.sha256()
    for mark in marks:
        found.update(f"{mark}\n".encode("utf-8", "surrogatepass"))
    return found.hexdigest()


def library_marks(library: Path | None) -> list[str]:
    """Return what tells that a library has changed, with what SQLite has yet to write into it."""
    if library is None:
        return []
    waiting = mark_of(library.with_name(f"{library.name}-wal"))
    marks = [mark_of(library), *([waiting] if waiting.size > 0 else [])]
    return [f"{library} {mark}" for mark in marks]


def made_by() -> str:
    """Return a mark of the program and its tables: what is made of a record changes with either."""
    named = [path for folder in tables.folders() for path in tables.tables_in(folder).values()]
    return mark_of_all([__version__, _code(), *(f"{path} {mark_of(path)}" for path in named)])


@cache
def _code() -> str:
    return mark_of_all(f"{path} {mark_of(path)}" for path in sorted(PACKAGE.rglob("*.py")))
