"""The columns of a copy beside the words of its source, sign against sign."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from inscribe.collation import NO_DIFFERENCE
from inscribe.report.entries.blocks import SourceSign, Strip, StripCell

if TYPE_CHECKING:
    from inscribe.collation import Collation, Group


def strips(held: Collation) -> tuple[Strip, ...]:
    """Return each column of the copy as cells, the source's signs beside what answers them.

    Nothing is returned where the two are not one text.
    """
    if not held.is_of_same_text or not held.copy.columns:
        return ()
    ends = [column.signs[-1].index + 1 for column in held.copy.columns]
    found: list[list[StripCell]] = [[] for _ in ends]
    number = 0
    for group in held.groups:
        is_difference = group.kind not in NO_DIFFERENCE
        number += is_difference
        for column, cell in _cells(group, number if is_difference else None, held, ends):
            found[column].append(cell)
    return tuple(tuple(cells) for cells in found)


def _cells(
    group: Group, number: int | None, held: Collation, ends: list[int]
) -> Iterator[tuple[int, StripCell]]:
    """Yield the part of a group that stands in each column of the copy, with that column."""
    copied = held.copy.signs[group.copy.start : group.copy.end]
    source = _source_signs(group, held)
    if not copied:
        column = next((n for n, end in enumerate(ends) if group.copy.start < end), len(ends) - 1)
        yield column, StripCell((), source, number, group.is_substantive)
        return
    parts: dict[int, int] = {}
    for sign in copied:
        parts[sign.column] = parts.get(sign.column, 0) + 1
    start = 0
    for nth, (column, count) in enumerate(parts.items()):
        is_even = len(source) == len(copied)  # sign answers sign: each part has its own
        here = source[start : start + count] if is_even else source if nth == 0 else ()
        part = copied[start : start + count]
        yield column, StripCell(part, here, number, group.is_substantive)
        start += count


def _source_signs(group: Group, held: Collation) -> tuple[SourceSign, ...]:
    columns = held.source.columns
    line_ends = {column.signs[-1].index for column in columns[:-1] if column.signs}
    signs = held.source.signs[group.source.start : group.source.end]
    return tuple(SourceSign(sign, sign.index in line_ends) for sign in signs)
