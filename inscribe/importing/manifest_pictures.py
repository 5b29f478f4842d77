"""What a canvas of a foreign manifest paints, as pictures of a record at their image service.

Taken is an image of a service (IIIF Image API 2 or 3), all of it or a region, that stands for its
whole canvas; of a choice the first. All else is told: nothing is fetched, and a record's picture
is a file beside it or an image of a service.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from inscribe import strict
from inscribe.importing.model import Trouble
from inscribe.record import RecordImage

Json = dict[str, Any]
_ADDRESS = re.compile(
    r"(?P<base>https?://\S+)/(?P<region>full|\d+,\d+,\d+,\d+)/[^/]+/[^/]+/"
    r"(default|native|color|gray|bitonal)\.\w+"
)
_REGION = re.compile(r"\d+,\d+,\d+,\d+")
_BY_HAND = "save the picture beside the record and name it under file"


class ManifestPicture(NamedTuple):
    """A picture, and the number of the inscription it shows, from 0 (-1: of the object)."""

    image: RecordImage
    inscription: int


def pictures_of(
    canvas: Json, number: int, shows: str, credit: str, inscription: int
) -> Iterator[ManifestPicture | Trouble]:
    """Yield the pictures of a canvas, and what of it was not taken."""
    place = f"canvas {number}"
    for body, target in _painted(canvas):
        chosen = body
        if body.get("type") == "Choice":
            items = list(strict.objects(body.get("items")))
            chosen = items[0] if items else {}
            if len(items) > 1:
                said = f"of {len(items)} pictures to choose from the first is taken"
                yield Trouble(1, place, "", said, "add the others to the record by hand")
        image, todo = _image(chosen, shows, credit)
        address = str(chosen.get("id", ""))
        if image is None:
            yield Trouble(1, place, address, "what is painted is not taken", todo)
            continue
        if "xywh=" in target:
            said = "the picture fills a part of its canvas only; its place there is not kept"
            yield Trouble(1, place, address, said, "measure boxes on the picture itself")
        yield ManifestPicture(image, inscription)


def _painted(canvas: Json) -> Iterator[tuple[Json, str]]:
    """Yield each body that is painted, with what it is painted on."""
    for page in strict.objects(canvas.get("items")):
        for item in strict.objects(page.get("items")):
            bodies = item.get("body")
            for body in bodies if isinstance(bodies, list) else [bodies]:
                yield body if isinstance(body, dict) else {"id": body}, str(item.get("target"))


def _image(body: Json, shows: str, credit: str) -> tuple[RecordImage | None, str]:
    """Return a body as a picture, or None and what to do."""
    region = ""
    if body.get("type") == "SpecificResource":
        selector, source = body.get("selector"), body.get("source")
        region = str(selector.get("region", "")) if isinstance(selector, dict) else ""
        body = source if isinstance(source, dict) else {"id": source, "type": "Image"}
    if body.get("type") not in ("Image", None):
        return None, f"it is of type {body.get('type')}, and a record has still pictures only"
    base, version = _service(body)
    found = _ADDRESS.fullmatch(str(body.get("id", "")))
    if not base and found:
        base = found["base"]
    if not base:
        return None, f"it names no image service of version 2 or 3: {_BY_HAND}"
    region = region or (found["region"] if found else "")
    crop = tuple(map(float, region.split(","))) if _REGION.fullmatch(region) else ()
    image = RecordImage(
        iiif=base.rstrip("/"),
        shows=" ".join(shows.split()),
        credit=" ".join(credit.split()),
        service=version,
        size=() if found and found["region"] != "full" else _size(body),
        crop=crop,
    )
    return image, ""


def _service(body: Json) -> tuple[str, Any]:
    """Return the base address of a picture's image service, and its version; empty for none."""
    services = body.get("service")
    for each in services if isinstance(services, list) else [services]:
        if not isinstance(each, dict):
            continue
        base = str(each.get("id") or each.get("@id") or "")
        said = " ".join(str(each.get(key, "")) for key in ("type", "@type", "profile", "@context"))
        found = re.search(r"ImageService([23])|/image/([23])/", said)
        if base.startswith(("https://", "http://")) and found:
            return base, found[1] or found[2]
    return "", ""


def _size(body: Json) -> tuple[float, ...]:
    sides = body.get("width"), body.get("height")
    if all(isinstance(side, int | float) and side >= 1 for side in sides):
        return tuple(float(side) for side in sides if side is not None)
    return ()
