"""What is painted on a canvas of IIIF, how large the canvas is, and where things stand on it.

A canvas must have the proportions of what is painted on it. A file says its size; of an image at a
web address it is known where the record gives it (``size``), else the part that is known in pixels
is painted: the crop, and the plate where the scale is given. Of an image of which neither is known
nothing is painted: the canvas is the plate, and the image is linked.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple
from urllib.parse import quote

from inscribe.errors import InputError
from inscribe.record import RecordImage, picture_file
from inscribe.report import service_address
from inscribe.report.entries import PIXELS_PER_MM
from inscribe.signs import Box

if TYPE_CHECKING:
    from inscribe.entry import InscriptionEntry

USUAL = (14.5, 96.0)  # mm, of a plate that was not measured
_LEVEL = {"2": "http://iiif.io/api/image/2/level1.json", "3": "level1"}

Json = dict[str, Any]


class Painting(NamedTuple):
    """The body of what is painted (empty for nothing), the size of its canvas in pixels, the image.

    ``left`` and ``top`` are where the canvas begins in the whole image.
    """

    body: Json
    width: int
    height: int
    image: RecordImage | None = None
    left: float = 0
    top: float = 0

    def place(self, box: Box) -> str:
        """Return a part of the canvas, or nothing where the picture's scale is not known.

        >>> Painting({}, 290, 1920).place(Box(1, 2, 3, 4))
        '#xywh=20,40,60,80'
        """
        if self.image is None:
            sides: tuple[float, ...] | None = tuple(side * PIXELS_PER_MM for side in box)
        else:
            sides = self.image.pixels(box)
        if not sides:
            return ""
        x, y, width, height = sides
        inside = (x - self.left, y - self.top, width, height)
        if min(inside) < 0:
            return ""  # left of the part that is painted, or above it
        return "#xywh=" + ",".join(f"{side:.6g}" for side in inside)


def painting_of(
    image: RecordImage | None, each: InscriptionEntry, folder: Path | None, address: str
) -> Painting:
    """Return what is painted for an inscription; ``address`` is where its files will be."""
    plate = each.inscription.plate
    across, down = (plate.width, plate.height) if plate else USUAL
    bare = Painting({}, round(across * PIXELS_PER_MM), round(down * PIXELS_PER_MM))
    box = Box(0, 0, *plate[:2]) if plate else None
    return (painted(image, box, folder, address) if image else None) or bare


def painted(
    image: RecordImage, plate: Box | None, folder: Path | None, address: str
) -> Painting | None:
    """Return a picture, of one of a service all or the part that is known; None where it is not."""
    if image.iiif:
        return _of_service(image, plate)
    try:
        kind = picture_file(image, folder).kind
    except InputError:
        return None
    size = {"width": kind.width, "height": kind.height}
    named = {"id": f"{address.rstrip('/')}/{quote(image.file)}", "type": "Image"}
    return Painting(named | {"format": kind.media} | size, kind.width, kind.height, image)


def _of_service(image: RecordImage, plate: Box | None) -> Painting | None:
    """Return an image of a service, all of it or the part whose size is known; None for neither."""
    if image.size:
        width, height = map(round, image.size)
        size = {"width": width, "height": height}
        return Painting(whole(image) | size, width, height, image)
    parts = [part for part in (image.crop, plate and image.pixels(plate)) if part]
    if not parts:
        return None
    left, top = (math.floor(min(part[at] for part in parts)) for at in (0, 1))
    right, bottom = (math.ceil(max(part[at] + part[at + 2] for part in parts)) for at in (0, 1))
    width, height = right - left, bottom - top
    body = whole(image, f"{left},{top},{width},{height}") | {"width": width, "height": height}
    return Painting(body, width, height, image, left, top)


def whole(image: RecordImage, region: str = "full") -> Json:
    """Return an image of a service, or a region of it, as a resource.

    >>> whole(RecordImage(iiif="https://example.org/a"))["id"]
    'https://example.org/a/full/max/0/default.jpg'
    """
    named = {"id": service_address(image, region), "type": "Image"}
    return named | {"format": "image/jpeg"} | _service(image)


def _service(image: RecordImage) -> Json:
    """Return the service, told as its version is; nothing where the record does not say which."""
    if not image.service:
        return {}
    key = "" if image.service == "3" else "@"
    told = {f"{key}id": image.iiif, f"{key}type": f"ImageService{image.service}"}
    return {"service": [told | {"profile": _LEVEL[image.service]}]}
