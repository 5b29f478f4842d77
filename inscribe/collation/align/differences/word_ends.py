"""How well a word may end at each place of a text.

The best division into words is one of many: うめのはな may be one word or three, をも one particle
or two. What counts for a difference is not where words end in the best division but whether they
could end at a place at little cost. So each place gets the cost of the best division that has a
word end there, less the cost of the best division of all: 0 where words surely end, thousands in
the middle of a word. Words, their costs and the costs of their meeting are the reading stage's.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from inscribe import tables
from inscribe.collation.align.sides import Side

NEVER = 10**9


class WordEnds(NamedTuple):
    """What is known of the words of a text; places are counted in signs."""

    costs: Mapping[int, int]  # of a word ending before each sign looked at, and at the end


def word_ends(side: Side, start: int, end: int) -> WordEnds:
    """Return where words may end from sign ``start`` of ``side`` to ``end``."""
    norm = side.norm[start:end]
    costs = _costs("".join(norm))
    found, at = {}, 0
    for place, part in enumerate(norm, start=start):
        found[place] = costs[at]
        at += len(part)
    found[end] = costs[at]
    return WordEnds(found)


# For each place the words that begin there: end, connection classes to the left and right, cost.
_Words = list[list[tuple[int, int, int, int]]]
# For each place: connection class of a word that begins (ends) there -> least cost.
_ByClass = list[dict[int, int]]


@tables.cached(256)
def _costs(text: str) -> tuple[int, ...]:
    from inscribe.reading.verse import verse_spans

    starting: _Words = [[] for _ in range(len(text) + 1)]
    for start, end, words in verse_spans(text):
        starting[start] += [
            (end, word.connection, word.right_connection, word.cost) for word in words.every
        ]
    starting[-1] = [(len(text), 0, 0, 0)]
    up_to = _cheapest_up_to(starting)
    onward, behind = _cheapest_behind(starting)
    through = [
        min((cost + up_to[at][left] for left, cost in here.items() if up_to[at]), default=NEVER)
        for at, here in enumerate(onward)
    ]
    for start, beginning in enumerate(starting):
        for end, left, right, cost in beginning if up_to[start] else ():
            # Words end inside a compound of words joined by の, too, at the cost of the compound.
            inner = text.find("の", start + 1, end - 1)
            if inner >= 0 and onward[end]:
                whole = up_to[start][left] + cost + behind[end][right]
                through[inner] = min(through[inner], whole)
                through[inner + 1] = min(through[inner + 1], whole)
    least = min(through)
    return tuple(min(cost - least, NEVER) for cost in through)


def _cheapest_up_to(starting: _Words) -> _ByClass:
    """Return the least cost of coming to a word of each class that begins at each place."""
    from inscribe.reading.verse import verse_connections

    size, cells = verse_connections()
    ended: _ByClass = [{} for _ in starting]
    ended[0] = {0: 0}
    up_to: _ByClass = []
    for here, words in zip(ended, starting, strict=True):
        come: dict[int, int] = {}
        for end, left, right, cost in words if here else ():
            if left not in come:
                row = size * left
                come[left] = min([c + cells[before + row] for before, c in here.items()])
            total = come[left] + cost
            if total < ended[end].get(right, NEVER):
                ended[end][right] = total
        up_to.append(come)
    return up_to


def _cheapest_behind(starting: _Words) -> tuple[_ByClass, _ByClass]:
    """Return the least cost from each place on, by the first word's class and the one before."""
    from inscribe.reading.verse import verse_connections

    size, cells = verse_connections()
    onward: _ByClass = [{} for _ in starting]
    onward[-1] = {0: 0}
    behind: _ByClass = [{} for _ in starting]
    for at in range(len(starting) - 2, -1, -1):
        here = onward[at]
        for end, left, right, cost in starting[at]:
            follows, rest = onward[end], behind[end]
            if not follows:
                continue
            if right not in rest:
                rest[right] = min([c + cells[right + size * after] for after, c in follows.items()])
            total = cost + rest[right]
            if total < here.get(left, NEVER):
                here[left] = total
    return onward, behind
