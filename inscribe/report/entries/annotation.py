"""The measured signs of an object as W3C Web Annotations.

Boxes are given as pixels of the first picture of the inscription whose scale is known, else of an
image of the plate at ``PIXELS_PER_MM``; a sign that was not measured has no selector, and its
annotation speaks of the plate as a whole.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from inscribe.notation import print_signs, written_out
from inscribe.signs import Box

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.record import RecordImage
    from inscribe.signs import Sign

PIXELS_PER_MM = 20
# That of IIIF holds all of the Web Annotation model, and the motivation "supplementing" besides.
CONTEXT = "http://iiif.io/api/presentation/3/context.json"


def entries_as_annotations(entries: list[Entry]) -> str:
    """Return an annotation page: an annotation for every legible sign, and for each that has a box.

    >>> import json
    >>> from inscribe import entry_of, load_record
    >>> page = json.loads(entries_as_annotations([entry_of(load_record("examples/DEMO-003.toml"))]))
    >>> page["type"], len(page["items"])
    ('AnnotationPage', 22)
    """
    items = [
        item
        for entry in entries
        for number, each in enumerate(entry.inscriptions, start=1)
        for item in _annotations(f"urn:inscribe:{quote(entry.record.id)}:{number}", each)
    ]
    names = ",".join(quote(entry.record.id) for entry in entries)
    page = {
        "@context": CONTEXT,
        "id": f"urn:inscribe:{names}:signs",
        "type": "AnnotationPage",
        "items": items,
    }
    return written_out(json.dumps(page, ensure_ascii=False, indent=2))


def _annotations(plate: str, each: InscriptionEntry) -> Iterator[dict[str, Any]]:
    if (whole := _plate(each)) and any(sign.box for sign in each.inscription.transcription.signs):
        yield {
            "id": f"{plate}:plate",
            "type": "Annotation",
            "motivation": "identifying",
            "body": {"type": "TextualBody", "value": "plate", "format": "text/plain"},
            "target": whole,
        }
    for sign in each.inscription.transcription.signs:
        if sign.text or sign.box:
            yield {
                "id": f"{plate}:sign:{sign.index + 1}",
                "type": "Annotation",
                "motivation": "supplementing",
                "body": {
                    "type": "TextualBody",
                    "value": print_signs([sign]),
                    "language": "ja",
                    "format": "text/plain",
                },
                "target": _target(plate, sign, each.inscription.images),
            }


def _target(plate: str, sign: Sign, images: tuple[RecordImage, ...]) -> dict[str, Any] | str:
    """Return where a sign stands: in the first picture of known scale, else on the plate."""
    if sign.box is None:
        return plate
    for image in images:
        if sides := image.pixels(sign.box):
            return region(image.iiif or quote(image.file), sides)
    x, y, width, height = (side * PIXELS_PER_MM for side in sign.box)
    return region(plate, (x, y, width, height))


def _plate(each: InscriptionEntry) -> dict[str, Any] | None:
    """Return where the plate is in the picture that signs are placed in: they count from there."""
    plate = each.inscription.plate
    for image in each.inscription.images if plate else ():
        if plate and (sides := image.pixels(Box(0, 0, plate.width, plate.height))):
            return region(image.iiif or quote(image.file), sides)
    return None


def region(source: str, sides: tuple[float, float, float, float]) -> dict[str, Any]:
    """Return a part of a picture (x, y, width, height in pixels) as the target of an annotation."""
    numbers = ",".join(f"{side:g}" for side in sides)
    return {
        "source": source,
        "selector": {
            "type": "FragmentSelector",
            "conformsTo": "http://www.w3.org/TR/media-frags/",
            "value": f"xywh=pixel:{numbers}",
        },
    }
