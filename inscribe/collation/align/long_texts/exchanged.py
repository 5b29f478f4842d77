"""Long stretches that stand elsewhere: halves of a text exchanged, a page put before another.

An alignment goes forward in both texts, so it can follow only one of two exchanged halves, and
where both are long it finds no way through at all. So first the stretches are looked for that
sound alike wherever they stand. The heaviest chain of them that goes forward in both texts is left
to the aligner; what stands apart from it has moved.

>>> from inscribe import notation
>>> from inscribe.collation.collating import prepared
>>> one, other = "はるすぎてなつきにけらししろたへの", "おくやまにもみぢふみわけなくしか"
>>> copy, source = prepared(notation.parse(other + one)), prepared(notation.parse(one + other))
>>> [tuple(each) for each in around_moved(copy, source, (0, len(source))) if len(each) == 4]
[(0, 16, 17, 33)]
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe.collation.align.long_texts.cutting import Block
from inscribe.collation.align.sides import Side, Sounds

GRAM = 6  # sounds by which alike stretches are found
PLACES = 4  # of one such gram that are looked at; refrains stand more often
LEAST = 12  # sounds of a stretch that has moved, and
SHARE = 50  # the part of the shorter text that it is at least; the pieces of a cento do not move
APART = 12  # sounds between two stretches that are still one
SKEWED = 4  # sounds by which one side of that gap may be longer
_MOST_LOOKED_BACK = 60  # stretches before one that may go before it in the chain


class Stretch(NamedTuple):
    """Signs ``i`` to ``i_end`` of the copy that say what ``j`` to ``j_end`` of the source do."""

    i: int
    i_end: int
    j: int
    j_end: int


def around_moved(copy: Side, source: Side, window: tuple[int, int]) -> list[Block | Stretch]:
    """Return what has moved, in the order of the copy, and the blocks around it; both are tiled.

    Where a stretch was taken out of one side the other is cut, too: behind what answers the signs
    before it. Nothing is returned where nothing has moved.
    """
    chain, moved = _chain_and_moved(copy, source, window)
    if not moved:
        return []
    cuts: list[tuple[int, int, int, int, Stretch | None]]
    cuts = [(each.i, each.i_end, *_source_behind(chain, each.i, window[0]), each) for each in moved]
    cuts += [(*_copy_behind(chain, each.j), each.j, each.j_end, None) for each in moved]
    found: list[Block | Stretch] = []
    i, j = 0, window[0]
    for at, i_end, to, j_end, each in sorted(cuts, key=lambda cut: (cut[0], cut[2])):
        at, to = max(i, at), max(j, to)
        found.append(Block(i, at, j, to))
        if each is not None:
            found.append(each)
        i, j = max(i_end, at), max(j_end, to)
    return [*found, Block(i, len(copy), j, window[1])]


def _source_behind(chain: Sequence[Stretch], i: int, first: int) -> tuple[int, int]:
    at = max((each.j_end for each in chain if each.i_end <= i), default=first)
    return at, at


def _copy_behind(chain: Sequence[Stretch], j: int) -> tuple[int, int]:
    at = max((each.i_end for each in chain if each.j_end <= j), default=0)
    return at, at


def _chain_and_moved(
    copy: Side, source: Side, window: tuple[int, int]
) -> tuple[list[Stretch], list[Stretch]]:
    one, other = copy.sounds, source.part(*window).sounds
    least = max(LEAST, min(len(one.letters), len(other.letters)) // SHARE)
    found = _merged(_alike(one.letters, other.letters), least)
    if all(a.j_end <= b.j for a, b in pairwise(found)):
        return [], []
    heaviest = _chain(found)
    in_signs = {each: _in_signs(each, one, other, window[0]) for each in found}
    chain = [signs for each, signs in in_signs.items() if signs and each in heaviest]
    moved: list[Stretch] = []
    for each, signs in in_signs.items():
        if signs and each not in heaviest and not _overlaps(signs, (*chain, *moved)):
            moved.append(signs)
    return chain, moved


def _overlaps(one: Stretch, others: Sequence[Stretch]) -> bool:
    """Whether the source has ``one`` only once: a passage written twice has not moved."""
    return any(one.j < other.j_end and other.j < one.j_end for other in others)


def _alike(one: str, other: str) -> Iterator[Stretch]:
    """Yield stretches of sounds that are the same in both, in the order of the copy."""
    places: dict[str, list[int]] = {}
    for j in range(len(other) - GRAM + 1):
        places.setdefault(other[j : j + GRAM], []).append(j)
    i = 0
    while i <= len(one) - GRAM:
        best = 0, 0
        for j in places.get(one[i : i + GRAM], ())[:PLACES]:
            length = GRAM
            while one[i + length : i + length + 1] == other[j + length : j + length + 1] != "":
                length += 1
            best = max(best, (length, j))
        length, j = best
        if length:
            yield Stretch(i, i + length, j, j + length)
        i += length or 1


def _merged(found: Iterator[Stretch], least: int) -> list[Stretch]:
    """Return stretches that follow each other closely on both sides as one, short ones left out."""
    merged: list[Stretch] = []
    for each in found:
        last = merged[-1] if merged else None
        gap, other_gap = (each.i - last.i_end, each.j - last.j_end) if last else (0, 0)
        if (
            last
            and 0 <= gap <= APART
            and 0 <= other_gap <= APART
            and abs(gap - other_gap) <= SKEWED
        ):
            merged[-1] = Stretch(last.i, each.i_end, last.j, each.j_end)
        else:
            merged.append(each)
    return [each for each in merged if each.i_end - each.i >= least]


def _chain(found: Sequence[Stretch]) -> set[Stretch]:
    """Return the heaviest of the chains that go forward in both texts."""
    weights: list[int] = []
    before: list[int] = []
    for at, each in enumerate(found):
        first = max(0, at - _MOST_LOOKED_BACK)
        ahead = [n for n in range(first, at) if found[n].j_end <= each.j]
        best = max(ahead, key=weights.__getitem__, default=-1)
        weights.append(each.i_end - each.i + (weights[best] if best >= 0 else 0))
        before.append(best)
    at = max(range(len(found)), key=weights.__getitem__)
    chain = set()
    while at >= 0:
        chain.add(found[at])
        at = before[at]
    return chain


def _in_signs(each: Stretch, one: Sounds, other: Sounds, first: int) -> Stretch | None:
    """Return a stretch of sounds in signs, cut to where signs begin on both sides."""
    length = each.i_end - each.i
    heads = (n for n in range(length) if _are_ends(one, other, each.i + n, each.j + n))
    tails = (n for n in range(length) if _are_ends(one, other, each.i_end - n, each.j_end - n))
    head, tail = next(heads, length), next(tails, length)
    if head + tail >= length:
        return None
    return Stretch(
        one.sign_at[each.i + head],
        one.sign_at[each.i_end - tail],
        other.sign_at[each.j + head] + first,
        other.sign_at[each.j_end - tail] + first,
    )


def _are_ends(one: Sounds, other: Sounds, i: int, j: int) -> bool:
    return i in one.sign_at and j in other.sign_at
