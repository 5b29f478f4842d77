"""Nouns whose first consonant is voiced because another noun stands before them: 冬日和 fuyubiyori.

Any native noun without a voiced sound of its own may be so (連濁; Lyman's law). In haiku two
nouns in kanji that stand together are one thing more often than two; in court verse they are two.
"""

from __future__ import annotations

from itertools import pairwise

from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.verse import tagger
from inscribe.reading.verse.metre import HAIKU
from inscribe.reading.verse.readings import VerseReading
from inscribe.reading.words import VOICED_AS_SECOND, ReadWord, voiced_first

VOICED_SECOND = 1000  # what the other of the two readings costs more; by trial
_CLEAR = str.maketrans(
    "がぎぐげござじずぜぞだぢづでどばびぶべぼ", "かきくけこさしすせそたちつてとはひふへほ"
)
_VOICED = frozenset("がぎぐげござじずぜぞだぢづでどばびぶべぼ")
_TO_VOICED = frozenset("かきくけこさしすせそたちつてとはひふへほ")
_COUNTED = frozenset("一二三四五六七八九十百千")


def with_second_parts(reading: VerseReading) -> VerseReading:
    """Return a haiku with the second of two nouns voiced: 具足櫃 gusokubitsu."""
    if reading.metre is not HAIKU:
        return reading
    words = list(reading.words)
    firsts = {first for _, first in reading.phrases}
    for index, (before, word) in enumerate(pairwise(reading.words), start=1):
        in_kanji = is_kanji_only(before.written) and is_kanji_only(word.written)
        if in_kanji and index not in firsts and not word.foreign:
            words[index] = as_second_part(before, word) or word
    return reading._replace(words=words)


def otherwise_as_second_part(before: ReadWord, word: ReadWord) -> ReadWord | None:
    """Return the second of two nouns voiced, or clear if it is read voiced, where it may be."""
    if word.note != VOICED_AS_SECOND:
        return as_second_part(before, word)
    plain = tagger.homographs_of(word.written).every
    return next((piece for piece in plain if piece.kana == clear_first(word.kana)), None)


def as_second_part(before: ReadWord, word: ReadWord) -> ReadWord | None:
    """Return a noun voiced as the second part of a compound with the noun before it: 峠茶屋.

    Only where the noun is native or usual as such a part, and has no voiced sound of its own.
    """
    nouns = before.part_of_speech.startswith("名詞") and word.part_of_speech.startswith("名詞")
    kana = word.kana
    ends_otherwise = before.connection != before.right_connection  # 刀 read katana no
    if (
        not nouns
        or not before.known
        or ends_otherwise
        or "固有名詞" in word.part_of_speech
        or word.parts
    ):
        return None
    if kana[:1] not in _TO_VOICED or not _VOICED.isdisjoint(kana):
        return None
    return None if word.written[0] in _COUNTED else voiced_first(word)


def clear_first(kana: str) -> str:
    """Return kana with a first consonant that is not voiced.

    >>> clear_first("びより")
    'ひより'
    """
    return kana[:1].translate(_CLEAR) + kana[1:]
