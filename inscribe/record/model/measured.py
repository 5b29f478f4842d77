"""What a record measures, in mm: the object, the plate, columns, signs, and how it was done.

Signs and columns are counted from 0 here.
"""

from __future__ import annotations

from datetime import date
from typing import NamedTuple


class Measurements(NamedTuple):
    """The object's own measurements in mm, as far as they were taken."""

    length: float | None = None
    width: float | None = None
    height: float | None = None
    thickness: float | None = None
    diameter: float | None = None

    @property
    def largest(self) -> float | None:
        """The object's greatest extent, where any was measured."""
        sizes = (self.length, self.width, self.height, self.thickness, self.diameter)
        return max((size for size in sizes if size is not None), default=None)


TOLERANCE = 0.5  # mm by which lengths on curved and worn metal may err where a record says nothing


class Plate(NamedTuple):
    """The surface that bears the inscription, upright as it is read, in mm.

    ``tolerance`` is by how much a measured length may err, where the record says so.
    """

    width: float
    height: float
    tolerance: float | None = None

    @property
    def slack(self) -> float:
        """By how much lengths on this plate may err, in mm."""
        return TOLERANCE if self.tolerance is None else self.tolerance


class Obstacle(NamedTuple):
    """What takes room in a column: a seal, a picture, damage; mm from the plate's upper edge."""

    column: int  # from 0
    start: float
    end: float
    what: str = ""


class ColumnMeasure(NamedTuple):
    """Where one column stands, in mm from the plate's top left corner.

    ``top`` and ``bottom`` are the ends of the writing; ``x`` is the column's left edge.
    """

    top: float
    bottom: float
    x: float | None = None
    width: float | None = None

    @property
    def length(self) -> float:
        """The length of the writing in mm."""
        return self.bottom - self.top


class SignBox(NamedTuple):
    """The measured place of one sign; ``sign`` is its index from 0."""

    sign: int
    x: float
    y: float
    width: float
    height: float


class Photograph(NamedTuple):
    """A photograph from which the places of signs were measured, and how, so that it can be again.

    ``face`` counts from 0. ``corners`` are those of the plate in pixels (x, y; top left, top right,
    bottom right, bottom left), ``scale`` is in pixels per mm, ``barrel`` is the share by which the
    lens draws the picture's corners inwards. ``cuts`` and ``drawn`` say what a person put right:
    cuts as given on the command line, and the signs whose boxes were drawn.
    """

    picture: str
    by: str
    on: date | None = None
    face: int | None = None
    corners: tuple[float, ...] = ()
    scale: float | None = None
    barrel: float | None = None
    cuts: str = ""
    drawn: str = ""
    remarks: str = ""
