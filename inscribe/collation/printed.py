"""Differences as an edition prints them: widened to the phrases they stand in.

The minimal difference of 音にぞ and 音に is ぞ; an edition prints 音にぞ ] 音に. So each
difference in wording is widened to where phrases of the source begin and end (see ``phrases``) and
both texts answer each other. A word put in or left out by itself stays alone; a particle put in is
shown with the word it hangs on. Several differences in one phrase are one entry.

>>> from inscribe.collation import collate_texts
>>> result = collate_texts("風の音におとろかれぬる", "風の音にぞおどろかれぬる")
>>> [(each.source.text, each.copy.text) for each in as_printed(result)]
[('音にぞ', '音に')]
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from inscribe.collation.model import Collation
from inscribe.collation.parts import Group, Printed, Span
from inscribe.collation.phrases import phrase_ends


class Point(NamedTuple):
    """A place between two signs of the copy and two of the source that answer each other."""

    i: int
    j: int


def as_printed(result: Collation) -> tuple[Printed, ...]:
    """Return the differences in wording as an edition prints them, in the order of the copy."""
    found = [at for at, group in enumerate(result.groups) if group.is_substantive]
    if not found:
        return ()
    points = _points(result.groups)
    phrases = phrase_ends(result.source), phrase_ends(result.copy)
    entries: list[Printed] = []
    for at in found:
        here = _widened(result.groups[at], at, points, *phrases, result)
        if entries and _overlap(entries[-1], here):
            here = _as_one(entries.pop(), here, result)
        entries.append(here)
    return tuple(entries)


def _points(groups: Sequence[Group]) -> list[Point]:
    """Return every place where both texts may be cut, moved stretches left out."""
    found: dict[Point, None] = {}
    for group in groups:
        if group.kind in ("moved", "beside"):
            continue
        found[Point(group.copy.start, group.source.start)] = None
        if group.kind == "same":
            for n in range(len(group.copy)):
                found[Point(group.copy.start + n, group.source.start + n)] = None
        found[Point(group.copy.end, group.source.end)] = None
    return sorted(found)


def _widened(
    group: Group,
    at: int,
    points: Sequence[Point],
    source_ends: frozenset[int],
    copy_ends: frozenset[int],
    result: Collation,
) -> Printed:
    if group.kind == "moved":
        return Printed(group.copy, group.source, (at,))
    start, end = (
        Point(group.copy.start, group.source.start),
        Point(group.copy.end, group.source.end),
    )
    before = reversed(points[: bisect_right(points, start)])
    behind = points[bisect_left(points, end) :]
    if not len(group.source) and start.j in source_ends:  # a word or particle put in
        hangs = start.i not in copy_ends
        leads = not hangs and end.i not in copy_ends
        if hangs:
            start = next((p for p in before if p.j in source_ends and p.j < start.j), start)
        elif leads:
            end = next((p for p in behind if p.j in source_ends and p.j > end.j), end)
    else:
        start = next((p for p in before if p.j in source_ends), start)
        end = next((p for p in behind if p.j in source_ends), end)
    return Printed(_span(result, start.i, end.i), _span_of_source(result, start.j, end.j), (at,))


def _overlap(one: Printed, other: Printed) -> bool:
    return other.copy.start < one.copy.end or (
        other.source.start < one.source.end and len(other.source) > 0
    )


def _as_one(one: Printed, other: Printed, result: Collation) -> Printed:
    return Printed(
        _span(result, min(one.copy.start, other.copy.start), max(one.copy.end, other.copy.end)),
        _span_of_source(
            result,
            min(one.source.start, other.source.start),
            max(one.source.end, other.source.end),
        ),
        (*one.groups, *other.groups),
    )


def _span(result: Collation, start: int, end: int) -> Span:
    return Span(start, end, "".join(sign.text for sign in result.copy.signs[start:end]))


def _span_of_source(result: Collation, start: int, end: int) -> Span:
    return Span(start, end, "".join(sign.text for sign in result.source.signs[start:end]))
