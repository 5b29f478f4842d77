"""Long texts cut into blocks, so that each block can be aligned exactly.

The exact search visits up to every pair of places, which is too much for texts of thousands of
signs. A cut in the middle of sounds that both texts share is a cut the exact alignment would pass
through too, save in rare cases. Where the texts do not go together there is nothing to cut at:
such a stretch is a block of its own, to be searched only if it is short.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe.collation.align.long_texts.soundings import MeetingPoint, stretches, whereabouts
from inscribe.collation.align.sides import Side

LARGE = 60  # signs from which a block is cut at less safe places too
SAFE = 4  # shared sounds on both sides of a good cut
FEW = 24  # signs without an answer that are aligned together with what stands around them
LOPSIDED = 3  # times a text is longer than the other when the shorter must first be placed in it
PLACED = 300  # signs of the longest text that is placed first; a gap has no known length, either
ROOM = 8  # signs around that place in which the shorter text is aligned


class Block(NamedTuple):
    """Signs ``i`` to ``i_end`` of the copy, to be aligned with ``j`` to ``j_end`` of the source."""

    i: int
    i_end: int
    j: int
    j_end: int
    alike: bool = True  # whether the texts go together there

    @property
    def longest(self) -> int:
        """The signs of its longer side."""
        return max(self.i_end - self.i, self.j_end - self.j)

    @property
    def signs(self) -> int:
        """The signs of both sides."""
        return self.i_end - self.i + self.j_end - self.j

    @property
    def shortest(self) -> int:
        """The signs of its shorter side."""
        return min(self.i_end - self.i, self.j_end - self.j)


def blocks(whole: Block, copy: Side, source: Side) -> list[Block]:
    """Return blocks that tile a part of both texts."""
    if whole.longest > LOPSIDED * whole.shortest + 2 * ROOM:
        return _placed(whole, copy, source)
    return _of_similar_length(whole, copy, source)


def _of_similar_length(whole: Block, copy: Side, source: Side) -> list[Block]:
    found: list[Block] = []
    start = last = MeetingPoint(whole.i, whole.j, 0)
    together: list[MeetingPoint] = []
    for places in _stretches(whole, copy, source):
        if _size(last, places[0]) > FEW:
            found += _cut(start, together)
            found.append(_between(last, places[0], alike=False))
            start, together = places[0], []
        together += places
        last = places[-1]
    end = MeetingPoint(whole.i_end, whole.j_end, 0)
    if _size(last, end) <= FEW:
        return [*found, *_cut(start, [*together, end])]
    return [*found, *_cut(start, together), _between(last, end, alike=False)]


def _stretches(part: Block, copy: Side, source: Side) -> Iterator[list[MeetingPoint]]:
    """Yield the places of each stretch in which a part of both texts goes together."""
    one, other = copy.part(part.i, part.i_end), source.part(part.j, part.j_end)
    found = stretches(one, other)
    if not part.i and not part.j:
        yield from found
        return
    for places in found:
        yield [MeetingPoint(place.i + part.i, place.j + part.j, place.safety) for place in places]


def finer(block: Block, copy: Side, source: Side) -> list[Block]:
    """Return ``block`` cut at every place where the two texts share a sound on both sides."""
    places = [p for each in _stretches(block, copy, source) for p in each if p.safety]
    ends = [MeetingPoint(block.i, block.j, 0), *places, MeetingPoint(block.i_end, block.j_end, 0)]
    return [_between(a, b) for a, b in pairwise(ends) if a[:2] != b[:2]]


def _placed(whole: Block, copy: Side, source: Side) -> list[Block]:
    """Return the blocks where the shorter text belongs, and what stands before and behind."""
    i, i_end, j, j_end, _ = whole
    if not whole.shortest:
        return [whole._replace(alike=False)]
    one, other = copy.part(i, i_end), source.part(j, j_end)
    if whole.shortest > PLACED or "gap" in one.sort or "gap" in other.sort:
        return _of_similar_length(whole, copy, source)
    if i_end - i < j_end - j:
        first, last = whereabouts(one, other)
        first, last = max(j, j + first - ROOM), min(j_end, j + last + ROOM)
        middle = Block(i, i_end, first, last)
        before, behind = Block(i, i, j, first, False), Block(i_end, i_end, last, j_end, False)
    else:
        first, last = whereabouts(other, one)
        first, last = max(i, i + first - ROOM), min(i_end, i + last + ROOM)
        middle = Block(first, last, j, j_end)
        before, behind = Block(i, first, j, j, False), Block(last, i_end, j_end, j_end, False)
    inner = [middle] if middle.longest <= LARGE else _of_similar_length(middle, copy, source)
    return [block for block in (before, *inner, behind) if block.longest]


def _size(start: MeetingPoint, end: MeetingPoint) -> int:
    return max(end.i - start.i, end.j - start.j)


def _between(start: MeetingPoint, end: MeetingPoint, *, alike: bool = True) -> Block:
    return Block(start.i, end.i, start.j, end.j, alike)


def _cut(start: MeetingPoint, places: Sequence[MeetingPoint]) -> Iterator[Block]:
    """Yield blocks from ``start`` to the last of ``places``, cut at the safest of them."""
    if not places:
        return
    end = places[-1]
    since: list[MeetingPoint] = []  # places after ``start`` that were not safe enough
    for place in places:
        size = _size(start, place)
        if size > LARGE and since:
            safest = max(since, key=lambda p: (min(p.safety, SAFE), p.i))
            yield _between(start, safest)
            start, since = safest, [p for p in since if p.i > safest.i and p.j > safest.j]
            size = _size(start, place)
        if size and place.safety >= SAFE:
            yield _between(start, place)
            start, since = place, []
        elif size:
            since.append(place)
    if _size(start, end):
        yield _between(start, end)
