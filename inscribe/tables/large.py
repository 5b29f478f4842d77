"""Large tables of which only what is asked for is read and taken apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from io import BytesIO
from mmap import ACCESS_READ, mmap
from pathlib import Path

from inscribe.files import decode
from inscribe.tables.reading import Row, files_of, header_of, left_out, lines_of, row_of


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
        for path in files_of(name):
            lines = lines_of(path)
            header, columns = header_of(path, lines)
            rest = left_out(name, path, columns)
            self._files.append((path, columns, rest, lines, _numbers(lines, header)))

    def about(self, sign: str) -> Iterator[Row]:
        """Yield the rows whose first cell begins with a sign.

        Raises:
            TableError: a row has the wrong number of cells.
        """
        for path, columns, rest, lines, numbers in self._files:
            for number in numbers.get(sign, ()):
                yield row_of(lines[number], columns, rest, path, number + 1)

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
        for path in files_of(name):
            data = path.read_bytes()
            if b"\r" in data:
                data = data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
            lines = (decode(line, str(path)).rstrip("\n") for line in BytesIO(data))
            _, columns = header_of(path, lines)
            self._files.append((path, columns, left_out(name, path, columns), data))

    def first_about(self, written: str) -> Row | None:
        """Return the first row whose first cell is ``written``.

        Raises:
            TableError: the row has the wrong number of cells.
        """
        for path, columns, rest, data in self._files:
            start = data.find(f"\n{written}\t".encode()) + 1
            if start:
                line = decode(data[start:].partition(b"\n")[0], str(path)).rstrip("\n")
                return row_of(line, columns, rest, path, data.count(b"\n", 0, start) + 1)
        return None


class Sorted:
    """A very large table whose rows stand in the order of their first cells, found by halving.

    Only what is looked at is read from the disk. A user's table of the same name is searched first,
    in whatever order its rows stand.
    """

    def __init__(self, name: str) -> None:
        """Open the table ``name``; a TableError where it is missing."""
        *own, packaged = files_of(name)
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
        low, high = data.find(b"\n", 0) + 1, len(data)  # the beginnings of rows
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
