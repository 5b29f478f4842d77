"""What is weighed: stretches of a text, each of a kind, with what speaks for it.

Everything is on one scale: natural logarithms of odds against a plain background, the sum over the
signs of the stretch. Offsets are those of the normalised text, ``first`` up to ``end``.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.forms import NormalText
from inscribe.reading.words import InscribedText, Kind, Role

HOPELESS = -6.0  # what a stretch weighs that is not thought of as that kind of passage


class PassageStretch(NamedTuple):
    """A stretch as one kind of passage."""

    first: int
    end: int
    kind: Kind
    weight: float
    role: Role | None = None
    reasons: tuple[str, ...] = ()


class KnownPassage(NamedTuple):
    """A passage that is known beforehand: a person settled it, or its source is known."""

    first: int
    end: int
    kind: Kind
    role: Role | None = None
    why: str = "settled by a reader"


class CopiedStretch(NamedTuple):
    """The stretch of a text that copies a known source, and whether the source is a poem."""

    first: int
    end: int
    verse: bool

    def shared(self, first: int, end: int) -> float:
        """Return how much of this stretch and another is in both, from 0 to 1."""
        both = min(end, self.end) - max(first, self.first)
        return max(0, both) / (max(end, self.end) - min(first, self.first))


def part_of(text: InscribedText, first: int, end: int) -> InscribedText:
    """Return a stretch of a text; its signs keep the numbers they have in the whole."""
    normal = text.normal
    signs = normal.origin[first:end]
    changes = tuple(change for change in normal.changes if signs[0] <= change.sign <= signs[-1])
    stretch = NormalText(normal.text[first:end], signs, changes)
    within = (
        frozenset(at - first for at in offsets if first < at < end)
        for offsets in (text.breaks, text.cuts, text.faces)
    )
    breaks, cuts, faces = within
    return InscribedText(stretch, text.carved, breaks, text.in_order, cuts, faces)
