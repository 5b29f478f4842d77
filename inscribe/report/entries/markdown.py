"""An entry as Markdown (CommonMark with pipe tables)."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from inscribe.report.entries.blocks import (
    Block,
    Bullets,
    Caution,
    Columns,
    Facts,
    Grid,
    Heading,
    Inline,
)
from inscribe.report.entries.layout import laid_out

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style

_MARKS = re.compile(r"([\\`*_\[\]<>|#~])")
_SPACES = re.compile(r"[ \t\r\n\f\v]+")  # ideographic spaces belong to the text
_LIST_START = re.compile(r"^(\s*)([-+]|\d+[.)])(\s)", re.MULTILINE)


def entry_as_markdown(entry: Entry, style: Style) -> str:
    """Return the entry; characters that mean something in Markdown are escaped."""
    return "\n\n".join(_block(block) for block in laid_out(entry, style)) + "\n"


def escaped(text: str) -> str:
    r"""Return ``text`` as plain words of a Markdown paragraph, on one line.

    >>> escaped("a*b\n<c>")
    'a\\*b \\<c\\>'
    """
    flat = _MARKS.sub(r"\\\1", _SPACES.sub(" ", text).strip(" "))
    return _LIST_START.sub(r"\1\\\2\3", flat)


def _block(block: Block) -> str:
    if isinstance(block, Heading):
        return f"{'#' * block.level} {escaped(block.text)}"
    if isinstance(block, Facts):
        return "\n".join(f"- **{escaped(label)}:** {_inline(said)}" for label, said in block.rows)
    if isinstance(block, Columns):
        lines = block.text.split("\n")
        return "\n".join(f"> {escaped(line)}  " for line in lines)
    if isinstance(block, Grid):
        return f"**{escaped(block.title)}**\n\n{_grid(block)}"
    if isinstance(block, Bullets):
        items = "\n".join(f"- {_inline(item)}" for item in block.items)
        return f"**{escaped(block.title)}**\n\n{items}"
    assert isinstance(block, Caution)
    return f"> ⚠ {escaped(block.text)}"


def _grid(grid: Grid) -> str:
    rows = [[escaped(cell) for cell in grid.header], ["---"] * len(grid.header)]
    rows += [[_inline(cell) for cell in row] for row in grid.rows]
    return "\n".join(_row(row) for row in rows)


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _inline(inline: Inline) -> str:
    return "".join(_run(run.text, italic=run.italic) for run in inline)


def _run(text: str, *, italic: bool) -> str:
    lead = " " if text[:1].isspace() else ""
    tail = " " if text[-1:].isspace() and text.strip() else ""
    words = escaped(text)
    return f"{lead}*{words}*{tail}" if italic and words else f"{lead}{words}{tail}"
