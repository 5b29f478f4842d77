"""Lines that fit the terminal, counting wide characters as two columns."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterator, Sequence

from inscribe.report import width

USUAL = 100  # columns where there is no terminal


def room() -> int:
    """Return the columns of the terminal (or of COLUMNS), at least 40."""
    import shutil

    return max(40, shutil.get_terminal_size((USUAL, 24)).columns)


def wrapped(text: str, columns: int, indent: int) -> str:
    """Return ``text`` broken at spaces to fit, all lines but the first indented.

    >>> print(wrapped("one two three", 9, 2))
    one two
      three
    """
    lines: list[str] = []
    first, *words = re.split(r" (?!/ )", text)  # the mark between phrases ends its line
    line = first
    for word in words:
        if line.strip() and width(line) + 1 + width(word) > columns:
            lines.append(line)
            line = " " * indent + word
        else:
            line = f"{line} {word}"
    return "\n".join([*lines, line])


def fitted(text: str, indent: int) -> str:
    """Return ``text`` broken to the terminal (or to COLUMNS), and whole where there is none.

    A pipe or a file gets one fact a line, as other programs want it. Fast: no imports.
    """
    columns = _terminal_columns()
    if columns is None or width(text) <= columns:
        return text
    columns = max(40, columns)
    return wrapped(text, columns, min(indent, columns // 2))


def in_columns(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """Yield rows with their cells below each other, the last cell broken to the terminal."""
    widths = [max(map(width, column)) for column in zip(*rows, strict=True)]
    indent = sum(widths[:-1]) + 2 * (len(widths) - 1)
    for row in rows:
        cells = (cell + " " * (size - width(cell)) for cell, size in zip(row, widths, strict=True))
        yield fitted("  ".join(cells).rstrip(), indent)


def _terminal_columns() -> int | None:
    try:
        return int(os.environ.get("COLUMNS", "")) or None
    except ValueError:
        pass
    try:
        return os.get_terminal_size(sys.stdout.fileno()).columns or None
    except (OSError, ValueError, AttributeError):
        return None
