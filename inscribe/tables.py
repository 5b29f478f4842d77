"""The glossary: plain tab-separated tables that hold what the program knows.

A table is a UTF-8 file ``NAME.tsv``: comment lines starting with ``#`` (what it is, its columns,
its source and licence, how to rebuild it), one line of column names, then one row a line. The
packaged tables lie in ``glossary/``; a user adds tables of the same names and columns in folders
of his own (``--glossary PATH``, or a ``glossary/`` folder beside his records), whose rows come
first and so win over the packaged ones.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import TypeVar

from inscribe.errors import InputError, Place, TableError
from inscribe.files import read_text

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
        for forget in _forgetters:
            forget()


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


def rows(
    name: str, columns: Sequence[str], *, nameless: bool = False
) -> Iterator[tuple[tuple[str, ...], Place]]:
    """Yield each row of the table ``name`` as its cells, with the place it stands in.

    ``columns`` are the names the header line must have, in order. The first cell of a row says
    what it is about and may be empty only in a ``nameless`` table.

    Raises:
        TableError: the table is missing, its header differs, or a row has the wrong number of
            cells or an empty first one; file and line are named.
    """
    found = files(name)
    if not found:
        raise TableError(f"the table {name}.tsv is missing", Place(str(folders()[-1])))
    for path in found:
        yield from _rows_of(path, tuple(columns), nameless)


def _rows_of(
    path: Path, columns: tuple[str, ...], nameless: bool
) -> Iterator[tuple[tuple[str, ...], Place]]:
    header: tuple[str, ...] | None = None
    file = str(path)
    for number, line in enumerate(read_text(path).split("\n"), start=1):
        if line.startswith("#") or not line.strip():
            continue
        cells = tuple(line.split("\t"))
        place = Place(file, number)
        if header is None:
            header = cells
            if header != columns:
                expected = ", ".join(columns)
                raise TableError("the column names differ", place, f"expected: {expected}")
        elif len(cells) != len(columns):
            expected = f"expected {len(columns)} cells separated by tabs, found {len(cells)}"
            raise TableError("the row does not fit the header", place, expected)
        elif not cells[0] and not nameless:
            raise TableError(f"the {columns[0]} is missing", place, "fill the first cell")
        else:
            yield cells, place
