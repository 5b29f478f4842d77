"""Boxes drawn in a picture that shows the plate askew: from pixels to mm, by the plate's outline.

Four corners and the plate's size say where each pixel lies on it (a homography). How a lens bends
straight lines is not known here: halfway down a plate that is half a millimetre at most.

>>> outline = ((10, 10), (110, 20), (110, 420), (10, 410))
>>> way = way_to_mm(outline, 10.0, 40.0)
>>> [round(side) for side in place_in_mm(((10, 210), (60, 215), (60, 415), (10, 410)), way)]
[0, 20, 5, 20]
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from inscribe.record.boxes.annotated import Sides

Point = tuple[float, float]
Way = Callable[[Point], Point]


def size_in_pixels(outline: Sequence[Point]) -> Point:
    """Return a plate's width and height in pixels, each the mean of two sides."""
    a, b, c, d = outline
    return (math.dist(a, b) + math.dist(d, c)) / 2, (math.dist(a, d) + math.dist(b, c)) / 2


def way_to_mm(outline: Sequence[Point], width: float, height: float) -> Way:
    """Return what tells where a pixel lies on a plate, in mm from its top left corner.

    Args:
        outline: the plate's corners in pixels, from the top left clockwise.
        width: of the plate in mm.
        height: of the plate in mm, along its columns.

    Raises:
        ValueError: three of the corners lie in one line.
    """
    rows = []
    rim = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    for (x, y), (u, v) in zip(outline, rim, strict=True):
        rows.append([x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y, u])
        rows.append([0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y, v])
    a, b, c, d, e, f, g, h = _solved(rows)

    def way(point: Point) -> Point:
        x, y = point
        far = g * x + h * y + 1
        return (a * x + b * y + c) / far, (d * x + e * y + f) / far

    return way


def place_in_mm(points: Sequence[Point], way: Way) -> Sides:
    """Return the box on the plate, in mm, of what is drawn around in pixels."""
    found = [way(point) for point in points]
    left, top = (min(axis) for axis in zip(*found, strict=True))
    right, bottom = (max(axis) for axis in zip(*found, strict=True))
    return left, top, right - left, bottom - top


def _solved(rows: Sequence[Sequence[float]]) -> list[float]:
    """Return the solution of linear equations, each given as its factors and its sum."""
    import numpy as np

    table = np.array(rows)
    factors, sums = table[:, :-1], table[:, -1]
    if np.linalg.matrix_rank(factors) < len(sums):
        raise ValueError("the corners do not go round a plate")
    return [float(each) for each in np.linalg.solve(factors, sums)]
