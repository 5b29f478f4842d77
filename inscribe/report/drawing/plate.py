"""A plate drawn to scale: columns as carved, what was left out as ghosts, crowding made visible.

Nothing is told by colour alone: carved signs are solid, ghosts stand in dashed frames, signs of
which the transcriber is not sure in dotted ones, and the pitch of each column is drawn as a ladder
of ticks beside it, closer ticks for closer signs. Each face has a plate of its own.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe.record import measured_column
from inscribe.report import add
from inscribe.report.drawing.glyphs import glyphs, letters
from inscribe.signs import Certainty

if TYPE_CHECKING:
    from inscribe.collation import Collation, Group
    from inscribe.record import ColumnMeasure, Inscription, Obstacle
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
class PlacedSign:
    """Where one sign stands on the plate, its middle and size in mm."""

    x: float
    y: float
    size: float


@dataclass(frozen=True, slots=True)
class Ghost:
    """A sign that was left out, where it is drawn, and the sign it belongs after if elsewhere."""

    sign: Sign
    place: PlacedSign
    origin: PlacedSign | None


def plate_drawing(inscription: Inscription, collation: Collation | None = None) -> str:
    """Return an SVG drawing of an inscription; with a collation, of what was left out too."""
    t = inscription.transcription
    width, height = (
        (inscription.plate.width, inscription.plate.height) if inscription.plate else PLATE
    )
    faces = max(len(t.faces), 1)
    whole = faces * (width + BETWEEN) - BETWEEN
    places = _places(inscription, width, height)
    ghosts = _ghosts(collation, places, whole) if collation is not None and places else []
    lowest = max((ghost.place.y + ghost.place.size / 2 for ghost in ghosts), default=0.0)
    root = _canvas(inscription, whole, height, max(0.0, lowest - height - MARGIN / 2))
    for face in range(faces):
        _draw_plate(root, face * (width + BETWEEN), width, height)
    for sign in t.signs:
        _draw_sign(root, sign, places[sign.index])
    for column in t.columns:
        if column.signs:
            _draw_ladder(root, [places[s.index] for s in column.signs], column.index)
    for obstacle in inscription.takes_room:
        _draw_obstacle(root, obstacle, inscription, places)
    for ghost in ghosts:
        _draw_ghost(root, ghost)
    _draw_scale(root, inscription, whole, height)
    return ET.tostring(root, encoding="unicode") + "\n"


def _canvas(inscription: Inscription, width: float, height: float, more: float) -> ET.Element:
    """Return an empty drawing; ``more`` is how many mm it needs below the usual margin."""
    across, down = (width + 2 * MARGIN) * SCALE, (height + more + 2 * MARGIN) * SCALE
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "viewBox": f"0 0 {across:g} {down:g}",
            "width": f"{width + 2 * MARGIN:g}mm",
            "height": f"{height + more + 2 * MARGIN:g}mm",
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


def _places(inscription: Inscription, width: float, height: float) -> list[PlacedSign]:
    t = inscription.transcription
    found: list[PlacedSign] = []
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
                found.append(PlacedSign(left + x, y, min(box.width, box.height)))
            else:
                found.append(
                    PlacedSign(middle, top + (number + 0.5) * pitch, min(across, pitch) * 0.92)
                )
    return found


def _across(
    measured: ColumnMeasure | None, within: int, count: int, width: float
) -> tuple[float, float]:
    """Return the middle and the width in mm of a column, the one ``within`` of ``count`` on it."""
    if measured and measured.x is not None and measured.width is not None:
        return measured.x + measured.width / 2, measured.width
    share = width / count
    return width - (within + 0.5) * share, share * 0.8


def _draw_sign(root: ET.Element, sign: Sign, place: PlacedSign) -> None:
    if sign.certainty in (Certainty.DOUBTFUL, Certainty.RESTORED):
        corner = {"x": _at(place.x - place.size / 2), "y": _at(place.y - place.size / 2)}
        sides = {"width": f"{place.size * SCALE:g}", "height": f"{place.size * SCALE:g}"}
        add(root, "rect", **corner, **sides, **{"class": "unsure"})
    _draw_glyphs(root, glyphs(sign), place, "sign")


def _draw_glyphs(root: ET.Element, shown: tuple[str, ...], place: PlacedSign, style: str) -> None:
    """Draw the characters of one sign in its place, small where they are several."""
    size = place.size / max(len(shown), *map(letters, shown))
    top = place.y - size * (len(shown) - 1) / 2
    for number, text in enumerate(shown):
        y = _at(top + number * size)
        add(root, "text", text, x=_at(place.x), y=y, **_font(size, style))


def _draw_ladder(root: ET.Element, places: list[PlacedSign], column: int) -> None:
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


def _ghosts(collation: Collation, places: list[PlacedSign], width: float) -> list[Ghost]:
    """Return what was left out, each sign in its place.

    Where the plate was measured, all of it stands below the last column at the carver's pitch, so
    that one sees whether it had fitted; a line leads to it from where it belongs. Else what is
    missing at the end stands below the last sign, and the rest beside the plate.
    """
    found: list[Ghost] = []
    pitch = collation.space.median_pitch if collation.space else None
    at_end, beside = places[-1].y + (pitch or places[-1].size * 1.1), 0.0
    for group in _left_out(collation):
        before = places[min(max(group.copy.start - 1, 0), len(places) - 1)]
        is_end = group.copy.start >= len(places)
        step = pitch or before.size * 1.08
        if pitch or is_end:
            first = PlacedSign(places[-1].x, at_end, min(step, places[-1].size * 1.08) / 1.08)
        else:
            y = max(before.y + before.size / 2, beside)
            first = PlacedSign(width + 2.5 + before.size, y, before.size)
        signs = collation.source.signs[group.source.start : group.source.end]
        for number, sign in enumerate(signs):
            place = PlacedSign(first.x, first.y + number * step, first.size)
            found.append(Ghost(sign, place, None if number or is_end else before))
        if pitch or is_end:
            at_end += len(signs) * step
        else:
            beside = first.y + len(signs) * step
    return found


def _draw_ghost(root: ET.Element, ghost: Ghost) -> None:
    """Draw one sign that was left out, and the line from where it belongs."""
    place, origin = ghost.place, ghost.origin
    if origin is not None:
        side = origin.size / 2 if place.x > origin.x else -origin.size / 2
        to = -place.size / 2 if place.x > origin.x else place.size / 2
        ends = {"x1": _at(origin.x + side), "x2": _at(place.x + to)}
        heights = {"y1": _at(origin.y + origin.size / 2), "y2": _at(place.y)}
        add(root, "line", **ends, **heights, **{"class": "leader"})
    _draw_frame(root, place.x, place.y - place.size / 2, place.size, place.size, "frame")
    shown = PlacedSign(place.x, place.y, place.size * 0.78)
    _draw_glyphs(root, glyphs(ghost.sign), shown, "ghost")


def _draw_obstacle(
    root: ET.Element, obstacle: Obstacle, inscription: Inscription, places: list[PlacedSign]
) -> None:
    """Draw what takes room in a column, and what it is."""
    signs = inscription.transcription.columns[obstacle.column].signs
    if not signs:
        return
    x = places[signs[-1].index].x
    wide = max(places[sign.index].size for sign in signs) / 0.92
    _draw_frame(root, x, obstacle.start, wide, obstacle.end - obstacle.start, "unsure")
    middle = (obstacle.start + obstacle.end) / 2
    add(root, "text", obstacle.what, x=_at(x), y=_at(middle), **{"class": "label"})


def _draw_frame(
    root: ET.Element, x: float, top: float, width: float, height: float, style: str
) -> None:
    """Draw a frame whose upper side has its middle at ``x``, ``top``, in mm."""
    corner = {"x": _at(x - width / 2), "y": _at(top)}
    sides = {"width": f"{width * SCALE:g}", "height": f"{height * SCALE:g}"}
    add(root, "rect", **corner, **sides, **{"class": style})


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
