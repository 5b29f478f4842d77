"""Alignment of two texts of any length: blocks, the exact search in each, whole words, moves.

Texts of up to ``EXACT`` signs are always aligned exactly. Longer ones are, too, wherever they go
together; a long stretch in which they have nothing in common is one difference, and the notes of
the alignment say so. The work grows with the length of the texts, however unlike they are.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.collation.align import long_texts
from inscribe.collation.align.differences import (
    in_japanese_order,
    over_whole_words,
    told_doubles,
    with_moves,
)
from inscribe.collation.align.long_texts import Block, Stretch, around_moved, blocks, finer
from inscribe.collation.align.searching import (
    MOST_WORK,
    AlignmentPath,
    TooMuchWorkError,
    cheapest,
    groups,
    joined,
    span,
)
from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group

EXACT = 60  # signs up to which a text is aligned exactly, whatever the work
SHORT = 300  # signs up to which it is tried in one piece
# States that searches may look at: a text that goes together takes up to five a sign.
MOST_AT_ONCE = 12_000
MOST_PER_SIGN = 5
SHARE = 4  # times its share of what is left that one block may take
LEAST_OF_A_PIECE = 30
PER_PAIR = 4  # states looked at for each pair of signs of unlike texts


class Alignment(NamedTuple):
    """The groups of two texts, the cost of the alignment, and the part of the source it covers."""

    groups: tuple[Group, ...]
    cost: int
    window: tuple[int, int]
    notes: tuple[str, ...] = ()
    work: int = 0  # states the searches looked at


def align(copy: Side, source: Side) -> Alignment:
    """Return the alignment of two texts."""
    return aligned(copy, source, (0, len(source)))


def aligned(copy: Side, source: Side, window: tuple[int, int]) -> Alignment:
    """Return the alignment of the copy with the signs ``window`` (from, to) of the source."""
    work = _BlockAligner(copy, source)
    found = told_doubles(with_moves(work.groups(window), copy, source), copy, source)
    note = long_texts.note([group for group in found if group.why == long_texts.WHY])
    notes = tuple(filter(None, (note, work.note)))
    return Alignment(joined(found, copy, source), work.cost, window, notes, work.done)


class _BlockAligner:
    """Aligns block after block, and keeps account of cost and work."""

    def __init__(self, copy: Side, source: Side) -> None:
        self.copy = copy
        self.source = source
        self.cost = 0
        self.done = 0
        self._left = 0
        self.note = ""

    def groups(self, window: tuple[int, int]) -> list[Group]:
        """Return the groups of the copy and the part of the source, before near moves are seen."""
        whole = Block(0, len(self.copy), *window)
        if whole.longest <= EXACT:
            found = self._in_words(self._exactly(whole, MOST_WORK))
            if not _mostly_differs(found, whole):
                return found
            return self._around_moved(around_moved(self.copy, self.source, window)) or found
        parts = around_moved(self.copy, self.source, window) if whole.shortest > EXACT // 2 else []
        return self._around_moved(parts) or self._of_part(whole)

    def _around_moved(self, parts: list[Block | Stretch]) -> list[Group]:
        found: list[Group] = []
        for each in parts:
            found += self._of_part(each) if isinstance(each, Block) else [self._moved(each)]
        return found

    def _moved(self, each: Stretch) -> Group:
        one, other = span(self.copy, each.i, each.i_end), span(self.source, each.j, each.j_end)
        return Group("moved", one, other, f"{len(one)} signs stand elsewhere")

    def _of_part(self, whole: Block) -> list[Group]:
        """Return the groups of a part of both texts that goes forward in both."""
        copy, source = self.copy, self.source
        if whole.longest <= EXACT:
            return self._in_words(self._exactly(whole, MOST_WORK)) if whole.longest else []
        plan = blocks(whole, copy, source)
        if whole.longest <= SHORT and any(block.alike for block in plan):
            try:
                return self._in_words(self._exactly(whole, MOST_AT_ONCE))
            except TooMuchWorkError:
                pass
        signs = whole.signs
        share = signs / (len(copy) + len(source))
        self._left = round(MOST_AT_ONCE * share) + MOST_PER_SIGN * signs
        searched = _worth_searching(plan, self._left // 2)
        found: list[Group] = []
        for block in plan:
            if self._is_equal(block):
                found += long_texts.equal(block, copy, source)
            elif block in searched:
                found += self._of_block(block, max(self._left, 0) * SHARE // signs)
            else:
                found += self._roughly(block)
            signs -= block.signs
        return self._in_words(long_texts.as_one(found, copy, source))

    def _of_block(self, block: Block, per_sign: int) -> list[Group]:
        """Return the groups of one block, in smaller pieces if it takes too much work."""
        try:
            return self._exactly(block, min(MOST_AT_ONCE, per_sign * block.signs))
        except TooMuchWorkError:
            pass
        found: list[Group] = []
        for piece in finer(block, self.copy, self.source):
            try:
                found += self._exactly(piece, LEAST_OF_A_PIECE + per_sign * piece.signs)
            except TooMuchWorkError:
                found += self._roughly(piece)
        return found

    def _in_words(self, found: list[Group]) -> list[Group]:
        """Return small groups with Chinese order seen through, and differences as whole words."""
        found = in_japanese_order(found, self.copy, self.source)
        made = over_whole_words(found, self.copy, self.source)
        self.note = self.note or made.note
        return made.groups

    def _is_equal(self, block: Block) -> bool:
        one, other = slice(block.i, block.i_end), slice(block.j, block.j_end)
        copy, source = self.copy, self.source
        return copy.raw[one] == source.raw[other] and copy.norm[one] == source.norm[other]

    def _roughly(self, block: Block) -> list[Group]:
        found = long_texts.one_difference(block, self.copy, self.source)
        self.cost += long_texts.price(found)
        return found

    def _exactly(self, block: Block, most_work: int) -> list[Group]:
        """Return the smallest groups of one block; near differences the dictionary is asked too.

        Raises:
            TooMuchWorkError: the texts are so unlike that it would take more than ``most_work``.
        """
        one, other = self.copy.part(block.i, block.i_end), self.source.part(block.j, block.j_end)
        path = self._searched(one, other, most_work)
        if path.differs_in_wording:
            differing = [group for group in groups(path, one, other) if group.is_substantive]
            one = one.with_dictionary([(g.copy.start, g.copy.end) for g in differing])
            other = other.with_dictionary([(g.source.start, g.source.end) for g in differing])
            path = self._searched(one, other, most_work)
        self.cost += path.cost
        return list(groups(path, one, other, (block.i, block.j)))

    def _searched(self, one: Side, other: Side, most_work: int) -> AlignmentPath:
        try:
            path = cheapest(one, other, most_work=most_work)
        except TooMuchWorkError:
            self._account(most_work)
            raise
        self._account(path.work)
        return path

    def _account(self, work: int) -> None:
        self.done += work
        self._left -= work


def _mostly_differs(found: list[Group], whole: Block) -> bool:
    """Whether more than half of both texts differs in wording, as where halves are exchanged."""
    differing = sum(len(g.copy) + len(g.source) for g in found if g.is_substantive)
    return 2 * differing > whole.signs


def _worth_searching(plan: list[Block], most_work: int) -> set[Block]:
    """Return the blocks that go together, and of the others the smallest, as work allows."""
    worth = {block for block in plan if block.alike}
    work = 0
    for block in sorted(set(plan) - worth, key=lambda b: (b.longest * b.shortest, b)):
        work += PER_PAIR * block.longest * block.shortest
        if block.shortest and work <= most_work and block.longest <= EXACT:
            worth.add(block)
    return worth
