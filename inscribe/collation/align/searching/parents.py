"""Words written in characters for their kana alone: 止里 held against 鳥.

Each kana may be written as the character it came from, as running text of older hands is. Against
kana such a character has one reading more; against another character the whole word is asked for,
so that no chance likeness of two characters passes for one word.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.collation.align.searching.costs import prices
from inscribe.collation.align.searching.states import AlignmentMove, State
from inscribe.collation.align.sides import Side, kana_written_so
from inscribe.reading import spelling

LEAST = 2  # signs: one alone that sounds like another is another word (日, 火)


def parent_moves(copy: Side, source: Side, i: int, j: int) -> Iterator[AlignmentMove]:
    """Yield the moves over a word that one side writes in characters for kana."""
    for signs, price, why in _words(copy, i, source, j):
        yield AlignmentMove(State(i + signs[0], j + signs[1]), price, "parent", why)
    for signs, price, why in _words(source, j, copy, i):
        yield AlignmentMove(State(i + signs[1], j + signs[0]), price, "parent", why)


def _words(
    one: Side, at: int, other: Side, place: int
) -> Iterator[tuple[tuple[int, int], int, str]]:
    """Yield signs of ``one`` and of ``other``, the price, and the reason, of words that agree."""
    if at + 1 >= len(one) or not kana_written_so().get(one.norm[at]):
        return
    costs = prices()
    for reading in other.readings_at(place, ""):
        end = _spelled(one, at, reading.pattern) if reading.step != "parent" else 0
        if end - at >= LEAST:
            written = "".join(one.norm[at:end])
            read = "".join(other.norm[place : place + reading.length])
            price = costs[reading.step] + costs["parent"] * (end - at)
            why = f"{written} is {reading.spoken} written in characters for kana, as {read} is read"
            yield (end - at, reading.length), price, why


def _spelled(side: Side, at: int, pattern: str) -> int:
    """Return where characters written for kana, or kana, that spell ``pattern`` end, else 0."""
    if not pattern:
        return at
    if at == len(side):
        return 0
    letters = [side.letters[at]] if side.letters[at] else _letters(side.norm[at])
    for known in letters:
        is_next = len(known) <= len(pattern) and spelling.starts_alike(known, pattern)
        if is_next and (end := _spelled(side, at + 1, pattern[len(known) :])):
            return end
    return 0


def _letters(char: str) -> list[str]:
    return [spelling.fold(kana) for kana in kana_written_so().get(char, ())]
