"""Glare that hides signs, told from metal that is merely overexposed.

On bright metal strokes are still dark; glare leaves nothing, right across the plate or in patches
as large as signs. Where it covers an end of the writing, what is left is too short for the signs.
"""

from __future__ import annotations

import cv2
import numpy as np

from inscribe.measuring.columns import bands, column_cuts
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array

WHITE = 244  # a pixel as bright as this in every colour is burnt out
ACROSS = 0.99  # share of the plate's width that is burnt out in a blank row
BAND = 2.0  # mm: fewer blank rows together may be a space between signs
INSIDE = 0.15  # share of the rows of the writing that may be blank
PATCH = 1.5  # mm: no sign has so large a square without a stroke, nor
OF_A_SIGN = 0.7  # one of this share of its length
PATCHES = 0.3  # share of the writing that may lie in such patches
LONG = 0.35  # share of the plate's rows that are blank where an end may be hidden
CROWDED = 0.8  # signs have at least so much room, in widths of their column
RIM = 12  # pixels at the plate's edge


def burnt(pixels: Array) -> float:
    """Return the share of a picture that is burnt out."""
    return float((pixels.min(-1) >= WHITE).mean())


def hidden(pixels: Array, ink: Array, counts: list[int]) -> float:
    """Return the share of the writing on a rectified plate that glare hides; 0 if it hides none.

    ``counts`` are the signs of each column.
    """
    white = pixels.min(-1) >= WHITE
    blank = _blank_rows(white)
    sides = bands(ink, column_cuts(ink, len(counts))[0])
    columns = np.zeros(ink.shape[1], bool)
    for left, right in sides:
        columns[round(left) : round(right)] = True
    held = np.cumsum(ink[:, columns].sum(1))
    first, last = np.searchsorted(held, [0.01 * held[-1], 0.99 * held[-1]])
    most = max(counts)
    usual = float(np.median([right - left for left, right in sides]))
    width = min(usual, ink.shape[1] / len(counts))
    size = max(PATCH * PER_MM, OF_A_SIGN * min(width, (last - first) / most))
    inside = float(blank[first : last + 1].mean())
    patches = _patches(white, round(size))[first : last + 1, columns]
    found = [
        inside if inside > INSIDE else 0.0,
        float(patches.mean()) if patches.size and patches.mean() > PATCHES else 0.0,
        float(blank.mean())
        if blank.mean() > LONG and (~blank).sum() < CROWDED * most * width
        else 0.0,
    ]
    return max(found)


def _blank_rows(white: Array) -> Array:
    """Return which rows of the plate lie in a band that is burnt out right across."""
    smooth = cv2.blur(white[:, RIM:-RIM].astype(np.float32), (1, PER_MM // 2))
    rows = (smooth.mean(1) > ACROSS).astype(np.uint8)
    rows[:RIM], rows[-RIM:] = rows[RIM], rows[-RIM - 1]
    kept = cv2.morphologyEx(rows, cv2.MORPH_OPEN, np.ones((round(BAND * PER_MM), 1), np.uint8))
    return np.asarray(kept.ravel() > 0)


def _patches(white: Array, size: int) -> Array:
    """Return where white squares of a size lie."""
    return cv2.morphologyEx(white.astype(np.uint8), cv2.MORPH_OPEN, np.ones((size, size), np.uint8))
