"""Verse: the reading that keeps the metre at the least cost.

MeCab's own best path is taken where it keeps the metre to the mora: metre only ever adds to the
cost of a reading, so no other can be better; and where it breaks it only as poets often do.
Otherwise the words between the regular phrases at either end are searched again with the metre in
view (``inscribe.reading.verse.reader.lattice``), and all of them if that does not mend it.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.mecab import unidic_words
from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.verse import tagger
from inscribe.reading.verse.lattice import LatticeSpan, Node, Surroundings, best_path, spans_of
from inscribe.reading.verse.metre import HAIKU, PARTS, SEDOKA, TANKA, Metre, pattern_of
from inscribe.reading.verse.scansion import (
    Phrases,
    fitted_phrases,
    nearly_regular,
    regular_head,
    regular_phrases,
    regular_tail,
)
from inscribe.reading.verse.settled import settled_nodes
from inscribe.reading.verse.voicing import BETTER_UNVOICED, best_words, has_voiced_kana
from inscribe.reading.words import (
    UNREAD_SIGNS,
    OverrideLike,
    ReadWord,
    unread_piece,
)

NEARLY_REGULAR = 3000  # MeCab's best path is taken if its metre costs no more
_NO_METRE = 15000  # what a text costs more that keeps no metre
_LONGEST = 80  # signs; no poem that has a metre here is longer
_CHANGED_AT_MOST = 4000  # another reading of one word may cost this much more
_MENDED_ENOUGH = 8000  # a stretch is mended if its metre costs no more
_MORAE_OFF = 8  # a best path with so many morae too few or too many may hide a poem
_KANA_REPEATED = frozenset("ゝゞ")
_MOST_MORAE = 4  # of one sign that cannot be read
_NO_ENDS: frozenset[int] = frozenset()


class VerseReading(NamedTuple):
    """The words of a poem, and its phrases as (morae, index of the first word)."""

    words: list[ReadWord]
    metre: Metre | None
    phrases: Phrases = ()
    regular: bool = False  # the metre is kept to the mora
    voiced: bool = True  # the text marks voicing
    searched: bool = False  # everywhere for words that keep the metre
    lattice: tuple[Node, ...] = ()  # the words that were tried, where not all of MeCab's
    by_source: bool = False  # the words say what the source has in kana


def read_verse(
    text: str,
    breaks: frozenset[int] = frozenset(),
    overrides: Sequence[OverrideLike] = (),
    origin: Sequence[int] = (),
) -> VerseReading:
    """Return the best reading of ``text`` as verse.

    ``breaks`` are the offsets where columns begin; they count as ends of phrases only if every
    phrase has its own column. ``origin`` gives the sign of each character, which ``overrides``
    speak of.
    """
    return taken_apart(_read(text, breaks, overrides, origin))


def words_without_metre(text: str, *, voiced: bool) -> list[ReadWord]:
    """Return the words of a text in the language of verse that has no metre."""
    words = tagger.verse_words(text, voiced=voiced)
    return taken_apart(VerseReading(words, None, voiced=voiced)).words


def taken_apart(reading: VerseReading) -> VerseReading:
    """Return the reading with set phrases shown as their words.

    A word the dictionary of verse lacks is read as prose would read it.
    """
    if all(word.is_simple for word in reading.words):
        return reading
    words = reading.words.copy()
    phrases = reading.phrases
    for index in range(len(words) - 1, -1, -1):
        if not words[index].is_simple:
            words[index : index + 1] = parts = _parts_of(words[index])
            more = len(parts) - 1
            phrases = tuple([(morae, at + more * (at > index)) for morae, at in phrases])
    return reading._replace(words=words, phrases=phrases)


def _parts_of(word: ReadWord) -> Sequence[ReadWord]:
    if word.known or not is_kanji_only(word.written):
        return word.parts or (word,)
    as_prose = unidic_words(word.written)
    return as_prose if all(part.known for part in as_prose) else (word,)


def _read(
    text: str, breaks: frozenset[int], overrides: Sequence[OverrideLike], origin: Sequence[int]
) -> VerseReading:
    """Return the best reading; where a text may or may not mark voicing, the one in metre."""
    words, voiced = best_words(text)
    found = _read_marked(text, words, voiced, breaks, overrides, origin)
    if found.regular or not voiced or len(text) > _LONGEST or has_voiced_kana(text):
        return found
    unvoiced = tagger.verse_words(text, voiced=False)
    other = _read_marked(text, unvoiced, False, breaks, overrides, origin)
    if other.metre is None or other.metre in PARTS:
        return found
    return other if _cost(other) + BETTER_UNVOICED < _cost(found) else found


def _cost(reading: VerseReading) -> int:
    """Return what a reading costs by its words and its metre."""
    words = path_cost(reading.words)
    if reading.metre is None or reading.metre in PARTS:
        return words + _NO_METRE
    cost, phrases = fitted_phrases(reading.words, reading.metre)
    return words + (cost if phrases else _NO_METRE)


def _read_marked(
    text: str,
    words: list[ReadWord],
    voiced: bool,
    breaks: frozenset[int],
    overrides: Sequence[OverrideLike],
    origin: Sequence[int],
) -> VerseReading:
    metre = pattern_of(sum([word.morae for word in words]))
    if len(text) > _LONGEST:
        return VerseReading(words, None, voiced=voiced)
    ends = breaks if metre and len(breaks) == len(metre.phrases) - 1 else _NO_ENDS
    if overrides or "□" in text:
        nodes = tagger.verse_lattice(text, voiced=voiced)
        if "□" in text:
            nodes = _with_unread(nodes, text)
        if overrides:
            nodes = settled_nodes(nodes, overrides, origin, text)
        found = _searched(text, words, metre or TANKA, ends, spans_of(nodes), voiced)
        return found._replace(lattice=tuple(nodes))
    if metre is None:
        part = _part_of_a_poem(words, voiced)
        return part if part.metre else _read_as_a_poem(text, words, ends, voiced) or part
    if not metre.foreign or not any(word.foreign for word in words):
        kept = _kept_as_it_is(words, metre, ends, voiced)
        if mended := kept or _mended(text, words, metre, ends, voiced):
            return mended
    spans = tagger.verse_spans(text, voiced=voiced)
    searched = _searched(text, words, metre, ends, spans, voiced)
    if metre is SEDOKA and fitted_phrases(searched.words, metre)[0] > _MENDED_ENOUGH:
        return VerseReading(words, None, voiced=voiced, searched=True)
    return searched


def _kept_as_it_is(
    words: list[ReadWord], metre: Metre, ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Return MeCab's best path if it keeps the metre, or breaks it as poets often do."""
    phrases = regular_phrases(words, metre)
    regular = bool(phrases)
    if not regular:
        nearly = nearly_regular(words, metre, NEARLY_REGULAR)
        if nearly is None:
            return None
        phrases = nearly[1]
    if ends and ends != _phrase_offsets(words, phrases):
        return None
    return VerseReading(words, metre, phrases, regular, voiced)


def _phrase_offsets(words: list[ReadWord], phrases: Phrases) -> frozenset[int]:
    firsts = {first for _, first in phrases[1:]}
    offsets, position = set(), 0
    for index, word in enumerate(words):
        if index in firsts:
            offsets.add(position)
        position += word.length
    return frozenset(offsets)


def _mended(
    text: str, words: list[ReadWord], metre: Metre, ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Mend only the stretch between the phrases that keep the metre from either end.

    First by another reading of one word, then by searching the stretch. None where there is no
    such stretch, or nothing in it comes near the metre: then all must be searched.
    """
    head, kept_before = regular_head(words, metre.phrases)
    tail, kept_after = regular_tail(words, metre.phrases)
    stop, last = len(words) - tail, len(metre.phrases) - kept_after
    if head >= stop or kept_before >= last:  # the two runs meet: one of them is chance
        head, stop, tail = 0, len(words), 0
    if not ends and (swapped := _with_one_word_changed(words, head, stop, metre, voiced)):
        return VerseReading(swapped, metre, regular_phrases(swapped, metre), False, voiced)
    if not head and not tail:
        return None
    unmended = path_cost(words)
    start = sum([word.length for word in words[:head]])
    end = start + sum([word.length for word in words[head:stop]])
    if ends and not {start, end} - {0, len(text)} <= ends:
        return None
    stretch = metre._replace(phrases=metre.phrases[kept_before:last])
    around = Surroundings(
        words[head - 1].right_connection if head else 0,
        words[stop].connection if tail else 0,
        first=not head,
    )
    inner = frozenset(at - start for at in ends if start < at < end)
    spans = tagger.verse_spans(text[start:end], voiced=voiced)
    path = best_path(spans, end - start, stretch, tagger.verse_connections(), inner, around)
    if path is None:
        return None
    found = [*words[:head], *path.words, *words[stop:]]
    cost, phrases = fitted_phrases(found, metre)
    if not phrases or cost + path_cost(found) - unmended > _MENDED_ENOUGH:
        return None
    return VerseReading(found, metre, phrases, False, voiced)


def _with_one_word_changed(
    words: list[ReadWord], first: int, stop: int, metre: Metre, voiced: bool
) -> list[ReadWord] | None:
    """Return the words with the one change of reading that mends the metre at the least cost."""
    wanted = metre.length - sum([word.morae for word in words])
    if not wanted:
        return None
    side, cells = tagger.verse_connections()
    best: tuple[int, int, ReadWord] | None = None
    for index in range(first, stop):
        word = words[index]
        if word.written == word.kana:  # kana has as many morae however it is read
            continue
        readings = tagger.homographs_of(word.written, voiced=voiced)
        if not readings.fewest <= word.morae + wanted <= readings.most:
            continue
        before = words[index - 1].right_connection if index else 0
        after = side * words[index + 1].connection if index + 1 < len(words) else 0
        own = word.cost + cells[before + side * word.connection]
        own += cells[word.right_connection + after]
        for piece in readings.worth_trying:
            if piece.morae != word.morae + wanted:
                continue
            cost = piece.cost + cells[before + side * piece.connection]
            cost += cells[piece.right_connection + after] - own
            if cost > (best[0] if best else _CHANGED_AT_MOST):
                continue
            changed = [*words[:index], piece, *words[index + 1 :]]
            if regular_phrases(changed, metre):
                best = (cost, index, piece)
    if best is None:
        return None
    return [*words[: best[1]], best[2], *words[best[1] + 1 :]]


def _part_of_a_poem(words: list[ReadWord], voiced: bool) -> VerseReading:
    for metre in PARTS:
        if phrases := regular_phrases(words, metre):
            return VerseReading(words, metre, phrases, True, voiced)
    return VerseReading(words, None, voiced=voiced)


def _read_as_a_poem(
    text: str, words: list[ReadWord], ends: frozenset[int], voiced: bool
) -> VerseReading | None:
    """Return a reading in a metre for a text whose best path nearly has a poem's morae.

    None if keeping the metre would need a much less natural reading.
    """
    count = sum([word.morae for word in words])
    metres = [metre for metre in (HAIKU, TANKA) if abs(count - metre.length) <= _MORAE_OFF]
    if not metres:
        return None
    found = _searched(
        text, words, metres[-1], ends, tagger.verse_spans(text, voiced=voiced), voiced
    )
    if not found.phrases:
        return None
    cost = fitted_phrases(found.words, metres[-1])[0] + path_cost(found.words)
    return found if cost - path_cost(words) <= _MENDED_ENOUGH else None


def _with_unread(nodes: list[Node], text: str) -> list[Node]:
    """Let each sign that cannot be read stand for one to three morae.

    What a repeat mark of kana stands for, and repeats, has one.
    """
    nodes = [node for node in nodes if UNREAD_SIGNS.isdisjoint(node.piece.written)]
    for index, sign in enumerate(text):
        if sign in UNREAD_SIGNS:
            of_kana = not _KANA_REPEATED.isdisjoint(text[index : index + 2])
            for piece in _unread_pieces(sign, 1 if of_kana else _MOST_MORAE):
                nodes.append(Node(index, index + 1, piece))
    return nodes


@tables.cached()
def _unread_pieces(sign: str, most: int) -> tuple[ReadWord, ...]:
    return tuple(unread_piece(sign, count) for count in range(1, most + 1))


def _searched(
    text: str,
    words: list[ReadWord],
    metre: Metre,
    ends: frozenset[int],
    spans: Sequence[LatticeSpan],
    voiced: bool,
) -> VerseReading:
    connections = tagger.verse_connections()
    path = best_path(spans, len(text), metre, connections, ends)
    if path is None and ends:
        path = best_path(spans, len(text), metre, connections)
    if path is None:
        return VerseReading(words, None, voiced=voiced, searched=True)
    found = list(path.words)
    return VerseReading(found, metre, fitted_phrases(found, metre)[1], False, voiced, True)


def path_cost(words: list[ReadWord]) -> int:
    """Return what MeCab's word and connection costs of a reading add up to."""
    side, cells = tagger.verse_connections()
    cost, before = 0, 0
    for word in words:
        cost += word.cost + cells[before + side * word.connection]
        before = word.right_connection
    return cost + cells[before]
