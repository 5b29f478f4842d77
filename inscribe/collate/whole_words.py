"""Differences widened to whole words, as an apparatus gives them.

The aligner finds the signs that differ: ちるらむ against ちりけむ differs in るら and りけ. Nobody
reads it so; the variant is ちるらむ ] ちりけむ. A difference is widened to the nearest places that
begin a word in both texts, and differences that then touch become one.
"""

from __future__ import annotations

from collections.abc import Sequence, Set

from inscribe.collate.groups import span
from inscribe.collate.model import Group, GroupKind
from inscribe.collate.sides import Side

FARTHEST = 8  # signs a difference is widened by at most, on each side


def widened(
    groups: Sequence[Group],
    copy: Side,
    source: Side,
    copy_words: Set[int],
    source_words: Set[int],
) -> list[Group]:
    """Return ``groups`` with each difference in wording widened to whole words.

    ``copy_words`` and ``source_words`` are the signs at which a word begins. Runs of equal signs
    must not be joined yet: a difference is only widened by whole groups.
    """
    if not groups:
        return []
    ends = [(group.copy.start, group.source.start) for group in groups]
    ends.append((groups[-1].copy.end, groups[-1].source.end))
    stops = [
        at in (0, len(groups)) or (i in copy_words and j in source_words)
        for at, (i, j) in enumerate(ends)
    ]
    result: list[Group] = []
    done = 0
    for first, last in _stretches(groups, stops):
        result += groups[done:first]
        result.append(_one_difference(groups[first:last], copy, source))
        done = last
    return [*result, *groups[done:]]


def _stretches(groups: Sequence[Group], stops: Sequence[bool]) -> list[tuple[int, int]]:
    """Return the groups from..to that each widened difference takes, touching ones made one."""
    found: list[tuple[int, int]] = []
    for at, group in enumerate(groups):
        if not group.is_substantive:
            continue
        first = _nearest(groups, stops, at, -1)
        last = _nearest(groups, stops, at + 1, 1)
        if found and first <= found[-1][1]:
            first, last = found[-1][0], max(last, found[-1][1])
            found.pop()
        found.append((first, last))
    return found


def _nearest(groups: Sequence[Group], stops: Sequence[bool], at: int, step: int) -> int:
    """Return the nearest stop from ``at`` on, or ``at`` itself where none is near or a doubt lies between."""
    place = at
    for _ in range(FARTHEST + 1):
        if stops[place]:
            return place
        passed = groups[place - 1 if step < 0 else place]
        if passed.kind == "unread":
            return place
        place += step
    return at


def _one_difference(groups: Sequence[Group], copy: Side, source: Side) -> Group:
    if len(groups) == 1:
        return groups[0]
    first, last = groups[0], groups[-1]
    one = span(copy, first.copy.start, last.copy.end)
    other = span(source, first.source.start, last.source.end)
    kind: GroupKind = "replaced" if len(one) and len(other) else "added" if len(one) else "omitted"
    inner = [group for group in groups if group.kind != "same"]
    return Group(kind, one, other, "; ".join(dict.fromkeys(map(_change, inner))))


def _change(group: Group) -> str:
    one, other = group.copy.text, group.source.text
    if group.kind == "omitted":
        return f"{other} is left out"
    if group.kind == "added":
        return f"{one} is put in"
    return f"{one} for {other}"
