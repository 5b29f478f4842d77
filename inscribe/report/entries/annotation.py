"""The measured signs of an object as W3C Web Annotations.

Boxes are given as pixels of an image of the plate at ``PIXELS_PER_MM``; a sign that was not
measured has no selector, and its annotation speaks of the plate as a whole.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.signs import Sign

PIXELS_PER_MM = 20
CONTEXT = "http://www.w3.org/ns/anno.jsonld"


def entries_as_annotations(entries: list[Entry]) -> str:
    """Return an annotation page that holds an annotation for every legible sign."""
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
    return json.dumps(page, ensure_ascii=False, indent=2)


def _annotations(plate: str, each: InscriptionEntry) -> Iterator[dict[str, Any]]:
    for sign in each.inscription.transcription.signs:
        if sign.text:
            yield {
                "id": f"{plate}:sign:{sign.index + 1}",
                "type": "Annotation",
                "motivation": "supplementing",
                "body": {
                    "type": "TextualBody",
                    "value": sign.text,
                    "language": "ja",
                    "format": "text/plain",
                },
                "target": _target(plate, sign),
            }


def _target(plate: str, sign: Sign) -> dict[str, Any] | str:
    if sign.box is None:
        return plate
    sides = (sign.box.x, sign.box.y, sign.box.width, sign.box.height)
    numbers = ",".join(f"{side * PIXELS_PER_MM:g}" for side in sides)
    return {
        "source": plate,
        "selector": {
            "type": "FragmentSelector",
            "conformsTo": "http://www.w3.org/TR/media-frags/",
            "value": f"xywh=pixel:{numbers}",
        },
    }
