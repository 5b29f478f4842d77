"""Which layout a library file has, and what to do with one of an older version."""

from __future__ import annotations

from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING

from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    import sqlite3

LAYOUT = "1"


def has_this_layout(db: sqlite3.Connection) -> bool:
    """Whether the library is laid out as this version does it; the first ones kept no signs."""
    layout = db.execute("SELECT value FROM about WHERE name = 'layout'").fetchone()
    columns = db.execute("SELECT name FROM pragma_table_info('passages')").fetchall()
    return layout == (LAYOUT,) and ("signs",) in columns


def refuse_another(db: sqlite3.Connection) -> None:
    """Leave a database of another program as it is; a library begins with the table ``about``.

    Raises:
        sqlite3.OperationalError: it has tables, and not that one.
    """
    if db.execute("SELECT 1 FROM sqlite_master").fetchone():
        db.execute("SELECT name, value FROM about").fetchone()


def other_layout(path: Path) -> InputError:
    """Return the refusal of a library of another layout, with the command that carries it over."""
    new = path.with_name(f"{path.stem}-new{path.suffix}")
    return InputError(
        "the library was written by another version of this program",
        Place(str(path)),
        "carry its texts into a new one: inscribe source export --quiet --library"
        f" {quote(str(path))} | inscribe source add --library {quote(str(new))} -",
    )
