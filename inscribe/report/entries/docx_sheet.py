"""The look of a word-processor document: A4, one quiet face of type, tables without shading."""

from __future__ import annotations

from typing import Any

from inscribe.report import width

LATIN = "Georgia"
JAPANESE = "Yu Mincho"
INK = "22201C"
PAGE = (210, 297)  # mm
MARGIN = 22  # mm
WIDTH = PAGE[0] - 2 * MARGIN
# Paragraph styles of Word's own template: size in points, space before and after, bold.
STYLES = {
    "Normal": (10.5, 0, 3, False),
    "Heading 1": (17, 0, 6, True),
    "Heading 2": (13, 14, 4, True),
    "Heading 3": (10.5, 10, 3, True),
    "List Bullet": (10.5, 0, 2, False),
    "Quote": (10.5, 8, 0, False),
    "Intense Quote": (14, 6, 8, False),
}


def dress(document: Any) -> None:
    """Give a new document its page and the look of its styles."""
    from docx.shared import Mm

    section = document.sections[0]
    section.page_width, section.page_height = Mm(PAGE[0]), Mm(PAGE[1])
    section.left_margin = section.right_margin = Mm(MARGIN)
    section.top_margin = section.bottom_margin = Mm(MARGIN)
    for name, (size, before, after, bold) in STYLES.items():
        _dress_style(document.styles[name], size, before, after, bold=bold)


def _dress_style(style: Any, size: float, before: float, after: float, *, bold: bool) -> None:
    from docx.oxml.ns import qn
    from docx.shared import Pt, RGBColor

    style.font.name = LATIN
    fonts = style.element.get_or_add_rPr().get_or_add_rFonts()
    for key in ("asciiTheme", "hAnsiTheme", "eastAsiaTheme", "cstheme"):
        fonts.attrib.pop(qn(f"w:{key}"), None)
    fonts.set(qn("w:eastAsia"), JAPANESE)
    style.font.size, style.font.bold, style.font.italic = Pt(size), bold, False
    style.font.color.rgb = RGBColor.from_string(INK)
    style.paragraph_format.space_before = Pt(before)
    style.paragraph_format.space_after = Pt(after)
    style.paragraph_format.left_indent = None if style.name == "List Bullet" else Pt(0)
    for border in style.element.findall(f".//{qn('w:pBdr')}"):
        border.getparent().remove(border)


def dress_table(table: Any, contents: list[list[str]]) -> None:
    """Give a table widths after its ``contents``, whole rows, and a header on every page."""
    from docx.oxml import OxmlElement
    from docx.shared import Mm

    table.autofit = False
    for column, share in zip(table.columns, widths(contents), strict=True):
        column.width = Mm(share)
        for cell in column.cells:
            cell.width = Mm(share)
    for number, row in enumerate(table.rows):
        properties = row._tr.get_or_add_trPr()
        properties.append(OxmlElement("w:cantSplit"))
        if number == 0:
            properties.append(OxmlElement("w:tblHeader"))


def add_space(document: Any) -> None:
    """Add the room that is left below a table."""
    from docx.shared import Pt

    paragraph = document.add_paragraph()
    paragraph.paragraph_format.line_spacing = Pt(6)
    paragraph.paragraph_format.space_after = Pt(0)


def widths(contents: list[list[str]]) -> list[float]:
    """Return the widths of a table's columns in mm, by the longest cell of each.

    >>> widths([["Copy", "Why"], ["花", "花 and 華 are forms of one word"]])
    [40.5, 125.5]
    """
    lengths = [max(10, *map(width, column)) for column in zip(*contents, strict=True)]
    longest = [min(length, 65) for length in lengths]
    return [round(WIDTH * length / sum(longest), 1) for length in longest]
