"""A surface drawn to scale: columns as carved, what was left out as ghosts, crowding made visible.

Nothing is told by colour alone: carved signs are solid, ghosts stand in dashed frames, signs of
which the transcriber is not sure in dotted ones, a wedge points where signs are missing, and the
pitch of each column is drawn as a ladder of ticks beside it, closer ticks for closer signs. A kana
from an unusual parent has its parent small beside it. Each face has a surface of its own.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.record import measured_column
from inscribe.report import Style, add, width as cells
from inscribe.report.drawing.ghosts import Ghost, ghosts
from inscribe.report.drawing.glyphs import glyphs, letters, parent_of
from inscribe.report.drawing.surfaces import PlacedSign, Surface, places, surfaces
from inscribe.signs import Certainty

if TYPE_CHECKING:
    from inscribe.collation import Collation
    from inscribe.record import Inscription, Obstacle
    from inscribe.signs import Sign

SCALE = 8  # units of the drawing a mm
MARGIN = 6.0  # mm around the surfaces, for labels
LABEL = 22.0  # units, the size of a label beside a plate of usual height
LETTER = 0.6  # of the size of a label: how wide a letter is at most, in the mean
USUAL = 96.0  # mm, the height of a usual plate
FONTS = "'Noto Serif CJK JP','Hiragino Mincho ProN','Yu Mincho',serif"
SHEET = f"""
line, rect, ellipse, polygon {{ vector-effect: non-scaling-stroke; }}
text {{ font-family: {FONTS}; fill: #1d1b18; text-anchor: middle; dominant-baseline: central; }}
.plate {{ fill: #eceae3; stroke: #1d1b18; stroke-width: 1.6; }}
.opening {{ fill: #fff; stroke: #1d1b18; stroke-width: 1.6; }}
.ladder {{ stroke: #1d1b18; stroke-width: 1; fill: none; }}
.frame {{ fill: #fff; stroke: #1d1b18; stroke-width: 1.2; stroke-dasharray: 4 3; }}
.unsure {{ fill: none; stroke: #1d1b18; stroke-width: 1; stroke-dasharray: 1 3; }}
.leader {{ stroke: #1d1b18; stroke-width: 0.8; stroke-dasharray: 2 2; }}
.caret {{ fill: #1d1b18; }}
.ghost {{ fill: #1d1b18; }}
.parent {{ fill: #4a463f; }}
.label {{ font-family: Georgia, serif; fill: #3a372f; }}
"""


def plate_drawing(
    inscription: Inscription,
    collation: Collation | None = None,
    style: Style | None = None,
    kind: str = "",
) -> str:
    """Return an SVG drawing of an inscription; with a collation, of what was left out too.

    ``kind`` is that of the object: the faces of a guard are drawn with the blade opening.

    >>> from inscribe import load_record
    >>> plate_drawing(load_record("examples/DEMO-003.toml").inscriptions[0]).count("<svg")
    1
    """
    t = inscription.transcription
    there, placed = surfaces(inscription, kind), places(inscription, kind)
    whole, height = there[0].left + there[0].width, there[0].height
    missing = ghosts(collation, placed, whole) if collation is not None and placed else []
    signs = [*placed, *(ghost.place for ghost in missing)]
    sheet = _Sheet(inscription, (whole, height), signs, style or Style())
    for surface in there:
        sheet.draw_surface(surface)
    for sign in t.signs:
        sheet.draw_sign(sign, placed[sign.index])
    for column in t.columns:
        if column.signs:
            sheet.draw_ladder([placed[s.index] for s in column.signs], column.index)
    for obstacle in inscription.takes_room:
        sheet.draw_obstacle(obstacle, inscription, placed)
    for ghost in missing:
        sheet.draw_ghost(ghost)
    sheet.draw_scale(inscription, whole, is_guard=there[0].is_guard)
    return ET.tostring(sheet.root, encoding="unicode") + "\n"


DESCRIBED = (
    "Carved signs are solid; what the copy leaves out stands in dashed frames, and a wedge"
    " points to where it belongs; doubtful and restored signs stand in dotted frames."
)


class _Sheet:
    """An SVG drawing in the making; lengths in mm from the leftmost surface's top left corner."""

    def __init__(
        self,
        inscription: Inscription,
        size: tuple[float, float],
        signs: list[PlacedSign],
        style: Style,
    ) -> None:
        """Begin a drawing large enough for surfaces of these mm, their labels and the signs."""
        width, height = size
        self.style = style
        self.small = max(min(height / USUAL, 1.0), 0.05)  # labels beside small plates are small
        self.lettering = max(self.small, min(1.4 * self.small, 0.65))  # but not too small to read
        self.margin = MARGIN * max(self.small, 0.4)
        right = max((sign.x + sign.size / 2 for sign in signs), default=0.0)
        lowest = max((sign.y + sign.size / 2 for sign in signs), default=0.0)
        self.foot = max(height, lowest)  # below it stand the measure and what is not measured
        self.width = max(width, right)
        across = self.width + 2 * self.margin
        down = self.foot + self._lines(inscription) * 7.0 * self.small + 2 * self.margin
        self.root = ET.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "viewBox": f"0 0 {across * SCALE:g} {down * SCALE:g}",
                "width": f"{across:g}mm",
                "height": f"{down:g}mm",
                "role": "img",
            },
        )
        scale = "drawn to scale" if inscription.plate else "not measured and not to scale"
        named = style.word("place", inscription.place)
        add(self.root, "title", style.listed(named, style.explained(scale)))
        add(
            self.root,
            "desc",
            style.explained(DESCRIBED),
        )
        add(self.root, "style", SHEET)

    @staticmethod
    def _lines(inscription: Inscription) -> int:
        """Return how many lines stand below the surfaces: the measure, what was not measured."""
        return 1 + (inscription.plate is not None and bool(_not_measured(inscription)))

    def at(self, mm: float) -> str:
        """Return a place in units of the drawing."""
        return f"{(mm + self.margin) * SCALE:.1f}"

    def label(self, text: str, x: float, y: float) -> None:
        """Write a label with its middle at ``x``, ``y``, small where the sheet is narrow."""
        room = 2 * (min(x, self.width - x) + self.margin) * SCALE
        size = f"{min(LABEL * self.lettering, room / (LETTER * cells(text))):.1f}"
        place = {"x": self.at(x), "y": self.at(y), "font-size": size}
        add(self.root, "text", text, **place, **{"class": "label"})

    def line(self, start: tuple[float, float], end: tuple[float, float], kind: str) -> None:
        """Draw a line from place to place."""
        (x1, y1), (x2, y2) = start, end
        ends = {"x1": self.at(x1), "y1": self.at(y1), "x2": self.at(x2), "y2": self.at(y2)}
        add(self.root, "line", **ends, **{"class": kind})

    def frame(self, x: float, top: float, width: float, height: float, kind: str) -> None:
        """Draw a frame whose upper side has its middle at ``x``, ``top``."""
        corner = {"x": self.at(x - width / 2), "y": self.at(top)}
        sides = {"width": f"{width * SCALE:g}", "height": f"{height * SCALE:g}"}
        add(self.root, "rect", **corner, **sides, **{"class": kind})

    def draw_surface(self, surface: Surface) -> None:
        """Draw one face: a plate, or the flat of a guard with its opening."""
        middle = surface.left + surface.width / 2
        if surface.is_guard:
            half = {"rx": f"{surface.width / 2 * SCALE:g}", "ry": f"{surface.height / 2 * SCALE:g}"}
            centre = {"cx": self.at(middle), "cy": self.at(surface.height / 2)}
            add(self.root, "ellipse", **centre, **half, **{"class": "plate"})
            add(self.root, "polygon", points=self._opening(surface), **{"class": "opening"})
        else:
            sides = {"width": surface.width, "height": surface.height}
            size = {key: f"{side * SCALE:g}" for key, side in sides.items()}
            corner = {"x": self.at(surface.left), "y": self.at(0), "rx": f"{6 * self.small:g}"}
            add(self.root, "rect", **corner, **size, **{"class": "plate"})
        if surface.name:
            self.label(self.style.explained(surface.name), middle, surface.height + 3 * self.small)

    def _opening(self, surface: Surface) -> str:
        """Return the corners of the blade opening, its point (the edge) upwards."""
        left, top, width, height = surface.opening
        shoulder = top + height * 0.2
        corners = [
            (left + width / 2, top),
            (left + width, shoulder),
            (left + width, top + height),
            (left, top + height),
            (left, shoulder),
        ]
        return " ".join(f"{self.at(x)},{self.at(y)}" for x, y in corners)

    def draw_sign(self, sign: Sign, place: PlacedSign) -> None:
        """Draw one carved sign, its parent beside it where it is noted with one."""
        if sign.certainty in (Certainty.DOUBTFUL, Certainty.RESTORED):
            self.frame(place.x, place.y - place.size / 2, place.size, place.size, "unsure")
        self._glyphs(glyphs(sign), place, "sign")
        if parent := parent_of(sign):
            size = place.size * 0.46
            beside = PlacedSign(place.x + place.size * 0.68, place.y - place.size * 0.2, size)
            self._glyphs((parent,), beside, "parent")

    def _glyphs(self, shown: tuple[str, ...], place: PlacedSign, kind: str) -> None:
        """Draw the characters of one sign in its place, small where they are several."""
        size = place.size / max(len(shown), *map(letters, shown))
        top = place.y - size * (len(shown) - 1) / 2
        for number, text in enumerate(shown):
            where = {"x": self.at(place.x), "y": self.at(top + number * size)}
            add(self.root, "text", text, **where, **_font(size, kind))

    def draw_ladder(self, column: list[PlacedSign], number: int) -> None:
        """Draw a tick beside each sign, and the column's number above the first."""
        side = max(place.x + place.size / 2 for place in column) + 0.35 * self.small
        for place in column:
            self.line((side, place.y), (side + 0.7 * self.small, place.y), "ladder")
        above = min(-2 * self.small, column[0].y - column[0].size)
        self.label(str(number + 1), column[0].x, above)

    def draw_ghost(self, ghost: Ghost) -> None:
        """Draw one sign that was left out, a wedge where it belongs, and the line between them."""
        place, origin = ghost.place, ghost.origin
        if origin is not None:
            turn = 1 if place.x >= origin.x else -1
            begin = (origin.x + turn * origin.size / 2, origin.y + origin.size / 2)
            self.line(begin, (place.x - turn * place.size / 2, place.y), "leader")
            self._wedge(origin)
        self.frame(place.x, place.y - place.size / 2, place.size, place.size, "frame")
        self._glyphs(glyphs(ghost.sign), PlacedSign(place.x, place.y, place.size * 0.78), "ghost")
        if ghost.number is not None:
            beside = place.x - place.size * 0.5 - 1.6 * self.small
            on_edge = abs(beside) < 1.6 * self.small
            self.label(str(ghost.number), -2.0 * self.small if on_edge else beside, place.y)

    def _wedge(self, before: PlacedSign) -> None:
        """Draw a wedge at the left of a column that points between a sign and the next."""
        x, y, size = before.x - before.size * 0.42, before.y + before.size / 2, before.size * 0.22
        corners = [(x - size, y - size), (x - size, y + size), (x, y)]
        points = " ".join(f"{self.at(across)},{self.at(down)}" for across, down in corners)
        add(self.root, "polygon", points=points, **{"class": "caret"})

    def draw_obstacle(
        self, obstacle: Obstacle, inscription: Inscription, placed: list[PlacedSign]
    ) -> None:
        """Draw what takes room in a column, and what it is."""
        signs = inscription.transcription.columns[obstacle.column].signs
        if not signs:
            return
        x = placed[signs[-1].index].x
        wide = max(placed[sign.index].size for sign in signs) / 0.92
        self.frame(x, obstacle.start, wide, obstacle.end - obstacle.start, "unsure")
        self.label(obstacle.what, x, (obstacle.start + obstacle.end) / 2)

    def draw_scale(self, inscription: Inscription, width: float, *, is_guard: bool) -> None:
        """Draw a measure below the surfaces, and say what was not measured."""
        small, y = self.small, self.foot + 7 * self.small
        if inscription.plate is not None:
            length = 10 if inscription.plate.height > 2 * 10 else 1
            self.line((0, y), (length, y), "ladder")
            for end in (0, length):
                self.line((end, y - small), (end, y + small), "ladder")
            self.label(f"{length} mm", length / 2, y + 3 * small)
            y += 7 * small
        if said := _not_measured(inscription, is_guard=is_guard):
            self.label(self.style.explained(said), width / 2, y)


def _not_measured(inscription: Inscription, *, is_guard: bool = False) -> str:
    if inscription.plate is None:
        return "a sketch, not to scale" if is_guard else "not to scale"
    t = inscription.transcription
    measured = all(measured_column(inscription, column) for column in t.columns)
    return "" if measured else "columns not measured"


def _font(size: float, kind: str) -> dict[str, str]:
    return {"font-size": f"{size * SCALE:.1f}", "class": kind}
