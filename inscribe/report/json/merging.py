"""Two transcriptions held against each other, as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from inscribe.record import Inscription
from inscribe.settling import Merging, surer_of, written_in


def merging_as_json(
    a: str, b: str, found: Sequence[Merging], also: Sequence[str]
) -> dict[str, Any]:
    """Return what answers what in the records of the files ``a`` and ``b``."""
    return {
        "a": a,
        "b": b,
        "inscriptions": [_inscription(each) for each in found],
        "also_different": list(also),
    }


def _inscription(each: Merging) -> dict[str, Any]:
    return {
        "place": each.a.place,
        "places": [
            {
                "kind": place.kind,
                "a": _side(each.a, place.a),
                "b": _side(each.b, place.b),
                "surer": surer_of(place, each.a.transcription),
            }
            for place in each.places
        ],
    }


def _side(inscription: Inscription, span: tuple[int, int]) -> dict[str, Any]:
    first, end = span
    signs = [first, end - 1] if first < end else None
    return {"signs": signs, "text": written_in(inscription, span)}
