"""Entries as a word-processor document; needs the extra ``docx`` (python-docx)."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from inscribe.errors import InputError
from inscribe.report import safe
from inscribe.report.entries.blocks import (
    Block,
    Bullets,
    Caution,
    Chart,
    Columns,
    Facts,
    Grid,
    Heading,
    Inline,
    Lead,
)
from inscribe.report.entries.docx_sheet import add_space, dress, dress_table
from inscribe.report.entries.layout import laid_out

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style


def entries_as_docx(entries: list[Entry], style: Style) -> bytes:
    """Return the document, each entry on a page of its own.

    Raises:
        InputError: python-docx is not installed.
    """
    try:
        from docx import Document
    except ImportError as error:
        raise InputError(
            "word-processor documents need python-docx",
            hint="in the folder of the program: pip install '.[docx]'",
        ) from error
    document: Any = Document()
    dress(document)
    for number, entry in enumerate(entries):
        if number:
            document.add_page_break()
        for block in laid_out(entry, style):
            _add(document, block)
    held = io.BytesIO()
    document.save(held)
    return _undated(held)


def _undated(document: io.BytesIO) -> bytes:
    """Return the document without the time it was written: the same entries give the same file."""
    held = io.BytesIO()
    with ZipFile(document) as parts, ZipFile(held, "w", ZIP_DEFLATED) as made:
        for part in parts.infolist():
            made.writestr(ZipInfo(part.filename), parts.read(part), ZIP_DEFLATED)
    return held.getvalue()


def _add(document: Any, block: Block) -> None:
    if isinstance(block, Heading):
        document.add_heading(safe(block.text), level=block.level)
    elif isinstance(block, Facts):
        for label, said in block.rows:
            paragraph = document.add_paragraph()
            paragraph.add_run(f"{label}: ").bold = True
            _say(paragraph, said)
    elif isinstance(block, Lead):
        paragraph = document.add_paragraph()
        paragraph.add_run(f"{block.label}: ").bold = True
        _say(paragraph, block.said)
    elif isinstance(block, Columns):
        document.add_paragraph(safe(block.text), style="Intense Quote")
    elif isinstance(block, Grid):
        document.add_heading(safe(block.title), level=3)
        _add_table(document, block)
    elif isinstance(block, Bullets):
        document.add_heading(safe(block.title), level=3)
        for item in block.items:
            _say(document.add_paragraph(style="List Bullet"), item)
    elif isinstance(block, Chart):
        document.add_heading(safe(block.title), level=3)
        for said in block.sentences:
            _say(document.add_paragraph(), said)
    elif isinstance(block, Caution):
        document.add_paragraph(f"⚠ {safe(block.text)}", style="Quote")


def _add_table(document: Any, grid: Grid) -> None:
    table = document.add_table(rows=1, cols=len(grid.header), style="Table Grid")
    for cell, text in zip(table.rows[0].cells, grid.header, strict=True):
        cell.paragraphs[0].add_run(safe(text)).bold = True
    for row in grid.rows:
        for cell, said in zip(table.add_row().cells, row, strict=True):
            _say(cell.paragraphs[0], said)
    texts = [["".join(run.text for run in cell) for cell in row] for row in grid.rows]
    dress_table(table, [list(grid.header), *texts])
    add_space(document)


def _say(paragraph: Any, inline: Inline) -> None:
    for run in inline:
        paragraph.add_run(safe(run.text)).italic = run.italic
