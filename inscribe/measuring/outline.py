"""The plate's outline in a photograph: four long straight edges of one rectangle.

An edge is a line along which the light changes the same way from end to end; strokes, grain and
cloth change it this way and that. Upright lines are tried at every place and slope, then for pairs
of them the level ones between; the four that are clearest, and whose proportions are the plate's,
are made exact along their length, and told bent where they are.
"""

from __future__ import annotations

from itertools import combinations
from typing import NamedTuple

import cv2
import numpy as np

from inscribe.measuring.view import Array, Corners, straightened

LONG = 900  # pixels of the picture's longer side, in which lines are sought
SLOPES = np.linspace(-0.16, 0.16, 41)  # a plate turned and seen askew
LEVELS = np.linspace(-0.16, 0.16, 17)  # of the short sides
CLOSED = 4  # outlines looked at between two upright lines
LEANING = 0.1  # price of proportions that are off as far as usual
KEPT = 12  # lines tried for each side
PROPORTION = 0.07  # how far the outline's proportions may be off (log)
POINTS = 160  # along an edge, where it is made exact
NEAR = 0.012  # of the longer side: how far the exact edge may be
BARRELS = np.linspace(-0.02, 0.045, 27)
CLEAREST = 0.12  # an outline less clear than this is none


class Outline(NamedTuple):
    """The plate's corners, and how its sides run."""

    corners: Corners
    clear: float  # how clear the least clear edge is, 0 to 1
    bow: float  # how far the long sides bow to one side, as a share of their length
    barrel: float  # see View


class _Line(NamedTuple):
    """An upright line: x at the middle of the picture, x a pixel down, how clear it is."""

    at: float
    slope: float
    clear: float


def found_outline(image: Array, proportion: float) -> Outline | None:
    """Return the outline of the plate, or None where none is clear.

    Args:
        image: the photograph, RGB.
        proportion: the plate's width by its height.
    """
    shrink = min(1.0, LONG / max(image.shape[:2]))
    small = cv2.resize(image, None, fx=shrink, fy=shrink, interpolation=cv2.INTER_AREA)
    change_x, change_y = _changes(small)
    best: tuple[float, Array] | None = None
    for left, right in _pairs(_lines(change_x), small.shape, proportion):
        for lean, quad in _closed(left, right, change_y, small.shape, proportion):
            clear = _clear_sides(change_x, change_y, quad)
            worth = sum(clear) + 2 * min(clear) - LEANING * (lean / PROPORTION) ** 2
            if best is None or worth > best[0]:
                best = (worth, quad)
    if best is None:
        return None
    corners, bow, barrel = _exact(small, best[1])
    clear = min(_clear_sides(change_x, change_y, corners))
    if clear < CLEAREST:
        return None
    full = corners / shrink
    return Outline(tuple((float(x), float(y)) for x, y in full), clear, bow, barrel)


def _changes(small: Array) -> tuple[Array, Array]:
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


def _lines(change: Array) -> list[_Line]:
    """Return the clearest upright lines of a picture of changes across."""
    height, width = change.shape
    clear = np.zeros((len(SLOPES), width), np.float32)
    for index, slope in enumerate(SLOPES):
        shear = np.array([[1, slope, -slope * height / 2], [0, 1, 0]])
        moved = cv2.warpAffine(
            change, shear, (width, height), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
        )
        clear[index] = np.abs(moved.sum(0)) / height
    clear = cv2.GaussianBlur(clear, (0, 0), 0.7)
    lines = []
    apart = max(3, width // 60)
    for _ in range(KEPT * 2):
        index, at = np.unravel_index(clear.argmax(), clear.shape)
        if clear[index, at] <= 0:
            break
        lines.append(_Line(float(at), float(SLOPES[index]), float(clear[index, at])))
        clear[max(0, index - 4) : index + 5, max(0, at - apart) : at + apart + 1] = 0
    return lines


def _pairs(
    lines: list[_Line], shape: tuple[int, ...], proportion: float
) -> list[tuple[_Line, _Line]]:
    """Return pairs of lines that may be a plate's long sides, the clearest first."""
    height = shape[0]
    pairs = []
    for one, other in combinations(lines, 2):
        left, right = sorted((one, other))
        apart = right.at - left.at
        if apart < 0.25 * proportion * height or apart > 1.2 * proportion * height:
            continue
        if abs(left.slope - right.slope) > 0.08:
            continue
        pairs.append((left, right))
    pairs.sort(key=lambda pair: -(pair[0].clear + pair[1].clear))
    return pairs[: KEPT * 4]


def _closed(
    left: _Line, right: _Line, change_y: Array, shape: tuple[int, ...], proportion: float
) -> list[tuple[float, Array]]:
    """Return likely outlines between two upright lines, with how far their proportions are off."""
    height, width = shape[:2]
    middle = height / 2
    apart = right.at - left.at
    tops = []
    steps = np.linspace(0.04, 0.96, 40)
    rows = np.arange(height)
    for slope in LEVELS:
        x = left.at + apart * steps
        y = rows[:, None] + slope * apart * (steps - 0.5)
        lean = left.slope + (right.slope - left.slope) * steps
        x = x[None] + lean * (rows[:, None] - middle)
        values = cv2.remap(
            change_y, x.astype(np.float32), y.astype(np.float32), cv2.INTER_LINEAR
        )
        tops.append(np.abs(values.mean(1)))
    clear = np.array(tops)
    best_slope = clear.argmax(0)
    strength = clear.max(0)
    peaks = [
        int(y)
        for y in np.argsort(-strength)[: KEPT * 4]
        if strength[y] == strength[max(0, y - 4) : y + 5].max()
    ][:KEPT]
    quads = []
    for one, other in combinations(peaks, 2):
        top, bottom = sorted((one, other))
        lean = float(np.log(apart / max(bottom - top, 1) / proportion))
        if abs(lean) > 4 * PROPORTION:
            continue
        quad = _crossed(left, right, [(y, LEVELS[best_slope[y]]) for y in (top, bottom)], middle)
        inside = quad.min() >= -2 and quad[:, 0].max() <= width + 2
        if inside and quad[:, 1].max() <= height + 2:
            worth = strength[top] + strength[bottom] - LEANING * (lean / PROPORTION) ** 2
            quads.append((float(worth), lean, quad))
    quads.sort(key=lambda each: -each[0])
    return [(lean, quad) for _, lean, quad in quads[:CLOSED]]


def _crossed(
    left: _Line, right: _Line, level: list[tuple[int, float]], middle: float
) -> Array:
    """Return the four corners, from the top left clockwise."""
    corners = []
    centre = (left.at + right.at) / 2
    for (y, slope), sides in zip(level, ((left, right), (right, left)), strict=True):
        for side in sides:
            x, row = side.at, float(y)
            for _ in range(3):
                x = side.at + side.slope * (row - middle)
                row = y + slope * (x - centre)
            corners.append((x, row))
    return np.array(corners)


def _clear_sides(change_x: Array, change_y: Array, corners: Array) -> list[float]:
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


def _exact(small: Array, quad: Array) -> tuple[Array, float, float]:
    """Return the corners made exact, the bow of the long sides, and the lens's barrel."""
    light = np.log(cv2.GaussianBlur(small, (0, 0), 1.0).astype(np.float32) + 8)
    size = (small.shape[1], small.shape[0])
    sides = [_edge_points(light, quad[i], quad[(i + 1) % 4]) for i in range(4)]
    rests = []
    for barrel in BARRELS:
        straight = [straightened(side, size, float(barrel)) for side in sides]
        rests.append(sum(_rest(side) for side in straight))
    barrel = float(BARRELS[int(np.argmin(rests))])
    if rests[int(np.argmin(rests))] > 0.9 * rests[int(np.abs(BARRELS).argmin())]:
        barrel = 0.0
    lines = [_fitted(straightened(side, size, barrel)) for side in sides]
    corners = np.array([_meeting(lines[i - 1], lines[i]) for i in range(4)])
    bow = (_bow(sides[1]) - _bow(sides[3])) / 2
    middle = np.array(size) / 2
    away = corners - middle
    far = (away**2).sum(1, keepdims=True) / (middle**2).sum()
    return middle + away * (1 - barrel * far), abs(bow), barrel


def _edge_points(light: Array, start: Array, end: Array) -> Array:
    """Return points of the edge near a side, where the light changes most as it does along it."""
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
    return np.asarray(base + normal * exact[:, None])


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
