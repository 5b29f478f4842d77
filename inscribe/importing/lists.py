r"""A list as rows of cells: CSV in whatever encoding and with whatever separator, or a workbook.

Every cell is text as it stands; numbers and days of a workbook are written as in
``97.2`` and ``2019-03-05``.

>>> read = list_of_bytes("No;銘\n1;武州住\n".encode("cp932"), "old.csv")
>>> read.encoding, read.headings, read.rows[0].cells
('Shift_JIS', ('No', '銘'), (('No', '1'), ('銘', '武州住')))
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from inscribe import files
from inscribe.encodings import WHAT_TO_DO, decoded, read_twice
from inscribe.errors import InputError, Place
from inscribe.importing.model import CatalogueList, ListRow

WORKBOOKS = (".xlsx", ".xlsm")
MOST_ROWS = 200_000
MOST_COLUMNS = 500
LONGEST_CELL = 1_000_000  # characters
LOOKED_AT = 20  # rows by which the separator is told
SEPARATORS = ",;\t|"
# Python's codecs for the encodings that a guess may name, the commonest first.
_CODECS = {
    "UTF-8": ("utf-8-sig",),
    "UTF-16": ("utf-16", "utf-16-le", "utf-16-be"),
    "UTF-32": ("utf-32",),
    "Shift_JIS": ("cp932", "shift_jis_2004"),
    "EUC-JP": ("euc_jp", "euc_jis_2004"),
    "ISO-2022-JP": ("iso2022_jp_ext",),
    "UTF-7": ("utf-7",),
    "Windows-1252": ("cp1252",),
}
ENCODINGS = tuple(_CODECS)

Table = Sequence[Sequence[str]]


def read_list(
    path: Path, *, encoding: str = "", separator: str = "", heading_row: int = 0, sheet: str = ""
) -> CatalogueList:
    """Return the rows of a CSV file or a workbook.

    Args:
        path: the file; one that ends in .xlsx is a workbook.
        encoding: one of ``ENCODINGS``; found by the bytes where it is not given.
        separator: what stands between cells; found by the first rows where it is not given.
        heading_row: the row of the headings, from 1; the first row with words in half of the
            columns where it is not given.
        sheet: the workbook's sheet; its first where it is not given.

    Raises:
        InputError: the file cannot be read, holds no table, or its encoding cannot be told.
    """
    if path.suffix.lower() in WORKBOOKS and path.exists():
        table, others = _workbook(path, sheet)
        return _as_list(path.name, table, heading_row, "", others)
    data = files.read_bytes(path)
    return list_of_bytes(
        data, str(path), encoding=encoding, separator=separator, heading_row=heading_row
    )


def list_of_bytes(
    data: bytes, name: str, *, encoding: str = "", separator: str = "", heading_row: int = 0
) -> CatalogueList:
    """Return the rows of CSV; the arguments are those of :func:`read_list`.

    Raises:
        InputError: it is no table, or its encoding cannot be told.
    """
    if data.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0")):
        hint = "save it as .xlsx or as CSV"
        raise InputError("this is a workbook or an archive, not CSV", Place(name), hint)
    text, found = _decoded(data, encoding, name)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if twice := read_twice(text):
        raise InputError(twice.said, Place(name), WHAT_TO_DO)
    return _as_list(Path(name).name, _cells(text, separator, name), heading_row, found)


def _decoded(data: bytes, encoding: str, name: str) -> tuple[str, str]:
    r"""Return a text and the name of its encoding.

    Where a few bytes are damaged they are shown as ``\x85``, so that their cells are noticed.
    """
    if encoding and encoding not in _CODECS:
        hint = f"write one of {', '.join(ENCODINGS)}"
        raise InputError(f"there is no encoding {encoding}", Place(name), hint)
    for codec in _CODECS.get(encoding, ("",)):
        if found := decoded(data, codec):
            if not encoding and found[1] != "UTF-8" and _is_rather_western(found[0]):
                return data.decode("cp1252", "backslashreplace"), "Windows-1252"
            return found[0], encoding or found[1]
    return _damaged(data, encoding, name)


def _damaged(data: bytes, encoding: str, name: str) -> tuple[str, str]:
    """Return a text of which some bytes are damaged, in the encoding that has fewest of them."""
    tried = [encoding] if encoding else ["UTF-8", "Shift_JIS", "EUC-JP"]
    shown = {each: data.decode(_CODECS[each][0], "replace") for each in tried}
    best = min(tried, key=lambda each: shown[each].count("\ufffd"))
    beyond = sum(char > "\x7f" for char in shown[best])
    wrong = shown[best].count("\ufffd")
    western = wrong > beyond / 3 or _is_rather_western(shown[best])
    if not encoding and _is_western(data) and western:
        return data.decode("cp1252", "backslashreplace"), "Windows-1252"
    if not encoding and wrong > beyond / 5:
        hint = f"say it in the mapping: encoding = one of {', '.join(ENCODINGS)}"
        raise InputError("the encoding of the list cannot be told", Place(name), hint)
    return data.decode(_CODECS[best][0], "backslashreplace"), best


def _is_rather_western(text: str) -> bool:
    """Whether all that is not plain is single signs amid Latin letters: L舅ge is Länge."""
    beyond = re.findall(r"[^\x00-\x7f]+", text)
    amid = re.findall(r"(?:(?<=[A-Za-z])|(?<=\b))[^\x00-\x7f](?=[A-Za-z])", text)
    return bool(beyond) and len(amid) > 0.9 * len(beyond)


def _is_western(data: bytes) -> bool:
    """Whether most bytes are plain letters, the others those of Windows-1252, as in German."""
    beyond = sum(byte > 0x7F for byte in data)
    return beyond < len(data) / 5 and b"\x00" not in data


def _cells(text: str, separator: str, name: str) -> Table:
    found = separator or _separator(text)
    usual = csv.field_size_limit(LONGEST_CELL)
    try:
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=found))
    except csv.Error as error:
        hint = 'a quotation mark may be open; look for a " that nothing closes'
        raise InputError(f"the list is no CSV ({error})", Place(name), hint) from error
    finally:
        csv.field_size_limit(usual)  # it holds for the whole process


def _separator(text: str) -> str:
    """Return what most evenly divides the first rows; a comma where nothing does."""
    first = "\n".join(text.split("\n", LOOKED_AT)[:LOOKED_AT])
    best, most = ",", 0.0
    for separator in SEPARATORS:
        try:
            rows = [r for r in csv.reader(io.StringIO(first, newline=""), delimiter=separator) if r]
        except csv.Error:
            continue
        widths = [len(row) for row in rows]
        usual = max(set(widths), key=widths.count, default=1)
        even = widths.count(usual) / len(widths) if widths else 0.0
        if usual > 1 and even * usual > most:
            best, most = separator, even * usual
    return best


def _workbook(path: Path, sheet: str) -> tuple[Table, tuple[str, ...]]:
    """Return the cells of one sheet of a workbook, and the names of the others.

    A cell that was merged over several rows (the drawer of four objects) holds for each of them.
    """
    try:
        import openpyxl
    except ImportError as error:
        hint = "pip install openpyxl, or save the list as CSV"
        raise InputError("workbooks need openpyxl", Place(str(path)), hint) from error
    try:
        book = openpyxl.load_workbook(path, data_only=True)
        formulas = openpyxl.load_workbook(path)
    except Exception as error:  # the library raises whatever its parsers do
        hint = "open it in a spreadsheet program and save it anew"
        raise InputError("the workbook cannot be read", Place(str(path)), hint) from error
    names = book.sheetnames
    if sheet and sheet not in names:
        raise InputError(
            f"there is no sheet {sheet}", Place(str(path)), f"it has {', '.join(names)}"
        )
    chosen = sheet or next((n for n in names if getattr(book[n], "max_row", 0) > 1), names[0])
    rows = zip(
        book[chosen].iter_rows(values_only=True),
        formulas[chosen].iter_rows(values_only=True),
        strict=True,
    )
    # where a formula was never reckoned, the formula itself stands
    table = [
        [_as_text(formula if value is None else value) for value, formula in zip(*row, strict=True)]
        for row in rows
    ]
    for span in getattr(book[chosen], "merged_cells", ()):
        for row in range(span.min_row, span.max_row):  # counted from 1: the rows below the first
            table[row][span.min_col - 1] = table[span.min_row - 1][span.min_col - 1]
    return table, tuple(name for name in names if name != chosen)


def _as_text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    text = str(value)
    return text.removesuffix(" 00:00:00").replace("_x000D_", "").replace("\r\n", "\n")


def _as_list(
    name: str, table: Table, heading_row: int, encoding: str, others: tuple[str, ...] = ()
) -> CatalogueList:
    if len(table) > MOST_ROWS or any(len(row) > MOST_COLUMNS for row in table):
        limit = f"the list has more than {MOST_ROWS:,} rows or {MOST_COLUMNS} columns"
        raise InputError(limit, Place(name), "divide it")
    at = (heading_row or _heading_row(table)) - 1
    if at >= len(table) or not any(cell.strip() for cell in table[at]):
        raise InputError("there is no row of headings", Place(name), "say it: heading_row = N")
    width = max(map(len, table[at:]))
    headings = tuple(_headings(table[at], width))
    rows = tuple(_rows(headings, table[at + 1 :], at + 2))
    above = tuple(row for row in _rows(headings, table[:at], 1) if not row.is_empty)
    return CatalogueList(name, headings, rows, encoding, at + 1, above, others)


def _heading_row(table: Table) -> int:
    """Return the first row, from 1, in which more than half of the columns have a word."""
    width = max((len(row) for row in table[:LOOKED_AT]), default=0)
    for number, row in enumerate(table[:LOOKED_AT], start=1):
        if sum(bool(re.search(r"[^\W\d]", cell)) for cell in row) * 2 > width:
            return number
    return next((n for n, row in enumerate(table, start=1) if any(c.strip() for c in row)), 1)


def _headings(row: Sequence[str], width: int) -> Iterator[str]:
    """Yield a heading for each column, no two the same; one without a heading by its number."""
    seen: dict[str, int] = {}
    for number in range(width):
        given = " ".join(row[number].split()) if number < len(row) else ""
        name = given or f"column {number + 1}"
        while name in seen:
            seen[name] += 1
            name = f"{name} ({seen[name]})"
        seen[name] = 1
        yield name


def _rows(headings: Sequence[str], rows: Iterable[Sequence[str]], first: int) -> Iterator[ListRow]:
    """Yield the rows in which something stands."""
    for number, row in enumerate(rows, start=first):
        padded = [*row, *[""] * (len(headings) - len(row))]
        made = ListRow(number, tuple(zip(headings, padded, strict=False)))
        if not made.is_empty:
            yield made
