"""The plate in the photograph: from mm on the plate to pixels and back.

The plate is flat, so four corners and its size say where each mm of it is seen (a homography); a
lens that draws the picture's corners inwards is one number more. Pixels are counted from the top
left of the picture, the middle of the first pixel being (0.5, 0.5), as annotations count them.

>>> view = View(((100, 50), (390, 50), (390, 1970), (100, 1970)), 14.5, 96.0, (500, 2000))
>>> view.to_pixels([[0, 0], [7.25, 48]]).round(1).tolist()
[[100.0, 50.0], [245.0, 1010.0]]
>>> round(view.scale, 2)
20.0
"""

from __future__ import annotations

from typing import Any, NamedTuple

import cv2
import numpy as np
from numpy.typing import ArrayLike, NDArray

from inscribe.measuring.model import Corners

Array = NDArray[Any]


class View(NamedTuple):
    """Where a plate is seen in a picture."""

    corners: Corners  # in pixels
    width: float  # of the plate in mm
    height: float
    size: tuple[int, int]  # of the picture in pixels: width, height
    barrel: float = 0.0  # share by which the lens draws the picture's corners inwards

    @property
    def scale(self) -> float:
        """Pixels per mm: the longer sides of the plate by their length."""
        a, b, c, d = (np.array(corner) for corner in self.corners)
        sides = np.hypot(*(d - a)) + np.hypot(*(c - b))
        return float(sides / 2 / self.height)

    def to_pixels(self, points: ArrayLike) -> Array:
        """Return where points of the plate, in mm, are seen."""
        straight = cv2.perspectiveTransform(_row(points), self._way)[0]
        return barrelled(straight, self.size, self.barrel)

    def to_mm(self, points: ArrayLike) -> Array:
        """Return the reverse of :meth:`to_pixels`."""
        straight = straightened(np.asarray(points, np.float64), self.size, self.barrel)
        return np.asarray(cv2.perspectiveTransform(_row(straight), np.linalg.inv(self._way))[0])

    def rectified(self, image: Array, per_mm: float) -> Array:
        """Return the plate as seen from straight above, at ``per_mm`` pixels a mm."""
        columns = (np.arange(round(self.width * per_mm)) + 0.5) / per_mm
        rows = (np.arange(round(self.height * per_mm)) + 0.5) / per_mm
        mm = np.stack(np.meshgrid(columns, rows), -1)
        seen = self.to_pixels(mm.reshape(-1, 2)).reshape(mm.shape).astype(np.float32) - 0.5
        coarser = self.scale / per_mm
        if coarser > 1:
            image = cv2.GaussianBlur(image, (0, 0), 0.4 * coarser)
        return np.asarray(
            cv2.remap(
                image, seen[..., 0], seen[..., 1], cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE
            )
        )

    @property
    def _way(self) -> Array:
        rim = [[0, 0], [self.width, 0], [self.width, self.height], [0, self.height]]
        seen = straightened(np.array(self.corners, np.float64), self.size, self.barrel)
        return np.asarray(
            cv2.getPerspectiveTransform(np.array(rim, np.float32), seen.astype(np.float32))
        )


def barrelled(points: Array, size: tuple[int, int], barrel: float) -> Array:
    """Return points of a straight picture where a lens puts them."""
    middle = np.array(size) / 2
    away = points - middle
    far = (away**2).sum(-1, keepdims=True) / (middle**2).sum()
    return np.asarray(middle + away * (1 - barrel * far))


def straightened(points: Array, size: tuple[int, int], barrel: float) -> Array:
    """Return the reverse of :func:`barrelled`."""
    middle = np.array(size) / 2
    away = points - middle
    straight = away
    for _ in range(5 if barrel else 0):
        far = (straight**2).sum(-1, keepdims=True) / (middle**2).sum()
        straight = away / (1 - barrel * far)
    return np.asarray(middle + straight)


def _row(points: ArrayLike) -> Array:
    return np.asarray(points, np.float64).reshape(1, -1, 2)
