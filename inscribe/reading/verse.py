"""Verse: the reading that keeps the metre at the least cost.

MeCab's own best path is taken where it keeps the metre to the mora: metre only ever adds to the
cost of a reading, so no other can be better. Otherwise the lattice is searched again with the
metre in view (``inscribe.reading.lattice``).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from inscribe.reading import mecab
from inscribe.reading.lattice import Node, best_path
from inscribe.reading.metre import ACROSS, DEPENDENT, PARTS, TANKA, Metre, pattern_of, phrase_cost
from inscribe.reading.overrides import Override, settled_nodes
from inscribe.reading.pieces import Piece, unread_piece

_VOICED = re.compile("[がぎぐげござじずぜぞだぢづでどばびぶべぼ]")
_KANA = re.compile("[\u3041-\u3096]")
_MOST_OVER = 5  # morae a phrase may have over its number where a word runs across its end
_ENOUGH_KANA = 14


@dataclass(frozen=True, slots=True)
class VerseReading:
    """The words of a poem, and its phrases as (morae, index of the first word)."""

    words: list[Piece]
    metre: Metre | None
    phrases: tuple[tuple[int, int], ...] = ()
    regular: bool = False  # the metre is kept to the mora
    voiced: bool = True  # the text marks voicing
    lattice: tuple[Node, ...] = ()  # every word MeCab found, where it was looked at


def read_verse(
    text: str,
    breaks: frozenset[int] = frozenset(),
    overrides: Sequence[Override] = (),
    origin: Sequence[int] = (),
) -> VerseReading:
    """Return the best reading of ``text`` as verse.

    ``breaks`` are the offsets where columns begin; they count as ends of phrases only if every
    phrase has its own column. ``origin`` gives the sign of each character, which ``overrides``
    speak of.
    """
    voiced = marks_voicing(text)
    words = mecab.verse_words(text, voiced=voiced)
    metre = pattern_of(sum([word.morae for word in words]))
    if metre is None and not overrides:
        return _part_of_a_poem(words, voiced)
    phrases = regular_phrases(words, metre) if metre and not overrides else ()
    if phrases:
        return VerseReading(words, metre, phrases, True, voiced)
    nodes = mecab.verse_lattice(text, voiced=voiced)
    if "□" in text:
        nodes = _with_unread(nodes, text)
    if overrides:
        nodes = settled_nodes(nodes, overrides, origin, text)
    return _searched(text, words, metre or TANKA, breaks, tuple(nodes), voiced)


def _part_of_a_poem(words: list[Piece], voiced: bool) -> VerseReading:
    for metre in PARTS:
        if phrases := regular_phrases(words, metre):
            return VerseReading(words, metre, phrases, True, voiced)
    return VerseReading(words, None, voiced=voiced)


def _with_unread(nodes: list[Node], text: str) -> list[Node]:
    """Let each sign that cannot be read stand for one to three morae."""
    unread = [index for index, sign in enumerate(text) if sign == "□"]
    nodes = [node for node in nodes if "□" not in node.piece.written]
    for index in unread:
        for piece in _unread_pieces():
            nodes.append(Node(index, index + 1, piece))
    return nodes


@cache
def _unread_pieces() -> tuple[Piece, ...]:
    return tuple(unread_piece(count) for count in (1, 2, 3))


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
        if not count and phrases and word.dependent:
            return ()
        count += word.morae
        if len(phrases) == len(targets) or count > targets[len(phrases)]:
            return ()
        if count == targets[len(phrases)]:
            phrases.append((count, first))
            count, first = 0, index + 1
    return tuple(phrases) if len(phrases) == len(targets) and not count else ()


def _searched(
    text: str,
    words: list[Piece],
    metre: Metre,
    breaks: frozenset[int],
    nodes: tuple[Node, ...],
    voiced: bool,
) -> VerseReading:
    connections = mecab.verse_connections()
    ends = breaks if len(breaks) == len(metre.phrases) - 1 else frozenset()
    path = best_path(nodes, len(text), metre, connections, ends)
    if path is None and ends:
        path = best_path(nodes, len(text), metre, connections)
    if path is None:
        return VerseReading(words, None, voiced=voiced, lattice=nodes)
    found = [node.piece for node in path.nodes]
    return VerseReading(found, metre, fitted_phrases(found, metre), False, voiced, nodes)


def path_cost(words: list[Piece]) -> int:
    """Return what MeCab's word and connection costs of a reading add up to."""
    side, cells = mecab.verse_connections()
    cost, before = 0, 0
    for word in words:
        cost += word.cost + cells[before + side * word.connection]
        before = word.right_connection
    return cost + cells[before]


def fitted_phrases(words: list[Piece], metre: Metre) -> tuple[tuple[int, int], ...]:
    """Return the phrases that words fall into where the metre is kept but for a mora or two."""
    best: dict[tuple[int, int], tuple[int, tuple[tuple[int, int], ...]]] = {(0, 0): (0, ())}
    for phrase, target in enumerate(metre.phrases):
        for first in range(len(words)):
            start = best.get((phrase, first))
            if start is None:
                continue
            leaning = DEPENDENT if first and words[first].dependent else 0
            count, vowel = 0, False
            for end in range(first, len(words)):
                word = words[end]
                vowel = vowel or word.inner_vowel or (count > 0 and word.starts_with_vowel)
                count += word.morae
                if count > target + _MOST_OVER:
                    break
                ending = phrase_cost(count, target, vowel=vowel)
                cost = start[0] + leaning + (ACROSS * 2 if ending is None else ending)
                key = (phrase + 1, end + 1)
                if key not in best or cost < best[key][0]:
                    best[key] = (cost, (*start[1], (count, first)))
    return best.get((len(metre.phrases), len(words)), (0, ()))[1]
