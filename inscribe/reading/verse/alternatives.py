"""What else a poem's words may be read, and how much would speak against it.

Each word of the best reading is held against every other reading MeCab's dictionary has for the
same signs, its neighbours staying as they are: the cost of the change is the difference of word
and connection costs and what it does to the metre.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise
from typing import NamedTuple

from inscribe.reading.verse import tagger
from inscribe.reading.verse.archaic import COST, as_of_old
from inscribe.reading.verse.lattice import spans_of
from inscribe.reading.verse.metre import phrase_cost
from inscribe.reading.verse.readings import VerseReading
from inscribe.reading.verse.second_parts import (
    VOICED_SECOND,
    clear_first,
    otherwise_as_second_part,
)
from inscribe.reading.words import OKURIGANA_LEFT_OUT, ReadWord

FARTHEST = 4500  # a reading that costs this much more is no alternative


class Swap(NamedTuple):
    """Another reading of the word of this index, and what it costs more than the best."""

    word: int
    piece: ReadWord
    cost: int


def swaps(reading: VerseReading) -> list[Swap]:
    """Return the other readings of single words, the likeliest first, one a word and sound."""
    tried = _tried(reading)
    side, cells = tagger.verse_connections()
    words = reading.words
    found: dict[tuple[int, str], Swap] = {}
    for index, word in enumerate(words):
        before = words[index - 1].right_connection if index else 0
        after = words[index + 1].connection if index + 1 < len(words) else 0
        own = _local_cost(word, before, after, side, cells)
        if not word.connection:  # one of a group read as a whole
            continue
        if index and (other := otherwise_as_second_part(words[index - 1], word)):
            found[index, other.romaji] = Swap(index, other, VOICED_SECOND)
        sounds = {piece.kana for piece in tried[index]}
        for piece in tried[index]:
            if piece.romaji.lower() == word.romaji.lower():
                continue
            if piece.note == OKURIGANA_LEFT_OUT and word.note != OKURIGANA_LEFT_OUT:
                continue  # 紅葉 is no momizu without its okurigana where it makes sense as it is
            if clear_first(piece.kana) in sounds - {piece.kana}:
                continue  # 人 bito: no word by itself begins as the second part of a compound does
            if clear_first(word.kana) == piece.kana != word.kana:
                continue  # told above
            cost = _local_cost(piece, before, after, side, cells) - own
            cost += _metre_change(reading, index, piece.morae - word.morae)
            key = (index, piece.romaji)
            if cost <= FARTHEST and (key not in found or cost < found[key].cost):
                found[key] = Swap(index, piece, cost)
    for index, word in enumerate(words):
        if old := as_of_old(word):
            there = found.get((index, old.romaji))
            cost = min(COST, there.cost) if there else COST
            found[index, old.romaji] = Swap(index, old, cost)
    return sorted(found.values(), key=lambda swap: swap.cost)


def _tried(reading: VerseReading) -> list[Sequence[ReadWord]]:
    """Return the words that may stand in the place of each word."""
    if not reading.lattice:
        return [_written_like(word, reading.voiced) for word in reading.words]
    at = {(span.start, span.end): span.words.every for span in spans_of(reading.lattice)}
    ends = list(accumulate([word.length for word in reading.words], initial=0))
    return [at.get(span, ()) for span in pairwise(ends)]


def _written_like(word: ReadWord, voiced: bool) -> Sequence[ReadWord]:
    return tagger.homographs_of(word.written, voiced=voiced).every if word.known else ()


def _local_cost(piece: ReadWord, before: int, after: int, side: int, cells: memoryview) -> int:
    to_here: int = cells[before + side * piece.connection]
    from_here: int = cells[piece.right_connection + side * after]
    return piece.cost + to_here + from_here


def _metre_change(reading: VerseReading, index: int, more: int) -> int:
    """Return what ``more`` morae in the word ``index`` do to the metre's cost."""
    if not more or reading.metre is None or not reading.phrases:
        return 0
    phrase = max(n for n, (_, first) in enumerate(reading.phrases) if first <= index)
    count, target = reading.phrases[phrase][0], reading.metre.phrases[phrase]
    old = phrase_cost(count, target, vowel=False) or 0
    new = phrase_cost(count + more, target, vowel=False)
    return FARTHEST + 1 if new is None else new - old
