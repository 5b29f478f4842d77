"""Keys of ``inscribe measure``. Lengths in mm from the plate's top left corner."""

from __future__ import annotations

from typing import Annotated, TypedDict

from inscribe.keys.base import Column, Count, Mm, Share, Sign


class PlateKeys(TypedDict):
    """The plate."""

    width: Annotated[Mm, "its width"]
    height: Annotated[Mm, "its height"]


class MeasuredColumnKeys(TypedDict):
    """A column as measured."""

    column: Column
    signs: Annotated[Count, "signs in it"]
    top: Annotated[Mm, "the top of its first sign"]
    bottom: Annotated[Mm, "the bottom of its last sign"]
    x: Annotated[Mm, "its left side"]
    width: Annotated[Mm, "its width"]
    pitch: Annotated[Mm, "its length by its signs"]
    error: Annotated[Mm, "the standard error of the pitch"]


class MeasuredSignKeys(TypedDict):
    """The proposed place of a sign."""

    sign: Sign
    text: Annotated[str, "the sign as transcribed"]
    x: Annotated[Mm, "its left side"]
    y: Annotated[Mm, "its top"]
    width: Annotated[Mm, "its width"]
    height: Annotated[Mm, "its height"]
    certainty: Annotated[Share, "how certain the place is"]
    given: Annotated[bool, "whether a person gave it"]
    doubtful: Annotated[bool, "whether a person should look at it"]


class MeasuredKeys(TypedDict):
    """What was measured in one picture of one face."""

    picture: Annotated[str, "the picture's file name"]
    plate: Annotated[PlateKeys, "its size"]
    scale: Annotated[float, "pixels of the picture per mm"]
    barrel: Annotated[float, "share by which the lens draws the picture's corners inwards"]
    corners: Annotated[
        list[list[float]], "the plate's corners in pixels: top left, top right, bottom right, left"
    ]
    columns: Annotated[list[MeasuredColumnKeys], "in order"]
    signs: Annotated[list[MeasuredSignKeys], "in order"]
