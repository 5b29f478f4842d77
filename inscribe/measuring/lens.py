"""How a lens bends the sides of a plate: each barrel has a worth, and all are weighed together.

Where edges are clear, points of them lie on a straight line once the right barrel is taken out;
else both long sides are followed along the curves that each barrel would make of them.
"""

from __future__ import annotations

import cv2
import numpy as np

from inscribe.measuring.view import Array, barrelled, straightened

BARRELS = np.linspace(-0.02, 0.045, 27)
POINTS = 240  # along a side
ENDS = np.arange(-1, 1.1, 0.5)  # pixels by which a corner may be off
SHARP = 100.0  # how much more change along a curve speaks for it
# Most lenses draw corners inwards a little, few outwards (common practice, no source).
USUAL, GIVE = 0.01, 0.012


def likeliest(worth: Array) -> float:
    """Return the mean of ``BARRELS`` weighed by their worth (nats) and by what is usual."""
    worth = worth - 0.5 * ((BARRELS - USUAL) / GIVE) ** 2
    weight = np.exp(worth - worth.max())
    return round(float((weight * BARRELS).sum() / weight.sum()), 4)


def along_long_sides(small: Array, corners: Array) -> Array:
    """Return the worth of each barrel by the change of light along its curves, corner to corner.

    Each point of a side counts alike, however faint the edge is there, and whether it is brighter
    within or without: so a side tells its curve though parts of it are lost in the ground.
    """
    size = (small.shape[1], small.shape[0])
    light = np.log(cv2.GaussianBlur(small, (0, 0), 0.7).astype(np.float32) + 8)
    along = np.linspace(0.02, 0.98, POINTS)
    shifts = np.arange(-7, 7.1, 0.5)
    worth = np.zeros(len(BARRELS))
    for start, end in ((corners[1], corners[2]), (corners[3], corners[0])):
        way = end - start
        normal = np.array([-way[1], way[0]]) / np.hypot(*way)
        base = start + way * along[:, None]
        points = (base[:, None] + normal * shifts[:, None]).astype(np.float32)
        values = cv2.remap(light, points[..., 0], points[..., 1], cv2.INTER_LINEAR)
        change = np.abs(np.gradient(values, axis=1)).max(-1) ** 2
        change /= change.sum(1, keepdims=True) + 1e-6
        worth = worth + [
            _along_curve(change, shifts, along, _offsets(start, end, along, size, float(barrel)))
            for barrel in BARRELS
        ]
    return SHARP * worth


def _offsets(start: Array, end: Array, along: Array, size: tuple[int, int], barrel: float) -> Array:
    """Return how far a straight side stands off the line between its ends as a lens shows it."""
    first, last = straightened(np.array([start, end]), size, barrel)
    curve = barrelled(first + (last - first) * along[:, None], size, barrel)
    way = end - start
    return np.asarray((curve - start) @ np.array([-way[1], way[0]]) / np.hypot(*way))


def _along_curve(change: Array, shifts: Array, along: Array, offsets: Array) -> float:
    """Return the most change met along a curve whose ends may be a little off."""
    points = np.arange(len(along))
    best = 0.0
    for first in ENDS:
        for last in ENDS:
            off = offsets + first * (1 - along) + last * along
            at = np.clip(np.rint((off - shifts[0]) / 0.5).astype(int), 0, len(shifts) - 1)
            best = max(best, float(change[points, at].mean()))
    return best
