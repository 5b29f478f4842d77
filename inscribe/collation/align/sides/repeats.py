"""What a mark that repeats several signs may stand for: 〱, 〳〵.

How far back such a mark reaches is not written down. A reader must choose one stretch; collation
need not: whatever the other text spells there, it is the same word if it is what stands before
the mark. So the mark can be read as every stretch before it, in every reading of its characters.

>>> from inscribe import notation
>>> from inscribe.collation.collating import prepared
>>> side = prepared(notation.parse("時鳥〳〵"))
>>> "ほとときす" in {reading.pattern for reading in side.readings_at(2, "")}
True
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe import forms, tables
from inscribe.collation.align.sides.readings import ByLetter, Reading, by_letter
from inscribe.reading import spelling

REACH = 8  # signs before a mark that it may repeat
LEAST = 2  # sounds
MOST = 300  # ways to say what stands before a mark; nearer stretches first
SAID = frozenset({"kun", "word", "inflected", "on", "cut", "long"})


def is_mark(raw: str) -> bool:
    """Whether a sign as carved is a mark that repeats several signs."""
    return raw in _marks()


@tables.cached()
def _marks() -> frozenset[str]:
    return frozenset(raw for raw, mark in forms.marks().items() if mark.repeats == "several")


def with_repeats(
    known: Sequence[tuple[ByLetter, ...]],
    raw: Sequence[str],
    letters: Sequence[str],
    joins: Sequence[bool],
) -> tuple[tuple[ByLetter, ...], ...]:
    """Return the readings of each sign, those of marks that repeat several signs among them."""
    found = list(known)
    for at, sign in enumerate(raw):
        if at and is_mark(sign):
            ways = _before(found, letters, joins, at)
            readings = (
                Reading(1, spelling.as_within(pattern), "repeat", pattern, "what stands before it")
                for pattern in ways
                if len(pattern) >= LEAST
            )
            found[at] = (by_letter(readings),)
    return tuple(found)


def _before(
    known: Sequence[tuple[ByLetter, ...]], letters: Sequence[str], joins: Sequence[bool], at: int
) -> dict[str, None]:
    """Return the sounds of every stretch that ends before sign ``at``, the nearest first."""
    ways: dict[int, dict[str, None]] = {at: {"": None}}
    found: dict[str, None] = {}
    for start in range(at - 1, max(-1, at - 1 - REACH), -1):
        here: dict[str, None] = {}
        heads = [(1, letters[start])] if letters[start] else []
        heads += [
            (reading.length, reading.pattern)
            for part in known[start]
            for reading in part[""]
            if reading.step in SAID
        ]
        for length, pattern in heads:
            for rest in ways.get(start + length, ()):
                here[pattern + rest] = None
                if rest and joins[start + length]:
                    here[f"{pattern}の{rest}"] = None
        if not here:  # a sign that has no sound
            break
        ways[start] = here
        found |= here
        if len(found) > MOST:
            break
    return dict.fromkeys(list(found)[:MOST])
