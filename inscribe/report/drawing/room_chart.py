"""A small chart of room: what the text wants, and what the columns give, on one scale of mm."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report import add

if TYPE_CHECKING:
    from inscribe.collation import SpaceAccount
    from inscribe.report import Style

WIDTH = 460.0  # units of the drawing
LEFT = 92.0  # units for the labels of the rows
BAR = 18.0
TOP = 24.0
GAP = 14.0
SHEET = """
.axis, .axis-middle { font-family: Georgia, 'Noto Serif CJK JP', serif; font-size: 12px;
  fill: #1d1b18; text-anchor: start; dominant-baseline: auto; }
.axis-middle { text-anchor: middle; }
.wanted { fill: #6b675d; }
.written { fill: #6b675d; }
.given { fill: none; stroke: #1d1b18; stroke-width: 1.2; }
.limit { stroke: #1d1b18; stroke-width: 1; stroke-dasharray: 2 3; }
"""


def space_chart(space: SpaceAccount, style: Style) -> str:
    """Return an SVG chart; nothing where the columns were not measured.

    Above is a bar as long as the text at the carver's usual pitch. Below stands each column, its
    written part filled, the room below it empty; a dotted line shows where the text would end.
    """
    wanted, columns = space.length_wanted, space.columns
    given = [(c.length or 0.0) + max(c.free or 0.0, 0.0) for c in columns]
    if wanted is None or not columns or not all(given):
        return ""
    scale = (WIDTH - LEFT - 8) / max(wanted, sum(given))
    height = TOP + 2 * BAR + GAP + 8
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "viewBox": f"0 0 {WIDTH:g} {height:g}",
            "width": f"{WIDTH:g}",
            "height": f"{height:g}",
            "role": "img",
        },
    )
    said = f"{style.label('wanted')} {wanted:.0f} mm; {style.label('given')} {sum(given):.0f} mm"
    add(root, "title", said)
    add(root, "style", SHEET)
    _row(root, TOP, style.label("wanted"), wanted)
    _bar(root, LEFT, TOP, wanted * scale, "wanted")
    below = TOP + BAR + GAP
    _row(root, below, style.label("given"), sum(given))
    x = LEFT
    for column, room in zip(columns, given, strict=True):
        _bar(root, x, below, (column.length or 0.0) * scale, "written")
        _bar(root, x, below, room * scale, "given")
        middle = {"x": f"{x + room * scale / 2:.1f}", "y": f"{below - 3:.1f}"}
        add(root, "text", str(column.index + 1), **middle, **_kind("axis-middle"))
        x += room * scale
    end = f"{LEFT + wanted * scale:.1f}"
    add(
        root, "line", x1=end, x2=end, y1=f"{TOP - 4:g}", y2=f"{below + BAR + 4:g}", **_kind("limit")
    )
    return ET.tostring(root, encoding="unicode")


def _row(root: ET.Element, top: float, label: str, length: float) -> None:
    add(root, "text", label, x="0", y=f"{top + 8:g}", **_kind("axis"))
    add(root, "text", f"{length:.0f} mm", x="0", y=f"{top + 21:g}", **_kind("axis"))


def _bar(root: ET.Element, x: float, top: float, length: float, kind: str) -> None:
    place = {"x": f"{x:.1f}", "y": f"{top:g}", "width": f"{length:.1f}", "height": f"{BAR:g}"}
    add(root, "rect", **place, **_kind(kind))


def _kind(name: str) -> dict[str, str]:
    return {"class": name}
