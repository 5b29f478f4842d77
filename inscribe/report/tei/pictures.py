"""The pictures of an object, its inscriptions and sources as surfaces of a facsimile, in pixels.

Each has a number of dots: ``0.1`` is the first picture of the object, ``2.1`` of its second
inscription, ``2.1.3`` the third picture of that inscription's first source.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple
from urllib.parse import quote

from inscribe.report import add
from inscribe.report.tei.edition import zone_id
from inscribe.report.tei.facsimile import corners, number
from inscribe.signs import Box

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.record import Inscription, RecordImage


class _Numbered(NamedTuple):
    number: str
    image: RecordImage
    carved: Inscription | None  # what the picture shows measured signs of
    at: int  # which inscription that is, from 1


def add_pictures(root: ET.Element, entry: Entry, name: str) -> None:
    """Add a surface for each picture, to the facsimile that is there or to a new one."""
    found = list(_pictures(entry))
    if not found:
        return
    facsimile = root.find("facsimile")
    if facsimile is None:
        facsimile = add(root, "facsimile")
    for each in found:
        _add_picture(facsimile, each, f"{name}_i{each.at}")


def _pictures(entry: Entry) -> Iterator[_Numbered]:
    for nth, image in enumerate(entry.record.images, start=1):
        yield _Numbered(f"0.{nth}", image, None, 0)
    for at, each in enumerate(entry.inscriptions, start=1):
        carved = each.inscription
        for nth, image in enumerate(carved.images, start=1):
            yield _Numbered(f"{at}.{nth}", image, carved, at)
        for of, source in enumerate(carved.sources, start=1):
            for nth, image in enumerate(source.images, start=1):
                yield _Numbered(f"{at}.{of}.{nth}", image, None, at)


def _add_picture(facsimile: ET.Element, each: _Numbered, name: str) -> None:
    image = each.image
    surface = add(facsimile, "surface", type="picture", n=each.number)
    for kind, said in (
        ("shows", image.shows),
        ("credit", image.credit),
        ("pixels-per-mm", number(image.scale) if image.scale is not None else ""),
        ("iiif-service", image.service),
    ):
        if said:
            add(surface, "desc", said, type=kind)
    for kind, address in (("file", quote(image.file)), ("iiif", image.iiif)):
        if address:
            graphic = add(surface, "graphic", url=address, n=kind)
            for key, side in zip(("width", "height"), image.size, strict=False):
                graphic.set(key, f"{number(side)}px")
    if image.crop:
        left, top, width, height = image.crop
        add(surface, "zone", type="crop", **corners(left, top, width, height))
    if image.corner:
        x, y = image.corner
        add(surface, "zone", type="corner", ulx=number(x), uly=number(y))
    if each.carved:
        _add_signs(surface, each.carved, image, name)


def _add_signs(surface: ET.Element, carved: Inscription, image: RecordImage, name: str) -> None:
    """Add where each measured sign stands in the picture, with a pointer to its zone in mm."""
    for sign in carved.transcription.signs:
        if sign.box and (part := image.pixels(Box(*sign.box))):
            zone = add(surface, "zone", type="pixels", n=str(sign.index + 1), **corners(*part))
            zone.set("corresp", f"#{zone_id(name, sign)}")
