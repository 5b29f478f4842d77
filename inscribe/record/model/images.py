"""The pictures a record names: of the object, of an inscription, of what was copied."""

from __future__ import annotations

from typing import Literal, NamedTuple

from inscribe.signs import Box


class RecordImage(NamedTuple):
    """A picture of the object, of an inscription, or of what was copied.

    ``file`` lies in the record's folder; ``iiif`` is the base address of a IIIF image, ``service``
    the version of its service, ``size`` its width and height; of one that has both, ``file`` is a
    copy of all of it, as large or (where ``size`` is given) smaller. ``scale`` is in pixels per mm.
    ``crop`` (x, y, width, height) is the part that is shown; ``corner`` (x, y) is where the plate's
    top left corner lies in the picture, that of the crop where it is not given. All are in pixels
    of the whole picture.
    """

    file: str = ""
    iiif: str = ""
    shows: str = ""
    credit: str = ""
    scale: float | None = None
    crop: tuple[float, ...] = ()
    corner: tuple[float, ...] = ()
    service: Literal["", "2", "3"] = ""
    size: tuple[float, ...] = ()

    def pixels(self, box: Box) -> tuple[float, float, float, float] | None:
        """Return where a box in mm lies in the picture, where its scale is known.

        >>> RecordImage("a.jpg", scale=10, crop=(20, 30, 140, 960)).pixels(Box(1, 2, 4, 5))
        (30, 50, 40, 50)
        """
        if self.scale is None:
            return None
        left, top = (*(self.corner or self.crop[:2]), 0.0, 0.0)[:2]
        x, y = left + box.x * self.scale, top + box.y * self.scale
        return x, y, box.width * self.scale, box.height * self.scale
