"""Differences widened to whole words, as an apparatus gives them.

The aligner finds the signs that differ: ちるらむ against ちりけむ differs in るら and りけ. Nobody
reads it so; the variant is ちるらむ ] ちりけむ. A difference is widened to the nearest places that
begin a word in both texts, and differences that then touch become one.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.collate.groups import span
from inscribe.collate.model import Group, GroupKind, Span
from inscribe.collate.sides import Side
from inscribe.collate.word_ends import WordEnds

# Cost up to which a word may well end in both texts, in MeCab's units; particles and auxiliaries
# come and go by themselves, so the places around them need be less likely.
LIKELY = 5000
LIKELY_AT_FUNCTION_WORDS = 10000
FARTHEST = 8  # signs a difference is widened by at most, on each side


def widened(
    groups: Sequence[Group],
    copy: Side,
    source: Side,
    copy_words: WordEnds,
    source_words: WordEnds,
) -> list[Group]:
    """Return ``groups`` with each difference in wording widened to whole words.

    Runs of equal signs
    must not be joined yet: a difference is only widened by whole groups.
    """
    if not groups:
        return []
    places = [(group.copy.start, group.source.start) for group in groups]
    places.append((groups[-1].copy.end, groups[-1].source.end))
    costs = [copy_words.costs[i] + source_words.costs[j] for i, j in places]
    costs[0] = costs[-1] = 0
    result: list[Group] = []
    done = 0
    for first, last in _stretches(groups, costs, copy_words, source_words):
        result += groups[done:first]
        result.append(_one_difference(groups[first:last], copy, source))
        done = last
    return [*result, *groups[done:]]


def _stretches(
    groups: Sequence[Group], costs: Sequence[int], copy_words: WordEnds, source_words: WordEnds
) -> list[tuple[int, int]]:
    """Return the groups from..to that each widened difference takes, touching ones made one."""
    found: list[tuple[int, int]] = []
    for at, group in enumerate(groups):
        if not group.is_substantive:
            continue
        limit = LIKELY
        if _is_function_word(group.copy, copy_words) and _is_function_word(
            group.source, source_words
        ):
            limit = LIKELY_AT_FUNCTION_WORDS
        first = _nearest(groups, costs, at, -1, limit)
        last = _nearest(groups, costs, at + 1, 1, limit)
        if found and first <= found[-1][1]:
            first, last = found[-1][0], max(last, found[-1][1])
            found.pop()
        found.append((first, last))
    return found


def _is_function_word(span: Span, words: WordEnds) -> bool:
    return not len(span) or (span.start, span.end) in words.function_words


def _nearest(
    groups: Sequence[Group], costs: Sequence[int], at: int, step: int, limit: int
) -> int:
    """Return the nearest place from ``at`` on where words may end, or ``at`` where none is near."""
    place = at
    for _ in range(FARTHEST + 1):
        if costs[place] <= limit:
            return place
        passed = groups[place - 1 if step < 0 else place]
        if passed.kind == "unread":
            return place
        place += step
    return at


def _one_difference(groups: Sequence[Group], copy: Side, source: Side) -> Group:
    if len(groups) == 1:
        return groups[0]
    first, last = groups[0], groups[-1]
    one = span(copy, first.copy.start, last.copy.end)
    other = span(source, first.source.start, last.source.end)
    kind: GroupKind = "replaced" if len(one) and len(other) else "added" if len(one) else "omitted"
    inner = [group for group in groups if group.kind != "same"]
    return Group(kind, one, other, "; ".join(dict.fromkeys(map(_change, inner))))


def _change(group: Group) -> str:
    one, other = group.copy.text, group.source.text
    if group.kind == "omitted":
        return f"{other} is left out"
    if group.kind == "added":
        return f"{one} is put in"
    return f"{one} for {other}"
