"""Where the signs that a copy leaves out are drawn: in dashed frames, called ghosts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe.report.drawing.surfaces import PlacedSign

if TYPE_CHECKING:
    from inscribe.collation import Collation, Group
    from inscribe.signs import Sign


@dataclass(frozen=True, slots=True)
class Ghost:
    """A sign that was left out, where it is drawn, and the sign it belongs after if elsewhere.

    ``number`` is that of the difference, on its first sign.
    """

    sign: Sign
    place: PlacedSign
    origin: PlacedSign | None
    number: int | None = None


def ghosts(collation: Collation, places: list[PlacedSign], width: float) -> list[Ghost]:
    """Return what was left out, each sign in its place.

    Where the plate was measured, all of it stands below the last column at the carver's pitch, so
    that one sees whether it had fitted; a line leads to it from where it belongs. Else what is
    missing at the end stands below the last sign, and the rest beside the plate.
    """
    found: list[Ghost] = []
    pitch = collation.space.median_pitch if collation.space else None
    at_end, beside = places[-1].y + (pitch or places[-1].size * 1.1), 0.0
    for difference, group in _left_out(collation):
        before = places[min(max(group.copy.start - 1, 0), len(places) - 1)]
        is_end = group.copy.start >= len(places)
        step = pitch or before.size * 1.08
        if pitch or is_end:
            first = PlacedSign(places[-1].x, at_end, min(step, places[-1].size * 1.08) / 1.08)
        else:
            y = max(before.y + before.size / 2, beside)
            first = PlacedSign(width + 2.5 + before.size, y, before.size)
        signs = collation.source.signs[group.source.start : group.source.end]
        for number, sign in enumerate(signs):
            place = PlacedSign(first.x, first.y + number * step, first.size)
            origin = None if number or is_end else before
            found.append(Ghost(sign, place, origin, None if number else difference))
        if pitch or is_end:
            at_end += len(signs) * step
        else:
            beside = first.y + len(signs) * step
    return found


def _left_out(collation: Collation) -> Iterator[tuple[int, Group]]:
    """Yield each difference of which the copy has nothing, with its number from 1."""
    for number, group in enumerate(collation.differences, start=1):
        if group.kind == "omitted":
            yield number, group
