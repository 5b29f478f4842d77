"""Stretches in which two texts have nothing in common, told without a search.

Such a stretch is one difference. Only what stands in both at its two ends is taken off first, and
a gap in one of them is set against the middle of the other.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from inscribe.collation.align.long_texts.cutting import Block
from inscribe.collation.align.searching import match, prices, span
from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group, kind_of_wording

WHY = "the two have too little in common to be held against each other sign by sign"
UNREADABLE = frozenset({"unread", "gap"})


def one_difference(block: Block, copy: Side, source: Side) -> list[Group]:
    """Return the groups of a stretch that is one difference, or omitted, added or unread."""
    i, i_end, j, j_end, _ = block
    head = tail = 0
    most = block.shortest
    while head < most and _is_same(copy, i + head, source, j + head):
        head += 1
    while tail < most - head and _is_same(copy, i_end - 1 - tail, source, j_end - 1 - tail):
        tail += 1
    middle = Block(i + head, i_end - tail, j + head, j_end - tail)
    return [
        *_same(i, j, head, copy, source),
        *_around_gap(middle, copy, source),
        *_same(i_end - tail, j_end - tail, tail, copy, source),
    ]


def equal(block: Block, copy: Side, source: Side) -> Iterator[Group]:
    """Yield the groups of a stretch that is the same on both sides, sign for sign."""
    return _same(block.i, block.j, block.longest, copy, source)


def price(found: Iterable[Group]) -> int:
    """Return what ``found`` would cost in an alignment, each difference as a whole."""
    costs = prices()
    total = 0
    for group in found:
        if group.is_substantive:
            total += costs["open"] + costs["wrong"] * max(len(group.copy), len(group.source))
        elif group.kind == "unread":
            total += costs["gap"] + costs["gap_sign"] * max(len(group.copy), len(group.source))
    return total


def as_one(found: Sequence[Group], copy: Side, source: Side) -> list[Group]:
    """Return ``found`` with differences in wording that touch each other made one."""
    result: list[Group] = []
    for group in found:
        last = result[-1] if result else None
        if last and last.is_substantive and group.is_substantive:
            one = span(copy, last.copy.start, group.copy.end)
            other = span(source, last.source.start, group.source.end)
            result[-1] = Group(kind_of_wording(one, other), one, other, last.why or group.why)
        else:
            result.append(group)
    return result


def note(coarse: Sequence[Group]) -> str:
    """Return the doubt a reader must be told of, nothing if there is none."""
    told = [group for group in coarse if len(group.copy) and len(group.source)]
    if not told:
        return ""
    signs = sum(max(len(group.copy), len(group.source)) for group in told)
    what = "a stretch" if len(told) == 1 else f"{len(told):,} stretches"
    return (
        f"Held against each other only roughly: {what} of {signs:,} signs in all, where copy and"
        " source have too little in common; each is given as one difference."
    )


def _is_same(copy: Side, i: int, source: Side, j: int) -> bool:
    found = match(copy, i, source, j)
    return found is not None and found.step == "same"


def _same(i: int, j: int, length: int, copy: Side, source: Side) -> Iterator[Group]:
    for at in range(length):
        yield Group("same", span(copy, i + at, i + at + 1), span(source, j + at, j + at + 1))


def _around_gap(block: Block, copy: Side, source: Side) -> Iterator[Group]:
    """Yield the stretch, cut in three where one side has a gap and the other is longer."""
    i, i_end, j, j_end, _ = block
    gap = next((at for at in range(i, i_end) if copy.sort[at] == "gap"), None)
    if gap is not None and j_end - j >= i_end - i:
        behind = j_end - (i_end - gap - 1)
        yield from _group(i, gap, j, j + gap - i, copy, source)
        yield from _group(gap, gap + 1, j + gap - i, behind, copy, source)
        yield from _group(gap + 1, i_end, behind, j_end, copy, source)
        return
    gap = next((at for at in range(j, j_end) if source.sort[at] == "gap"), None)
    if gap is not None and i_end - i >= j_end - j:
        behind = i_end - (j_end - gap - 1)
        yield from _group(i, i + gap - j, j, gap, copy, source)
        yield from _group(i + gap - j, behind, gap, gap + 1, copy, source)
        yield from _group(behind, i_end, gap + 1, j_end, copy, source)
        return
    yield from _group(i, i_end, j, j_end, copy, source)


def _group(i: int, i_end: int, j: int, j_end: int, copy: Side, source: Side) -> Iterator[Group]:
    one, other = span(copy, i, i_end), span(source, j, j_end)
    if not len(one) and not len(other):
        return
    worn = (
        UNREADABLE.issuperset(copy.sort[i:i_end]) and len(one),
        UNREADABLE.issuperset(source.sort[j:j_end]) and len(other),
    )
    if any(worn):
        yield Group("unread", one, other, "nothing of it can be read")
    else:
        kind = kind_of_wording(one, other)
        yield Group(kind, one, other, WHY if kind == "replaced" else "")
