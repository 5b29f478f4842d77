"""Long texts cut into blocks at stretches they share, so that each block can be aligned exactly.

The exact search visits up to every pair of places, which is too much for texts of thousands of
signs. A quick alignment sign by sign (rapidfuzz) finds runs that both texts share; a cut in the
middle of a long run is a cut the exact alignment would pass through too, save in rare cases.
Texts up to ``EXACT`` signs are never cut.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.collate.sides import Side

EXACT = 300  # signs up to which a text is aligned in one piece
SMALL = 100  # signs up to which a block of a longer text is
BLOCK = 16  # signs a block has at least, where the shared runs allow it
RUNS = (6, 4, 3, 2, 1)  # signs a shared run must have to be cut, tried in this order


class Block(NamedTuple):
    """Signs ``i`` to ``i_end`` of the copy, to be aligned with ``j`` to ``j_end`` of the source."""

    i: int
    i_end: int
    j: int
    j_end: int

    @property
    def longest(self) -> int:
        """The signs of its longer side."""
        return max(self.i_end - self.i, self.j_end - self.j)


def blocks(copy: Side, source: Side) -> list[Block]:
    """Return blocks that tile both texts, each small enough to be aligned exactly."""
    whole = Block(0, len(copy), 0, len(source))
    if whole.longest <= EXACT:
        return [whole]
    keys = _Keys()
    return _cut(whole, keys.of(copy), keys.of(source), RUNS)


def excerpt_window(copy: Side, source: Side) -> tuple[int, int]:
    """Return the part of a long source in which the copy is to be looked for."""
    if len(source) <= max(EXACT, 2 * len(copy)):
        return 0, len(source)
    from rapidfuzz import fuzz

    keys = _Keys()
    found = fuzz.partial_ratio_alignment(keys.of(copy), keys.of(source))
    if found is None:
        return 0, len(source)
    room = len(copy) + 20
    return max(0, found.dest_start - room), min(len(source), found.dest_end + room)


class _Keys:
    """Gives equal signs of two texts the same character: kana by sound, others by current form."""

    def __init__(self) -> None:
        self._known: dict[str, str] = {}

    def of(self, side: Side) -> str:
        keys = (letters or norm for letters, norm in zip(side.letters, side.norm, strict=True))
        return "".join(self._known.setdefault(key, chr(0xF0000 + len(self._known))) for key in keys)


def _cut(block: Block, copy: str, source: str, runs: tuple[int, ...]) -> list[Block]:
    if block.longest <= SMALL:
        return [block]
    if not runs:
        return _cut_evenly(block)
    from rapidfuzz.distance import Levenshtein

    found: list[Block] = []
    i, j = block.i, block.j
    steps = Levenshtein.opcodes(copy[block.i : block.i_end], source[block.j : block.j_end])
    for step in steps:
        if step.tag == "equal" and step.src_end - step.src_start >= runs[0]:
            middle = (step.src_end - step.src_start) // 2
            at_i = block.i + step.src_start + middle
            at_j = block.j + step.dest_start + middle
            if max(at_i - i, at_j - j) >= BLOCK:
                found.append(Block(i, at_i, j, at_j))
                i, j = at_i, at_j
    found.append(Block(i, block.i_end, j, block.j_end))
    return [part for b in found for part in _cut(b, copy, source, runs[1:])]


def _cut_evenly(block: Block) -> list[Block]:
    """Return blocks of equal share where nothing is shared at all."""
    parts = -(-block.longest // BLOCK)
    i = [block.i + (block.i_end - block.i) * n // parts for n in range(parts + 1)]
    j = [block.j + (block.j_end - block.j) * n // parts for n in range(parts + 1)]
    return [Block(i[n], i[n + 1], j[n], j[n + 1]) for n in range(parts)]
