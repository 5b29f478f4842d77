"""Where the copy's columns end, against the lines of the source."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.collation.parts import Break, Group
from inscribe.signs import Transcription


def breaks(
    copy: Transcription, source: Transcription, groups: Sequence[Group]
) -> tuple[Break, ...]:
    """Return one break for each column end inside the copied text, placed in the source."""
    line_ends = {end for end in _column_ends(source) if end}
    groups = [group for group in groups if group.kind != "beside"]
    first, last = (groups[0].copy.start, groups[-1].copy.end) if groups else (0, 0)
    return tuple(
        Break(end, place, place in line_ends)
        for end in _column_ends(copy)[:-1]
        if first < end < last and (place := source_place(groups, end)) is not None
    )


def source_place(groups: Sequence[Group], i: int) -> int | None:
    """Return the place in the source that answers to the place before sign ``i`` of the copy.

    Inside a group of several signs there is no telling; then the place is that of the group's
    start, or None where the group was moved.
    """
    place: int | None = None
    for group in groups:
        if group.copy.start <= i < group.copy.end or (group.copy.start == i and len(group.source)):
            if group.kind == "moved" and group.copy.start != i:
                return None
            inside = i - group.copy.start if group.kind == "same" else 0
            return group.source.start + inside
        if group.copy.end == i and group.kind != "moved":
            place = group.source.end
    return place


def _column_ends(text: Transcription) -> list[int]:
    ends, total = [], 0
    for column in text.columns:
        total += len(column.signs)
        ends.append(total)
    return ends
