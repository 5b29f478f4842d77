"""The rows of tables: a line of column names, then a row a line; ``#`` begins a remark."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from inscribe import late
from inscribe.errors import Place, TableError
from inscribe.files import read_text
from inscribe.tables.glossary_folders import IN_XML, PACKAGED, files, packaged_tables

Row = dict[str, str]  # the cells of a row by the names of their columns
SEPARATOR = ";"
_XML = ".xml"
_lines_of_xml = late.names(__name__, IN_XML)  # what makes a table of it, by the table's name


def listed(cell: str) -> tuple[str, ...]:
    """Return the values of a cell that may hold several."""
    return tuple(cell.split(SEPARATOR)) if cell else ()


def rows(name: str) -> Iterator[Row]:
    """Yield each row of the table ``name``, the user's first.

    Raises:
        TableError: the table is missing or a row has the wrong number of cells; file and line are
            named.
    """
    for path in files_of(name):
        lines = lines_of(path)
        header, columns = header_of(path, lines)
        rest = left_out(name, path, columns)
        for number, line in enumerate(lines[header:], start=header + 1):
            if line and line[0] != "#" and (line[0] > " " or line.strip()):
                yield row_of(line, columns, rest, path, number)


def first_cells(name: str) -> Iterator[str]:
    """Yield the first cell of each row of the table ``name``, whatever its other cells hold.

    Raises:
        TableError: the table is missing.
    """
    for path in files_of(name):
        lines = lines_of(path)
        header, _ = header_of(path, lines)
        for line in lines[header:]:
            if line and line[0] > " " and line[0] != "#":
                yield line.partition("\t")[0]


def lines_of(path: Path) -> list[str]:
    """Return the lines of a table; only a user's may be no UTF-8, encoded twice, or TEI."""
    if path.suffix == _XML:
        return list(_lines_of_xml(path.stem)(path))
    if path.is_relative_to(PACKAGED):
        return path.read_text(encoding="utf-8").split("\n")
    return read_text(path).split("\n")


def files_of(name: str) -> tuple[Path, ...]:
    """Return the files of a table, the user's first; a TableError where there is none."""
    found = files(name)
    if not found:
        raise TableError(f"the table {name}.tsv is missing", Place(str(PACKAGED)))
    return found


def header_of(path: Path, lines: Iterable[str]) -> tuple[int, tuple[str, ...]]:
    """Return how many lines end with the column names, and these."""
    for number, line in enumerate(lines, start=1):
        if line and line[0] != "#" and line.strip():
            return number, tuple(line.split("\t"))
    raise TableError("the table has no line of column names", Place(str(path)))


def left_out(name: str, path: Path, columns: tuple[str, ...]) -> Row:
    """Return an empty row with those columns of a table that a user's file leaves out."""
    packaged = packaged_tables().get(name, path)
    if packaged == path:
        return {}
    with packaged.open(encoding="utf-8") as file:
        _, every = header_of(packaged, (line.rstrip("\n") for line in file))
    return {column: "" for column in every if column not in columns}


def row_of(line: str, columns: tuple[str, ...], rest: Row, path: Path, number: int) -> Row:
    """Return the cells of a line by their columns, those a user's file leaves out (``rest``) empty.

    Raises:
        TableError: the line has not as many cells as there are columns.
    """
    cells = line.split("\t")
    if len(cells) != len(columns):
        expected = f"expected {len(columns)} cells separated by tabs, found {len(cells)}"
        raise TableError("the row does not fit the header", Place(str(path), number), expected)
    row = dict(zip(columns, cells, strict=False))
    return rest | row if rest else row
