"""Lines that fit the terminal, counting wide characters as two columns."""

from __future__ import annotations

import shutil

from inscribe.report.terminal.reading import width

USUAL = 100  # columns where there is no terminal


def room() -> int:
    """Return the columns of the terminal (or of COLUMNS), at least 40."""
    return max(40, shutil.get_terminal_size((USUAL, 24)).columns)


def wrapped(text: str, columns: int, indent: int) -> str:
    """Return ``text`` broken at spaces to fit, all lines but the first indented.

    >>> print(wrapped("one two three", 9, 2))
    one two
      three
    """
    lines: list[str] = []
    first, *words = text.split(" ")
    line = first
    for word in words:
        if line.strip() and width(line) + 1 + width(word) > columns:
            lines.append(line)
            line = " " * indent + word
        else:
            line = f"{line} {word}"
    return "\n".join([*lines, line])
