"""The glossary: plain tab-separated tables that hold what the program knows.

A table is a UTF-8 file ``NAME.tsv``: comment lines starting with ``#`` (what it is, its columns,
its source and licence, how to rebuild it), one line of column names, then one row a line. The
packaged tables lie in ``glossary/``; a user adds tables of the same names and columns in folders
of his own (``--glossary PATH``, or a ``glossary/`` folder beside his records), whose rows come
first and so win over the packaged ones.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import TypeVar

from inscribe.errors import InputError, Place, TableError
from inscribe.files import decode, read_text

T = TypeVar("T")

_PACKAGED = Path(__file__).parent / "glossary"
_CHECKOUT = Path(__file__).parent.parent / "glossary"
_user_folders: list[Path] = []
_forgetters: list[Callable[[], None]] = []


def folders() -> tuple[Path, ...]:
    """Return the folders tables are read from, the user's before the packaged one."""
    return (*_user_folders, _PACKAGED if _PACKAGED.is_dir() else _CHECKOUT)


def add_folder(folder: Path) -> None:
    """Read tables from ``folder`` too, its rows before all others.

    Raises:
        InputError: ``folder`` is not a folder.
    """
    if not folder.is_dir():
        raise InputError("there is no such glossary folder", Place(str(folder)))
    if folder not in _user_folders:
        _user_folders.insert(0, folder)
        forget()


def forget() -> None:
    """Let every compiled table be made anew when it is next asked for."""
    for clear in _forgetters:
        clear()


def compiled(load: Callable[[], T]) -> Callable[[], T]:
    """Decorate a function without arguments that builds a table: it runs once per set of folders.

    >>> @compiled
    ... def greetings() -> list[str]:
    ...     print("loading")
    ...     return ["hello"]
    >>> greetings() is greetings()
    loading
    True
    """
    cached = cache(load)
    _forgetters.append(cached.cache_clear)
    return cached


def files(name: str) -> tuple[Path, ...]:
    """Return the files of the table ``name``, the user's first."""
    return tuple(path for folder in folders() if (path := folder / f"{name}.tsv").is_file())


Row = tuple[tuple[str, ...], Place]  # the cells of a row, and the place it stands in


def rows(name: str, columns: Sequence[str], *, nameless: bool = False) -> Iterator[Row]:
    """Yield each row of the table ``name`` as its cells, with the place it stands in.

    ``columns`` are the names the header line must have, in order. The first cell of a row says
    what it is about and may be empty only in a ``nameless`` table.

    Raises:
        TableError: the table is missing, its header differs, or a row has the wrong number of
            cells or an empty first one; file and line are named.
    """
    for path in _found(name):
        file = str(path)
        for number, line in _lines_of(path, tuple(columns)):
            cells, place = tuple(line.split("\t")), Place(file, number)
            if len(cells) != len(columns) or not (cells[0] or nameless):
                raise _misfit(cells, columns, place)
            yield cells, place


class Rows:
    """The rows of a large table by the first sign of what they are about.

    Only the rows that are asked for are taken apart, so that a table of thousands of names costs
    little where a single signature is read.
    """

    def __init__(self, name: str, columns: Sequence[str]) -> None:
        """Find the rows of the table ``name``.

        Raises:
            TableError: the table is missing or its header differs; file and line are named.
        """
        self._columns = tuple(columns)
        self._files: list[tuple[str, list[str], dict[str, Sequence[int]]]] = []
        for path in _found(name):
            lines = read_text(path).split("\n")
            header = _below_header(path, lines, self._columns)
            self._files.append((str(path), lines, _numbers(lines, header)))

    def about(self, sign: str) -> Iterator[Row]:
        """Yield the rows whose first cell begins with a sign.

        Raises:
            TableError: a row has the wrong number of cells or an empty first one.
        """
        for name, lines, numbers in self._files:
            for number in (*numbers.get("\t", ()), *numbers.get(sign, ())):
                line = lines[number]
                if line[0] != "#" and line.strip():
                    place = Place(name, number + 1)
                    yield _cells(line, self._columns, place), place

    def signs(self) -> tuple[str, ...]:
        """Return the signs with which rows begin."""
        found = dict.fromkeys(sign for _, _, numbers in self._files for sign in numbers)
        return tuple(sign for sign in found if sign not in ("", "#"))


class Search:
    """A large table in which single rows are searched for; nothing else of it is taken apart."""

    def __init__(self, name: str, columns: Sequence[str]) -> None:
        """Read the table ``name``.

        Raises:
            TableError: the table is missing or its header differs; file and line are named.
        """
        self._columns = tuple(columns)
        self._files: list[tuple[str, bytes]] = []
        for path in _found(name):
            data = path.read_bytes()
            if b"\r" in data:
                data = data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
            lines = (decode(line, str(path)).rstrip("\n") for line in BytesIO(data))
            _below_header(path, lines, self._columns)
            self._files.append((str(path), data))

    def first_about(self, name: str) -> Row | None:
        """Return the first row whose first cell is ``name``.

        Raises:
            TableError: the row has the wrong number of cells.
        """
        for file, data in self._files:
            start = data.find(f"\n{name}\t".encode()) + 1
            if start:
                place = Place(file, data.count(b"\n", 0, start) + 1)
                line = decode(data[start:].partition(b"\n")[0], file).rstrip("\n")
                return _cells(line, self._columns, place), place
        return None


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


def _found(name: str) -> tuple[Path, ...]:
    found = files(name)
    if not found:
        raise TableError(f"the table {name}.tsv is missing", Place(str(folders()[-1])))
    return found


def _lines_of(path: Path, columns: tuple[str, ...]) -> Iterator[tuple[int, str]]:
    """Yield the lines of a table below its header, with their numbers."""
    lines = read_text(path).split("\n")
    header = _below_header(path, lines, columns)
    for number, line in enumerate(lines[header:], start=header + 1):
        if line and line[0] != "#" and (line[0] > " " or line.strip()):
            yield number, line


def _below_header(path: Path, lines: Iterable[str], columns: tuple[str, ...]) -> int:
    """Return how many lines end with the header."""
    number = 0
    for number, line in enumerate(lines, start=1):
        if line and line[0] != "#" and line.strip():
            if tuple(line.split("\t")) != columns:
                expected = ", ".join(columns)
                place = Place(str(path), number)
                raise TableError("the column names differ", place, f"expected: {expected}")
            return number
    return number


def _cells(line: str, columns: Sequence[str], place: Place) -> tuple[str, ...]:
    """Return the cells of a row, the first of which must not be empty."""
    cells = tuple(line.split("\t"))
    if len(cells) != len(columns) or not cells[0]:
        raise _misfit(cells, columns, place)
    return cells


def _misfit(cells: Sequence[str], columns: Sequence[str], place: Place) -> TableError:
    if len(cells) == len(columns):
        return TableError(f"the {columns[0]} is missing", place, "fill the first cell")
    expected = f"expected {len(columns)} cells separated by tabs, found {len(cells)}"
    return TableError("the row does not fit the header", place, expected)
