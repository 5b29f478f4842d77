"""Words as MeCab hands them back, worked out once for each entry and then reused.

MeCab names the same entries over and over; what follows from an entry alone (its Latin letters,
its morae, how it joins the word before) is kept by the very line MeCab prints for it, so that
reading a text is mostly looking up.
"""

from __future__ import annotations

from copy import copy
from functools import cache
from typing import Any, NamedTuple

from inscribe import tables
from inscribe.reading.spelling import (
    KanaWord,
    begins_with_vowel,
    morae,
    romanise_word,
    separator,
    stands_apart,
)

PARTS_MEET = "|"
_VOWELS = ("|あ", "|い", "|う", "|え", "|お")
LATER = "後"  # origin of a noun that later verse has, and court verse has not
_NOT_OF_COURT_VERSE = frozenset({"漢", LATER})
_DEPENDENT = ("助詞", "助動詞", "接尾辞")
_MAX_KEPT = 100_000
UNKNOWN_COST = 12000


class Beat(NamedTuple):
    """What the metre hears of a word."""

    morae: int
    inner_vowel: bool  # it holds a bare vowel
    starts_with_vowel: bool
    dependent: bool  # it leans on the word before
    foreign: bool  # it is a noun court verse has not: one read as Chinese, or a later one


def beat_number(beat: Beat) -> int:
    """Return a beat as one number, which :func:`beat_of` takes apart.

    >>> beat_of(beat_number(Beat(3, True, False, False, True))).morae
    3
    """
    count, inner, begins, leans, foreign = beat
    return count << 4 | inner << 3 | begins << 2 | leans << 1 | foreign


@cache
def beat_of(number: int) -> Beat:
    """Return the beat of a number."""
    return Beat(number >> 4, *(bool(number & bit) for bit in (8, 4, 2, 1)))


def number_of_beat(kana: str, said: str, part_of_speech: str, origin: str) -> int:
    """Return the number of a word's beat; ``said`` is its kana, marked where its parts meet."""
    return _beat_of(
        kana,
        said if PARTS_MEET in said else "",
        part_of_speech.startswith(_DEPENDENT),
        origin in _NOT_OF_COURT_VERSE and part_of_speech.startswith("名詞"),
    )


class ReadWord:
    """One word as read.

    Two words are equal only if they are the same object.
    """

    __slots__ = (
        "apart",
        "beat",
        "conjugation",
        "connection",
        "cost",
        "dependent",
        "foreign",
        "form",
        "gloss",
        "inner_vowel",
        "is_simple",
        "kana",
        "known",
        "lemma",
        "length",
        "modern",
        "morae",
        "note",
        "origin",
        "part_of_speech",
        "parts",
        "prefix",
        "right_connection",
        "romaji",
        "said",
        "starts_with_vowel",
        "word",
        "written",
    )

    def __init__(
        self,
        written: str,
        spoken_kana: str,
        part_of_speech: str,
        *,
        conjugation: str = "",
        form: str = "",
        lemma: str = "",
        origin: str = "",
        gloss: str = "",
        note: str = "",
        connection: int = 0,
        right_connection: int = -1,
        cost: int = UNKNOWN_COST,
        known: bool = True,
        kana: str = "",
        parts: tuple[ReadWord, ...] = (),
    ) -> None:
        self.written = written
        self.length = len(written)
        self.kana = kana or spoken_kana.replace(PARTS_MEET, "")
        self.part_of_speech = part_of_speech
        self.conjugation = conjugation
        self.form = form
        self.lemma = lemma
        self.origin = origin
        self.gloss = gloss
        self.note = note
        self.connection = connection
        self.right_connection = connection if right_connection < 0 else right_connection
        self.cost = cost
        self.known = known
        self.said = spoken_kana
        self.parts = parts  # the words it is made of, where it is a set phrase
        self.is_simple = known and not parts
        self.prefix = part_of_speech.startswith("接頭辞")
        self.hears(number_of_beat(self.kana, spoken_kana, part_of_speech, origin))

    def hears(self, number: int) -> None:
        """Take what the metre hears of the word from the number of its beat."""
        self.beat = number
        beat = beat_of(number)
        self.morae, self.inner_vowel, self.starts_with_vowel, self.dependent, self.foreign = beat

    def __getattr__(self, name: str) -> Any:
        if name == "modern":
            self.modern = _modern(self.written, self.kana)
        elif name in ("romaji", "word", "apart"):
            self.word = KanaWord(self.said, self.part_of_speech)
            self.romaji = romanise_word(self.said, self.part_of_speech)
            self.apart = stands_apart(self.word)
        else:
            raise AttributeError(name)
        return getattr(self, name)

    def __repr__(self) -> str:
        return f"<{self.written} {self.kana}>"


@tables.cached(16384)
def _beat_of(kana: str, parts: str, dependent: bool, foreign: bool) -> int:
    """Return the number of a word's beat (see ``Beat``)."""
    inner = bool(parts) and any(vowel in parts for vowel in _VOWELS)
    leans = dependent and kana[:1] not in "とて"
    return beat_number(Beat(morae(kana), inner, begins_with_vowel(kana), leans, foreign))


def _modern(written: str, kana: str) -> str:
    """Return the word in current kana spelling, its kanji kept: 思ふ, おもう -> 思う."""
    end = len(written)
    while end and "\u3041" <= written[end - 1] <= "\u3096":
        end -= 1
    tail = len(written) - end
    if not tail or tail > len(kana):
        return written
    return written[:end] + kana[len(kana) - tail :] if end else kana


_separators: dict[tuple[ReadWord, ReadWord], str] = {}


def between(before: ReadWord, after: ReadWord) -> str:
    """Return what stands between two words in Latin letters."""
    found = _separators.get((before, after))
    if found is None:
        if len(_separators) > _MAX_KEPT:
            _separators.clear()
        found = _separators[before, after] = separator(before.word, after.word)
    return found


def romaji_of(pieces: list[ReadWord]) -> str:
    """Return a line of words in Latin letters, divided as the ALA-LC table divides them."""
    if not pieces:
        return ""
    out = [pieces[0].romaji]
    before = pieces[0]
    for piece in pieces[1:]:
        if piece.romaji:
            if piece.apart and not before.prefix:
                out.append(" ")
            else:
                out.append(between(before, piece))
            out.append(piece.romaji)
            before = piece
    return "".join(out)


def written_as(pieces: list[ReadWord], text: str) -> list[ReadWord]:
    """Return the same words, spelled as ``text`` (as long as they together) has them."""
    found: list[ReadWord] = []
    position = 0
    for piece in pieces:
        written = text[position : position + piece.length]
        position += piece.length
        same = written == piece.written
        found.append(piece if same else rewritten(piece, written, piece.modern))
    return found


@tables.cached(16384)
def rewritten(piece: ReadWord, written: str, modern: str) -> ReadWord:
    """Return a word with other signs written for it, and other signs today."""
    new = copy(piece)
    new.written, new.length, new.modern = written, len(written), modern
    return new


_VOICED_FIRST = dict(
    zip(
        "かきくけこさしすせそたちつてとはひふへほ",
        "がぎぐげござじずぜぞだぢづでどばびぶべぼ",
        strict=True,
    )
)


def said_otherwise(piece: ReadWord, spoken_kana: str, note: str) -> ReadWord:
    """Return a word as it stands, but for how it is said and why."""
    return ReadWord(
        piece.written,
        spoken_kana,
        piece.part_of_speech,
        conjugation=piece.conjugation,
        form=piece.form,
        lemma=piece.lemma,
        origin=piece.origin,
        gloss=piece.gloss,
        note=note,
        connection=piece.connection,
        right_connection=piece.right_connection,
        cost=piece.cost,
    )


_SECOND_PART = "接尾辞-名詞的-一般"  # UniDic's term, as of 草 ぐさ; written with the word before it
VOICED_AS_SECOND = "voiced as the second part of a compound"


@tables.cached(4096)
def voiced_first(piece: ReadWord) -> ReadWord:
    """Return a word whose first consonant is voiced, as in the second part of a compound."""
    said = piece.said.lstrip(PARTS_MEET)
    first = _VOICED_FIRST[said[0]]
    spoken_first = {"ぢ": "じ", "づ": "ず"}.get(first, first)
    voiced = said_otherwise(piece, spoken_first + said[1:], VOICED_AS_SECOND)
    voiced.part_of_speech = _SECOND_PART
    return voiced
