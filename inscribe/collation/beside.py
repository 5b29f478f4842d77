"""What stands beside a copied text on the same plate: heading, writer, carver, date, patron, seal.

The inscription is divided into its passages. Those that name, head or date, and that nothing in
the source answers, were never copied from it: they are set aside before the copy is held against
its source, and are no additions to its wording.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe.collation.parts import Beside, Group, Span

if TYPE_CHECKING:
    from inscribe.reading.words import Passage
    from inscribe.record import Inscription
    from inscribe.signs import Transcription

SET_ASIDE = frozenset({"heading", "signature", "date", "dedication", "seal"})
_OTHER_TEXTS = frozenset({"chinese", "prose"})  # a motto beside a poem
ANSWERED = 0.5  # of a passage's signs have an answer in the source: then it was copied
_THE_SAME_SIGNS = frozenset({"same", "form", "kana", "moved"})
SURE = 0.8  # the chance from which on a bare text is taken to be divided so
MOST_SIGNS = 1000  # of a text that is divided; a plate holds some hundred


def standing_beside(
    copy: Transcription,
    source: Transcription,
    groups: Sequence[Group],
    inscription: Inscription | None,
) -> tuple[Beside, ...]:
    """Return the passages of a copy that were not copied from its source.

    ``groups`` are the whole copy held against the source. A text that is no inscription of a
    record is taken for divided only where that is sure and a signature stands in it.
    """
    if not _has_more_at_an_end(groups) or len(copy.signs) > MOST_SIGNS:
        return ()
    passages = _passages(copy, source, inscription)
    apart = [each for each in passages if _stands_apart(each, groups)]
    if len(apart) == len(passages):
        return ()
    if inscription is None and not _is_surely_signed(passages, apart):
        return ()
    return tuple(Beside(p.kind, p.first, p.last, p.text, p.role) for p in apart)


def copied_extent(beside: Sequence[Beside], signs: int) -> tuple[int, int]:
    """Return the first sign of the copied text and the one after its last, of ``signs`` in all."""
    start, end = 0, signs
    for each in beside:
        if each.first == start:
            start = each.last + 1
    for each in reversed(beside):
        if each.last == end - 1:
            end = each.first
    return start, end


def with_beside(
    groups: Sequence[Group],
    beside: Sequence[Beside],
    extent: tuple[int, int],
    signs: Sequence[str],
) -> tuple[tuple[Group, ...], tuple[Beside, ...]]:
    """Return the groups of the whole copy, and what stands beside its text.

    ``groups`` are those of the copied text, which is ``extent`` of the copy; ``signs`` are those of
    the copy, as its groups have them. What stands amid the
    copied text is set aside where the aligner found no answer to just its signs.
    """
    start, end = extent
    moved = [_shifted(group, start) for group in groups]
    first = moved[0].source.start if moved else 0
    last = max((group.source.end for group in moved), default=0)
    before = [_group(each, first, signs) for each in beside if each.last < start]
    after = [_group(each, last, signs) for each in beside if each.first >= end]
    amid = [each for each in beside if start <= each.first and each.last < end]
    spans = {(each.first, each.last + 1): each for each in amid}
    inside, found = [], [each for each in beside if each not in amid]
    for group in moved:
        here = spans.get((group.copy.start, group.copy.end))
        if here is not None and group.kind == "added":
            group = _group(here, group.source.start, signs)
            found.append(here)
        inside.append(group)
    return (*before, *inside, *after), tuple(sorted(found, key=lambda each: each.first))


def carved(copy: Transcription, beside: Iterable[Beside]) -> int:
    """Return how many signs were cut for what stands beside the copied text."""
    return sum(sign.is_carved for each in beside for sign in copy.signs[each.first : each.last + 1])


def _has_more_at_an_end(groups: Sequence[Group]) -> bool:
    """Whether the first or last signs of the copy do not stand in the source.

    Never where all is the same wording: that was copied whole, however it is written (有哉 for
    あるかな).
    """
    ours = [group for group in groups if len(group.copy)]
    is_whole = not any(group.is_substantive or group.kind == "unread" for group in groups)
    return not is_whole and any(
        group.kind not in _THE_SAME_SIGNS for group in (*ours[:1], *ours[-1:])
    )


def _passages(
    copy: Transcription, source: Transcription, inscription: Inscription | None
) -> tuple[Passage, ...]:
    from inscribe import reading

    words = source.text if len(source.signs) <= MOST_SIGNS else ""
    if inscription is None:
        return reading.read(copy, source=words).passages
    return reading.read(  # a register that is set is that of the copied text, not of all beside it
        copy, "auto", inscription.overrides, passages=inscription.passages, source=words
    ).passages


def _stands_apart(passage: Passage, groups: Sequence[Group]) -> bool:
    """Whether a passage was not copied from the source; a text of its own answers it nowhere.

    Words that are only read alike do not count: few kanji of a name are read like none in a poem.
    """
    answered = sum(
        max(0, min(group.copy.end, passage.last + 1) - max(group.copy.start, passage.first))
        for group in groups
        if group.kind in _THE_SAME_SIGNS
    )
    if passage.kind not in SET_ASIDE:
        return not answered and passage.kind in _OTHER_TEXTS
    return answered < ANSWERED * (passage.last + 1 - passage.first)


def _is_surely_signed(passages: Sequence[Passage], apart: Sequence[Passage]) -> bool:
    signed = any(passage.kind == "signature" for passage in apart)
    return signed and all(passage.chance >= SURE for passage in passages)


def _shifted(group: Group, by: int) -> Group:
    copy = group.copy
    return replace(group, copy=Span(copy.start + by, copy.end + by, copy.text)) if by else group


def _group(each: Beside, at: int, signs: Sequence[str]) -> Group:
    text = "".join(signs[each.first : each.last + 1])
    return Group("beside", Span(each.first, each.last + 1, text), Span(at, at, ""))
