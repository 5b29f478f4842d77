r"""Tables, JSON and XML as people write them, read so that nothing is dropped in silence.

Python's own readers take a table whose rows do not fit its head, two columns or two keys of one
name, and a quote that is never closed; each of these loses a part of what was written. Here each is
an error that names its line.

>>> [cells for _, cells in table_rows("id,text\n1,はな\n", "a.csv", ",", ("text",))]
[{'id': '1', 'text': 'はな'}]
>>> json_value('{"id": 1, "id": 2}', Place("a.jsonl", 1))
Traceback (most recent call last):
    ...
inscribe.errors.InputError: the key “id” stands there twice; a.jsonl, line 1; keep one of them
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from typing import TYPE_CHECKING, Any

from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    import xml.etree.ElementTree as ET

MAX_DEPTH = 100  # elements of XML within elements

Row = tuple[int, dict[str, str]]  # the line a row begins in, from 1, and its cells by column


def json_value(text: str, place: Place) -> Any:
    """Return what a JSON text says.

    Raises:
        ValueError, RecursionError: it is not JSON, or nested too deeply.
        InputError: an object has a key twice.
    """

    def object_of(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        made = dict(pairs)
        if len(made) < len(pairs):
            key = _doubled([key for key, _ in pairs])
            raise InputError(f"the key “{key}” stands there twice", place, "keep one of them")
        return made

    return json.loads(text, object_pairs_hook=object_of)


def objects(value: Any) -> Iterator[dict[str, Any]]:
    """Yield the objects of a JSON list; none of what is no list.

    >>> list(objects([{"a": 1}, 2])), list(objects("x"))
    ([{'a': 1}], [])
    """
    if isinstance(value, list):
        yield from (each for each in value if isinstance(each, dict))


def xml_root(content: str, name: str) -> ET.Element:
    """Return the outermost element of an XML document.

    Raises:
        InputError: the document is not well-formed, declares a document type, or is nested more
            than a hundred elements deep.
    """
    import xml.etree.ElementTree as ET

    if "<!DOCTYPE" in content or "<!ENTITY" in content:
        said = "document type declarations are not read"
        raise InputError(said, Place(name), "remove the DOCTYPE")
    try:
        root = ET.fromstring(content)
    except ET.ParseError as error:
        line, column = error.position
        where = Place(name, line, column + 1)
        raise InputError("the file is not well-formed XML", where, "mend it there") from error
    if _is_deeper(root, MAX_DEPTH):
        said = f"elements are nested deeper than the limit of {MAX_DEPTH}"
        raise InputError(said, Place(name), "flatten the file")
    return root


def _is_deeper(root: ET.Element, most: int) -> bool:
    depth, level = 0, [root]
    while level and depth <= most:
        depth, level = depth + 1, [child for element in level for child in element]
    return depth > most


def table_rows(content: str, name: str, delimiter: str, known: Collection[str]) -> Iterator[Row]:
    """Yield the rows of a table whose first line, after comments (``#``), names its columns.

    Args:
        content: the table.
        name: the file's name, for errors.
        delimiter: what stands between cells.
        known: names of columns that may be written with capitals.

    Raises:
        InputError: a row has more or fewer cells than the head, or a cell in a column without a
            name; two columns have one name; a quote is not closed at the end of a cell, or takes in
            whole rows.
    """
    rows = _rows(content, name, delimiter)
    first, head = next(rows, (1, []))
    columns = [_column(cell, known) for cell in head]
    if doubled := _doubled([column for column in columns if column]):
        place = Place(name, first)
        raise InputError(f"two columns are called “{doubled}”", place, "rename one of them")
    for number, cells in rows:
        if any(cell.strip() for cell in cells):
            _check_width(cells, columns, Place(name, number))
            row = zip(columns, cells, strict=True)
            yield number, {column: cell for column, cell in row if column}


def columns_of(content: str, name: str, delimiter: str, known: Collection[str]) -> list[str]:
    """Return the names of a table's columns, as :func:`table_rows` finds them.

    Raises:
        InputError: the first line cannot be read.
    """
    _, head = next(_rows(content, name, delimiter), (1, []))
    return [_column(cell, known) for cell in head]


def _column(cell: str, known: Collection[str]) -> str:
    name = cell.strip()
    return name.lower() if name.lower() in known else name


def _doubled(names: Sequence[str]) -> str:
    return next((name for name, count in Counter(names).items() if count > 1), "")


def _check_width(cells: Sequence[str], columns: Sequence[str], place: Place) -> None:
    if len(cells) != len(columns):
        many = f"{len(cells)} cell{'s' * (len(cells) != 1)}"
        raise InputError(
            f"the row has {many}, and the first line names {len(columns)} columns",
            place,
            "put a cell that holds a comma or a tab into quotes; leave no cell out, even if empty",
        )
    for number, (cell, column) in enumerate(zip(cells, columns, strict=True), start=1):
        if cell.strip() and not column:
            said = f"cell {number} is in a column without a name"
            raise InputError(said, place, "name the column in the first line")


def _rows(content: str, name: str, delimiter: str) -> Iterator[tuple[int, list[str]]]:
    """Yield the line each row begins in and its cells, from the first line that is no comment."""
    lines = content.split("\n")
    before = next((n for n, line in enumerate(lines) if line.strip() and line[:1] != "#"), 0)
    del lines[:before]
    reader = csv.reader(io.StringIO("\n".join(lines), newline=""), delimiter=delimiter, strict=True)
    width = 0
    while True:
        begun = reader.line_num
        try:
            cells = next(reader, None)
        except csv.Error as error:
            raise _unreadable(lines, begun, delimiter, name, before, error) from error
        if cells is None:
            return
        width = width or len(cells)
        taken = lines[begun : reader.line_num]
        if len(taken) > 1 and _are_rows(taken, width, delimiter):
            raise InputError(
                "a quote opened in this row takes in the rows below it",
                Place(name, before + begun + 1),
                "close the quote; text with line breaks and commas can be given as JSON Lines",
            )
        yield before + begun + 1, cells


def _are_rows(lines: Sequence[str], width: int, delimiter: str) -> bool:
    """Whether lines taken together look like rows by themselves: the first and last are as wide."""
    return width > 1 and all(line.count(delimiter) == width - 1 for line in (lines[0], lines[-1]))


def _unreadable(
    lines: Sequence[str], begun: int, delimiter: str, name: str, before: int, error: csv.Error
) -> InputError:
    """Return the error for a row that cannot be read: where a quote is opened, if that is why."""
    text = "\n".join(lines[begun:])
    between = re.escape(delimiter)
    cell = re.compile(rf'(?:"(?:[^"]++|"")*+"|(?!")[^{between}\n]*+)(?:{between}|\n|\Z)')
    at = 0
    while at < len(text) and (match := cell.match(text, at)):
        at = match.end()
    if at == len(text):
        return InputError(f"the table cannot be read ({error})", Place(name, before + begun + 1))
    line = before + begun + 1 + text.count("\n", 0, at)
    return InputError(
        "the quote opened here is not closed at the end of a cell",
        Place(name, line, at - text.rfind("\n", 0, at)),
        'close it, or write "" for a quote within a quoted cell',
    )
