"""Alignment of two texts of any length: blocks, the exact search in each, whole words, moves."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from inscribe.collate.blocks import Block, blocks, excerpt_window
from inscribe.collate.groups import groups, joined, span
from inscribe.collate.model import Group
from inscribe.collate.moved import with_moves
from inscribe.collate.search import cheapest
from inscribe.collate.sides import Side
from inscribe.collate.whole_words import widened
from inscribe.collate.word_ends import word_ends


class Alignment(NamedTuple):
    """The groups of two texts, the cost of the alignment, and the part of the source it covers."""

    groups: tuple[Group, ...]
    cost: int
    window: tuple[int, int]


def align(copy: Side, source: Side, *, excerpt: bool = False) -> Alignment:
    """Return the alignment of two texts; an ``excerpt`` answers to part of the source."""
    if excerpt:
        return _align_excerpt(copy, source)
    found: list[Group] = []
    cost = 0
    for block in blocks(copy, source):
        in_block, price = _aligned(block, copy, source)
        found += in_block
        cost += price
    found = with_moves(found, copy, source)
    return Alignment(joined(found, copy, source), cost, (0, len(source)))


def _align_excerpt(copy: Side, source: Side) -> Alignment:
    first, last = excerpt_window(copy, source)
    part = source.part(first, last)
    path = cheapest(copy, part, excerpt=True)
    start = first + path.start.j
    end = first + (path.steps[-1].state.j if path.steps else path.start.j)
    found, cost = _aligned(Block(0, len(copy), start, end), copy, source)
    found = with_moves(found, copy, source)
    return Alignment(joined(found, copy, source), cost, (start, end))


def _aligned(block: Block, copy: Side, source: Side) -> tuple[list[Group], int]:
    """Return the groups of one block, differences widened to whole words, and their cost."""
    one, other = copy.part(block.i, block.i_end), source.part(block.j, block.j_end)
    path = cheapest(one, other)
    found = list(groups(path, one, other))
    if path.differs_in_wording:
        differing = [group for group in found if group.is_substantive]
        one = one.with_dictionary([(g.copy.start, g.copy.end) for g in differing])
        other = other.with_dictionary([(g.source.start, g.source.end) for g in differing])
        path = cheapest(one, other)
        found = list(groups(path, one, other))
    if path.differs_in_wording:
        found = with_moves(found, one, other, far=False)
        found = widened(found, one, other, word_ends(one), word_ends(other))
    return [_shifted(group, block, copy, source) for group in found], path.cost


def _shifted(group: Group, block: Block, copy: Side, source: Side) -> Group:
    if block.i == block.j == 0:
        return group
    i, j = block.i + group.copy.start, block.j + group.source.start
    return replace(
        group,
        copy=span(copy, i, i + len(group.copy)),
        source=span(source, j, j + len(group.source)),
    )
