"""Words that stand elsewhere: a stretch left out at one place and put in at another."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.collate.groups import span
from inscribe.collate.model import Group, Span
from inscribe.collate.search import Search
from inscribe.collate.sides import Side

NEAR = 12  # signs between two places that are still shown as one exchange of words
LEAST = 2  # signs a moved stretch must have; single particles come and go by themselves


def with_moves(groups: Sequence[Group], copy: Side, source: Side) -> list[Group]:
    """Return ``groups`` with exchanged or shifted stretches recognised as moved.

    はるのはな against はなのはる becomes one moved group over both; a stretch that went far becomes
    one group that answers to its old place.
    """
    result = list(groups)
    differing = [group for group in groups if group.is_substantive]
    for at, first in enumerate(differing):
        for second in differing[at + 1 :]:
            if first in result and second in result and _exchanged(first, second, copy, source):
                _mark(result, first, second, copy, source)
    return result


def _exchanged(first: Group, second: Group, copy: Side, source: Side) -> bool:
    there = _sounds_alike(copy, first.copy, source, second.source)
    back = _sounds_alike(copy, second.copy, source, first.source)
    longest = max(len(first.copy), len(first.source))
    return there and back and longest >= LEAST


def _sounds_alike(copy: Side, one: Span, source: Side, other: Span) -> bool:
    if not len(one) or not len(other):
        return len(one) == len(other)
    search = Search(copy.part(one.start, one.end), source.part(other.start, other.end))
    return not any(step.step == "wrong" for step in search.cheapest().steps)


def _mark(
    groups: list[Group], first: Group, second: Group, copy: Side, source: Side
) -> None:
    at, to = groups.index(first), groups.index(second)
    apart = second.copy.start - first.copy.end
    if apart <= NEAR:
        one = span(copy, first.copy.start, second.copy.end)
        other = span(source, first.source.start, second.source.end)
        groups[at : to + 1] = [Group("moved", one, other, _why(first, second))]
        return
    shifted = [
        Group("moved", one, other, f"{one.text} stands elsewhere in the source")
        for one, other in ((first.copy, second.source), (second.copy, first.source))
        if len(one)
    ]
    groups[to : to + 1] = shifted[-1:]
    groups[at : at + 1] = shifted[:-1]


def _why(first: Group, second: Group) -> str:
    stretches = [group.text for group in (first.source, second.source) if len(group)]
    if len(stretches) == 2:
        return f"{stretches[0]} and {stretches[1]} have changed places"
    return f"{stretches[0]} stands in another place"
