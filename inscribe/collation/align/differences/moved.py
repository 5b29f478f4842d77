"""Words that stand elsewhere: a stretch left out at one place and put in at another."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from inscribe.collation.align.searching import agreement, span
from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group, Span
from inscribe.reading import spelling

NEAR = 12  # signs between two places that are still shown as one exchange of words
MOST_WORK = 300  # states looked at to see whether two stretches say the same
MOST_IN_ALL = 20_000  # and for all stretches; then only those spelled alike are still seen
REACH = 20  # differences that are looked at for the other half of an exchange
LEAST = 2  # kana a moved stretch must have (a Chinese character counts two): particles come and go


def with_moves(
    groups: Sequence[Group], copy: Side, source: Side, *, far: bool = True
) -> list[Group]:
    """Return ``groups`` with exchanged or shifted stretches recognised as moved.

    はるのはな against はなのはる becomes one moved group over both; a stretch that went far becomes
    one group that answers to its old place, unless ``far`` is false.
    """
    differing = [
        at for at, group in enumerate(groups) if group.is_substantive and group.kind != "moved"
    ]
    pairs: dict[int, int] = {}
    ears = _Ears(copy, source)
    for place, first in enumerate(differing):
        for second in differing[place + 1 : place + 1 + REACH]:
            taken = first in pairs or second in pairs.values() or second in pairs
            if not taken and ears.exchanged(groups[first], groups[second]):
                pairs[first] = second
    if not far:
        pairs = {at: to for at, to in pairs.items() if _apart(groups, at, to) <= NEAR}
    marked = _marked(groups, pairs, copy, source)
    return [_turned_round(group, copy, source) or group for group in marked]


def _turned_round(group: Group, copy: Side, source: Side) -> Group | None:
    """Return a replaced group as moved if it has the same words in another order."""
    one, other = _keys(copy, group.copy), _keys(source, group.source)
    if group.kind != "replaced" or len(one) != len(other) or len(one) > 2 * NEAR:
        return None
    for first in range(1, len(one)):
        for last in range(1, len(one) - first + 1):
            middle = one[first : len(one) - last]
            if [*one[len(one) - last :], *middle, *one[:first]] == other:
                words = span(copy, group.copy.start, group.copy.start + first).text
                return Group("moved", group.copy, group.source, f"{words} has changed places")
    return None


def _keys(side: Side, part: Span) -> list[str]:
    return [side.letters[at] or side.norm[at] for at in range(part.start, part.end)]


def _apart(groups: Sequence[Group], at: int, to: int) -> int:
    return groups[to].copy.start - groups[at].copy.end


class _Ears:
    """Tells whether a stretch of the copy and one of the source sound the same.

    All the work it does is bounded.
    """

    def __init__(self, copy: Side, source: Side) -> None:
        self._copy = copy
        self._source = source
        self._left = MOST_IN_ALL

    def exchanged(self, first: Group, second: Group) -> bool:
        """Whether two stretches have changed places.

        What the copy has at the first is then what the source has at the second, and the reverse.
        """
        sizes = (_size(self._copy, first.copy), _size(self._source, first.source))
        if max(sizes) < LEAST:
            return False
        there = self._alike(first.copy, second.source)
        return there and self._alike(second.copy, first.source)

    def _alike(self, one: Span, other: Span) -> bool:
        if not len(one) or not len(other):
            return len(one) == len(other)
        copy, source = self._copy, self._source
        letters = "".join(copy.letters[one.start : one.end])
        other_letters = "".join(source.letters[other.start : other.end])
        if len(letters) == len(one) and len(other_letters) == len(other):
            return spelling.fits(letters, other_letters)
        if max(len(one), len(other)) > 3 * min(len(one), len(other)) or self._left <= 0:
            return False
        parts = copy.part(one.start, one.end), source.part(other.start, other.end)
        agree, work = agreement(*parts, MOST_WORK)
        self._left -= work
        return agree


def _size(side: Side, part: Span) -> int:
    return sum(2 if sort == "kanji" else 1 for sort in side.sort[part.start : part.end])


def _marked(
    groups: Sequence[Group], pairs: dict[int, int], copy: Side, source: Side
) -> list[Group]:
    new: dict[int, list[Group]] = {}
    covered = -1
    for at, to in pairs.items():
        first, second = groups[at], groups[to]
        near = _apart(groups, at, to) <= NEAR and _run_on(groups[at : to + 1])
        if near and at > covered and not any(n in new for n in range(at, to + 1)):
            one = span(copy, first.copy.start, second.copy.end)
            other = span(source, first.source.start, second.source.end)
            new[at] = [Group("moved", one, other, _why(first, second))]
            new.update((between, []) for between in range(at + 1, to + 1))
            covered = to
        elif not near and at not in new and to not in new:
            new[at] = _shifted(first, second)
            new[to] = _shifted(second, first)
    return [group for at, old in enumerate(groups) for group in new.get(at, [old])]


def _run_on(groups: Sequence[Group]) -> bool:
    """Whether groups follow each other in the source, too: none in between has come from afar."""
    return all(one.source.end == other.source.start for one, other in pairwise(groups))


def _shifted(here: Group, there: Group) -> list[Group]:
    if not len(here.copy):
        return []
    return [Group("moved", here.copy, there.source, f"{here.copy.text} stands elsewhere")]


def _why(first: Group, second: Group) -> str:
    stretches = [group.text for group in (first.source, second.source) if len(group)]
    if len(stretches) == 2:
        return f"{stretches[0]} and {stretches[1]} have changed places"
    return f"{stretches[0]} stands in another place"
