"""What every simulated carver returns: plates as measured, and the true cause of differences."""

from __future__ import annotations

from typing import TypedDict

Box = tuple[float, float, float, float]  # x, y, width, height in mm
Block = tuple[int, float, float, str]  # column from 0, from mm, to mm, what


class Cause(TypedDict):
    """One difference: signs of source and copy from 0 (-1 for none), and why it came about.

    The cause is "space", "slip", "wording" (his model read so) or "habit" (he always writes so).
    """

    first: int
    last: int
    copy_first: int
    copy_last: int
    cause: str


class Plate(TypedDict):
    """A plate as recorded, with the truth about its differences; columns and lines parted by ／."""

    source: str
    copy: str
    length: float
    width: float
    columns: list[tuple[float, float, float]]  # top, bottom, width
    boxes: list[Box] | None
    takes_room: list[Block]
    world: str
    causes: list[Cause]


def common_start(one: str, other: str) -> int:
    """Return how many signs two texts have in common at their beginning."""
    pairs = zip(one, other, strict=False)
    return next((n for n, (a, b) in enumerate(pairs) if a != b), min(len(one), len(other)))


def applied(plate: Plate) -> str:
    """Return the copy that the causes of a plate make of its source, columns not counted."""
    source, copy = plate["source"].replace("／", ""), plate["copy"].replace("／", "")
    made, at = "", 0
    for cause in plate["causes"]:
        written = copy[max(cause["copy_first"], 0) : cause["copy_last"] + 1]
        goes = cause["first"] if cause["first"] >= 0 else at + cause["copy_first"] - len(made)
        made += source[at:goes] + written
        at = cause["last"] + 1 if cause["first"] >= 0 else goes
    return made + source[at:]
