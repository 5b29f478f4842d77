"""The rectified plate as a small picture, for reports to draw on."""

from __future__ import annotations

from typing import Any

import cv2

from inscribe.measuring.model import Measured
from inscribe.measuring.picture import Picture
from inscribe.measuring.view import View

FINEST = 20.0  # pixels per mm
QUALITY = 85


def plate_as_jpeg(picture: Picture, found: Measured) -> bytes:
    """Return the plate as seen from straight above, no finer than its photograph, as JPEG."""
    view = view_of(picture, found)
    face: Any = view.rectified(picture.pixels, min(FINEST, max(8.0, found.scale)))
    _, packed = cv2.imencode(
        ".jpg", cv2.cvtColor(face, cv2.COLOR_RGB2BGR), [cv2.IMWRITE_JPEG_QUALITY, QUALITY]
    )
    return packed.tobytes()


def view_of(picture: Picture, found: Measured) -> View:
    """Return how the plate is seen in the picture."""
    plate = found.plate
    return View(found.corners, plate.width, plate.height, picture.size, found.barrel)


def outlines(picture: Picture, found: Measured) -> dict[int, list[tuple[float, float]]]:
    """Return the corners of each sign's box in pixels of the photograph, clockwise."""
    view = view_of(picture, found)
    drawn = {}
    for sign in found.signs:
        x, y, right, bottom = sign.x, sign.y, sign.x + sign.width, sign.y + sign.height
        points = view.to_pixels([[x, y], [right, y], [right, bottom], [x, bottom]])
        drawn[sign.sign] = [(round(float(a), 1), round(float(b), 1)) for a, b in points]
    return drawn
