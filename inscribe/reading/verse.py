"""Verse: the reading that keeps the metre at the least cost.

MeCab's own best path is taken where it keeps the metre to the mora: metre only ever adds to the
cost of a reading, so no other can be better; and where it breaks it only as poets often do.
Otherwise the words between the regular phrases at either end are searched again with the metre in
view (``inscribe.reading.lattice``), and all of them if that does not mend it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from inscribe.reading import mecab
from inscribe.reading.lattice import Node, Surroundings, best_path
from inscribe.reading.metre import ACROSS, DEPENDENT, PARTS, TANKA, Metre, pattern_of, phrase_cost
from inscribe.reading.overrides import Override, settled_nodes
from inscribe.reading.pieces import Piece, unread_piece

Phrases = tuple[tuple[int, int], ...]  # (morae, index of the first word) of each phrase

_VOICED = re.compile("[がぎぐげござじずぜぞだぢづでどばびぶべぼ]")
_KANA = re.compile("[\u3041-\u3096]")
NEARLY_REGULAR = 3000  # MeCab's best path is taken if its metre costs no more
_MENDED_ENOUGH = 3000
_MOST_OVER = 5  # morae a phrase may have over its number where a word runs across its end
_ENOUGH_KANA = 14


@dataclass(frozen=True, slots=True)
class VerseReading:
    """The words of a poem, and its phrases as (morae, index of the first word)."""

    words: list[Piece]
    metre: Metre | None
    phrases: Phrases = ()
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
    return _taken_apart(_read(text, breaks, overrides, origin))


def _taken_apart(reading: VerseReading) -> VerseReading:
    """Return the reading with set phrases shown as the words they are made of."""
    if not any(word.parts for word in reading.words):
        return reading
    words: list[Piece] = []
    new_index: list[int] = []
    for word in reading.words:
        new_index.append(len(words))
        words.extend(word.parts or (word,))
    phrases = tuple([(count, new_index[first]) for count, first in reading.phrases])
    return replace(reading, words=words, phrases=phrases)


def _read(
    text: str, breaks: frozenset[int], overrides: Sequence[Override], origin: Sequence[int]
) -> VerseReading:
    voiced = marks_voicing(text)
    words = mecab.verse_words(text, voiced=voiced)
    metre = pattern_of(sum([word.morae for word in words]))
    ends = breaks if metre and len(breaks) == len(metre.phrases) - 1 else frozenset[int]()
    if overrides or "□" in text:
        nodes = mecab.verse_lattice(text, voiced=voiced)
        if "□" in text:
            nodes = _with_unread(nodes, text)
        if overrides:
            nodes = settled_nodes(nodes, overrides, origin, text)
        return _searched(text, words, metre or TANKA, ends, tuple(nodes), voiced)
    if metre is None:
        return _part_of_a_poem(words, voiced)
    found = _kept_as_it_is(words, metre, ends, voiced) or _mended(text, words, metre, ends, voiced)
    if found is not None:
        return found
    nodes = mecab.verse_lattice(text, voiced=voiced)
    return _searched(text, words, metre, ends, tuple(nodes), voiced)


def _kept_as_it_is(
    words: list[Piece], metre: Metre, ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Return MeCab's best path where it keeps the metre, or breaks it as poets often do."""
    phrases = regular_phrases(words, metre)
    regular = bool(phrases)
    if not regular:
        cost, phrases = fitted_phrases(words, metre)
        if not phrases or cost > NEARLY_REGULAR:
            return None
    if ends and ends != _phrase_offsets(words, phrases):
        return None
    return VerseReading(words, metre, phrases, regular, voiced)


def _phrase_offsets(words: list[Piece], phrases: Phrases) -> frozenset[int]:
    firsts = {first for _, first in phrases[1:]}
    offsets, position = set(), 0
    for index, word in enumerate(words):
        if index in firsts:
            offsets.add(position)
        position += word.length
    return frozenset(offsets)


def _mended(
    text: str, words: list[Piece], metre: Metre, ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Search only the stretch between the phrases that keep the metre from either end.

    None where the mended reading is still far from regular: then all must be searched.
    """
    head, kept_before = _regular_run(words, metre.phrases)
    tail, kept_after = _regular_run(words[::-1], metre.phrases[::-1])
    stop, last = len(words) - tail, len(metre.phrases) - kept_after
    if (not head and not tail) or head >= stop or kept_before >= last:
        return None
    start = sum([word.length for word in words[:head]])
    end = start + sum([word.length for word in words[head:stop]])
    if ends and not {start, end} - {0, len(text)} <= ends:
        return None
    stretch = Metre(metre.name, metre.phrases[kept_before:last])
    around = Surroundings(
        words[head - 1].right_connection if head else 0,
        words[stop].connection if tail else 0,
        first=not head,
    )
    inner = frozenset(at - start for at in ends if start < at < end)
    nodes = mecab.verse_lattice(text[start:end], voiced=voiced)
    path = best_path(nodes, end - start, stretch, mecab.verse_connections(), inner, around)
    if path is None:
        return None
    found = [*words[:head], *[node.piece for node in path.nodes], *words[stop:]]
    cost, phrases = fitted_phrases(found, metre)
    if not phrases or cost > _MENDED_ENOUGH:
        return None
    return VerseReading(found, metre, phrases, False, voiced)


def _regular_run(words: list[Piece], phrases: Sequence[int]) -> tuple[int, int]:
    """Return how many words, and how many phrases, keep the metre from the first word on."""
    count = held = kept = 0
    for index, word in enumerate(words):
        count += word.morae
        if kept == len(phrases) or count > phrases[kept]:
            break
        if count == phrases[kept]:
            kept, held, count = kept + 1, index + 1, 0
    return held, kept


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


def regular_phrases(words: list[Piece], metre: Metre) -> Phrases:
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
    ends: frozenset[int],
    nodes: tuple[Node, ...],
    voiced: bool,
) -> VerseReading:
    connections = mecab.verse_connections()
    path = best_path(nodes, len(text), metre, connections, ends)
    if path is None and ends:
        path = best_path(nodes, len(text), metre, connections)
    if path is None:
        return VerseReading(words, None, voiced=voiced, lattice=nodes)
    found = [node.piece for node in path.nodes]
    return VerseReading(found, metre, fitted_phrases(found, metre)[1], False, voiced, nodes)


def path_cost(words: list[Piece]) -> int:
    """Return what MeCab's word and connection costs of a reading add up to."""
    side, cells = mecab.verse_connections()
    cost, before = 0, 0
    for word in words:
        cost += word.cost + cells[before + side * word.connection]
        before = word.right_connection
    return cost + cells[before]


def fitted_phrases(words: list[Piece], metre: Metre) -> tuple[int, Phrases]:
    """Return the cost and the phrases that words fall into; no phrases if they cannot fit."""
    reached: dict[int, tuple[int, Phrases]] = {0: (0, ())}
    for target in metre.phrases:
        further: dict[int, tuple[int, Phrases]] = {}
        for first, (before, phrases) in reached.items():
            for end, count, cost in _phrases_from(words, first, target):
                there = further.get(end)
                if there is None or before + cost < there[0]:
                    further[end] = (before + cost, (*phrases, (count, first)))
        reached = further
    return reached.get(len(words), (0, ()))


def _phrases_from(words: list[Piece], first: int, target: int) -> Iterator[tuple[int, int, int]]:
    """Yield where a phrase of about ``target`` morae may end, its morae, and its cost."""
    if first >= len(words):
        return
    leaning = DEPENDENT if first and words[first].dependent else 0
    count, vowel = 0, False
    for end in range(first, len(words)):
        word = words[end]
        vowel = vowel or word.inner_vowel or (count > 0 and word.starts_with_vowel)
        count += word.morae
        if count < target - 1:
            continue
        cost = phrase_cost(count, target, vowel=vowel)
        if cost is not None:
            yield end + 1, count, cost + leaning
        elif count <= target + _MOST_OVER:
            yield end + 1, count, 2 * ACROSS + leaning
        else:
            return
