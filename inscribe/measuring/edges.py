"""The edges of a plate made exact: each is found again along its length, and a line laid through.

All four edges together tell how the lens bends straight lines; a long side that bows to one side
with its neighbour tells that the plate itself is bent.
"""

from __future__ import annotations

from typing import NamedTuple

import cv2
import numpy as np

from inscribe.measuring import lens
from inscribe.measuring.view import Array, straightened

POINTS = 160  # along an edge, where it is made exact
NEAR = 0.012  # of the longer side: how far the exact edge may be
APART = 20  # points of an edge that are off each by its own chance
LEAST_REST = 0.05  # pixels that the points of the clearest side are off, in the mean
TOLD = 10.0  # nats by which clear edges prefer one barrel
BOWS = np.linspace(-0.09, 0.09, 37)


class Exact(NamedTuple):
    """The corners in pixels, how far the long sides bow (share of their length), the barrel."""

    corners: Array
    bow: float
    barrel: float
    spread: float  # pixels over which the sharpest edge changes


def changes(small: Array) -> tuple[Array, Array]:
    """Return how the light changes across and down, -1 to 1, what is usual being little."""
    smooth = cv2.GaussianBlur(small, (0, 0), 1.2).astype(np.float32)
    light = np.log(smooth + 8)
    found = []
    for right, down in ((1, 0), (0, 1)):
        change = cv2.Scharr(light, cv2.CV_32F, right, down) / 32
        strongest = np.abs(change).argmax(-1)[..., None]
        change = np.take_along_axis(change, strongest, -1)[..., 0]
        usual = max(float(np.percentile(np.abs(change), 75)), 0.004)
        found.append(np.tanh(change / (3 * usual)))
    return found[0], found[1]


def clear_sides(change_x: Array, change_y: Array, corners: Array) -> list[float]:
    """Return how clear each side is: top, right, bottom, left."""
    found = []
    for index in range(4):
        start, end = corners[index], corners[(index + 1) % 4]
        change = change_x if index % 2 else change_y
        best = 0.0
        for shift in (-2, -1, 0, 1, 2):
            along = start + (end - start) * np.linspace(0.04, 0.96, 80)[:, None]
            along = along + (np.array([shift, 0]) if index % 2 else np.array([0, shift]))
            points = along.astype(np.float32)[None]
            values = cv2.remap(change, points[..., 0], points[..., 1], cv2.INTER_LINEAR)
            best = max(best, abs(float(values.mean())))
        found.append(best)
    return found


def exact(small: Array, quad: Array, *, is_found: bool = True) -> Exact:
    """Return an outline made exact along its edges.

    The lens's barrel is the one that makes all four edges straightest; where that says little, also
    the one along whose curves the long sides show the most change.

    Args:
        small: the picture, RGB.
        quad: its corners, from the top left clockwise.
        is_found: the corners are rough ones; otherwise a person gave them.
    """
    light = np.log(cv2.GaussianBlur(small, (0, 0), 1.0).astype(np.float32) + 8)
    size = (small.shape[1], small.shape[0])
    edges = [_edge(light, quad[i], quad[(i + 1) % 4]) for i in range(4)]
    sides = [edge.points for edge in edges]
    worth = _straightening(sides, size)
    if np.ptp(worth) < TOLD:
        rough = _corners(sides, size, 0.0) if is_found else quad
        worth = worth + lens.along_long_sides(small, rough)
    barrel = lens.likeliest(worth)
    corners = _corners(sides, size, barrel)
    bow = (_bow(sides[1]) - _bow(sides[3])) / 2
    middle = np.array(size) / 2
    away = corners - middle
    far = (away**2).sum(1, keepdims=True) / (middle**2).sum()
    spread = min(edge.spread for edge in edges)
    return Exact(middle + away * (1 - barrel * far), abs(bow), barrel, spread)


def _straightening(sides: list[Array], size: tuple[int, int]) -> Array:
    """Return the worth of each barrel by how straight it makes the sides, each by its own noise."""
    rests = [[_rest(straightened(s, size, float(b))) for s in sides] for b in lens.BARRELS]
    return np.asarray(-APART * np.log(np.array(rests) + LEAST_REST).sum(1))


def _corners(sides: list[Array], size: tuple[int, int], barrel: float) -> Array:
    """Return where the sides meet in the picture without the barrel."""
    lines = [_fitted(straightened(side, size, barrel)) for side in sides]
    return np.array([_meeting(lines[i - 1], lines[i]) for i in range(4)])


class _PlateEdge(NamedTuple):
    """Points of an edge, and over how many pixels the light changes there."""

    points: Array
    spread: float


def _edge(light: Array, start: Array, end: Array) -> _PlateEdge:
    """Return the edge near a side: where the light changes most as it does along all of it."""
    along = end - start
    normal = np.array([-along[1], along[0]]) / np.hypot(*along)
    reach = max(3, round(NEAR * max(light.shape)))
    shifts = np.arange(-reach, reach + 1)
    base = start + along * np.linspace(0.05, 0.95, POINTS)[:, None]
    points = (base[:, None] + normal * shifts[:, None]).astype(np.float32)
    values = cv2.remap(light, points[..., 0], points[..., 1], cv2.INTER_LINEAR)
    change = np.gradient(values, axis=1)
    usual = change.mean(0)
    channel = np.unravel_index(np.abs(usual).argmax(), usual.shape)[1]
    change = change[..., channel] * np.sign(usual[np.abs(usual[:, channel]).argmax(), channel])
    strong = np.maximum(change, 0) ** 2
    peak = strong.argmax(1)
    exact = np.empty(POINTS)
    for row, at in enumerate(peak):
        window = slice(max(0, at - 2), at + 3)
        weight = strong[row, window] + 1e-9
        exact[row] = (shifts[window] * weight).sum() / weight.sum()
    return _PlateEdge(base + normal * exact[:, None], _spread(change, peak))


def _spread(change: Array, peak: Array) -> float:
    """Return the width at half its height of the change across an edge, in pixels."""
    reach = change.shape[1] // 2
    padded = np.pad(np.maximum(change, 0), ((0, 0), (reach, reach)))
    aligned = np.mean(
        [row[at : at + 2 * reach + 1] for row, at in zip(padded, peak, strict=True)], axis=0
    )
    above = aligned >= aligned[reach] / 2
    left = int(np.argmin(above[reach::-1])) if not above[: reach + 1].all() else reach
    right = int(np.argmin(above[reach:])) if not above[reach:].all() else reach
    return float(left + right - 1)


def _straightest(points: Array) -> tuple[Array, Array, Array, Array]:
    """Return middle, direction, distances along and across of the line through most points."""
    kept = points
    for _ in range(6):
        middle = kept.mean(0)
        along = np.linalg.svd(kept - middle, full_matrices=False)[2][0]
        across = (points - middle) @ np.array([-along[1], along[0]])
        limit = max(0.7, 2.0 * float(np.median(np.abs(across))))
        kept = points[np.abs(across) <= limit]
    return middle, along, (points - middle) @ along, across


def _rest(points: Array) -> float:
    across = np.abs(_straightest(points)[3])
    return float(np.minimum(across, 3).mean())


def _fitted(points: Array) -> tuple[Array, Array]:
    middle, along, _, _ = _straightest(points)
    return middle, along


def _meeting(one: tuple[Array, Array], other: tuple[Array, Array]) -> Array:
    ways = np.column_stack([one[1], -other[1]])
    step = np.linalg.solve(ways, other[0] - one[0])
    return np.asarray(one[0] + one[1] * step[0])


def _bow(points: Array) -> float:
    """Return how far the middle of an edge stands off its ends, to the left of its way."""
    start, end = points[:8].mean(0), points[-8:].mean(0)
    length = float(np.hypot(*(end - start)))
    normal = np.array([-(end - start)[1], (end - start)[0]]) / length
    off = (points - start) @ normal
    return float(np.median(off[POINTS * 2 // 5 : POINTS * 3 // 5])) / length


def bowing(change: Array, quad: Array) -> float:
    """Return how far the long sides of an outline bow to one side, as a share of their length.

    Where they run straight it is 0. This looks further afield than :func:`exact`.
    """
    shifts = np.arange(-4, 5)
    along = np.linspace(0.05, 0.95, 90)
    clear = []
    for bow in BOWS:
        sides = []
        for top, bottom in ((quad[0], quad[3]), (quad[1], quad[2])):
            line = top + (bottom - top) * along[:, None]
            x = line[:, :1] + 4 * bow * (along * (1 - along))[:, None] * (bottom - top)[1] + shifts
            y = np.repeat(line[:, 1:], len(shifts), 1)
            values = cv2.remap(change, x.astype(np.float32), y.astype(np.float32), cv2.INTER_LINEAR)
            sides.append(float(np.abs(values.mean(0)).max()))
        clear.append(min(sides))
    best = int(np.argmax(clear))
    straight = max(c for c, bow in zip(clear, BOWS, strict=True) if abs(bow) < 0.01)
    return abs(float(BOWS[best])) if clear[best] > max(0.3, 1.4 * straight) else 0.0
