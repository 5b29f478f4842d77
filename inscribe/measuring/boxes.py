"""From ink, columns and cuts to boxes: each drawn tight around the ink between its cuts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import cv2
import numpy as np

from inscribe.measuring.cutting import ROWS, ColumnInk, SignExtent
from inscribe.measuring.rhythm import Expected
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array

Box = tuple[float, float, float, float]
CLEAR = 0.25  # how much stroke must show at a box's side
BARE = 10  # percent of a column's rows show no strokes, but at most grain
AROUND = 3.0  # mm along a column over which the bare metal beside it is seen
BLUR = 0.09  # mm by which ink spreads beyond its stroke
STEP = PER_MM // ROWS  # rows of pixels in one of ``ROWS``
CRUMB = 0.45  # of a cell: ink that is shorter is not the whole sign
LEAST = 0.08  # mm of ink that a side must show
NEAR = 0.2  # mm: strokes nearer to each other are one piece
PIECE = 0.05  # share of a sign's ink: a smaller piece that stands apart is grain or a neighbour's


def column_inks(ink: Array, sides: list[tuple[float, float]]) -> list[ColumnInk]:
    """Return the ink of each column, its rows and its pixels.

    From the rows, what the bare metal around shows of the same - grain that was taken for
    strokes - is taken away.
    """
    around = _around(ink, sides)
    found = []
    for left, right in sides:
        strip = ink[:, round(left) : max(round(left) + 1, round(right))]
        strip = strip[: len(strip) // STEP * STEP]
        found.append(ColumnInk(_rows(strip, around[: len(strip)]), _stepped(strip)))
    return found


def _stepped(values: Array) -> Array:
    """Return the mean of each ``STEP`` rows of pixels."""
    return np.asarray(values.reshape(-1, STEP, *values.shape[1:]).mean(1))


def _around(ink: Array, sides: list[tuple[float, float]]) -> Array:
    """Return the usual ink of a pixel outside all columns, for each row of pixels."""
    outside = np.ones(ink.shape[1], bool)
    for left, right in sides:
        outside[max(0, round(left) - 2) : round(right) + 2] = False
    outside[: PER_MM // 2], outside[-PER_MM // 2 :] = False, False
    if outside.sum() < PER_MM // 2:
        return np.zeros(len(ink), np.float32)
    bare = cv2.blur(ink, (1, round(AROUND * PER_MM)), borderType=cv2.BORDER_REFLECT)
    return np.asarray(np.quantile(bare[:, outside], 0.6, axis=1))


def _rows(strip: Array, around: Array) -> Array:
    """Return the ink of a column's rows, 1 where a row is full."""
    pixels = np.maximum(strip.sum(1) - around * strip.shape[1], 0)
    rows = _stepped(pixels) / PER_MM  # mm of ink
    rows = np.maximum(rows - np.percentile(rows, BARE), 0)
    inked = rows[rows > 0.1]
    full = float(np.percentile(inked, 85)) if len(inked) else 1.0
    return np.asarray(np.clip(rows / full - 0.06, 0, 1.3))


class Drawn(NamedTuple):
    """A box (x, y, width, height in mm), and whether the ink of its sign was seen."""

    sides: Box
    shows: bool


def drawn(
    ink: Array,
    side: tuple[float, float],
    cells: Sequence[SignExtent],
    expected: Sequence[Expected],
) -> list[Drawn]:
    """Return a box for each sign of a column.

    Signs that show no strokes stand in the middle of the others, as wide as is expected by them.

    Args:
        ink: the stroke of each pixel of the rectified plate.
        side: the column's left and right end in pixels.
        cells: where each sign was cut.
        expected: what is expected of each sign.
    """
    found = [
        tight(ink, *side, cell.top, cell.bottom) if sign.shows else None
        for cell, sign in zip(cells, expected, strict=True)
    ]
    middle, full = _middle_and_width(side, found, expected)
    result = []
    for box, cell, sign in zip(found, cells, expected, strict=True):
        long, wide = cell.bottom - cell.top, full * sign.width
        if box is None:
            result.append(Drawn((middle - wide / 2, cell.top, wide, long), False))
        elif box[3] < CRUMB * long:
            result.append(Drawn((box[0], cell.top, box[2], long), True))
        else:
            result.append(Drawn(box, True))
    return result


def _middle_and_width(
    side: tuple[float, float], found: Sequence[Box | None], expected: Sequence[Expected]
) -> tuple[float, float]:
    """Return the middle of a column's signs and the width of a full one, in mm."""
    seen = [(box, sign) for box, sign in zip(found, expected, strict=True) if box is not None]
    if not seen:
        return (side[0] + side[1]) / 2 / PER_MM, (side[1] - side[0]) / PER_MM
    middle = np.median([box[0] + box[2] / 2 for box, _ in seen])
    return float(middle), float(np.median([box[2] / sign.width for box, sign in seen]))


def tight(ink: Array, left: float, right: float, top: float, bottom: float) -> Box | None:
    """Return the box (x, y, width, height in mm) of the ink in a cell, or None without ink.

    ``left`` and ``right`` are pixels of the rectified plate, ``top`` and ``bottom`` are mm.
    """
    first, last = round(top * PER_MM), max(round(bottom * PER_MM), round(top * PER_MM) + 1)
    start = max(0, round(left))
    cell = _pieces(ink[first:last, start : max(start + 1, round(right))])
    need = LEAST * PER_MM
    across, down = _reach(cell.sum(0), need), _reach(cell.sum(1), need)
    if across is None or down is None:
        return None
    x, width = _shrunk(start + across[0], start + across[1], start, start + cell.shape[1])
    y, height = _shrunk(first + down[0], first + down[1], first, last)
    return x, y, width, height


def _pieces(cell: Array) -> Array:
    """Return where a cell shows strokes, without crumbs that stand apart from its sign."""
    clear = cell > CLEAR
    side = 2 * round(NEAR * PER_MM / 2) + 1
    disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (side, side))
    number, pieces = cv2.connectedComponents(cv2.dilate(clear.astype(np.uint8), disc))
    held = np.bincount(pieces[clear], cell[clear], number)
    return np.asarray(clear & (held >= PIECE * held.sum())[pieces])


def _reach(sums: Array, need: float) -> tuple[int, int] | None:
    found = np.flatnonzero(sums >= need)
    return (int(found[0]), int(found[-1]) + 1) if len(found) else None


def _shrunk(start: int, end: int, first: int, last: int) -> tuple[float, float]:
    """Return start and length in mm without the blur, which a cut through strokes does not have."""
    less = min(BLUR * PER_MM, (end - start) / 4)
    low = start + (less if start > first else 0)
    high = end - (less if end < last else 0)
    return low / PER_MM, (high - low) / PER_MM
