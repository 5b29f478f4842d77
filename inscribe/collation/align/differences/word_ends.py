"""How well a word may end at each place of a text.

The best division into words is one of many: うめのはな may be one word or three, をも one particle
or two. What counts for a difference is not where words end in the best division but whether they
could end at a place at little cost. So each place gets the cost of the best division that has a
word end there, less the cost of the best division of all: 0 where words surely end, thousands in
the middle of a word. Words, their costs and the costs of their meeting are the reading stage's.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.collation.align.sides import Side

if TYPE_CHECKING:
    from inscribe.reading.verse import Node

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


@tables.cached(256)
def _costs(text: str) -> tuple[int, ...]:
    from inscribe.reading.verse import verse_connections, verse_lattice

    size, cells = verse_connections()
    starting: list[list[Node]] = [[] for _ in range(len(text) + 1)]
    ending: list[list[Node]] = [[] for _ in range(len(text) + 1)]
    nodes = verse_lattice(text)
    for node in nodes:
        starting[node.start].append(node)
        ending[node.end].append(node)
    before = _cheapest_before(starting, ending, size, cells)
    behind = _cheapest_behind(starting, ending, size, cells)
    through = [_through(at, before, behind, size, cells) for at in range(len(text) + 1)]
    for node in nodes:
        _end_inside(node, before, behind, through, size, cells)
    least = min(through)
    return tuple(min(cost - least, NEVER) for cost in through)


def _end_inside(
    node: Node, before: _ByClass, behind: _ByClass, through: list[int], size: int, cells: memoryview
) -> None:
    """Let words end inside a compound of words joined by の, at the cost of the compound."""
    inner = node.piece.written.find("の", 1, -1)
    if inner < 0 or not before[node.start] or not behind[node.end]:
        return
    left, right = node.piece.connection, node.piece.right_connection
    cost = min(c + cells[last + size * left] for last, c in before[node.start].items())
    cost += min(c + cells[right + size * first] for first, c in behind[node.end].items())
    for at in (node.start + inner, node.start + inner + 1):
        through[at] = min(through[at], cost + node.piece.cost)


# For each place: connection class of a word that ends (begins) there -> least cost up to (from) it.
_ByClass = list[dict[int, int]]


def _cheapest_before(
    starting: list[list[Node]], ending: list[list[Node]], size: int, cells: memoryview
) -> _ByClass:
    best: _ByClass = [{0: 0}]
    for at in range(1, len(ending)):
        here: dict[int, int] = {}
        for node in ending[at]:
            row, own = size * node.piece.connection, node.piece.right_connection
            reached = best[node.start]
            if reached:
                cost = node.piece.cost + min(c + cells[left + row] for left, c in reached.items())
                if cost < here.get(own, NEVER):
                    here[own] = cost
        best.append(here)
    return best


def _cheapest_behind(
    starting: list[list[Node]], ending: list[list[Node]], size: int, cells: memoryview
) -> _ByClass:
    best: _ByClass = [{} for _ in starting]
    best[-1] = {0: 0}
    for at in range(len(starting) - 2, -1, -1):
        here = best[at]
        for node in starting[at]:
            left = node.piece.right_connection
            follows = best[node.end]
            if follows:
                rest = min(c + cells[left + size * right] for right, c in follows.items())
                cost = node.piece.cost + rest
                if cost < here.get(node.piece.connection, NEVER):
                    here[node.piece.connection] = cost
    return best


def _through(at: int, before: _ByClass, behind: _ByClass, size: int, cells: memoryview) -> int:
    costs = (
        one + cells[left + size * right] + other
        for left, one in before[at].items()
        for right, other in behind[at].items()
    )
    return min(costs, default=NEVER)
