"""Differences widened to whole words, as an apparatus gives them.

The aligner finds the signs that differ: ちるらむ against ちりけむ differs in るら and りけ. Nobody
reads it so; the variant is ちるらむ ] ちりけむ. A difference is widened to near places where a word
may well end in both texts, and differences that then overlap become one. A stretch left out or put
in is first slid to where it makes words: はなのの against はなの lacks の, whichever of the two.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from inscribe.collation.align.differences.moved import with_moves
from inscribe.collation.align.differences.word_ends import WordEnds, word_ends
from inscribe.collation.align.searching import span
from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group, Span, kind_of_wording

REGION = 10  # signs around a difference in which words are looked at
MOST_GROUPS = 200  # of one such stretch, where difference follows difference
MOST_SIGNS = 200_000  # near differences, in which words are looked at; they take long to find
LARGE = 400  # signs of a difference that is left as it is
FARTHEST = 8  # signs a difference is widened by at most, on each side
# In MeCab's units, found by trial on the odd-numbered pairs of tests/benchmarks/collate.py: what
# each sign of widening counts for, against the cost of a word ending in an unlikely place. Words
# that only come or go do so by themselves, particles above all.
STEP = 4000
STEP_AT_GAPS = 11000
MOST = 20000  # the cost of a place where no word can end


class InWords(NamedTuple):
    """Groups, and how many differences of long texts were left as narrow as they were found."""

    groups: list[Group]
    narrow: int = 0

    @property
    def note(self) -> str:
        """What a reader must be told of it, nothing if there is nothing to tell."""
        if not self.narrow:
            return ""
        count = f"{self.narrow} difference{'s are' if self.narrow > 1 else ' is'}"
        return f"past {MOST_SIGNS:,} signs near differences, {count} not widened to whole words"


def over_whole_words(groups: Sequence[Group], copy: Side, source: Side) -> InWords:
    """Return ``groups`` with near moves seen and each difference in wording widened to whole words.

    Runs of equal signs must not be joined yet: a difference is only widened by whole groups. In
    long texts with very many differences the last of them stay as they are, and are counted.
    """
    result: list[Group] = []
    done = 0
    looked_at = 0
    for first, last in _regions(groups):
        looked_at += _signs(groups[first:last])
        if looked_at > MOST_SIGNS:
            narrow = sum(group.is_substantive for group in groups[done:])
            return InWords([*result, *groups[done:]], narrow)
        result += groups[done:first]
        result += _widened(with_moves(groups[first:last], copy, source, far=False), copy, source)
        done = last
    return InWords([*result, *groups[done:]])


def _signs(groups: Sequence[Group]) -> int:
    return sum(len(group.copy) + len(group.source) for group in groups)


def _regions(groups: Sequence[Group]) -> Iterator[tuple[int, int]]:
    """Yield the groups from..to around differences that are near each other."""
    start = done = -1
    for at, group in enumerate(groups):
        if group.is_substantive and len(group.copy) + len(group.source) <= LARGE:
            first, last = _far_enough(groups, at, -1), _far_enough(groups, at, 1)
            if start >= 0 and (first > done or last - start > MOST_GROUPS):
                yield start, done
                start = max(first, done)
            start, done = first if start < 0 else start, last
    if start >= 0:
        yield start, done


def _far_enough(groups: Sequence[Group], at: int, towards: int) -> int:
    """Return the end of the region around the difference at ``at``, to one side."""
    signs, place = 0, at
    while 0 <= place + towards < len(groups) and signs < REGION:
        place += towards
        if len(groups[place].copy) + len(groups[place].source) > LARGE:
            place -= towards
            break
        signs += min(len(groups[place].copy), len(groups[place].source))
    return place if towards < 0 else place + 1


def _widened(groups: Sequence[Group], copy: Side, source: Side) -> list[Group]:
    first, last = groups[0], groups[-1]
    copy_words = word_ends(copy, first.copy.start, last.copy.end)
    source_words = word_ends(source, first.source.start, last.source.end)
    groups = _slid(groups, copy, source, copy_words, source_words)
    places = [(group.copy.start, group.source.start) for group in groups]
    places.append((groups[-1].copy.end, groups[-1].source.end))
    costs = [copy_words.costs[i] + source_words.costs[j] for i, j in places]
    costs[0] = costs[-1] = 0
    result: list[Group] = []
    done = 0
    for start, end in _stretches(groups, costs):
        result += groups[done:start]
        result.append(_one_difference(groups[start:end], copy, source))
        done = end
    return [*result, *groups[done:]]


def _stretches(groups: Sequence[Group], costs: Sequence[int]) -> list[tuple[int, int]]:
    """Return the groups from..to that each widened difference takes, overlapping ones made one."""
    found: list[tuple[int, int]] = []
    for at, group in enumerate(groups):
        if not group.is_substantive or group.kind == "moved":
            continue
        step = STEP if group.kind == "replaced" else STEP_AT_GAPS
        first = _best_end(groups, costs, at, -1, step)
        last = _best_end(groups, costs, at + 1, 1, step)
        if found and first < found[-1][1]:
            first, last = found[-1][0], max(last, found[-1][1])
            found.pop()
        found.append((first, last))
    return found


def _best_end(
    groups: Sequence[Group], costs: Sequence[int], at: int, towards: int, step: int
) -> int:
    """Return the place from ``at`` on where words end best, nearer places counting for more."""
    best, least, place = at, MOST + 1, at
    for distance in range(FARTHEST + 1):
        total = min(costs[place], MOST) + distance * step
        if total < least:
            best, least = place, total
        next_group = place - 1 if towards < 0 else place
        if not 0 <= next_group < len(groups) or groups[next_group].kind == "unread":
            break
        place += towards
    return best


def _one_difference(groups: Sequence[Group], copy: Side, source: Side) -> Group:
    if len(groups) == 1:
        return groups[0]
    first, last = groups[0], groups[-1]
    one = span(copy, first.copy.start, last.copy.end)
    other = span(source, first.source.start, last.source.end)
    kind = kind_of_wording(one, other)
    inner = [group for group in groups if group.kind != "same"]
    return Group(kind, one, other, "; ".join(dict.fromkeys(map(_change, inner))))


def _change(group: Group) -> str:
    one, other = group.copy.text, group.source.text
    if group.kind == "omitted":
        return f"{other} is left out"
    if group.kind == "added":
        return f"{one} is put in"
    return f"{one} for {other}"


def _slid(
    groups: Sequence[Group],
    copy: Side,
    source: Side,
    copy_words: WordEnds,
    source_words: WordEnds,
) -> list[Group]:
    """Return ``groups`` with what is left out or put in moved to where words end best.

    The alignment is as good there: of 花は花は, the first or the second 花は may be what is left
    out.
    """
    result = list(groups)
    for at, group in enumerate(result):
        if group.kind not in ("omitted", "added"):
            continue
        left, right = _room(result, at, -1), _room(result, at, 1)
        side, words, own = (
            (source, source_words, group.source)
            if group.kind == "omitted"
            else (copy, copy_words, group.copy)
        )
        shifts = [n for n in range(-left, right + 1) if _may_slide(side, own, n)]
        best = min(
            shifts, key=lambda n: (words.costs[own.start + n] + words.costs[own.end + n], abs(n))
        )
        _slide(result, at, best, copy, source)
    return result


def _room(groups: Sequence[Group], at: int, towards: int) -> int:
    room = 0
    place = at + towards
    while 0 <= place < len(groups) and groups[place].kind == "same" and room < FARTHEST:
        room += 1
        place += towards
    return room


def _may_slide(side: Side, own: Span, by: int) -> bool:
    """Whether a stretch that was left out may be moved along the text.

    The text without it must stay the same.
    """
    if by < 0:
        return side.norm[own.start + by : own.start] == side.norm[own.end + by : own.end]
    return side.norm[own.start : own.start + by] == side.norm[own.end : own.end + by]


def _slide(groups: list[Group], at: int, by: int, copy: Side, source: Side) -> None:
    """Move the stretch at ``at`` past ``by`` equal signs (to the left if negative), in place."""
    first, last = (at, at + by) if by > 0 else (at + by, at)
    if not by:
        return
    moved = groups[at]
    i, j = groups[first].copy.start, groups[first].source.start
    order = [*groups[first + 1 : last + 1], moved] if by > 0 else [moved, *groups[first:last]]
    for place, group in enumerate(order, start=first):
        one, other = len(group.copy), len(group.source)
        groups[place] = Group(
            group.kind, span(copy, i, i + one), span(source, j, j + other), group.why
        )
        i, j = i + one, j + other
