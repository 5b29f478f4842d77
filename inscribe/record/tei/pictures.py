"""The pictures that a TEI document of this program names, read back.

``inscribe.report.tei.pictures`` says what stands for what.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Mapping
from typing import Literal
from urllib.parse import unquote

from inscribe.record.model import RecordImage
from inscribe.record.tei.edition import TEI

Pictures = Mapping[tuple[int, ...], tuple[RecordImage, ...]]


def pictures_of(document: ET.Element) -> Pictures:
    """Return the pictures of the object (0,), its inscriptions (n,) and their sources (n, k).

    Raises:
        ValueError: a picture's number or measure is none.
    """
    found: dict[tuple[int, ...], tuple[RecordImage, ...]] = {}
    for surface in document.findall(f"{TEI}facsimile/{TEI}surface[@type='picture']"):
        *whose, _ = map(int, (surface.get("n") or "").split("."))
        found[tuple(whose)] = (*found.get(tuple(whose), ()), _picture(surface))
    return found


def _picture(surface: ET.Element) -> RecordImage:
    scale = _described(surface, "pixels-per-mm")
    crop = surface.find(f"{TEI}zone[@type='crop']")
    corner = surface.find(f"{TEI}zone[@type='corner']")
    return RecordImage(
        file=unquote(_address(surface, "file")),
        iiif=_address(surface, "iiif"),
        shows=_described(surface, "shows"),
        credit=_described(surface, "credit"),
        scale=float(scale) if scale else None,
        crop=_part(crop) if crop is not None else (),
        corner=_sides(corner, "ulx", "uly") if corner is not None else (),
        service=_service(surface),
        size=_size(surface),
    )


def _described(surface: ET.Element, kind: str) -> str:
    return surface.findtext(f"{TEI}desc[@type='{kind}']") or ""


def _address(surface: ET.Element, kind: str) -> str:
    graphic = surface.find(f"{TEI}graphic[@n='{kind}']")
    return (graphic.get("url") or "") if graphic is not None else ""


def _service(surface: ET.Element) -> Literal["", "2", "3"]:
    said = _described(surface, "iiif-service")
    return "2" if said == "2" else "3" if said == "3" else ""


def _size(surface: ET.Element) -> tuple[float, ...]:
    graphic = surface.find(f"{TEI}graphic[@width]")
    if graphic is None:
        return ()
    return tuple(float((graphic.get(key) or "").removesuffix("px")) for key in ("width", "height"))


def _part(zone: ET.Element) -> tuple[float, ...]:
    left, top, right, bottom = _sides(zone, "ulx", "uly", "lrx", "lry")
    return left, top, round(right - left, 6), round(bottom - top, 6)


def _sides(zone: ET.Element, *keys: str) -> tuple[float, ...]:
    return tuple(float(zone.get(key) or "") for key in keys)
