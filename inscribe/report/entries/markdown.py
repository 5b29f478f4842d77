"""An entry as Markdown (CommonMark with pipe tables)."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.notation import written_out
from inscribe.report.entries.blocks import (
    Block,
    Bullets,
    Caution,
    Chart,
    Columns,
    Facts,
    GlossedLine,
    Grid,
    Heading,
    Inline,
    Interlinear,
    Lead,
)
from inscribe.report.entries.glossed import glossed
from inscribe.report.entries.layout import laid_out

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style

_RECURRING = 4096  # labels and words kept as escaped
_MARKS = re.compile(r"([\\`*_\[\]<>|#~])")
_SPACES = re.compile(r"[ \t\r\n\f\v]+")  # ideographic spaces belong to the text
_LIST_START = re.compile(r"^(\s*)([-+]|\d+[.)])(\s)", re.MULTILINE)


def entry_as_markdown(entry: Entry, style: Style) -> str:
    """Return the entry; characters that mean something in Markdown are escaped.

    >>> from inscribe import Style, entry_of, load_record
    >>> entry_as_markdown(entry_of(load_record("examples/DEMO-003.toml")), Style()).splitlines()[0]
    '# DEMO-003 Cherry blossoms on a stream'
    """
    made = (_block(block) for block in laid_out(entry, style))
    return "\n\n".join(filter(None, made)) + "\n"


@tables.cached(_RECURRING)
def escaped(text: str) -> str:
    r"""Return ``text`` as plain words of a Markdown paragraph, on one line.

    >>> escaped("a*b\n<c>")
    'a\\*b \\<c\\>'
    """
    flat = _MARKS.sub(r"\\\1", _SPACES.sub(" ", written_out(text)).strip(" "))
    return _LIST_START.sub(r"\1\\\2\3", flat)


def _block(block: Block) -> str:
    """Return a block, or nothing of one that only pages can show."""
    if isinstance(block, Heading):
        return f"{'#' * block.level} {escaped(block.text)}"
    if isinstance(block, Facts):
        return "\n".join(f"- **{escaped(label)}:** {_inline(said)}" for label, said in block.rows)
    if isinstance(block, Lead):
        return f"- **{escaped(block.label)}:** {_inline(block.said)}"
    if isinstance(block, Columns):
        lines = block.text.split("\n")
        return "\n".join(f"> {escaped(line)}  " for line in lines)
    if isinstance(block, Interlinear):
        words = (_glossed_line(line, italics=block.italics) for line in block.lines)
        return _titled(block.title, "\n".join(words))
    if isinstance(block, Grid):
        summary = (_inline(block.summary),) if block.summary else ()
        return _titled(block.title, *summary, _grid(block))
    if isinstance(block, Bullets):
        return _titled(block.title, "\n".join(f"- {_inline(item)}" for item in block.items))
    if isinstance(block, Chart):
        return _titled(block.title, "\n".join(f"- {_inline(said)}" for said in block.sentences))
    if isinstance(block, Caution):
        return f"> ⚠ {escaped(block.text)}"
    return ""


def _titled(title: str, *parts: str) -> str:
    return "\n\n".join((f"**{escaped(title)}**", *parts))


def _glossed_line(line: GlossedLine, *, italics: bool) -> str:
    name = f"{escaped(line.name)}: " if line.name else ""
    return f"- {name}{_inline(glossed(line, italics=italics))}"


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
