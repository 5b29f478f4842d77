"""The glossary: plain tab-separated tables that hold what the program knows.

A table is a UTF-8 file ``NAME.tsv`` in a folder of its subject: one line of column names, then a
row a line; lines that start with ``#`` are remarks, and the values of a cell that holds several are
separated by ``;``. ``glossary/tables.toml`` says what each table is, and what its cells may hold.
The packaged tables lie in ``glossary/`` and are held to that description by the tests; a user adds
rows in folders of his own (``--glossary FOLDER``), which are checked when they are named
(:mod:`inscribe.descriptions`), come first, and so win over the packaged ones.

>>> [row["value"] for row in rows("numbers") if row["written"] in "廿壱"]
['1', '20']
>>> listed("つくる;さくす"), listed("")
(('つくる', 'さくす'), ())
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from io import BytesIO
from mmap import ACCESS_READ, mmap
from pathlib import Path
from typing import ParamSpec, TypeVar

from inscribe.errors import InputError, Place, TableError
from inscribe.files import decode, read_text

P = ParamSpec("P")
T = TypeVar("T")

Row = dict[str, str]  # the cells of a row by the names of their columns

SEPARATOR = ";"
_INSTALLED = Path(__file__).parent / "glossary"
PACKAGED = _INSTALLED if _INSTALLED.is_dir() else Path(__file__).parent.parent / "glossary"
_NO_SUBJECT = "build"  # the folder of the scripts that make tables
_user_folders: list[Path] = []
_forgetters: list[Callable[[], None]] = []


def folders() -> tuple[Path, ...]:
    """Return the folders tables are read from, the user's before the packaged one."""
    return (*_user_folders, PACKAGED)


def add_folder(folder: str | os.PathLike[str]) -> None:
    """Read tables from ``folder`` too, its rows before all others, whatever they hold.

    ``inscribe.add_glossary`` does the same with tables that are to be checked first.

    Raises:
        InputError: ``folder`` is not a folder.
    """
    path = Path(folder)
    if not path.is_dir():
        raise InputError("there is no such glossary folder", Place(str(path)))
    if path not in _user_folders:
        _user_folders.insert(0, path)
        forget()


def remove_folder(folder: str | os.PathLike[str]) -> None:
    """Read no tables from ``folder`` any more."""
    _user_folders.remove(Path(folder))
    forget()


def forget() -> None:
    """Let everything that was made of tables be made anew when it is next asked for."""
    for clear in _forgetters:
        clear()


def cached(most: int | None = None) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Return a decorator that keeps what a function returned, for at most so many arguments.

    What it kept is forgotten when the folders of tables change, so every function that reaches a
    table, however far away, may be decorated so.

    >>> @cached()
    ... def greetings(name: str) -> list[str]:
    ...     print("loading")
    ...     return [f"hello {name}"]
    >>> greetings("you") is greetings("you")
    loading
    True
    """

    def decorate(function: Callable[P, T]) -> Callable[P, T]:
        kept = lru_cache(most)(function)
        _forgetters.append(kept.cache_clear)
        return kept  # type: ignore[return-value]  # it takes the same arguments

    return decorate


def tables_in(folder: Path) -> dict[str, Path]:
    """Return the files of the tables in a folder and its folders of subjects, by their names."""
    found: dict[str, Path] = {}
    for place in (folder, *(folder / subject for subject in subjects())):
        if place.is_dir():
            for file in sorted(place.glob("*.tsv")):
                found.setdefault(file.stem, file)
    return found


@cached()
def subjects() -> tuple[str, ...]:
    """Return the names of the folders that the packaged tables lie in."""
    with os.scandir(PACKAGED) as entries:
        return tuple(sorted(e.name for e in entries if e.is_dir() and e.name != _NO_SUBJECT))


def files(name: str) -> tuple[Path, ...]:
    """Return the files of the table ``name``, the user's first."""
    return tuple(found[name] for found in _found_in_folders() if name in found)


@cached()
def _found_in_folders() -> tuple[dict[str, Path], ...]:
    return tuple(map(tables_in, folders()))


def has_own(name: str) -> bool:
    """Whether a folder of the user's has the table ``name``; nothing is read where there is none.

    >>> has_own("people")
    False
    """
    return bool(_user_folders) and len(files(name)) > (name in _found_in_folders()[-1])


def files_about(subject: str) -> tuple[Path, ...]:
    """Return the files of every table of a subject, the user's too."""
    packaged = _found_in_folders()[-1]
    names = sorted(name for name, path in packaged.items() if path.parent.name == subject)
    return tuple(path for name in names for path in files(name))


def listed(cell: str) -> tuple[str, ...]:
    """Return the values of a cell that may hold several."""
    return tuple(cell.split(SEPARATOR)) if cell else ()


def rows(name: str) -> Iterator[Row]:
    """Yield each row of the table ``name``, the user's first.

    Raises:
        TableError: the table is missing or a row has the wrong number of cells; file and line are
            named.
    """
    for path in _found(name):
        lines = _lines(path)
        header, columns = _header(path, lines)
        rest = _left_out(name, path, columns)
        for number, line in enumerate(lines[header:], start=header + 1):
            if line and line[0] != "#" and (line[0] > " " or line.strip()):
                yield _row(line, columns, rest, path, number)


def first_cells(name: str) -> Iterator[str]:
    """Yield the first cell of each row of the table ``name``, whatever its other cells hold.

    Raises:
        TableError: the table is missing.
    """
    for path in _found(name):
        lines = _lines(path)
        header, _ = _header(path, lines)
        for line in lines[header:]:
            if line and line[0] > " " and line[0] != "#":
                yield line.partition("\t")[0]


class Rows:
    """The rows of a large table by the first sign of their first cell.

    Only the rows that are asked for are taken apart, so that a table of thousands of names costs
    little where a single signature is read.
    """

    def __init__(self, name: str) -> None:
        """Find the rows of the table ``name``.

        Raises:
            TableError: the table is missing.
        """
        self._files: list[_Lines] = []
        for path in _found(name):
            lines = _lines(path)
            header, columns = _header(path, lines)
            rest = _left_out(name, path, columns)
            self._files.append((path, columns, rest, lines, _numbers(lines, header)))

    def about(self, sign: str) -> Iterator[Row]:
        """Yield the rows whose first cell begins with a sign.

        Raises:
            TableError: a row has the wrong number of cells.
        """
        for path, columns, rest, lines, numbers in self._files:
            for number in numbers.get(sign, ()):
                yield _row(lines[number], columns, rest, path, number + 1)

    def signs(self) -> tuple[str, ...]:
        """Return the signs with which rows begin."""
        found = dict.fromkeys(sign for *_, numbers in self._files for sign in numbers)
        return tuple(sign for sign in found if sign > " " and sign != "#")


class Search:
    """A large table in which single rows are searched for; nothing else of it is taken apart."""

    def __init__(self, name: str) -> None:
        """Read the table ``name``.

        Raises:
            TableError: the table is missing.
        """
        self._files: list[tuple[Path, tuple[str, ...], Row, bytes]] = []
        for path in _found(name):
            data = path.read_bytes()
            if b"\r" in data:
                data = data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
            lines = (decode(line, str(path)).rstrip("\n") for line in BytesIO(data))
            _, columns = _header(path, lines)
            self._files.append((path, columns, _left_out(name, path, columns), data))

    def first_about(self, written: str) -> Row | None:
        """Return the first row whose first cell is ``written``.

        Raises:
            TableError: the row has the wrong number of cells.
        """
        for path, columns, rest, data in self._files:
            start = data.find(f"\n{written}\t".encode()) + 1
            if start:
                line = decode(data[start:].partition(b"\n")[0], str(path)).rstrip("\n")
                return _row(line, columns, rest, path, data.count(b"\n", 0, start) + 1)
        return None


class Sorted:
    """A very large table whose rows stand in the order of their first cells, found by halving.

    Only what is looked at is read from the disk. A user's table of the same name is searched first,
    in whatever order its rows stand.
    """

    def __init__(self, name: str) -> None:
        """Open the table ``name``; a TableError where it is missing."""
        *own, packaged = _found(name)
        self._own = Search(name) if own else None
        with packaged.open("rb") as file:
            self._data = mmap(file.fileno(), 0, access=ACCESS_READ)
        self._columns = self._data.readline().decode().rstrip("\n").split("\t")
        self._known: dict[str, tuple[int, int]] = {}  # where the rows of a first sign lie

    def first_about(self, written: str) -> Row | None:
        """Return the first row whose first cell is ``written``."""
        if self._own:
            return self._own.first_about(written)
        low, high = self._rows_of(written[:1])
        first = self._data.find(f"\n{written}\t".encode(), low - 1, high) + 1
        if not first:
            return None
        cells = self._data[first : self._data.find(b"\n", first)]
        return dict(zip(self._columns, cells.decode().split("\t"), strict=True))

    def _rows_of(self, sign: str) -> tuple[int, int]:
        """Return where the rows begin and end whose first cell begins with a sign."""
        if sign not in self._known:
            start = sign.encode()
            self._known[sign] = self._first_from(start), self._first_from(start + b"\xff")
        return self._known[sign]

    def _first_from(self, wanted: bytes) -> int:
        """Return the beginning of the first row that does not stand before ``wanted``."""
        data = self._data
        low, high = data.find(b"\n") + 1, len(data)  # the beginnings of rows
        while low < high:
            first = max(low, data.rfind(b"\n", low, (low + high) // 2) + 1)
            end = data.find(b"\n", first) + 1 or len(data)
            low, high = (end, high) if data[first:end] < wanted else (low, first)
        return low


# A file, its columns, the columns it leaves out, its lines, and where a sign begins a row.
_Lines = tuple[Path, tuple[str, ...], Row, list[str], dict[str, Sequence[int]]]


def _numbers(lines: list[str], header: int) -> dict[str, Sequence[int]]:
    """Return the numbers of the lines below the header, from 0, by their first sign."""
    signs = [line[:1] for line in lines[header:]]
    alone: dict[str, Sequence[int]] = {sign: (number,) for number, sign in enumerate(signs, header)}
    if len(alone) == len(signs):  # a row for each sign, as most large tables have
        return alone
    found: dict[str, list[int]] = {}
    for number, sign in enumerate(signs, header):
        found.setdefault(sign, []).append(number)
    return dict(found)


def _lines(path: Path) -> list[str]:
    """Return the lines of a table; only a user's may be no UTF-8, or encoded twice."""
    if path.is_relative_to(PACKAGED):
        return path.read_text(encoding="utf-8").split("\n")
    return read_text(path).split("\n")


def _found(name: str) -> tuple[Path, ...]:
    found = files(name)
    if not found:
        raise TableError(f"the table {name}.tsv is missing", Place(str(PACKAGED)))
    return found


def _header(path: Path, lines: Iterable[str]) -> tuple[int, tuple[str, ...]]:
    """Return how many lines end with the column names, and these."""
    for number, line in enumerate(lines, start=1):
        if line and line[0] != "#" and line.strip():
            return number, tuple(line.split("\t"))
    raise TableError("the table has no line of column names", Place(str(path)))


def _left_out(name: str, path: Path, columns: tuple[str, ...]) -> Row:
    """Return an empty row with those columns of a table that a user's file leaves out."""
    packaged = _found_in_folders()[-1].get(name, path)
    if packaged == path:
        return {}
    with packaged.open(encoding="utf-8") as file:
        _, every = _header(packaged, (line.rstrip("\n") for line in file))
    return {column: "" for column in every if column not in columns}


def _row(line: str, columns: tuple[str, ...], rest: Row, path: Path, number: int) -> Row:
    cells = line.split("\t")
    if len(cells) != len(columns):
        expected = f"expected {len(columns)} cells separated by tabs, found {len(cells)}"
        raise TableError("the row does not fit the header", Place(str(path), number), expected)
    row = dict(zip(columns, cells, strict=False))
    return rest | row if rest else row
