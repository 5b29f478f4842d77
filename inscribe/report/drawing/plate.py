"""A plate drawn to scale: columns as carved, what was left out as ghosts, crowding made visible.

Nothing is told by colour alone: carved signs are solid, ghosts stand in dashed frames, signs of
which the transcriber is not sure in dotted ones, and the pitch of each column is drawn as a ladder
of ticks beside it, closer ticks for closer signs. Each face has a plate of its own.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe.record import measured_column
from inscribe.report import add
from inscribe.report.drawing.glyphs import glyphs, letters
from inscribe.signs import Certainty

if TYPE_CHECKING:
    from inscribe.collation import Collation, Group
    from inscribe.record import ColumnMeasure, Inscription
    from inscribe.signs import Sign

SCALE = 8  # units of the drawing a mm
MARGIN = 14.0  # mm around the plate, for ghosts and labels
PLATE = (14.5, 96.0)  # mm, where no plate was measured: a usual kozuka, common practice
TOP = 5.0  # mm, where no column was measured
BETWEEN = 8.0  # mm between two faces
FONTS = "'Noto Serif CJK JP','Hiragino Mincho ProN','Yu Mincho',serif"
SHEET = f"""
text {{ font-family: {FONTS}; fill: #1d1b18; text-anchor: middle; dominant-baseline: central; }}
.plate {{ fill: #f1ece2; stroke: #1d1b18; stroke-width: 1.6; }}
.ladder {{ stroke: #1d1b18; stroke-width: 1; }}
.frame {{ fill: #fff; stroke: #1d1b18; stroke-width: 1.2; stroke-dasharray: 4 3; }}
.unsure {{ fill: none; stroke: #1d1b18; stroke-width: 1; stroke-dasharray: 1 3; }}
.leader {{ stroke: #1d1b18; stroke-width: 0.8; stroke-dasharray: 2 2; }}
.ghost {{ fill: #4a463f; }}
.label {{ font-size: 22px; font-family: Georgia, serif; fill: #3a372f; }}
"""


@dataclass(frozen=True, slots=True)
class Place:
    """Where one sign stands on the plate, its middle and size in mm."""

    x: float
    y: float
    size: float


def plate_drawing(inscription: Inscription, collation: Collation | None = None) -> str:
    """Return an SVG drawing of an inscription; with a collation, of what was left out too."""
    t = inscription.transcription
    width, height = (
        (inscription.plate.width, inscription.plate.height) if inscription.plate else PLATE
    )
    faces = max(len(t.faces), 1)
    whole = faces * (width + BETWEEN) - BETWEEN
    places = _places(inscription, width, height)
    root = _canvas(inscription, whole, height)
    for face in range(faces):
        _draw_plate(root, face * (width + BETWEEN), width, height)
    for sign in t.signs:
        _draw_sign(root, sign, places[sign.index])
    for column in t.columns:
        if column.signs:
            _draw_ladder(root, [places[s.index] for s in column.signs], column.index)
    if collation is not None:
        _draw_all_ghosts(root, collation, places, whole)
    _draw_scale(root, inscription, whole, height)
    return ET.tostring(root, encoding="unicode") + "\n"


def _canvas(inscription: Inscription, width: float, height: float) -> ET.Element:
    across, down = (width + 2 * MARGIN) * SCALE, (height + 2 * MARGIN) * SCALE
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "viewBox": f"0 0 {across:g} {down:g}",
            "width": f"{width + 2 * MARGIN:g}mm",
            "height": f"{height + 2 * MARGIN:g}mm",
            "role": "img",
        },
    )
    scale = "drawn to scale" if inscription.plate else "not measured and not to scale"
    add(root, "title", f"{inscription.place}, {scale}")
    add(
        root,
        "desc",
        "Carved signs are solid; what the copy leaves out stands in dashed frames; doubtful and"
        " restored signs stand in dotted frames.",
    )
    add(root, "style", SHEET)
    return root


def _draw_plate(root: ET.Element, left: float, width: float, height: float) -> None:
    corner = {"x": _at(left), "y": _at(0), "rx": "6"}
    size = {"width": f"{width * SCALE:g}", "height": f"{height * SCALE:g}"}
    add(root, "rect", **corner, **size, **{"class": "plate"})


def _places(inscription: Inscription, width: float, height: float) -> list[Place]:
    t = inscription.transcription
    found: list[Place] = []
    placed = [
        (column, face_number * (width + BETWEEN), within, len(face.columns))
        for face_number, face in enumerate(t.faces)
        for within, column in enumerate(face.columns)
    ]
    for column, left, within, count in placed:
        measured = measured_column(inscription, column)
        middle, across = _across(measured, within, count, width)
        middle += left
        top, bottom = (measured.top, measured.bottom) if measured else (TOP, height - TOP)
        pitch = (bottom - top) / max(len(column.signs), 1)
        if measured is None:  # nobody says how far it reaches
            pitch = min(pitch, across)
        for number, sign in enumerate(column.signs):
            if sign.box is not None:
                box = sign.box
                x, y = box.x + box.width / 2, box.y + box.height / 2
                found.append(Place(left + x, y, min(box.width, box.height)))
            else:
                found.append(Place(middle, top + (number + 0.5) * pitch, min(across, pitch) * 0.92))
    return found


def _across(
    measured: ColumnMeasure | None, within: int, count: int, width: float
) -> tuple[float, float]:
    """Return the middle and the width in mm of a column, the one ``within`` of ``count`` on it."""
    if measured and measured.x is not None and measured.width is not None:
        return measured.x + measured.width / 2, measured.width
    share = width / count
    return width - (within + 0.5) * share, share * 0.8


def _draw_sign(root: ET.Element, sign: Sign, place: Place) -> None:
    if sign.certainty in (Certainty.DOUBTFUL, Certainty.RESTORED):
        corner = {"x": _at(place.x - place.size / 2), "y": _at(place.y - place.size / 2)}
        sides = {"width": f"{place.size * SCALE:g}", "height": f"{place.size * SCALE:g}"}
        add(root, "rect", **corner, **sides, **{"class": "unsure"})
    _draw_glyphs(root, glyphs(sign), place, "sign")


def _draw_glyphs(root: ET.Element, shown: tuple[str, ...], place: Place, style: str) -> None:
    """Draw the characters of one sign in its place, small where they are several."""
    size = place.size / max(len(shown), *map(letters, shown))
    top = place.y - size * (len(shown) - 1) / 2
    for number, text in enumerate(shown):
        y = _at(top + number * size)
        add(root, "text", text, x=_at(place.x), y=y, **_font(size, style))


def _draw_ladder(root: ET.Element, places: list[Place], column: int) -> None:
    """Draw a tick beside each sign, and the column's number above it."""
    side = max(place.x + place.size / 2 for place in places) + 0.35
    for place in places:
        ends = {"x1": _at(side), "x2": _at(side + 0.7), "y1": _at(place.y), "y2": _at(place.y)}
        add(root, "line", **ends, **{"class": "ladder"})
    add(root, "text", str(column + 1), x=_at(places[0].x), y=_at(-2), **{"class": "label"})


def _left_out(collation: Collation) -> Iterator[Group]:
    for group in collation.differences:
        if group.kind == "omitted":
            yield group


def _draw_all_ghosts(
    root: ET.Element, collation: Collation, places: list[Place], width: float
) -> None:
    """Draw what was left out: at the end below the last sign, elsewhere beside the plate."""
    lowest, source = 0.0, collation.source
    for group in _left_out(collation):
        if not places:
            return
        at = min(max(group.copy.start - 1, 0), len(places) - 1)
        before = places[at]
        if group.copy.start >= len(places):
            first = Place(before.x, before.y + before.size * 1.1, before.size)
        else:
            size = before.size
            y = max(before.y + before.size / 2, lowest)
            first = Place(width + 2.5 + size, y, size)
            ends = {"x1": _at(before.x + before.size / 2), "x2": _at(first.x - size / 2)}
            heights = {"y1": _at(before.y + before.size / 2), "y2": _at(y)}
            add(root, "line", **ends, **heights, **{"class": "leader"})
        lowest = _draw_ghosts(root, source.signs[group.source.start : group.source.end], first)


def _draw_ghosts(root: ET.Element, signs: Iterable[Sign], first: Place) -> float:
    """Draw ``signs`` downwards from ``first``; return where the next may begin."""
    size, y = first.size, first.y
    for sign in signs:
        corner = {"x": _at(first.x - size / 2), "y": _at(y - size / 2)}
        sides = {"width": f"{size * SCALE:g}", "height": f"{size * SCALE:g}"}
        add(root, "rect", **corner, **sides, **{"class": "frame"})
        _draw_glyphs(root, glyphs(sign), Place(first.x, y, size * 0.78), "ghost")
        y += size * 1.08
    return y


def _draw_scale(root: ET.Element, inscription: Inscription, width: float, height: float) -> None:
    """Draw ten millimetres below the plate, and say what was not measured."""
    if inscription.plate is not None:
        for x1, x2, y1, y2 in ((0, 10, 9, 9), (0, 0, 8, 10), (10, 10, 8, 10)):
            ends = {"x1": _at(x1), "x2": _at(x2), "y1": _at(height + y1), "y2": _at(height + y2)}
            add(root, "line", **ends, **{"class": "ladder"})
        add(root, "text", "10 mm", x=_at(5), y=_at(height + 11.5), **{"class": "label"})
    if said := _not_measured(inscription):
        add(root, "text", said, x=_at(width / 2), y=_at(height + 5), **{"class": "label"})


def _not_measured(inscription: Inscription) -> str:
    t = inscription.transcription
    if inscription.plate is None:
        return "not to scale: the plate is not measured"
    measured = all(measured_column(inscription, column) for column in t.columns)
    return "" if measured else "columns not measured"


def _at(mm: float) -> str:
    return f"{(mm + MARGIN) * SCALE:.1f}"


def _font(size: float, style: str) -> dict[str, str]:
    return {"font-size": f"{size * SCALE:.1f}", "class": style}
