"""Where the columns stand: their number is known, and they are about equally wide.

The cuts between columns are chosen together, by dynamic programming over all places: a cut should
meet little ink, columns should be alike in width, each must hold ink, and little may be left out.
"""

from __future__ import annotations

import cv2
import numpy as np

from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array

STEP = 2  # pixels between the places that are tried
UNLIKE = 3.0  # price of a column whose width differs by the usual width
CROSSED = 4.0  # price of a cut through the densest part
LEFT_OUT = 12.0  # price of leaving out all ink
EMPTY = 0.6  # price of a column that holds a share 1/e of the usual ink
FAINT = 0.08  # of a column's densest part: its writing ends there
WIDTHS = 24  # usual widths that are tried


def column_cuts(ink: Array, count: int) -> tuple[list[float], float]:
    """Return the ``count + 1`` cuts from left to right, in pixels, and what they cost."""
    profile = cv2.GaussianBlur(ink.mean(0)[None], (0, 0), 0.1 * PER_MM)[0][::STEP]
    held = np.concatenate([[0], np.cumsum(profile)]) / (profile.sum() + 1e-9)
    dense = np.concatenate([profile, profile[-1:]]) / (np.percentile(profile, 90) + 1e-9)
    places = len(held)
    best: tuple[list[float], float] | None = None
    for usual in np.linspace(places / count / 4, places / count, WIDTHS):
        found = _cheapest(held, dense, count, usual)
        if best is None or found[1] < best[1]:
            best = found
    assert best is not None
    return [cut * STEP for cut in best[0]], best[1]


def _cheapest(held: Array, dense: Array, count: int, usual: float) -> tuple[list[float], float]:
    places = np.arange(len(held))
    widths = places[None] - places[:, None]
    share = (held[None] - held[:, None]) * count
    price = UNLIKE * np.log(np.maximum(widths, 1) / usual) ** 2
    price = price - EMPTY * np.log(np.clip(share, 1e-4, 1))
    price[widths < 3] = np.inf
    crossing = CROSSED * np.minimum(dense, 1.5)
    costs = LEFT_OUT * held + crossing
    before = []
    for _ in range(count):
        ways = costs[:, None] + price
        before.append(ways.argmin(0))
        costs = ways.min(0) + crossing
    costs = costs + LEFT_OUT * (1 - held)
    cut = int(costs.argmin())
    cuts = [cut]
    for choice in reversed(before):
        cut = int(choice[cut])
        cuts.append(cut)
    return [float(c) for c in reversed(cuts)], float(costs.min())


def bands(ink: Array, cuts: list[float]) -> list[tuple[float, float]]:
    """Return the left and right end of each column's writing in pixels, in reading order."""
    profile = cv2.GaussianBlur(ink.mean(0)[None], (0, 0), 0.1 * PER_MM)[0]
    found = []
    for left, right in zip(cuts[-2::-1], cuts[:0:-1], strict=True):
        first, last = round(left), max(round(left) + 1, round(right))
        inside = profile[first:last]
        shown = np.flatnonzero(inside > FAINT * inside.max())
        start, end = (int(shown[0]), int(shown[-1]) + 1) if len(shown) else (0, len(inside))
        slack = round(0.2 * PER_MM)
        found.append(
            (float(max(first, first + start - slack)), float(min(last, first + end + slack)))
        )
    return found
