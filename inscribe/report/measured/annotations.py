"""A proposal as W3C Web Annotations of the photograph itself, as IIIF viewers show them.

Each sign has the box around it (``xywh``, which every viewer knows and this program reads again)
and, because a plate is seen askew, its exact outline (SVG). One annotation more gives the plate.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from inscribe.report.entries import CONTEXT

if TYPE_CHECKING:
    from inscribe.measuring import Measured
    from inscribe.record import Inscription

Points = Sequence[tuple[float, float]]


def measured_as_annotations(
    found: Measured,
    inscription: Inscription,
    outlines: Mapping[int, Points],
    source: str,
    name: str,
) -> str:
    """Return an annotation page.

    Args:
        found: what was measured.
        inscription: whose signs they are.
        outlines: the corners of each sign's box in pixels of the photograph.
        source: what is annotated: the picture's name, or the id of its canvas.
        name: what the ids begin with.
    """
    items = list(_items(found, inscription, outlines, source, f"urn:inscribe:{quote(name)}"))
    page = {
        "@context": CONTEXT,
        "id": f"urn:inscribe:{quote(name)}:measured",
        "type": "AnnotationPage",
        "items": items,
    }
    return json.dumps(page, ensure_ascii=False, indent=2)


def _items(
    found: Measured,
    inscription: Inscription,
    outlines: Mapping[int, Points],
    source: str,
    name: str,
) -> Iterator[dict[str, Any]]:
    signs = inscription.transcription.signs
    yield _annotation(f"{name}:plate", "plate", "describing", "en", _target(source, found.corners))
    for sign in found.signs:
        body = signs[sign.sign].text or "□"
        target = _target(source, outlines[sign.sign])
        yield _annotation(f"{name}:sign:{sign.sign + 1}", body, "supplementing", "ja", target)


def _annotation(
    identifier: str, value: str, motivation: str, language: str, target: dict[str, Any]
) -> dict[str, Any]:
    body = {"type": "TextualBody", "value": value, "language": language, "format": "text/plain"}
    return {
        "id": identifier,
        "type": "Annotation",
        "motivation": motivation,
        "body": body,
        "target": target,
    }


def _target(source: str, points: Points) -> dict[str, Any]:
    left, top = min(x for x, _ in points), min(y for _, y in points)
    right, bottom = max(x for x, _ in points), max(y for _, y in points)
    numbers = ",".join(f"{side:g}" for side in map(_tenth, (left, top, right - left, bottom - top)))
    path = " ".join(f"{_tenth(x):g},{_tenth(y):g}" for x, y in points)
    outline = f'<svg xmlns="http://www.w3.org/2000/svg"><polygon points="{path}"/></svg>'
    return {
        "source": source,
        "selector": [
            {
                "type": "FragmentSelector",
                "conformsTo": "http://www.w3.org/TR/media-frags/",
                "value": f"xywh=pixel:{numbers}",
            },
            {"type": "SvgSelector", "value": outline},
        ],
    }


def _tenth(value: float) -> float:
    return round(value, 1)
