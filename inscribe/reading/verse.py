"""Verse: the reading that keeps the metre at the least cost.

MeCab's own best path is taken where it keeps the metre to the mora: metre only ever adds to the
cost of a reading, so no other can be better. Otherwise the lattice is searched again with the
metre in view (``inscribe.reading.lattice``).
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from inscribe.reading import mecab
from inscribe.reading.lattice import best_path
from inscribe.reading.metre import Metre, morae, pattern_of
from inscribe.reading.pieces import Piece

_VOICED = re.compile("[がぎぐげござじずぜぞだぢづでどばびぶべぼ]")
_KANA = re.compile("[\u3041-\u3096]")
_ENOUGH_KANA = 14


@dataclass(frozen=True, slots=True)
class VerseReading:
    """The words of a poem, and its phrases as (morae, index of the first word)."""

    words: list[Piece]
    metre: Metre | None
    phrases: tuple[tuple[int, int], ...] = ()
    regular: bool = False  # the metre is kept to the mora


def read_verse(text: str, breaks: frozenset[int] = frozenset()) -> VerseReading:
    """Return the best reading of ``text`` as verse.

    ``breaks`` are the offsets where columns end; they count as ends of phrases only if every
    phrase has its own column.
    """
    voiced = marks_voicing(text)
    words = mecab.verse_words(text, voiced=voiced)
    metre = pattern_of(sum(word.morae for word in words))
    if metre is None:
        return VerseReading(words, None)
    phrases = regular_phrases(words, metre)
    if phrases:
        return VerseReading(words, metre, phrases, True)
    return _searched(text, words, metre, breaks, voiced)


def marks_voicing(text: str) -> bool:
    """Whether a text with enough kana to tell marks voicing at all.

    >>> marks_voicing("はなのいろはうつりにけりないたつらに"), marks_voicing("ひとしれず")
    (False, True)
    """
    return bool(_VOICED.search(text)) or len(_KANA.findall(text)) < _ENOUGH_KANA


def regular_phrases(words: list[Piece], metre: Metre) -> tuple[tuple[int, int], ...]:
    """Return the phrases if the words keep the metre to the mora, else nothing."""
    phrases: list[tuple[int, int]] = []
    targets = metre.phrases
    count = first = 0
    for index, word in enumerate(words):
        count += word.morae
        if len(phrases) == len(targets) or count > targets[len(phrases)]:
            return ()
        if count == targets[len(phrases)]:
            phrases.append((count, first))
            count, first = 0, index + 1
    return tuple(phrases) if len(phrases) == len(targets) and not count else ()


def _searched(
    text: str, words: list[Piece], metre: Metre, breaks: frozenset[int], voiced: bool
) -> VerseReading:
    nodes = mecab.verse_lattice(text, voiced=voiced)
    connections = mecab.verse_connections()
    ends = breaks if len(breaks) == len(metre.phrases) - 1 else frozenset()
    path = best_path(nodes, len(text), metre, connections, ends)
    if path is None and ends:
        path = best_path(nodes, len(text), metre, connections)
    if path is None:
        return VerseReading(words, None)
    found = [node.piece for node in path.nodes]
    return VerseReading(found, metre, fitted_phrases(found, metre))


def fitted_phrases(words: list[Piece], metre: Metre) -> tuple[tuple[int, int], ...]:
    """Return the phrases of words that keep the metre within a mora or two, by least deviation."""
    best: dict[tuple[int, int], tuple[int, tuple[tuple[int, int], ...]]] = {(0, 0): (0, ())}
    for phrase, target in enumerate(metre.phrases):
        for first in range(len(words)):
            start = best.get((phrase, first))
            if start is None:
                continue
            count = 0
            for end in range(first, len(words)):
                count += words[end].morae
                if count > target + 3:
                    break
                cost = start[0] + abs(count - target) ** 2
                key = (phrase + 1, end + 1)
                if key not in best or cost < best[key][0]:
                    best[key] = (cost, (*start[1], (count, first)))
    return best.get((len(metre.phrases), len(words)), (0, ()))[1]


def mora_count(words: list[Piece]) -> int:
    """Return the morae of all words."""
    return sum(morae(word.kana) for word in words)
