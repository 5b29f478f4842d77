"""What a look is: a function that engraves an inscription on a plate and photographs it.

    def photograph(wanted: Wanted, seed: int) -> Taken

A look decides everything that ``Wanted`` leaves open, differently for every seed and the same for
the same seed: typeface, sizes, rhythm, alloy, patina, grain, scratches, wear, light, the ground the
plate lies on, the camera's noise. Each look is written by another author who has not read the
others, so that what is set on one can be measured on another.

Lengths are mm on the flat plate, from its top left corner, y downwards; pixels are of the picture,
the middle of the first pixel being (0.5, 0.5).
"""

from __future__ import annotations

from typing import Any, Literal, NamedTuple

Flaw = Literal["", "glare", "blur", "bent", "cropped"]
Sides = tuple[float, float, float, float]  # x, y, width, height in mm

WORN = "□"  # one sign that can no longer be read
GAP = "gap"  # a lost stretch, of two to six signs' length
REPEATED = "〱"  # a mark that takes the length of about two signs


class Wanted(NamedTuple):
    """What is to be engraved, and how it is to be photographed."""

    columns: tuple[tuple[str, ...], ...]  # signs, columns from right to left; one sign a string
    width: float  # of the plate in mm
    height: float  # of the plate in mm, along the columns
    pixels_per_mm: float  # in the middle of the picture, 8 to 60
    tilt: float = 0.0  # degrees between the camera's axis and the plate's normal, 0 to 15
    barrel: float = 0.0  # share by which a corner of the picture is drawn inwards, 0 to 0.03
    extents: tuple[tuple[float, float], ...] | None = None  # each column's first and last y in mm
    flaw: Flaw = ""


class Taken(NamedTuple):
    """The photograph and the truth about it."""

    image: Any  # numpy uint8 array (rows, columns, 3), RGB
    corners: tuple[tuple[float, float], ...]  # of the plate in pixels: TL, TR, BR, BL
    boxes: tuple[tuple[Sides, ...], ...]  # of every sign of ``Wanted.columns``, same order
