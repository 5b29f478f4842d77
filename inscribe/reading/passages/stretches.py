"""What is weighed: stretches of a text, each of a kind, with what speaks for it.

Everything is on one scale: natural logarithms of odds against a plain background, the sum over the
signs of the stretch. Offsets are those of the normalised text, ``first`` up to ``end``.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.reading.words import Kind, Role


class Stretch(NamedTuple):
    """A stretch as one kind of passage."""

    first: int
    end: int
    kind: Kind
    weight: float
    role: Role | None = None
    reasons: tuple[str, ...] = ()


class Known(NamedTuple):
    """A passage that is known beforehand: a person settled it, or its source is known."""

    first: int
    end: int
    kind: Kind
    role: Role | None = None
    why: str = "settled by a reader"
