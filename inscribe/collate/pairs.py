"""Two signs held against each other: the same, another form, another spelling, or neither."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from inscribe.collate import readings, sounds
from inscribe.collate.sides import REPEAT_MARKS, Side

MA_ROW = "まみむめも"


class Match(NamedTuple):
    """How one sign answers one other: the row of the cost table, and the reason in words."""

    step: str
    why: str = ""


SAME = Match("same")


def match(copy: Side, i: int, source: Side, j: int) -> Match | None:
    """Return how sign ``i`` of the copy answers sign ``j`` of the source, or None if it does not."""
    one, other = copy.norm[i], source.norm[j]
    if one == other:
        return _written_otherwise(copy.raw[i], source.raw[j], one) if one else None
    if copy.sort[i] == source.sort[j] == "kana" and len(one) == len(other) == 1:
        return _kana(copy, i, source, j)
    if copy.sort[i] == source.sort[j] == "kanji":
        return _related(one, other)
    return None


def _written_otherwise(one: str, other: str, norm: str) -> Match:
    if one == other:
        return SAME
    marks = [char for char in (one, other) if char in REPEAT_MARKS]
    if marks:
        return Match("repeat", f"the repeat mark {marks[0]} stands for {norm}")
    return Match("form", f"{one} and {other} are forms of {norm}")


def _related(one: str, other: str) -> Match | None:
    from inscribe import forms

    relation = forms.relation(one, other)
    if not relation.is_same_character:
        return None
    return Match("form", f"{one} and {other}: {relation.kind}")


def _kana(copy: Side, i: int, source: Side, j: int) -> Match | None:
    one, other = copy.norm[i], source.norm[j]
    if sounds.voiceless(one) == sounds.voiceless(other):
        if sounds.hiragana(one) == sounds.hiragana(other):
            return Match("small", f"{one} is {other} in the other kana")
        return Match("voicing", f"{one} and {other} differ in the voicing mark")
    a, b = copy.letters[i], source.letters[j]
    if sounds.voiceless(one).translate(sounds.SMALL) == sounds.voiceless(other).translate(sounds.SMALL):
        return Match("small", f"{one} is {other} in another size")
    if sounds.exchanged(a, b):
        return Match("spelling_pair", f"{one} and {other} are spellings of one sound")
    if a + b in ("うむ", "むう") and _next(copy, i) in MA_ROW and _next(source, j) in MA_ROW:
        return Match("initial_mu", f"{one} and {other} sound alike before {source.norm[j + 1]}")
    return None


def _next(side: Side, at: int) -> str:
    return (side.letters[at + 1] if at + 1 < len(side) else "") or "-"


@lru_cache(maxsize=4096)
def tails(char: str) -> tuple[str, ...]:
    """Return what one writing of ``char`` may spell out that another leaves unwritten: 思 -> ふ, ひ."""
    ways = [way.pattern for way in readings.ways(char) if way.plausibility in ("kun", "inflected")]
    longer = {p[len(q) :] for p in ways for q in ways if len(p) > len(q) and p.startswith(q)}
    return tuple(sorted(longer))
