"""What reading a poem gives: its words, its metre, its phrases; set phrases taken apart."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe.reading.mecab import unidic_words
from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.verse import tagger
from inscribe.reading.verse.lattice import Node
from inscribe.reading.verse.metre import Metre
from inscribe.reading.verse.scansion import Phrases
from inscribe.reading.words import ReadWord


class VerseReading(NamedTuple):
    """The words of a poem, and its phrases as (morae, index of the first word)."""

    words: list[ReadWord]
    metre: Metre | None
    phrases: Phrases = ()
    regular: bool = False  # the metre is kept to the mora
    voiced: bool = True  # the text marks voicing
    searched: bool = False  # everywhere for words that keep the metre
    lattice: tuple[Node, ...] = ()  # the words that were tried, where not all of MeCab's
    own: tuple[str, ...] | None = None  # read by its source: what the source does not have
    # The rivals it was held against: their words, their phrases, what they cost more.
    near: tuple[tuple[list[ReadWord], Phrases, int], ...] = ()


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


def path_cost(words: list[ReadWord]) -> int:
    """Return what MeCab's word and connection costs of a reading add up to."""
    side, cells = tagger.verse_connections()
    cost, before = 0, 0
    for word in words:
        cost += word.cost + cells[before + side * word.connection]
        before = word.right_connection
    return cost + cells[before]
