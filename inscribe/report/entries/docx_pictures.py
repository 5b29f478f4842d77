"""Pictures in a word-processor document: photographs, and the drawing as a metafile."""

from __future__ import annotations

import io
import re
from typing import TYPE_CHECKING, Any, NamedTuple

from inscribe.report import safe, shown_picture
from inscribe.report.drawing import as_metafile

if TYPE_CHECKING:
    from inscribe.report import ShownPicture
    from inscribe.report.entries.blocks import Drawing, PictureBlock

LONGEST = 2000  # pixels of an embedded picture
HIGHEST, WIDEST = 120.0, 110.0  # mm that a picture takes at most
_SIZE = re.compile(r'width="([\d.]+)mm" height="([\d.]+)mm"')
# The smallest picture there is, in the place of which the metafile is put.
_PLACE = bytes.fromhex(
    "89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000d49444154789c6360"
    "606060000000050001a5f645400000000049454e44ae426082"
)


class Size(NamedTuple):
    """A size in mm, and how many times the true one it is."""

    across: float
    down: float
    share: float


def add_picture(document: Any, block: PictureBlock) -> bool:
    """Add a picture, cut out and described, and say whether it could be shown."""
    from docx.oxml.ns import qn
    from docx.shared import Mm

    shown = _picture(block) if block.image.file else None
    if shown is None:
        return False
    left, top, width, height = shown.crop
    scale = block.image.scale
    across, down = _fitted(width, height, scale / shown.reduced if scale else None)
    made = document.add_picture(io.BytesIO(shown.data), Mm(across), Mm(down))
    made._inline.docPr.set("descr", safe(block.shows))
    if shown.is_cut:
        cut = made._inline.find(f".//{qn('a:blip')}").getparent().makeelement(qn("a:srcRect"))
        edges = {
            "l": left / shown.width,
            "t": top / shown.height,
            "r": 1 - (left + width) / shown.width,
            "b": 1 - (top + height) / shown.height,
        }
        for key, share in edges.items():
            cut.set(key, str(round(max(0.0, share) * 100_000)))
        made._inline.find(f".//{qn('a:blip')}").addnext(cut)
    return True


def _picture(block: PictureBlock) -> ShownPicture | None:
    """Return the picture as word processors show it, made anew where they would not."""
    for anew in (False, True):
        shown = shown_picture(block.image, block.folder, LONGEST, anew=anew)
        if shown is None or _is_plain(shown):
            return shown
    return None


def _is_plain(shown: ShownPicture) -> bool:
    """Whether word processors show the bytes as they are: they turn nothing."""
    from docx.image.image import Image

    try:
        Image.from_blob(shown.data)
    except Exception:  # the library raises whatever its parsers do, as for a JPEG in CMYK
        return False
    return not shown.is_turned


def _fitted(width: float, height: float, scale: float | None) -> tuple[float, float]:
    """Return the size in mm: the true one where the scale is known, as far as there is room."""
    across, down = (width / scale, height / scale) if scale else (width, height)
    room = min(HIGHEST / down, WIDEST / across)
    share = min(1.0, room) if scale else room
    return across * share, down * share


def size_of(block: Drawing, widest: float = WIDEST, highest: float = HIGHEST * 1.4) -> Size:
    """Return how large a drawing is shown: half as large again as it is, if there is room."""
    found = _SIZE.search(block.svg)
    assert found is not None
    across, down = float(found[1]), float(found[2])
    share = min(1.5, highest / down, widest / across)
    return Size(across * share, down * share, share)


def add_drawing(paragraph: Any, block: Drawing, size: Size) -> None:
    """Add the drawing of a plate to a paragraph as a metafile."""
    from docx.opc.packuri import PackURI
    from docx.opc.part import Part
    from docx.shared import Mm

    made = paragraph.add_run().add_picture(io.BytesIO(_PLACE), Mm(size.across), Mm(size.down))
    made._inline.docPr.set("descr", safe(block.title))
    package = paragraph.part.package
    name = package.next_partname("/word/media/drawing%d.emf")
    part = Part(PackURI(str(name)), "image/x-emf", as_metafile(block.svg), package)
    made._inline.graphic.graphicData.pic.blipFill.blip.embed = paragraph.part.relate_to(
        part, _IMAGE
    )


_IMAGE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/image"
