"""How easily one sign is taken for another: by the table of look-alikes, by parts, by sound.

>>> likeness("冶", "治"), likeness("緑", "文")
(Likeness(share=0.9, why='looks like'), None)
>>> likeness("緑", "禄")
Likeness(share=0.82, why='shares parts with and sounds like')
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.forms.characters import readings
from inscribe.forms.components import CharacterPart, parts
from inscribe.forms.relations import look_alikes

_IN_TABLE = 0.9
_BY_PARTS = (0.6, 0.3)  # of two signs without a common part, and how much all parts add
_BY_SOUND = 0.5
_ALSO_BY_SOUND = 0.05
STROKES = frozenset("一丨丶丿乙亅亠")  # too common to make two signs alike
LEAST_COMMON = 0.4  # of the parts two signs must have in common to look alike


class Likeness(NamedTuple):
    """How alike two signs are, from 0 to 1, a judgement from practice, and in what way."""

    share: float
    why: str


@tables.cached(4096)
def likeness(sign: str, other: str) -> Likeness | None:
    """Return how alike two different signs are, or None where nothing relates them."""
    sounds = bool(set(readings(sign).on) & set(readings(other).on))
    and_sounds = " and sounds like" if sounds else ""
    if other in look_alikes(sign):
        return Likeness(_IN_TABLE + _ALSO_BY_SOUND * sounds, f"looks like{and_sounds}")
    common = _common_parts(sign, other)
    if common >= LEAST_COMMON:
        least, more = _BY_PARTS
        share = round(least + more * common + _ALSO_BY_SOUND * sounds, 2)
        return Likeness(share, f"shares parts with{and_sounds}")
    return Likeness(_BY_SOUND, "sounds like") if sounds else None


def _common_parts(sign: str, other: str) -> float:
    """Return which share of the parts of two signs they have in common (0 to 1)."""
    one, two = (Counter(_all(parts(each))) for each in (sign, other))
    if not one or not two:
        return 0.0
    if one[other] or two[sign]:  # one is a part of the other: 州 of 洲
        return 1.0
    return 2 * (one & two).total() / (one.total() + two.total())


def _all(tree: tuple[CharacterPart, ...]) -> Iterator[str]:
    for part in tree:
        if part.char not in STROKES:
            yield part.char
        yield from _all(part.parts)
