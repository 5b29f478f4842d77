"""Ranked readings of names as plain objects."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inscribe.reading.names import NameReading

Found = tuple[str, str, "tuple[NameReading, ...]"]  # as given, in current forms, its readings


def names_as_json(found: Sequence[Found]) -> dict[str, Any] | list[dict[str, Any]]:
    """Return one object for one name, a list for several."""
    objects = [_name_as_json(*name) for name in found]
    return objects[0] if len(objects) == 1 else objects


def _name_as_json(text: str, normalised: str, readings: Sequence[NameReading]) -> dict[str, Any]:
    return {
        "text": text,
        "normalised": normalised,
        "readings": [
            {
                "rank": rank,
                "kana": reading.plain_kana,
                "romaji": reading.romaji,
                "kind": reading.kind,
                "score": round(reading.score, 4),
                "reason": reading.reason,
            }
            for rank, reading in enumerate(readings, start=1)
        ],
    }
