"""Columns of signs in a word-processor document: a table whose cells are written downwards."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from inscribe import notation
from inscribe.notation import printed
from inscribe.report import safe
from inscribe.report.entries.docx_pictures import add_drawing, size_of
from inscribe.report.entries.docx_sheet import COLUMN, SOURCE
from inscribe.signs import Kind, Sign, transcription

if TYPE_CHECKING:
    from inscribe.report.entries.blocks import Columns, Drawing, StripCell
    from inscribe.report.entries.docx_pictures import Size

SIGN = 5.2  # mm, the height of a sign of the columns' style with what is between signs
ACROSS = 9.0  # mm, the width of a column
MOST = 220.0  # mm, the height of a page's text
BESIDE, BELOW = 105.0, 12.0  # mm: the height of a drawing beside columns; its title below
LEAST = 0.8  # of its true size: a drawing is not made smaller to stand beside the columns
MISSING = "＿"  # stands for each sign that one side has not


Column = tuple[str, str]  # what is written in it, and its style
BETWEEN: Column = ("", COLUMN)  # between two faces


def add_columns(document: Any, block: Columns, drawing: Drawing | None, room: float) -> None:
    """Add the columns, the first rightmost, beside each the words of its source, and the drawing.

    The drawing stands beside them where the text, ``room`` mm wide, has place for both.
    """
    if block.strips:
        faces = [
            [
                column
                for strip in block.strips
                for column in (
                    ("".join(map(_copy, strip)), COLUMN),
                    ("".join(map(_source, strip)), SOURCE),
                )
            ]
        ]
    else:
        faces = [[("".join(map(_sign, each)), COLUMN) for each in face] for face in block.faces]
    faces = [face for face in faces if face]
    joined = list(itertools.chain(*([BETWEEN, *face] for face in faces)))[1:]
    left = room - ACROSS * (len(joined) + 1)
    if left < 0 or not joined:
        for face in faces:
            _add_table(document, face)
    else:
        size = size_of(drawing, left, max(BESIDE, _height(joined))) if drawing else None
        if drawing and size and size.share >= LEAST:
            _add_beside(_add_table(document, joined, size.down + BELOW), drawing, size, left)
            return
        _add_table(document, joined)
    if drawing:
        add_drawing_alone(document, drawing)


def add_drawing_alone(document: Any, drawing: Drawing) -> None:
    """Add the drawing with its title below."""
    add_drawing(document.add_paragraph(), drawing, size_of(drawing))
    document.add_paragraph(safe(drawing.title), style="Caption")


def _add_beside(table: Any, drawing: Drawing, size: Size, room: float) -> None:
    """Add the drawing, with its title, at the right of the columns."""
    from docx.shared import Mm

    cell = table.add_column(Mm(room)).cells[0]
    cell.paragraphs[0].alignment = 1  # in the middle
    add_drawing(cell.paragraphs[0], drawing, size)
    cell.add_paragraph(safe(drawing.title), style="Caption").alignment = 1


def _height(columns: Sequence[Column]) -> float:
    """Return the height of columns in mm."""
    return min(max(len(text) for text, _ in columns) * SIGN + 4, MOST)


def _sign(sign: Sign) -> str:
    if sign.kind is Kind.CHARACTER and sign.text and printed(sign) != sign.text:
        return printed(sign)
    return notation.render(transcription([[[sign]]]))


def _copy(cell: StripCell) -> str:
    text = "".join(map(_sign, cell.copy)) + MISSING * max(0, len(cell.source) - len(cell.copy))
    return f"【{text}】" if cell.wording else text


def _source(cell: StripCell) -> str:
    text = "".join(_sign(each.sign) for each in cell.source)
    text += MISSING * max(0, len(cell.copy) - len(cell.source))
    return f"【{text}】" if cell.wording else text


def _add_table(document: Any, columns: Sequence[Column], least: float = 0) -> Any:
    """Add a table of one row, at ``least`` so many mm high, of columns as they are read."""
    from docx.enum.table import WD_ROW_HEIGHT_RULE
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn
    from docx.shared import Mm

    table = document.add_table(rows=1, cols=len(columns))
    table.autofit = False
    row = table.rows[0]
    row._tr.get_or_add_trPr().append(OxmlElement("w:cantSplit"))
    row.height = Mm(max(least, _height(columns)))
    row.height_rule = WD_ROW_HEIGHT_RULE.EXACTLY
    for cell, (text, style) in zip(reversed(row.cells), columns, strict=True):
        cell.width = Mm(ACROSS)
        direction = OxmlElement("w:textDirection")
        direction.set(qn("w:val"), "tbRl")
        cell._tc.get_or_add_tcPr().append(direction)
        cell.paragraphs[0].style = document.styles[style]
        cell.paragraphs[0].add_run(safe(text))
    for column in table.columns:
        column.width = Mm(ACROSS)
    return table
