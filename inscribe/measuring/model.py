"""What is asked of a picture, and what was measured; mm from the plate's top left corner.

No image library is needed to hold these.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from inscribe.record import Plate, SignBox

Corners = tuple[tuple[float, float], ...]  # top left, top right, bottom right, bottom left
DOUBTFUL = 0.6  # a sign less certain than this is to be looked at


class Cut(NamedTuple):
    """A top, and perhaps a bottom, that a person has given for a sign, in mm."""

    top: float
    bottom: float | None = None


@dataclass(frozen=True)
class Asked:
    """What a person says of a picture; what is not said is found in it.

    Signs and faces are counted from 0.
    """

    plate: Plate | None = None
    corners: Corners | None = None  # in pixels
    scale: float | None = None  # pixels per mm
    barrel: float | None = None  # of the lens, see Measured
    face: int = 0  # the face of the inscription that the picture shows
    cuts: Mapping[int, Cut] = field(default_factory=dict)
    boxes: tuple[SignBox, ...] = ()  # corrected by a person, and taken as they are


class MeasuredSign(NamedTuple):
    """The proposed place of one sign, and how certain it is, 0 to 1."""

    sign: int
    x: float
    y: float
    width: float
    height: float
    certainty: float
    is_given: bool = False  # by a person

    @property
    def box(self) -> SignBox:
        """The place as records hold it."""
        return SignBox(self.sign, self.x, self.y, self.width, self.height)

    @property
    def is_doubtful(self) -> bool:
        """Whether a person should look at it."""
        return self.certainty < DOUBTFUL


class MeasuredColumn(NamedTuple):
    """A column's ends and sides; its pitch is its length by its signs, with a standard error."""

    column: int
    signs: int
    top: float
    bottom: float
    x: float
    width: float
    pitch: float
    error: float


@dataclass(frozen=True)
class Measured:
    """What was measured in one picture of one face of an inscription."""

    plate: Plate
    corners: Corners  # in pixels
    scale: float  # pixels per mm
    barrel: float  # share by which the lens draws the picture's corners inwards
    signs: tuple[MeasuredSign, ...]
    columns: tuple[MeasuredColumn, ...]
    remarks: tuple[str, ...] = ()

    @property
    def doubtful(self) -> tuple[MeasuredSign, ...]:
        """The signs that a person should look at."""
        return tuple(sign for sign in self.signs if sign.is_doubtful)
