"""A proposal drawn over the rectified plate (SVG), so that a person sees what to put right.

Nothing is told by colour alone: boxes are solid with their number in a round tag; doubtful ones are
dashed, crossed at a corner and tagged with a question mark in a pointed tag; those a person gave
have a double frame. A ruler in mm stands on both sides, for cuts are given in mm.
"""

from __future__ import annotations

import base64
import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report import add
from inscribe.signs import place_of

if TYPE_CHECKING:
    from inscribe.measuring import Measured, MeasuredColumn, MeasuredSign
    from inscribe.record import Inscription

SCALE = 16.0  # units of the drawing a mm
SIDE = 5.0  # mm beside the plate, for the rulers
ABOVE = 3.0
STYLE = """
text { font-family: "DejaVu Sans", "Noto Sans CJK JP", sans-serif; fill: #111; }
.light { fill: none; stroke: #fff; stroke-width: 3.4; }
.dark { fill: none; stroke: #111; stroke-width: 1.4; }
.doubtful { stroke-dasharray: 5 4; }
.tag { fill: #fff; stroke: #111; stroke-width: 1; }
.number { font-size: 9px; text-anchor: middle; dominant-baseline: central; }
.ruler { stroke: #111; stroke-width: 1; }
.label { font-size: 11px; dominant-baseline: central; }
.head { font-size: 13px; text-anchor: middle; }
"""


def overlay(found: Measured, inscription: Inscription, plate: bytes) -> str:
    """Return the drawing; ``plate`` is the rectified plate as JPEG."""
    return ET.tostring(drawn(found, inscription, plate), encoding="unicode") + "\n"


def drawn(found: Measured, inscription: Inscription, plate: bytes | None) -> ET.Element:
    """Return the drawing as an element; without a picture of the plate, an empty frame."""
    width = (found.plate.width + 2 * SIDE) * SCALE
    height = (found.plate.height + 2 * ABOVE) * SCALE
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "viewBox": f"0 0 {width:g} {height:g}",
            "width": f"{width:g}",
            "height": f"{height:g}",
            "role": "img",
        },
    )
    add(root, "title", "the plate with the proposed box of each sign")
    add(root, "style", STYLE)
    add(root, "rect", x="0", y="0", width=f"{width:g}", height=f"{height:g}", fill="#fff")
    sides = _rectangle(0, 0, found.plate.width, found.plate.height)
    if plate is not None:
        data = base64.b64encode(plate).decode("ascii")
        picture = {"href": f"data:image/jpeg;base64,{data}", "preserveAspectRatio": "none"}
        add(root, "image", **sides, **picture)
    else:
        add(root, "rect", **sides, **{"class": "dark"})
    _draw_rulers(root, found)
    for column in found.columns:
        _draw_column(root, column)
    for sign in found.signs:
        _draw_sign(root, sign, inscription)
    return root


def _draw_sign(root: ET.Element, sign: MeasuredSign, inscription: Inscription) -> None:
    t = inscription.transcription
    group = add(root, "g")
    said = f"sign {sign.sign + 1}, {t.signs[sign.sign].text or '□'}, "
    said += f"{place_of(t, sign.sign, sign.sign)}: certainty {sign.certainty:.2f}"
    add(group, "title", said)
    sides = _rectangle(sign.x, sign.y, sign.width, sign.height)
    dashed = " doubtful" if sign.is_doubtful else ""
    add(group, "rect", **sides, **{"class": "light"})
    add(group, "rect", **sides, **{"class": f"dark{dashed}"})
    if sign.is_given:
        inner = _rectangle(sign.x + 0.2, sign.y + 0.2, sign.width - 0.4, sign.height - 0.4)
        if sign.width > 0.6 and sign.height > 0.6:
            add(group, "rect", **inner, **{"class": "dark"})
    x, y = (sign.x + SIDE) * SCALE, (sign.y + ABOVE) * SCALE
    if sign.is_doubtful:
        right, corner = x + sign.width * SCALE, min(sign.width, sign.height) * SCALE / 3
        add(
            group,
            "path",
            d=f"M{right - corner:.1f},{y:.1f} {right:.1f},{y + corner:.1f}",
            **{"class": "dark"},
        )
        points = (
            f"{x - 12:.1f},{y:.1f} {x:.1f},{y - 9:.1f} {x + 12:.1f},{y:.1f} {x:.1f},{y + 9:.1f}"
        )
        add(group, "polygon", points=points, **{"class": "tag"})
        shown = f"{sign.sign + 1}?"
    else:
        add(group, "circle", cx=f"{x:.1f}", cy=f"{y:.1f}", r="7", **{"class": "tag"})
        shown = str(sign.sign + 1)
    add(group, "text", shown, x=f"{x:.1f}", y=f"{y:.1f}", **{"class": "number"})


def _draw_column(root: ET.Element, column: MeasuredColumn) -> None:
    middle = f"{(column.x + column.width / 2 + SIDE) * SCALE:.1f}"
    add(root, "text", str(column.column + 1), x=middle, y="14", **{"class": "head"})
    add(root, "text", f"{column.pitch:.2f}", x=middle, y="29", **{"class": "head"})


def _draw_rulers(root: ET.Element, found: Measured) -> None:
    """Draw a tick each mm and a number each five, on both sides of the plate."""
    right = (found.plate.width + SIDE) * SCALE
    for mm in range(int(found.plate.height) + 1):
        y = f"{(mm + ABOVE) * SCALE:.1f}"
        length = 9 if mm % 5 == 0 else 4
        left = SIDE * SCALE
        add(root, "line", x1=f"{left - length:g}", x2=f"{left:g}", y1=y, y2=y, **{"class": "ruler"})
        add(
            root,
            "line",
            x1=f"{right:g}",
            x2=f"{right + length:g}",
            y1=y,
            y2=y,
            **{"class": "ruler"},
        )
        if mm % 5 == 0:
            add(root, "text", str(mm), x=f"{left - 30:g}", y=y, **{"class": "label"})
            add(root, "text", str(mm), x=f"{right + 13:g}", y=y, **{"class": "label"})


def _rectangle(x: float, y: float, width: float, height: float) -> dict[str, str]:
    return {
        "x": f"{(x + SIDE) * SCALE:.1f}",
        "y": f"{(y + ABOVE) * SCALE:.1f}",
        "width": f"{max(width, 0.05) * SCALE:.1f}",
        "height": f"{max(height, 0.05) * SCALE:.1f}",
    }
