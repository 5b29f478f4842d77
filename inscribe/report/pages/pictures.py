"""Pictures on a page: embedded in it, so that it stands alone, or shown from their image service.

The program itself fetches nothing. A page asks the image service (IIIF Image API, level 1) when a
person opens it, and only over https; the page's own policy names those services and forbids all
others. Slides and PDF are made to be carried: there a picture of a service is a link.
"""

from __future__ import annotations

import base64
import re
from collections.abc import Iterable
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

from markupsafe import Markup

from inscribe.report import service_address, shown_picture
from inscribe.report.entries import PictureBlock

if TYPE_CHECKING:
    from inscribe.record import RecordImage
    from inscribe.report import ShownPicture
    from inscribe.report.pages.sections import Article

LONGEST = 1600  # pixels, enough for a sheet of paper
_HOST = re.compile(r"[a-z0-9.-]+(:[0-9]+)?", re.ASCII | re.IGNORECASE)
# Of a picture of unknown proportions: as it is, no larger than the others.
_UNFRAMED = "position: static; width: auto; max-width: 100%; max-height: 34rem"


def embedded(block: PictureBlock, services: str, not_here: str) -> Markup:
    """Return a picture as HTML with its bytes in it, or nothing where it cannot be shown.

    One of a service is shown from there if ``services`` has it, else linked, and ``not_here`` said.
    """
    shown = shown_picture(block.image, block.folder, LONGEST) if block.image.file else None
    if shown:
        data = base64.b64encode(shown.data).decode("ascii")
        return _framed(shown, f"data:{shown.media};base64,{data}", block.shows)
    if not block.image.iiif:
        return Markup("")
    if _service(block.image) in services.split():
        held, said = _served(block), Markup("")
    else:
        held, said = Markup.escape(block.shows), Markup(" <small>{}</small>").format(not_here)
    link = Markup('<p class="served"><a href="{}">{}</a>{}</p>')
    return link.format(service_address(block.image), held, said)


def services_of(articles: Iterable[Article]) -> str:
    """Return the origins of the services of those pictures that have no local copy."""
    pictures = [
        block
        for each in articles
        for blocks in (each.facts, *((*part.side, *part.flow) for part in each.sections))
        for block in blocks
        if isinstance(block, PictureBlock) and not block.image.file
    ]
    return " ".join(sorted({_service(block.image) for block in pictures} - {""}))


def _service(image: RecordImage) -> str:
    """Return the origin of an image's service, or nothing of one that is not asked."""
    if not image.iiif.lower().startswith("https://"):
        return ""
    host = urlsplit(image.iiif).netloc
    return f"https://{host}" if _HOST.fullmatch(host) else ""


def _served(block: PictureBlock) -> Markup:
    """Return a picture from its service, the part to show, in its frame where its size is known."""
    image = block.image
    region = ",".join(f"{side:.0f}" for side in image.crop) or "full"
    across, down = image.crop[2:] or image.size or (0, 0)
    wanted = f"{across * LONGEST / max(across, down):.0f}," if max(across, down) > LONGEST else ""
    address = service_address(image, region, wanted)
    picture = Markup('<img src="{}" alt="{}" referrerpolicy="no-referrer" style="{}">').format(
        address, block.shows, "" if across else _UNFRAMED
    )
    return _frame(across / down, picture) if across else picture


def _framed(shown: ShownPicture, address: str, says: str) -> Markup:
    """Return a picture as HTML; of one that is not cut out yet the frame shows the part."""
    left, top, width, height = shown.crop
    place = (
        f"width: {shown.width / width:.3%}; left: {-left / width:.3%}; top: {-top / height:.3%}"
        if shown.is_cut
        else ""
    )
    picture = Markup('<img src="{}" alt="{}" style="{}">').format(address, says, place)
    return _frame(width / height, picture)


def _frame(ratio: float, picture: Markup) -> Markup:
    frame = Markup('<span class="frame" style="--ratio: {}">{}</span>')
    return frame.format(f"{ratio:.3f}", picture)
