"""The file in the cache that keeps what was made of the records of one folder.

It is an SQLite file, so that what was made of one record can be put in without writing all anew,
an interrupted run leaves what it had finished, and two runs do not disturb each other. Each row
bears a checksum, for the file may be damaged. The records may be private: only their owner can read
the file, whatever the folder of the cache allows. Files used longest ago are removed.

Nothing depends on it: what cannot be opened, read or written is done without.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import sqlite3
import zlib
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple, Self

from inscribe.keeping.marks import FileMark, made_by
from inscribe.reading.mecab import cache_folder

LAYOUT = 1
MOST_FILES = 30  # folders of which something is kept
MOST_BYTES = 1024 * 2**20  # of all of them
WAIT = 2.0  # seconds for another run that writes
UNWANTED = object()  # stands for a value that was not asked for
VALUE = 6  # the column of the value
_TABLE = """
create table if not exists made (
    what text, name blob, size integer, changed integer, content text, beside text,
    value text, checksum integer, primary key (what, name)) without rowid
"""


class Kept(NamedTuple):
    """What is known of a record's row without its value.

    ``content`` is the hash of the record's file, ``beside`` the mark of the other files it reads.
    """

    mark: FileMark
    content: str
    beside: str


class KeptValue(NamedTuple):
    """A row to keep: the record's name, what tells that it is still true, and the value."""

    name: str
    kept: Kept
    value: Any


class Store:
    """What is kept of one folder; use as a context manager."""

    def __init__(self, file: Path) -> None:
        """Open the file, or make it.

        Raises:
            OSError, sqlite3.Error: it cannot be used.
        """
        self.file = file
        file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        os.close(os.open(file, os.O_RDWR | os.O_CREAT, 0o600))
        self._opened = sqlite3.connect(file, timeout=WAIT, isolation_level=None)
        try:
            self._begin()
        except BaseException:
            self._opened.close()
            raise

    def _begin(self) -> None:
        self._opened.execute("pragma synchronous = normal")
        self._opened.execute("create table if not exists maker (mark text)")
        self._opened.execute(_TABLE)
        mark = f"{LAYOUT} {made_by()}"
        if self._opened.execute("select mark from maker").fetchall() != [(mark,)]:
            with self._whole():
                self._opened.execute("drop table made")  # of another version: other columns
                self._opened.execute(_TABLE)
                self._opened.execute("delete from maker")
                self._opened.execute("insert into maker values (?)", (mark,))

    @contextlib.contextmanager
    def _whole(self) -> Iterator[None]:
        """Let what is done within be kept whole or not at all."""
        self._opened.execute("begin immediate")
        try:
            yield
        except BaseException:
            self._opened.execute("rollback")
            raise
        self._opened.execute("commit")

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._opened.close()
        with contextlib.suppress(OSError):
            os.utime(self.file)  # it was of use
            _prune(self.file)

    def known(self, what: str) -> dict[str, Kept]:
        """Return what is kept under a name (``what``), by record, without the values."""
        rows = self._asked(
            "select name, size, changed, content, beside from made where what = ?", what
        )
        return {
            os.fsdecode(name): Kept(FileMark(size, changed), content, beside)
            for name, size, changed, content, beside in rows
        }

    def values(
        self, what: str, names: Sequence[str], worth: Callable[[str], bool] | None = None
    ) -> dict[str, Any]:
        """Return the values kept of some records; those that are damaged are left out.

        A value of whose JSON ``worth`` says no is not taken apart: UNWANTED stands for it.
        """
        marks = ", ".join("?" * len(names))
        rows = self._asked(
            f"select name, value, checksum from made where what = ? and name in ({marks})",
            what,
            *map(os.fsencode, names),
        )
        found = {}
        for name, value, checksum in rows:
            with contextlib.suppress(ValueError, RecursionError, UnicodeError):
                if _checksum(name, value) == checksum:
                    wanted = worth is None or worth(value)
                    found[os.fsdecode(name)] = json.loads(value) if wanted else UNWANTED
        return found

    def _asked(self, question: str, *values: object) -> list[Any]:
        try:
            return self._opened.execute(question, values).fetchall()
        except sqlite3.Error:
            return []

    def keep(self, what: str, rows: Iterable[KeptValue], largest: int | None = None) -> None:
        """Keep rows, all or none of them; those of the same records go.

        A value of more than ``largest`` characters, as a page with its pictures, is not kept.
        """
        with contextlib.suppress(sqlite3.Error, UnicodeError):
            made = [_row(what, row) for row in rows]
            made = [row for row in made if largest is None or len(str(row[VALUE])) <= largest]
            with self._whole():
                question = "insert or replace into made values (?, ?, ?, ?, ?, ?, ?, ?)"
                self._opened.executemany(question, made)

    def forget(self, what: str, names: Iterable[str]) -> None:
        """Remove the rows of records that are no longer there."""
        with contextlib.suppress(sqlite3.Error), self._whole():
            question = "delete from made where what = ? and name = ?"
            self._opened.executemany(question, [(what, os.fsencode(name)) for name in names])


def _row(what: str, made: KeptValue) -> tuple[object, ...]:
    value = json.dumps(made.value, separators=(",", ":"))
    name = os.fsencode(made.name)
    return (
        what,
        name,
        *made.kept.mark,
        made.kept.content,
        made.kept.beside,
        value,
        _checksum(name, value),
    )


def _checksum(name: bytes, value: str) -> int:
    return zlib.crc32(value.encode(), zlib.crc32(name))


def store_file(folder: Path, cache: Path | None = None) -> Path | None:
    """Return the file that keeps what was made of ``folder``, in ``cache`` or the usual place."""
    try:
        name = hashlib.sha256(str(folder.resolve()).encode("utf-8", "surrogatepass")).hexdigest()
    except OSError:
        return None
    return (cache or cache_folder()) / f"kept-{name[:24]}.sqlite"


def open_store(folder: Path, cache: Path | None = None) -> Store | None:
    """Open what is kept of a folder, anew if it is damaged; None where nothing can be kept."""
    file = store_file(folder, cache)
    if file is None:
        return None
    try:
        return Store(file)
    except sqlite3.OperationalError:  # another run holds it, or there is no room
        return None
    except sqlite3.DatabaseError:
        with contextlib.suppress(OSError, sqlite3.Error):
            for each in _with_journals(file):
                each.unlink(missing_ok=True)
            return Store(file)
    except OSError:
        pass
    return None


def _with_journals(file: Path) -> list[Path]:
    return [file, *(file.with_name(file.name + end) for end in ("-journal", "-wal", "-shm"))]


def _prune(file: Path) -> None:
    """Remove the files used longest ago where there are too many, and those of older versions."""
    for path in (*file.parent.glob("concord-*.json"), *file.parent.glob(".concord-*")):
        path.unlink(missing_ok=True)
    others = [(path.stat(), path) for path in file.parent.glob("kept-*.sqlite") if path != file]
    size = file.stat().st_size
    for number, (stat, path) in enumerate(sorted(others, key=_last_used, reverse=True), start=2):
        size += stat.st_size
        open_to_others = os.name == "posix" and stat.st_mode & 0o077
        if number > MOST_FILES or size > MOST_BYTES or open_to_others:
            for each in _with_journals(path):
                each.unlink(missing_ok=True)


def _last_used(found: tuple[os.stat_result, Path]) -> float:
    return found[0].st_mtime
