"""How a key of a record file is described: its name, what it holds, and what may stand there."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

MAX_MM = 1000.0  # no fitting is longer; a larger figure is a slip of unit or comma
FIRST_YEAR, LAST_YEAR = 600, 2100
PIXELS = {"corners": 8, "crop": 4, "point": 2}  # how many numbers of pixels a field holds
MAX_PIXELS = 1_000_000  # no picture is wider
MAX_LINE = 1000  # characters in a text of one line
VERSION = 1  # of the keys a record is written in; raised where a key changes its meaning
MAX_CELLS = 1000  # of one row of an older list
MAX_TEXT = 200_000  # characters in a text of several lines


class Field(NamedTuple):
    """One key: its name in the file, what it holds, and what may stand there.

    ``holds`` is one of: ``line`` (text of one line), ``text`` (text of several lines), ``size``
    (mm, above 0), ``offset`` (mm, 0 or more), ``sign`` (a sign, from 1), ``year``, ``date``,
    ``signs`` (first and last sign), ``corners``, ``crop``, ``point`` (eight, four, two numbers of
    pixels), ``share`` (-1 to 1), ``column`` (a column, from 1), ``cells`` (pairs of a column's
    heading and what stands there), ``version`` (of the keys), ``table``, ``tables``, ``sources`` (a
    table, or tables of which the first is the source and the others are further ones).
    """

    key: str
    holds: str
    about: str
    required: bool = False
    choices: tuple[str, ...] = ()  # nothing else is allowed
    vocabulary: str = ""  # the words suggested in glossary/catalogue/fittings.tsv
    table: RecordTable | None = None
    attribute: str = ""  # name in the model where it differs
    defaults: bool = True  # the first of the choices holds where nothing is said

    @property
    def name(self) -> str:
        """The name of the model's attribute."""
        return self.attribute or self.key


class RecordTable(NamedTuple):
    """A table of the file and the type it becomes."""

    name: str
    about: str
    fields: tuple[Field, ...]
    make: Callable[..., Any]
