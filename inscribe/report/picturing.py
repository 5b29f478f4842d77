"""A picture as it is shown: its part cut out and made small where that can be done.

With the extra ``photo`` (pillow) the part is cut out and no larger than needed; without it the
whole picture goes out, and the page or document cuts the part out itself. A picture of a IIIF image
service is never fetched: only its address is made here (IIIF Image API 2 and 3), for who reads.
"""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, NamedTuple

from inscribe.errors import InputError
from inscribe.record import picture_file

if TYPE_CHECKING:
    from pathlib import Path

    from inscribe.record import PictureFile, RecordImage

QUALITY = 88  # of JPEG files that are made
# The size "as large as there is", by the version of the Image API; "max" is of 2.1 and 3, "full" of
# all of 2.
_LARGEST = {"2": "full", "3": "max", "": "max"}


class ShownPicture(NamedTuple):
    """The bytes of a picture, its size as it is seen, and the part to show (x, y, width, height).

    All in pixels. The bytes of one that ``is_turned`` are stored otherwise than it is seen;
    ``reduced`` is how many pixels of the picture that the record measures make one here.
    """

    data: bytes
    media: str
    width: int
    height: int
    crop: tuple[float, float, float, float]
    is_turned: bool = False
    reduced: float = 1

    @property
    def ending(self) -> str:
        """How a file of it ends."""
        return {"image/png": "png", "image/jpeg": "jpg"}.get(self.media, "gif")

    @property
    def is_cut(self) -> bool:
        """Whether the part to show is still to be cut out."""
        return self.crop != (0, 0, self.width, self.height)


def shown_picture(
    image: RecordImage, folder: Path | None, longest: int, *, anew: bool = False
) -> ShownPicture | None:
    """Return a picture of a record's ``folder``, or None where there is none that can be shown.

    ``longest`` is how many pixels its longer side needs; ``anew`` has it made an upright JPEG in
    RGB, where pillow is there, even if nothing is to be cut off.
    """
    try:
        found = picture_file(image, folder)
    except InputError:
        return None
    return _cut(found, image, longest, anew) or _whole(found, image)


def _whole(found: PictureFile, image: RecordImage) -> ShownPicture:
    data, (media, width, height, orientation) = found
    part = _part(image, width, height)
    reduced = _reduced(image, width)
    return ShownPicture(data, media, width, height, part, orientation != 1, reduced)


def _reduced(image: RecordImage, width: int) -> float:
    """Return by how much a local copy is smaller than the image of the service it is a copy of."""
    return image.size[0] / width if image.size else 1


def _part(image: RecordImage, width: int, height: int) -> tuple[float, float, float, float]:
    """Return the part to show, all of the picture where the crop leaves nothing of it."""
    if not image.crop:
        return 0, 0, width, height
    left, top, across, down = (side / _reduced(image, width) for side in image.crop)
    left, top = min(left, width), min(top, height)
    across, down = min(across, width - left), min(down, height - top)
    return (left, top, across, down) if across >= 1 and down >= 1 else (0, 0, width, height)


def _cut(found: PictureFile, image: RecordImage, longest: int, anew: bool) -> ShownPicture | None:
    try:
        from PIL import Image, ImageOps
    except ImportError:
        return None
    _, whole_width, whole_height, orientation = found.kind
    left, top, width, height = _part(image, whole_width, whole_height)
    is_whole = (width, height) == (whole_width, whole_height)
    if is_whole and max(width, height) <= longest and not anew:
        return None  # it goes out as it is
    try:
        with Image.open(io.BytesIO(found.data)) as opened:
            seen = opened if orientation == 1 else ImageOps.exif_transpose(opened)
            part = seen.crop((round(left), round(top), round(left + width), round(top + height)))
            part = part.convert("RGB")
            part.thumbnail((longest, longest))
            held = io.BytesIO()
            part.save(held, "JPEG", quality=QUALITY)
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        return None
    reduced = _reduced(image, whole_width) * width / part.width
    crop = (0, 0, part.width, part.height)
    return ShownPicture(
        held.getvalue(), "image/jpeg", part.width, part.height, crop, reduced=reduced
    )


def service_address(image: RecordImage, region: str = "full", size: str = "") -> str:
    """Return where the service of a IIIF image gives it, or a region of it.

    ``size`` is written as the Image API has it; without one it is as large as there is.

    >>> from inscribe.record import RecordImage
    >>> service_address(RecordImage(iiif="https://example.org/a", service="2"))
    'https://example.org/a/full/full/0/default.jpg'
    """
    return f"{image.iiif}/{region}/{size or _LARGEST[image.service]}/0/default.jpg"
