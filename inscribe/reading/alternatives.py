"""What else a poem's words may be read, and how much would speak against it.

Each word of the best reading is held against every other reading MeCab's dictionary has for the
same signs, its neighbours staying as they are: the cost of the change is the difference of word
and connection costs and what it does to the metre.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe.reading import mecab
from inscribe.reading.lattice import Node
from inscribe.reading.metre import phrase_cost
from inscribe.reading.pieces import Piece
from inscribe.reading.verse import VerseReading

FARTHEST = 6000  # a reading that costs this much more is no alternative
DOUBTFUL = 1500  # one that costs no more than this makes the word doubtful


class Swap(NamedTuple):
    """Another reading of the word of this index, and what it costs more than the best."""

    word: int
    piece: Piece
    cost: int


def swaps(text: str, reading: VerseReading, nodes: Sequence[Node]) -> list[Swap]:
    """Return the other readings of single words, the likeliest first, one a word and sound."""
    by_span: dict[tuple[int, int], list[Piece]] = {}
    for node in nodes:
        by_span.setdefault((node.start, node.end), []).append(node.piece)
    side, cells = mecab.verse_connections()
    words = reading.words
    found: dict[tuple[int, str], Swap] = {}
    position = 0
    for index, word in enumerate(words):
        before = words[index - 1].right_connection if index else 0
        after = words[index + 1].connection if index + 1 < len(words) else 0
        own = _local_cost(word, before, after, side, cells)
        for piece in by_span.get((position, position + word.length), ()):
            if piece.romaji.lower() == word.romaji.lower():
                continue
            cost = _local_cost(piece, before, after, side, cells) - own
            cost += _metre_change(reading, index, piece.morae - word.morae)
            key = (index, piece.romaji)
            if cost <= FARTHEST and (key not in found or cost < found[key].cost):
                found[key] = Swap(index, piece, cost)
        position += word.length
    return sorted(found.values(), key=lambda swap: swap.cost)


def _local_cost(piece: Piece, before: int, after: int, side: int, cells: memoryview) -> int:
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
