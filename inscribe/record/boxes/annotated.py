"""Annotations of a picture and the boxes they give, from a page of them or a manifest of IIIF."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from inscribe import notation, strict
from inscribe.errors import InputError, InscribeError, Place
from inscribe.scripts import is_written

PLATE = "plate"
PAGE = "AnnotationPage"
OWN_ID = re.compile(r":sign:(\d+)$")
_NUMBER = r"(-?\d+(?:\.\d+)?)"
_XYWH = re.compile(rf"(?:^|[#&])xywh=(?:pixel:)?{_NUMBER},{_NUMBER},{_NUMBER},{_NUMBER}(?:&|$)")
_POLYGON = re.compile(r"""<(?:\w+:)?polygon[^>]*\spoints=["']([^"'<>]*)["']""")
_POINT = re.compile(rf"{_NUMBER}[\s,]+{_NUMBER}")

Sides = tuple[float, float, float, float]


def iiif_problem(value: Any) -> tuple[str, str] | None:
    """Return why a JSON value is no manifest of IIIF Presentation 3, and what to do; or None.

    >>> iiif_problem({"@type": "sc:Manifest"})[0]
    'it is a manifest of IIIF Presentation 2, and version 3 is understood'
    """
    if not isinstance(value, dict):
        return "it is no manifest", "give a manifest of IIIF Presentation 3"
    kind, old = str(value.get("type", "")), str(value.get("@type", ""))
    if old.startswith("sc:"):
        what = old.removeprefix("sc:").lower()
        todo = "ask its publisher for version 3, which most servers give too"
        return f"it is a {what} of IIIF Presentation 2, and version 3 is understood", todo
    if kind == "Collection":
        return "it is a collection of manifests", "save its manifests, and give them one by one"
    if kind == PAGE:
        todo = "give it to inscribe measure or collate with --boxes"
        return "it is a page of annotations, and says nothing of an object", todo
    if kind == "Manifest":
        return None
    return "it is no manifest of IIIF Presentation 3", 'its "type" would be "Manifest"'


def is_of_one_sign(item: dict[str, Any]) -> bool:
    """Whether an annotation may be of a single sign: its text is not several Japanese signs."""
    text = said_by(item)
    if not text or not all(map(is_written, text)):
        return True
    try:
        return len(notation.parse(text).signs) == 1
    except InscribeError:
        return True


def boxed(text: str, name: str) -> Iterator[tuple[dict[str, Any], Sides]]:
    """Yield each annotation that has a box, with its box in pixels.

    Raises:
        InputError: there are no annotations, or they are not understood.
    """
    try:
        page = strict.json_value(text, Place(name))
    except ValueError as error:
        raise InputError("the annotations are not JSON", Place(name)) from error
    if isinstance(page, dict):
        _require_annotations(page, name)
    items = _in_manifest(page) if isinstance(page, dict) else page
    if not isinstance(items, list):
        raise InputError(
            "there is no list of annotations", Place(name), "export an AnnotationPage with items"
        )
    for item in items:
        if isinstance(item, dict) and (found := _selected(item.get("target", item.get("on")))):
            if "xywh=percent:" in found:
                raise InputError("a box is in percent", Place(name), "export boxes in pixels")
            if sides := _sides(found):
                yield item, sides


def _require_annotations(page: dict[str, Any], name: str) -> None:
    """Raise where it is told of what kind a file without annotations is."""
    kinds = {page.get("type"), page.get("@type")}
    if kinds & {"Collection", "sc:Collection", "sc:Manifest"} and (problem := iiif_problem(page)):
        raise InputError(problem[0], Place(name), problem[1])
    pages = [held for each in _pages(page) for held in each] if "Manifest" in kinds else []
    away = next((held for held in pages if "items" not in held), None)
    if away and not any(held.get("items") for held in pages):
        message = "the annotations lie in a file of their own, which is not fetched"
        raise InputError(message, Place(name), f"save {away.get('id', 'it')} and give that file")


def _pages(manifest: dict[str, Any]) -> list[list[dict[str, Any]]]:
    """Return the pages of annotations of each canvas of a manifest."""
    canvases = strict.objects(manifest.get("items"))
    return [list(strict.objects(canvas.get("annotations"))) for canvas in canvases]


def _in_manifest(page: dict[str, Any]) -> Any:
    """Return the annotations of a page; of a manifest those of its first canvas that has any.

    Of a manifest of this program only those of single signs and of the plate are meant.
    """
    if page.get("type") != "Manifest":
        return page.get("items", page.get("resources"))
    for each in _pages(page):
        found = [item for held in each for item in strict.objects(held.get("items"))]
        own = [item for item in found if OWN_ID.search(str(item.get("id", "")))]
        plates = [item for item in found if said_by(item).lower() == PLATE]
        if found:
            return [*plates, *own] if own else found
    return None


def place_of_annotation(item: dict[str, Any]) -> Sides | None:
    """Return the box of an annotation in pixels, x, y, width, height; None where it has none.

    >>> place_of_annotation({"target": "https://example.org/c#xywh=1,2,30,40"})
    (1.0, 2.0, 30.0, 40.0)
    >>> outline = {"type": "SvgSelector", "value": "<svg/>"}
    >>> box = {"type": "FragmentSelector", "value": "xywh=pixel:5,6,7,8"}
    >>> place_of_annotation({"target": {"source": "a", "selector": [outline, box]}})
    (5.0, 6.0, 7.0, 8.0)
    """
    return _sides(_selected(item.get("target", item.get("on"))))


def outline_of_annotation(item: dict[str, Any]) -> tuple[tuple[float, float], ...]:
    """Return the corners of an annotation's outline (an SVG polygon) in pixels; none without one.

    >>> svg = '<svg><polygon points="0,0 10,1 10,41 0,40"/></svg>'
    >>> outline_of_annotation({"target": {"selector": {"type": "SvgSelector", "value": svg}}})
    ((0.0, 0.0), (10.0, 1.0), (10.0, 41.0), (0.0, 40.0))
    """
    target = item.get("target", item.get("on"))
    for each in target if isinstance(target, list) else [target]:
        selector = each.get("selector") if isinstance(each, dict) else None
        for held in selector if isinstance(selector, list) else [selector]:
            value = held.get("value") if isinstance(held, dict) else None
            if isinstance(value, str) and (match := _POLYGON.search(value)):
                return tuple((float(x), float(y)) for x, y in _POINT.findall(match[1]))
    return ()


def _sides(fragment: str) -> Sides | None:
    match = _XYWH.search(fragment)
    if match is None:
        return None
    x, y, width, height = map(float, match.groups())
    return x, y, width, height


def _selected(target: Any) -> str:
    """Return the fragment that says where in the picture an annotation is."""
    if isinstance(target, str):
        return target
    if isinstance(target, list):
        return next(filter(None, map(_selected, target)), "")
    if not isinstance(target, dict):
        return ""
    selector = target.get("selector")
    held = selector if isinstance(selector, list) else [selector]
    values = [each["value"] for each in held if isinstance(each, dict) and "value" in each]
    said = [value for value in values if isinstance(value, str)]
    if said:  # beside an outline there may be a box
        return next((value for value in said if _XYWH.search(value)), said[0])
    return _selected(target.get("id", target.get("source")))


def said_by(item: dict[str, Any]) -> str:
    """Return the text of an annotation."""
    body = item.get("body", item.get("resource"))
    for each in body if isinstance(body, list) else [body]:
        if isinstance(each, dict):
            value = each.get("value", each.get("chars"))
            if isinstance(value, str):
                return value.strip()
    return ""
