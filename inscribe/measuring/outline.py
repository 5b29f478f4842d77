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

from inscribe.measuring import edges
from inscribe.measuring.model import Corners
from inscribe.measuring.view import Array

LONG = 900  # pixels of the picture's longer side, in which lines are sought
SLOPES = np.linspace(-0.16, 0.16, 41)  # a plate turned and seen askew
LEVELS = np.linspace(-0.16, 0.16, 17)  # of the short sides
CLOSED = 4  # outlines looked at between two upright lines
LEANING = 0.1  # price of proportions that are off as far as usual
REACHING = 0.4  # how clear a line must be at the picture's edge to run out of it
CLEAR = 0.85  # an edge less clear than this may be something else
KEPT = 12  # lines tried for each side
PROPORTION = 0.07  # how far the outline's proportions may be off (log)


class Outline(NamedTuple):
    """The plate's corners, and how its sides run."""

    corners: Corners
    clear: float  # how clear the least clear edge is, 0 to 1
    bow: float  # how far the long sides bow to one side, as a share of their length
    barrel: float  # see View
    spread: float  # pixels over which its sharpest edge changes


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
    small, shrink = _shrunk(image)
    change_x, change_y = edges.changes(small)
    best: tuple[float, Array] | None = None
    for left, right in _pairs(_lines(change_x), small.shape, proportion):
        for lean, quad in _closed(left, right, change_y, small.shape, proportion):
            clear = edges.clear_sides(change_x, change_y, quad)
            worth = sum(clear) + 2 * min(clear) - LEANING * (lean / PROPORTION) ** 2
            if best is None or worth > best[0]:
                best = (worth, quad)
    if best is None:
        return None
    return _outline(small, best[1], shrink)


def given_outline(image: Array, corners: Corners) -> Outline:
    """Return what the picture shows of the outline whose corners a person gave."""
    small, shrink = _shrunk(image)
    found = _outline(small, np.array(corners) * shrink, shrink, is_found=False)
    return found._replace(corners=corners)


def _outline(small: Array, quad: Array, shrink: float, *, is_found: bool = True) -> Outline:
    exact = edges.exact(small, quad, is_found=is_found)
    change_x, change_y = edges.changes(small)
    clear = min(edges.clear_sides(change_x, change_y, exact.corners))
    bow = max(exact.bow, edges.bowing(change_x, quad)) if clear < CLEAR else exact.bow
    full = exact.corners / shrink
    return Outline(
        tuple((float(x), float(y)) for x, y in full),
        clear,
        bow,
        exact.barrel,
        exact.spread / shrink,
    )


def _shrunk(image: Array) -> tuple[Array, float]:
    """Return the picture small enough to look for lines in, and by what it was shrunk."""
    shrink = min(1.0, LONG / max(image.shape[:2]))
    small = cv2.resize(image, None, fx=shrink, fy=shrink, interpolation=cv2.INTER_AREA)
    return small, shrink


def _lines(change: Array) -> list[_Line]:
    """Return the clearest upright lines of a picture of changes across."""
    height, width = change.shape
    clear: Array = np.zeros((len(SLOPES), width), np.float32)
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
        index, at = divmod(int(clear.argmax()), width)
        if clear[index, at] <= 0:
            break
        lines.append(_Line(float(at), float(SLOPES[index]), float(clear[index, at])))
        clear[max(0, index - 4) : index + 5, max(0, at - apart) : at + apart + 1] = 0
    return lines


def runs_out(image: Array) -> str:
    """Return the side of the picture beyond which something like a plate runs, or nothing.

    Two of the clearest upright lines go on to the very edge there, and not at the other side.
    """
    small, _ = _shrunk(image)
    change_x, change_y = edges.changes(small)
    for change, sides in ((change_x, ("top", "bottom")), (change_y.T, ("left", "right"))):
        ends = [_ends(change, line) for line in _lines(np.ascontiguousarray(change))[:4]]
        reaching = [sum(end[index] > REACHING for end in ends) for index in (0, 1)]
        for index in (0, 1):
            if reaching[index] >= 2 > reaching[1 - index]:
                return sides[index]
    return ""


def _ends(change: Array, line: _Line) -> tuple[float, float]:
    """Return how clear a line still is at the top and at the bottom of the picture."""
    height = change.shape[0]
    strip = max(6, height // 30)
    found = []
    for rows in (np.arange(2, strip), np.arange(height - strip, height - 2)):
        x = (line.at + line.slope * (rows - height / 2)).astype(np.float32)[:, None]
        x = x + np.arange(-2, 3, dtype=np.float32)
        y = np.repeat(rows.astype(np.float32)[:, None], 5, 1)
        values = cv2.remap(change, x, y, cv2.INTER_LINEAR)
        found.append(float(np.abs(values.mean(0)).max()))
    return found[0], found[1]


def runs_bent(image: Array) -> bool:
    """Whether lines that bow to one side are clearer in the picture than straight ones."""
    small, _ = _shrunk(image)
    change, _ = edges.changes(small)
    height, width = change.shape
    down = np.linspace(-1, 1, height, dtype=np.float32)[:, None]
    columns = np.arange(width, dtype=np.float32)[None]
    rows = np.repeat(np.arange(height, dtype=np.float32)[:, None], width, 1)
    clear = {}
    for bow in np.linspace(-0.1, 0.1, 11):
        bent = (columns + bow * height * down**2).astype(np.float32)
        moved = cv2.remap(change, bent, rows, cv2.INTER_LINEAR)
        clear[round(float(bow), 2)] = sum(line.clear for line in _lines(moved)[:2])
    straight = max(clear[bow] for bow in clear if abs(bow) < 0.01)
    return max(clear.values()) > 1.25 * straight


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
        slant = left.slope + (right.slope - left.slope) * steps
        x = x[None] + slant * (rows[:, None] - middle)
        values = cv2.remap(change_y, x.astype(np.float32), y.astype(np.float32), cv2.INTER_LINEAR)
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


def _crossed(left: _Line, right: _Line, level: list[tuple[int, float]], middle: float) -> Array:
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
