"""The surfaces that bear an inscription, and where on them each sign stands, in mm.

A plate is a rectangle. Around the blade opening of a guard the signs stand on an oval flat: the
earlier columns (place and title) to the right of the opening, the later ones (the name) to the
left; common practice, no source. Each face has a surface of its own; the first stands rightmost.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from inscribe.record import measured_column

if TYPE_CHECKING:
    from inscribe.record import ColumnMeasure, Inscription
    from inscribe.signs import Column, Face

PLATE = (14.5, 96.0)  # mm, where no plate was measured: a usual kozuka, common practice
GUARD = (
    25.0,
    44.0,
)  # mm, around the opening of a guard that was not measured; from memory
TABLET = (7.0, 16.0)  # mm, an inlaid tablet that was not measured; from memory
OPENING = (0.3, 0.56)  # of the blade, as shares of the flat; from memory
TOP = 5.0  # mm, where no column was measured
BETWEEN = 8.0  # mm between two faces of a usual plate
FRONT_AND_BACK = ("front", "back")
SAID = (FRONT_AND_BACK, ("omote", "ura"), ("表", "裏"))  # how a place names both faces
AROUND = ("seppa-dai", "切羽台")  # places around the blade opening
OPENED = ("tsuba", "guard", "seppa", "鐔", "鍔", "切羽")  # kinds whose faces have the opening
ELSEWHERE = {"rim", "edge", "mimi", "tablet", "hitsu", "hitsuana", "耳", "短冊", "櫃"}
EDGE = 0.4  # mm between a sign and the outline of a guard


class Surface(NamedTuple):
    """One face of the object as it is drawn; ``left`` is its left edge in mm."""

    left: float
    width: float
    height: float
    is_guard: bool = False
    name: str = ""

    @property
    def opening(self) -> tuple[float, float, float, float]:
        """The blade opening of a guard: left, top, width, height in mm."""
        width, height = self.width * OPENING[0], self.height * OPENING[1]
        left = self.left + (self.width - width) / 2
        return left, (self.height - height) / 2, width, height


@dataclass(frozen=True, slots=True)
class PlacedSign:
    """Where one sign stands on the plate, its middle and size in mm."""

    x: float
    y: float
    size: float


def surfaces(inscription: Inscription, kind: str = "") -> list[Surface]:
    """Return the surfaces of the faces in reading order, the first of them rightmost.

    ``kind`` is that of the object.

    >>> from inscribe.record import Inscription
    >>> [(s.left, s.name) for s in surfaces(Inscription("seppa-dai, front and back", "造之」花"))]
    [(33.0, 'front'), (0.0, 'back')]
    """
    is_guard = on_guard(inscription, kind)
    usual = GUARD if is_guard else TABLET if "tablet" in inscription.place else PLATE
    plate = inscription.plate
    width, height = (plate.width, plate.height) if plate else usual
    count = max(len(inscription.transcription.faces), 1)
    step = width + between(height)
    names = _names(inscription.place, count)
    return [
        Surface((count - 1 - face) * step, width, height, is_guard, names[face])
        for face in range(count)
    ]


def on_guard(inscription: Inscription, kind: str = "") -> bool:
    """Whether the inscription stands around the blade opening of a guard.

    It does where its place says so, and on an object of that ``kind`` wherever it is not said to
    stand elsewhere.

    >>> from inscribe.record import Inscription
    >>> [on_guard(Inscription(place, "花"), "Tsuba") for place in ("tang face", "omote", "rim")]
    [True, True, False]
    """
    place = inscription.place.lower()
    if any(word in place for word in AROUND):
        return True
    is_opened = any(word in kind.lower() for word in OPENED)
    return is_opened and not ELSEWHERE.intersection(re.findall("[a-z]+|短冊|[耳櫃]", place))


def between(height: float) -> float:
    """Return the room between two faces in mm: less between small ones."""
    return min(BETWEEN, height / 2)


def _names(place: str, count: int) -> tuple[str, ...]:
    if count == 1:
        return ("",)
    if count == len(FRONT_AND_BACK) and any(all(w in place for w in both) for both in SAID):
        return FRONT_AND_BACK
    return tuple(f"face {number}" for number in range(1, count + 1))


def places(inscription: Inscription, kind: str = "") -> list[PlacedSign]:
    """Return the place of each sign: its box, else its share of its column."""
    found: list[PlacedSign] = []
    faces = inscription.transcription.faces
    for surface, face in zip(surfaces(inscription, kind), faces, strict=False):
        for within, column in enumerate(face.columns):
            found += _column_places(inscription, surface, face, within, column)
    return found


def _column_places(
    inscription: Inscription, surface: Surface, face: Face, within: int, column: Column
) -> list[PlacedSign]:
    measured = measured_column(inscription, column)
    top, bottom, middle, across = _extent(measured, surface, within, len(face.columns))
    signs = len(column.signs) if measured else max(len(each.signs) for each in face.columns)
    pitch = (bottom - top) / max(signs, 1)
    if measured is None:  # nobody says how far it reaches: as large as the longest column allows
        pitch = min(pitch, across)
    found = []
    for number, sign in enumerate(column.signs):
        if box := sign.box:
            x, y = box.x + box.width / 2, box.y + box.height / 2
            found.append(PlacedSign(surface.left + x, y, min(box.width, box.height)))
        else:
            y = top + (number + 0.5) * pitch
            found.append(PlacedSign(surface.left + middle, y, min(across, pitch) * 0.92))
    return found


def _extent(
    measured: ColumnMeasure | None, surface: Surface, within: int, count: int
) -> tuple[float, float, float, float]:
    """Return top, bottom, middle and width in mm of the column that is ``within`` of ``count``."""
    height = surface.height
    if surface.is_guard:
        middle, across = _beside_opening(surface, within, count)
        top = max(height * 0.2, _outline(surface, middle - surface.width / 2, across / 2) + EDGE)
        bottom = height - top
    else:
        share = surface.width / count
        middle, across = surface.width - (within + 0.5) * share, share * 0.8
        margin = min(TOP, height * 0.1)
        top, bottom = margin, height - margin
    if measured:
        top, bottom = measured.top, measured.bottom
        if measured.x is not None and measured.width is not None:
            middle, across = measured.x + measured.width / 2, measured.width
    return top, bottom, middle, across


def _outline(surface: Surface, away: float, half: float) -> float:
    """Return how far below its top the oval is wide enough, in mm.

    There a column ``away`` from the middle, of this half width, has room.
    """
    share = min((abs(away) + half) / (surface.width / 2), 1.0)
    return surface.height / 2 * (1 - math.sqrt(1 - share * share))


def _beside_opening(surface: Surface, within: int, count: int) -> tuple[float, float]:
    """Return middle and width of a column: the earlier half right of the opening, the name left."""
    left, _, width, _ = surface.opening
    left -= surface.left
    right_count = count // 2
    on_right = within < right_count
    columns = right_count if on_right else count - right_count
    begin, room = (left + width, surface.width - left - width) if on_right else (0.0, left)
    room *= 0.9  # the oval narrows
    number = within if on_right else within - right_count
    share = room / max(columns, 1)
    inner = begin if on_right else left - room
    return inner + room - (number + 0.5) * share, share * 0.8
