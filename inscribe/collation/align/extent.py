"""How much of the source a copy answers to: all of it, or a part where it is an excerpt.

Carvers copy two lines out of a long poem; then what stands before and behind is not left out, it
was never meant. A copy is taken for an excerpt where it is at most half as long as the source,
heard as sounds, and most of it answers to one part. A poem that lacks its last lines is longer,
and stays a poem with an omission. So does a copy that begins and ends as its source does: the
copyist had all of it before him, and his eye skipped what lies between.
"""

from __future__ import annotations

from typing import Literal

from inscribe.collation.align.aligning import EXACT, SHORT, Alignment, align, aligned
from inscribe.collation.align.long_texts import begin_and_end_alike, loudness, whereabouts
from inscribe.collation.align.searching import TooMuchWorkError, cheapest
from inscribe.collation.align.sides import Side

Extent = Literal["auto", "whole", "excerpt"]
MOST_WORK = 12_000
ROOM = 20  # signs around the likeliest part in which the best is looked for
LEAST = 6  # sounds an excerpt has at least
PART = 0.5  # of the source's sounds, at most
BEYOND = 12  # sounds of the source at least that it leaves
SHARED = 3  # sounds at least with which both begin, and end, where all of the source was copied
MORE_SHARED = 9  # where the part that answers is its beginning: many lines end in けり or かな
ANSWERED = 0.75  # of the excerpt's signs, at least, have an answer


SKIPPED = (
    "Taken for a copy of all of the source, as it begins and ends like it (--excerpt holds it"
    " against the part that it answers best)."
)


def align_extent(copy: Side, source: Side, extent: Extent = "auto") -> Alignment:
    """Return the alignment of a copy with all of the source, or with the part it is from."""
    if extent == "excerpt":
        return _as_excerpt(copy, source)
    if extent == "auto" and _may_be_excerpt(copy, source):
        found = _as_excerpt(copy, source)
        if _answered(found, len(copy)) >= ANSWERED:
            sounds = SHARED if found.window[0] else MORE_SHARED
            if not begin_and_end_alike(copy, source, sounds):
                return found._replace(notes=(*found.notes, _said(found.window, len(source))))
            whole = align(copy, source)
            return whole._replace(notes=(*whole.notes, SKIPPED))
    return align(copy, source)


def _may_be_excerpt(copy: Side, source: Side) -> bool:
    sounds, of_source = loudness(copy), loudness(source)
    return sounds >= LEAST and sounds <= of_source * PART and of_source - sounds >= BEYOND


def _answered(found: Alignment, signs: int) -> float:
    answered = sum(
        len(group.copy)
        for group in found.groups
        if not group.is_substantive and group.kind != "unread"
    )
    return answered / signs


def _said(window: tuple[int, int], signs: int) -> str:
    first, last = window
    return (
        f"Taken for an excerpt: held against signs {first + 1:,} to {last:,} of the {signs:,} of"
        " the source (--whole holds it against all of it)."
    )


def _as_excerpt(copy: Side, source: Side) -> Alignment:
    """Return the alignment with the part of the source that the copy answers to best."""
    first, last = 0, len(source)
    if len(source) > EXACT and len(copy) <= SHORT:
        start, end = whereabouts(copy, source)
        first, last = max(first, start - ROOM), min(last, end + ROOM)
    if max(len(copy), last - first) <= SHORT:
        try:
            path = cheapest(copy, source.part(first, last), excerpt=True, most_work=MOST_WORK)
        except TooMuchWorkError:
            pass
        else:
            end = path.steps[-1].state.j if path.steps else path.start.j
            return aligned(copy, source, (first + path.start.j, first + end))
    return _trimmed(aligned(copy, source, (first, last)))


def _trimmed(found: Alignment) -> Alignment:
    """Return ``found`` without what the copy lacks at both ends."""
    groups = list(found.groups)
    first, last = found.window
    while groups and groups[0].kind == "omitted":
        first = groups.pop(0).source.end
    while groups and groups[-1].kind == "omitted":
        last = groups.pop().source.start
    return found._replace(groups=tuple(groups), window=(first, last))
