"""Entries as a word-processor document; needs the extra ``docx`` (python-docx)."""

from __future__ import annotations

import io
import sys
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from inscribe import remarks
from inscribe.errors import InputError
from inscribe.report import safe, service_address
from inscribe.report.entries.blocks import (
    Block,
    Bullets,
    Caution,
    Chart,
    Columns,
    Drawing,
    Facts,
    Grid,
    Heading,
    Inline,
    Interlinear,
    Lead,
    PictureBlock,
)
from inscribe.report.entries.docx_columns import add_columns, add_drawing_alone
from inscribe.report.entries.docx_pictures import add_picture
from inscribe.report.entries.docx_sheet import (
    CAUTION,
    LABEL,
    MARGIN,
    NOTE,
    READING,
    TRANSLATION,
    WORDS,
    add_field,
    add_link,
    add_space,
    dress,
    dress_table,
)
from inscribe.report.entries.facts import JAPANESE, ROMANISED
from inscribe.report.entries.glossed import glossed
from inscribe.report.entries.layout import laid_out

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style


def entries_as_docx(entries: list[Entry], style: Style) -> bytes:
    """Return the document, each entry on a page of its own.

    Raises:
        InputError: python-docx is not installed.

    >>> from inscribe import Style, entry_of, load_record
    >>> entries_as_docx([entry_of(load_record("examples/DEMO-003.toml"))], Style())[:2]
    b'PK'
    """
    try:
        from docx import Document
    except ImportError as error:
        raise InputError(
            "word-processor documents need python-docx",
            hint="pip install python-docx",
        ) from error
    document: Any = Document()
    dress(document, style)
    if len(entries) > 1:
        _add_contents(document, entries, style)
    room = style.page[0] - 2 * MARGIN
    for number, entry in enumerate(entries):
        if number or len(entries) > 1:
            document.add_page_break()
        for block, drawing in _with_drawings(laid_out(entry, style)):
            if isinstance(block, PictureBlock):
                _add_picture(document, block, entry.record.id, style)
            else:
                _add(document, block, drawing, room)
    held = io.BytesIO()
    document.save(held)
    return _undated(held)


def _add_contents(document: Any, entries: list[Entry], style: Style) -> None:
    """Add a table of contents that the word processor fills with its page numbers."""
    document.add_paragraph(safe(style.label("contents")), style="Title")
    titles = "\n".join(f"{each.record.id} {each.record.title}".strip() for each in entries)
    add_field(document.add_paragraph(), 'TOC \\o "1-1" \\h \\z \\u', safe(titles))


def _undated(document: io.BytesIO) -> bytes:
    """Return the document without the time it was written: the same entries give the same file."""
    held = io.BytesIO()
    with ZipFile(document) as parts, ZipFile(held, "w", ZIP_DEFLATED) as made:
        for part in parts.infolist():
            made.writestr(ZipInfo(part.filename), parts.read(part), ZIP_DEFLATED)
    return held.getvalue()


def _with_drawings(blocks: tuple[Block, ...]) -> Iterator[tuple[Block, Drawing | None]]:
    """Yield the blocks, columns together with the drawing that follows them."""
    rest = list(blocks)
    while rest:
        block = rest.pop(0)
        follows = rest[0] if rest else None
        if isinstance(block, Columns) and isinstance(follows, Drawing):
            yield block, follows
            rest.pop(0)
        else:
            yield block, None


def _add(document: Any, block: Block, drawing: Drawing | None, room: float) -> None:
    """Add one block; ``room`` is the width of the text in mm."""
    if isinstance(block, Heading):
        document.add_heading(safe(block.text), level=block.level)
    elif isinstance(block, Facts):
        for label, said in block.rows:
            _labelled(document.add_paragraph(), label, said)
    elif isinstance(block, Lead):
        style = READING if any(run.lang == ROMANISED for run in block.said) else TRANSLATION
        _labelled(document.add_paragraph(style=style), block.label, block.said)
    elif isinstance(block, Columns):
        add_columns(document, block, drawing, room)
        if block.written_key:
            document.add_paragraph(safe(block.written_key), style="Caption")
    elif isinstance(block, Drawing):
        add_drawing_alone(document, block)
    elif isinstance(block, Grid):
        document.add_heading(safe(block.title), level=3)
        if block.summary:
            _say(document.add_paragraph(), block.summary)
        _add_table(document, block, room)
    elif isinstance(block, Bullets | Chart | Interlinear):
        _add_list(document, block)
    elif isinstance(block, Caution):
        document.add_paragraph(f"⚠ {safe(block.text)}", style=CAUTION)


def _add_list(document: Any, block: Bullets | Chart | Interlinear) -> None:
    document.add_heading(safe(block.title), level=3)
    if isinstance(block, Bullets):
        for item in block.items:
            _say(document.add_paragraph(style="List Bullet"), item)
    elif isinstance(block, Chart):
        for said in block.sentences:
            _say(document.add_paragraph(), said)
    else:
        for line in block.lines:
            paragraph = document.add_paragraph(style=WORDS)
            if line.name:
                paragraph.add_run(f"{safe(line.name)}: ", style=LABEL)
            _say(paragraph, glossed(line, italics=block.italics))


def _add_picture(document: Any, block: PictureBlock, record: str, style: Style) -> None:
    """Add a picture with its caption; of one of an image service that tells where it is."""
    image = block.image
    is_shown = add_picture(document, block)
    left_out = ""
    if image.file and not is_shown:
        left_out = f"{style.label('picture_left_out')}: {image.file}"
        if sys.stderr is not None and remarks.are_wanted():
            sys.stderr.write(f"{record}: {image.file} {_LEFT_OUT}\n")
    said = (block.title, image.shows if is_shown else block.shows, image.credit, left_out)
    caption = document.add_paragraph(safe(". ".join(filter(None, said))), style="Caption")
    if image.iiif:
        caption.add_run(". " if is_shown else f". {style.label('picture_not_here')}: ")
        add_link(caption, safe(service_address(image)))


_LEFT_OUT = (
    "is left out of the document, and described: it must be there, as an upright JPEG in RGB, a PNG"
    " or a GIF; pillow makes one of others (pip install pillow)"
)


def _labelled(paragraph: Any, label: str, said: Inline) -> None:
    paragraph.add_run(f"{safe(label)}: ", style=LABEL)
    _say(paragraph, said)


def _add_table(document: Any, grid: Grid, room: float) -> None:
    table = document.add_table(rows=1, cols=len(grid.header), style="Table Grid")
    for cell, text in zip(table.rows[0].cells, grid.header, strict=True):
        cell.paragraphs[0].style = document.styles[NOTE]
        cell.paragraphs[0].add_run(safe(text), style=LABEL)
    for row in grid.rows:
        for cell, said in zip(table.add_row().cells, row, strict=True):
            cell.paragraphs[0].style = document.styles[NOTE]
            _say(cell.paragraphs[0], said)
    texts = [["".join(run.text for run in cell) for cell in row] for row in grid.rows]
    dress_table(table, [list(grid.header), *texts], room)
    add_space(document)


def _say(paragraph: Any, inline: Inline) -> None:
    """Add stretches of text, Japanese ones marked as such for fonts and spelling."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    for run in inline:
        made = paragraph.add_run(safe(run.text))
        made.italic = run.italic or None
        if run.lang == JAPANESE:
            said = OxmlElement("w:lang")
            said.set(qn("w:eastAsia"), "ja-JP")
            said.set(qn("w:val"), "ja-JP")
            made._r.get_or_add_rPr().append(said)
