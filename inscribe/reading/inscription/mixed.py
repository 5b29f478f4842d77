"""A poem with something else on the plate: a heading before it, a signature or a date after it.

Carvers begin a new column for what is not the poem. So each way of leaving out columns at
either end is tried where the whole has no metre; what is left out must be short and in kanji,
as signatures, names and headings are.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from inscribe.forms import NormalText
from inscribe.reading.inscription.register import is_heading, looks_like_verse
from inscribe.reading.spelling import kana_share
from inscribe.reading.verse import PARTS, VerseReading, read_verse
from inscribe.reading.words import Interpretation, Override, Proposal, Text

_MOST_BESIDE = 18  # signs that may stand before or after a poem
_MOST_KANA = 0.4
_MOST_COLUMNS = 2  # columns that may be left out at either end


class Division(NamedTuple):
    """Where the poem stands in the normalised text, and its reading."""

    first: int
    end: int
    reading: VerseReading


def division_of(text: Text, overrides: Sequence[Override] = ()) -> Division | None:
    """Return where a poem stands among other things, or None where no column boundary tells."""
    plain = text.normal.text
    for first, end in _stretches(text):
        if not all(map(_may_stand_beside, (plain[:first], plain[end:]))):
            continue
        if not looks_like_verse(plain[first:end]):
            continue
        breaks = frozenset(at - first for at in text.breaks if first < at < end)
        origin = text.normal.origin[first:end]
        inside = [o for o in overrides if origin[0] <= o.first and o.last <= origin[-1]]
        reading = read_verse(plain[first:end], breaks, inside, origin)
        if reading.metre is not None and reading.metre not in PARTS:
            return Division(first, end, reading)
    return None


def _stretches(text: Text) -> Iterator[tuple[int, int]]:
    """Yield the stretches between columns' ends, the longest first."""
    length = len(text.normal.text)
    cuts = sorted(text.breaks)
    firsts = [0, *cuts[:_MOST_COLUMNS]]
    ends = [length, *cuts[::-1][:_MOST_COLUMNS]]
    found = {(first, end) for first in firsts for end in ends if first < end}
    found.discard((0, length))
    yield from sorted(found, key=lambda each: (each[0] - each[1], each))


def _may_stand_beside(text: str) -> bool:
    return len(text) <= _MOST_BESIDE and (kana_share(text) <= _MOST_KANA or is_heading(text))


def part_of(text: Text, first: int, end: int) -> Text:
    """Return a stretch of a text; its signs keep the numbers they have in the whole."""
    normal = text.normal
    stretch = NormalText(normal.text[first:end], normal.origin[first:end])
    breaks = frozenset(at - first for at in text.breaks if first < at < end)
    return Text(stretch, text.carved, breaks, text.in_order)


def joined(
    text: str, before: Interpretation | None, poem: Interpretation, after: Interpretation | None
) -> Interpretation:
    """Return one interpretation of what stands before the poem, the poem, and what follows."""
    parts = [part for part in (before, poem, after) if part is not None]
    best = [part.proposals[0] for part in parts]
    shift = len(before.proposals[0].tokens) if before else 0
    main = poem.proposals[0]
    whole = Proposal(
        tuple(token for proposal in best for token in proposal.tokens),
        " ".join(proposal.romaji.strip() for proposal in best),
        main.score,
        (*main.reasons, *_beside(before, after)),
        tuple((count, first + shift) for count, first in main.phrases),
    )
    signature = (after and after.signature) or (before and before.signature) or None
    return Interpretation(
        text,
        "".join(part.normalised for part in parts),
        "".join(part.modern for part in parts),
        "verse",
        (whole,),
        signature,
        (),
        (),
        tuple(doubt for part in parts for doubt in part.doubts),
    )


def _beside(before: Interpretation | None, after: Interpretation | None) -> Iterator[str]:
    if before is not None:
        yield f"{before.normalised} stands before the poem"
    if after is not None:
        yield f"{after.normalised} stands after the poem"
