"""The pictures of the object and of its inscriptions, as resources that stand for it."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report.lido.parts import add_concept, add_part, add_text

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.record import RecordImage
    from inscribe.report import Style


def add_resources(administered: ET.Element, entry: Entry, style: Style) -> None:
    """Add each picture with its address, what it shows, and its credit."""
    shown = [(image, "") for image in entry.record.images]
    for each in entry.inscriptions:
        shown += [(image, each.inscription.place) for image in each.inscription.images]
    if shown:
        wrap = add_part(administered, "resourceWrap")
        for image, place in shown:
            _add_resource(wrap, image, place, style)


def _add_resource(wrap: ET.Element, image: RecordImage, place: str, style: Style) -> None:
    resource = add_part(wrap, "resourceSet")
    for kind, address in addresses(image):
        shown = add_part(resource, "resourceRepresentation", **{"lido:type": kind})
        add_part(shown, "linkResource", address)
    add_concept(resource, "resourceType", "resource", "digital image")
    if place:
        add_concept(resource, "resourcePerspective", "perspective", place)
    if image.shows:
        add_text(resource, "resourceDescription", image.shows, style.language)
    if image.credit:
        rights = add_part(resource, "rightsResource")
        add_text(rights, "creditLine", image.credit, style.language)


def addresses(image: RecordImage) -> list[tuple[str, str]]:
    """Return where a picture lies, each with the kind of its address.

    >>> from inscribe.record import RecordImage
    >>> addresses(RecordImage("plate.jpg"))
    [('file', 'plate.jpg')]
    """
    return [(kind, at) for kind, at in (("file", image.file), ("iiif", image.iiif)) if at]
