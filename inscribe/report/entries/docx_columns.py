"""Columns of signs in a word-processor document: a table whose cells are written downwards."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from inscribe import notation
from inscribe.notation import printed
from inscribe.report import safe
from inscribe.report.entries.docx_sheet import COLUMN, SOURCE
from inscribe.signs import Kind, Sign, transcription

if TYPE_CHECKING:
    from inscribe.report.entries.blocks import Columns, StripCell

SIGN = 5.2  # mm, the height of a sign of the columns' style with what is between signs
ACROSS = 9.0  # mm, the width of a column
MOST = 220.0  # mm, the height of a page's text
MISSING = "＿"  # stands for each sign that one side has not


def add_columns(document: Any, block: Columns) -> None:
    """Add the columns, the first rightmost; beside each the words of its source."""
    if block.strips:
        made = [
            ("".join(map(_copy, strip)), COLUMN, number) if is_copy else
            ("".join(map(_source, strip)), SOURCE, number)
            for number, strip in enumerate(block.strips, start=1)
            for is_copy in (True, False)
        ]  # fmt: skip
        _add_table(document, made)
        return
    for face in block.faces:
        texts = ["".join(map(_sign, column)) for column in face]
        _add_table(document, [(text, COLUMN, n) for n, text in enumerate(texts, start=1)])


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


def _add_table(document: Any, columns: Sequence[tuple[str, str, int]]) -> None:
    """Add a table of one row; ``columns`` are texts with their style and number, as read."""
    from docx.enum.table import WD_ROW_HEIGHT_RULE
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn
    from docx.shared import Mm

    if not columns:
        return
    table = document.add_table(rows=1, cols=len(columns))
    table.autofit = False
    row = table.rows[0]
    row._tr.get_or_add_trPr().append(OxmlElement("w:cantSplit"))
    longest = max(len(text) for text, _, _ in columns)
    row.height, row.height_rule = Mm(min(longest * SIGN + 4, MOST)), WD_ROW_HEIGHT_RULE.EXACTLY
    for cell, (text, style, _) in zip(reversed(row.cells), columns, strict=True):
        cell.width = Mm(ACROSS)
        direction = OxmlElement("w:textDirection")
        direction.set(qn("w:val"), "tbRl")
        cell._tc.get_or_add_tcPr().append(direction)
        cell.paragraphs[0].style = document.styles[style]
        cell.paragraphs[0].add_run(safe(text))
    for column in table.columns:
        column.width = Mm(ACROSS)
