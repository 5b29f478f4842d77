"""Where the strokes of a stretch of a column stand, so that it can be held against a sign's form.

Every stretch is asked about, for each bottom and each length: a sign's form is told in eighths from
top to bottom, and each of these in quarters from left to right of the ink that the stretch holds;
level strokes by themselves, and upright ones, for hands differ less in where strokes go.
"""

from __future__ import annotations

import numpy as np

from inscribe.measuring.view import Array

EIGHTHS, QUARTERS = 8, 4
FINER = 4  # parts of a row at which an eighth may end
INKED = 0.3  # ink from which a pixel counts for a stretch's left and right end


def rows_of(held: Array, sizes: Array) -> Array:
    """Return the ink of each eighth of a stretch [place of its bottom, length, eighth].

    The squares of the eighths add up to 1, or to 0 where there is no ink.

    Args:
        held: the ink of all rows above each place.
        sizes: lengths in rows.
    """
    low, high, part = _cuts(len(held), sizes)
    return _even(np.diff(held[low] + (held[high] - held[low]) * part, axis=-1))


def forms(pixels: Array, sizes: Array) -> Array:
    """Return the ink of each part of a stretch [place of its bottom, length, part].

    The parts are the quarters of the first eighth, then those of the second, and so on, of level
    strokes and then of upright ones; their squares add up to 1, or to 0 where there is no ink.

    Args:
        pixels: the ink of a column, level and upright, 0 to 1 together [row, pixel across, way].
        sizes: lengths in rows.
    """
    rows, width, ways = pixels.shape
    summed = np.zeros((rows * FINER + 1, width + 1, ways), np.float32)
    summed[1:, 1:] = np.repeat(pixels.cumsum(1), FINER, 0).cumsum(0)
    left, right = _sides(pixels.sum(-1), sizes)
    quarters = left[..., None] + (right - left)[..., None] * np.linspace(0, 1, QUARTERS + 1)
    eighths = np.arange(rows + 1)[:, None, None] - sizes[:, None] * np.linspace(1, 0, EIGHTHS + 1)
    at = np.rint(np.maximum(eighths, 0) * FINER).astype(np.int32) * (width + 1)
    places = at[..., None] + np.rint(quarters).astype(np.int32)[:, :, None]
    held = summed.reshape(-1, ways).take(places, 0)
    parts = np.diff(np.diff(held, axis=3), axis=2)
    return _even(np.moveaxis(parts, -1, 2).reshape(*parts.shape[:2], -1))


def _cuts(places: int, sizes: Array) -> tuple[Array, Array, Array]:
    """Return the places above and below each eighth's ends, and how far between them it ends."""
    cuts = np.arange(places)[:, None, None] - sizes[:, None] * np.linspace(1, 0, EIGHTHS + 1)
    low = np.clip(np.floor(cuts).astype(int), 0, places - 1)
    return low, np.minimum(low + 1, places - 1), np.clip(cuts - low, 0, 1)


def _sides(pixels: Array, sizes: Array) -> tuple[Array, Array]:
    """Return the left and right end of a stretch's ink, in pixels [place of its bottom, length]."""
    width = pixels.shape[1]
    inked = pixels > INKED
    shown = inked.any(1)
    lefts = np.where(shown, inked.argmax(1), width)
    rights = np.where(shown, width - inked[:, ::-1].argmax(1), 0)
    rows = np.arange(len(pixels) + 1)[:, None] - np.arange(1, int(sizes.max()) + 1)
    first = np.maximum(rows, 0)
    left = np.minimum.accumulate(np.where(rows < 0, width, lefts[first]), 1)[:, sizes - 1]
    right = np.maximum.accumulate(np.where(rows < 0, 0, rights[first]), 1)[:, sizes - 1]
    bare = right <= left
    return np.where(bare, 0, left), np.where(bare, width, right)


def _even(parts: Array) -> Array:
    size = np.linalg.norm(parts, axis=-1, keepdims=True)
    return np.asarray(parts / np.maximum(size, 1e-6), np.float32)
