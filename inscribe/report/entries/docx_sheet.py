"""The look of a word-processor document: A4, one quiet face of type, tables without shading.

Everything that is set has a style of its own name, which one can restyle in one place: the styles
are ``OWN`` and those of the word processor's own template in ``STYLES``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inscribe.report import width

if TYPE_CHECKING:
    from inscribe.report import Style

LATIN = "Georgia"
JAPANESE = "Yu Mincho"
INK = "22201C"
MARGIN = 22  # mm
# Styles of the template: size in points, space before and after, bold.
STYLES = {
    "Normal": (10.5, 0, 3, False),
    "Title": (17, 0, 10, True),
    "Heading 1": (17, 0, 6, True),
    "Heading 2": (13, 14, 4, True),
    "Heading 3": (10.5, 10, 3, True),
    "List Bullet": (10.5, 0, 2, False),
    "Caption": (9, 2, 8, False),
}
READING, TRANSLATION = "Inscription Reading", "Inscription Translation"
COLUMN, SOURCE = "Inscription Column", "Inscription Source Column"
WORDS, CAUTION, NOTE = "Inscription Words", "Inscription Caution", "Inscription Table"
OWN = {
    READING: (13, 4, 4, False),
    TRANSLATION: (12, 2, 6, False),
    COLUMN: (14, 0, 0, False),
    SOURCE: (14, 0, 0, False),
    WORDS: (10, 2, 6, False),
    CAUTION: (10, 6, 0, False),
    NOTE: (9.5, 0, 0, False),
}
LABEL = "Inscription Label"
LETTER, BESIDE = 2.1, 4.0  # mm: a bold letter of a wide font at 9.5 points; a cell's own margins


def dress(document: Any, style: Style) -> None:
    """Give a new document its page, the look of its styles, languages and page numbers."""
    from docx.enum.style import WD_STYLE_TYPE
    from docx.shared import Mm

    section = document.sections[0]
    across, down = style.page
    section.page_width, section.page_height = Mm(across), Mm(down)
    section.left_margin = section.right_margin = Mm(MARGIN)
    section.top_margin = section.bottom_margin = Mm(MARGIN - 5)
    for name, look in STYLES.items():
        _dress_style(document.styles[name], *look, font=style.font)
    for name, look in OWN.items():
        made = document.styles.add_style(name, WD_STYLE_TYPE.PARAGRAPH)
        made.base_style = document.styles["Normal"]
        _dress_style(made, *look, font=style.font)
        made.quick_style = True
    label = document.styles.add_style(LABEL, WD_STYLE_TYPE.CHARACTER)
    label.font.bold = True
    document.styles[CAUTION].font.italic = True
    _set_languages(document, style)
    _number_pages(section)


def _dress_style(
    style: Any, size: float, before: float, after: float, bold: bool, *, font: str
) -> None:
    from docx.oxml.ns import qn
    from docx.shared import Pt, RGBColor

    style.font.name = font or LATIN
    fonts = style.element.get_or_add_rPr().get_or_add_rFonts()
    for key in ("asciiTheme", "hAnsiTheme", "eastAsiaTheme", "cstheme"):
        fonts.attrib.pop(qn(f"w:{key}"), None)
    fonts.set(qn("w:eastAsia"), font or JAPANESE)
    style.font.size, style.font.bold, style.font.italic = Pt(size), bold, False
    style.font.color.rgb = RGBColor.from_string(INK)
    style.paragraph_format.space_before = Pt(before)
    style.paragraph_format.space_after = Pt(after)
    style.paragraph_format.left_indent = None if style.name == "List Bullet" else Pt(0)
    for border in style.element.findall(f".//{qn('w:pBdr')}"):
        border.getparent().remove(border)


def _set_languages(document: Any, style: Style) -> None:
    """Say in the document's defaults in what languages it is: the style's, and Japanese."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    properties = document.styles.element.find(f".//{qn('w:rPrDefault')}/{qn('w:rPr')}")
    for found in properties.findall(qn("w:lang")):
        properties.remove(found)
    said = OxmlElement("w:lang")
    said.set(qn("w:val"), "en-GB" if style.language == "en" else style.language)
    said.set(qn("w:eastAsia"), "ja-JP")
    properties.append(said)


def _number_pages(section: Any) -> None:
    from docx.enum.text import WD_ALIGN_PARAGRAPH

    paragraph = section.footer.paragraphs[0]
    paragraph.alignment = WD_ALIGN_PARAGRAPH.RIGHT
    add_field(paragraph, "PAGE", "1")


def add_link(paragraph: Any, address: str) -> None:
    """Add a web address that can be followed."""
    from docx.opc.constants import RELATIONSHIP_TYPE
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    link = OxmlElement("w:hyperlink")
    link.set(qn("r:id"), paragraph.part.relate_to(address, RELATIONSHIP_TYPE.HYPERLINK, True))
    link.append(paragraph.add_run(address)._r)
    paragraph._p.append(link)


def add_field(paragraph: Any, code: str, shown: str) -> None:
    """Add a field that the word processor fills; ``shown`` stands there until it has."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    for kind in ("begin", "code", "separate", "shown", "end"):
        run = paragraph.add_run()
        if kind == "shown":
            run.text = shown
            continue
        element = OxmlElement("w:instrText" if kind == "code" else "w:fldChar")
        if kind == "code":
            element.text = f" {code} "
        else:
            element.set(qn("w:fldCharType"), kind)
            if kind == "begin":
                element.set(qn("w:dirty"), "true")
        run._r.append(element)


def dress_table(table: Any, contents: list[list[str]], room: float) -> None:
    """Give a table widths after its ``contents``, whole rows, and a header on every page.

    The words of the header are never broken; ``room`` is the width of the text in mm.
    """
    from docx.oxml import OxmlElement
    from docx.shared import Mm

    table.autofit = False
    for column, share in zip(table.columns, widths(contents, room), strict=True):
        column.width = Mm(share)
        for cell in column.cells:
            cell.width = Mm(share)
    for number, row in enumerate(table.rows):
        properties = row._tr.get_or_add_trPr()
        properties.append(OxmlElement("w:cantSplit"))
        if number == 0:
            properties.append(OxmlElement("w:tblHeader"))
            for cell in row.cells:
                cell._tc.get_or_add_tcPr().append(OxmlElement("w:noWrap"))


def add_space(document: Any) -> None:
    """Add the room that is left below a table."""
    from docx.shared import Pt

    paragraph = document.add_paragraph()
    paragraph.paragraph_format.line_spacing = Pt(6)
    paragraph.paragraph_format.space_after = Pt(0)


def widths(contents: list[list[str]], room: float = 166) -> list[float]:
    """Return the widths of a table's columns in mm: room for its head, and by its longest cell.

    No head (the first cell) is broken, whatever font stands in for the one that is asked for.

    >>> widths([["Copy", "Why"], ["花", "花 and 華 are forms of one word"]])
    [47.4, 118.6]
    """
    columns = list(zip(*contents, strict=True))
    heads = [LETTER * width(column[0]) + BESIDE for column in columns]
    longest = [min(max(10, *map(width, column)), 65) for column in columns]
    rest = room - sum(heads)
    if rest < 0:
        return [round(room * head / sum(heads), 1) for head in heads]
    shares = zip(heads, longest, strict=True)
    return [round(head + rest * length / sum(longest), 1) for head, length in shares]
