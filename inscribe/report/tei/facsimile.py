"""The measured places of signs as zones of a surface, in mm from the plate's top left corner."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report import XML_ID, add
from inscribe.report.tei.edition import zone_id

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.record import ColumnMeasure, Inscription

UNIT = "in mm from the upper left corner of the plate, upright as it is read"


def add_facsimile(root: ET.Element, entry: Entry, name: str) -> None:
    """Add a surface for each inscription of which signs or columns were measured."""
    measured = [
        (at, each.inscription)
        for at, each in enumerate(entry.inscriptions, start=1)
        if each.inscription.columns
        or any(sign.box for sign in each.inscription.transcription.signs)
    ]
    if measured:
        facsimile = add(root, "facsimile")
        for at, inscription in measured:
            _add_surface(facsimile, inscription, at, f"{name}_i{at}")


def _add_surface(facsimile: ET.Element, inscription: Inscription, at: int, name: str) -> None:
    plate = inscription.plate
    size = corners(0, 0, plate.width, plate.height) if plate else {}
    surface = add(facsimile, "surface", n=str(at), **size)
    add(surface, "label", f"{inscription.place}, {UNIT}")
    for nth, column in enumerate(inscription.columns, start=1):
        add(surface, "zone", type="column", n=str(nth), **_column_corners(column))
    for sign in inscription.transcription.signs:
        if sign.box:
            zone = add(surface, "zone", type="sign", n=str(sign.index + 1), **corners(*sign.box))
            zone.set(XML_ID, zone_id(name, sign))


def _column_corners(column: ColumnMeasure) -> dict[str, str]:
    """Return the ends of a column, and its sides as far as they were measured."""
    found = {"uly": column.top, "lry": column.bottom}
    if column.x is not None:
        found["ulx"] = column.x
        if column.width is not None:
            found["lrx"] = column.x + column.width
    return {key: number(side) for key, side in found.items()}


def corners(x: float, y: float, width: float, height: float) -> dict[str, str]:
    """Return the corners of a rectangle as attributes."""
    sides = {"ulx": x, "uly": y, "lrx": x + width, "lry": y + height}
    return {key: number(side) for key, side in sides.items()}


def number(value: float) -> str:
    """Return a measure as short as it can be written without loss.

    >>> number(97.0), number(5.25), number(0.1 + 0.2)
    ('97', '5.25', '0.30000000000000004')
    """
    return repr(float(value)).removesuffix(".0")
