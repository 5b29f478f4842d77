"""From ink, columns and cuts to boxes: each drawn tight around the ink between its cuts."""

from __future__ import annotations

import cv2
import numpy as np

from inscribe.measuring.cutting import ROWS, ColumnInk
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array

CLEAR = 0.25  # how much stroke must show at a box's side
AROUND = 3.0  # mm along a column over which the bare metal beside it is seen
BLUR = 0.09  # mm by which ink spreads beyond its stroke
STEP = PER_MM // ROWS  # rows of pixels in one of ``ROWS``
LEAST = 0.08  # mm of ink that a side must show


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
    inked = rows[rows > 0.1]
    full = float(np.percentile(inked, 85)) if len(inked) else 1.0
    return np.asarray(np.clip(rows / full - 0.06, 0, 1.3))


def tight(
    ink: Array, left: float, right: float, top: float, bottom: float
) -> tuple[float, float, float, float] | None:
    """Return the box (x, y, width, height in mm) of the ink in a cell, or None without ink.

    ``left`` and ``right`` are pixels of the rectified plate, ``top`` and ``bottom`` are mm.
    """
    first, last = round(top * PER_MM), max(round(bottom * PER_MM), round(top * PER_MM) + 1)
    start = max(0, round(left))
    cell = ink[first:last, start : max(start + 1, round(right))] > CLEAR
    need = LEAST * PER_MM
    across, down = _reach(cell.sum(0), need), _reach(cell.sum(1), need)
    if across is None or down is None:
        return None
    x, width = _shrunk(start + across[0], start + across[1], start, start + cell.shape[1])
    y, height = _shrunk(first + down[0], first + down[1], first, last)
    return x, y, width, height


def _reach(sums: Array, need: float) -> tuple[int, int] | None:
    found = np.flatnonzero(sums >= need)
    return (int(found[0]), int(found[-1]) + 1) if len(found) else None


def _shrunk(start: int, end: int, first: int, last: int) -> tuple[float, float]:
    """Return start and length in mm without the blur, which a cut through strokes does not have."""
    less = min(BLUR * PER_MM, (end - start) / 4)
    low = start + (less if start > first else 0)
    high = end - (less if end < last else 0)
    return low / PER_MM, (high - low) / PER_MM
