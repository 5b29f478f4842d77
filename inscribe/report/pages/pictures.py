"""Pictures on a page: embedded in it, so that it stands alone."""

from __future__ import annotations

import base64
from typing import TYPE_CHECKING

from markupsafe import Markup

from inscribe.report import shown_picture

if TYPE_CHECKING:
    from inscribe.report import ShownPicture
    from inscribe.report.entries import PictureBlock

LONGEST = 1600  # pixels, enough for a sheet of paper


def embedded(block: PictureBlock, longest: int = LONGEST) -> Markup:
    """Return a picture as HTML with its bytes in it, or nothing where it cannot be shown."""
    shown = shown_picture(block.image, block.folder, longest)
    if shown is None:
        return Markup("")
    data = base64.b64encode(shown.data).decode("ascii")
    return framed(shown, f"data:{shown.media};base64,{data}", block.shows)


def framed(shown: ShownPicture, address: str, says: str) -> Markup:
    """Return a picture as HTML; of one that is not cut out yet the frame shows the part."""
    left, top, width, height = shown.crop
    place = (
        f"width: {shown.width / width:.3%}; left: {-left / width:.3%}; top: {-top / height:.3%}"
        if shown.is_cut
        else ""
    )
    picture = Markup('<img src="{}" alt="{}" style="{}">').format(address, says, place)
    frame = Markup('<span class="frame" style="--ratio: {}">{}</span>')
    return frame.format(f"{width / height:.3f}", picture)
