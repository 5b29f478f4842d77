"""Words as MeCab hands them back, worked out once for each entry and then reused.

MeCab names the same entries over and over; what follows from an entry alone (its Latin letters,
its morae, how it joins the word before) is kept by the very line MeCab prints for it, so that
reading a text is mostly looking up.
"""

from __future__ import annotations

from copy import copy
from typing import Any

from inscribe import tables
from inscribe.reading.spelling import (
    KanaWord,
    begins_with_vowel,
    hiragana,
    morae,
    romanise_word,
    separator,
    spoken,
    stands_apart,
)

# Notes of the words with which a text is read that marks no voicing.
VOICING_NOT_MARKED = "voicing not marked"
OKURIGANA_LEFT_OUT = "okurigana left out"

_PARTS_MEET = "|"
_VOWELS = ("|あ", "|い", "|う", "|え", "|お")
_DEPENDENT = ("助詞", "助動詞", "接尾辞")
_UNREAD = "…"
UNREAD_SIGNS = frozenset("□々ゝゞ")  # a repeat mark is left where what it repeats cannot be read
_NOUN = "名詞-普通名詞-一般"
_MAX_KEPT = 100_000
_UNKNOWN_COST = 12000


# What the metre hears of a word: its morae, whether it holds a bare vowel, whether it begins
# with one, whether it leans on the word before, whether it is a noun read as Chinese.
Beat = tuple[int, bool, bool, bool, bool]
BEATS: list[Beat] = []
_beat_numbers: dict[Beat, int] = {}


def beat_number(beat: Beat) -> int:
    """Return the place of ``beat`` in ``BEATS``, where it is put if it is new."""
    number = _beat_numbers.get(beat)
    if number is None:
        number = _beat_numbers[beat] = len(BEATS)
        BEATS.append(beat)
    return number


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
        cost: int = _UNKNOWN_COST,
        known: bool = True,
        kana: str = "",
        parts: tuple[ReadWord, ...] = (),
    ) -> None:
        self.written = written
        self.length = len(written)
        self.kana = kana or spoken_kana.replace(_PARTS_MEET, "")
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
        dependent = part_of_speech.startswith(_DEPENDENT)
        self.beat = _beat_of(
            self.kana,
            spoken_kana if _PARTS_MEET in spoken_kana else "",
            dependent,
            origin == "漢" and part_of_speech.startswith("名詞"),
        )
        beat = BEATS[self.beat]
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
    """Return the number of a word's beat (see ``Beat``).

    ``parts`` is its kana, marked where the word's parts meet.
    """
    inner = bool(parts) and any(vowel in parts for vowel in _VOWELS)
    leans = dependent and kana[:1] not in "とて"
    return beat_number((morae(kana), inner, begins_with_vowel(kana), leans, foreign))


def _modern(written: str, kana: str) -> str:
    """Return the word in current kana spelling, its kanji kept: 思ふ, おもう -> 思う."""
    end = len(written)
    while end and "\u3041" <= written[end - 1] <= "\u3096":
        end -= 1
    tail = len(written) - end
    if not tail or tail > len(kana):
        return written
    return written[:end] + kana[len(kana) - tail :] if end else kana


def verse_piece(written: str, feature: str) -> ReadWord:
    """Return a word from the dictionary of verse (see :class:`inscribe.reading.entries.Entry`)."""
    fields = feature.split(",")
    left, right, cost, kana, pos, conjugation, form, lemma, origin, gloss, note, parts = fields
    said = kana.replace(" ", _PARTS_MEET if parts else f" {_PARTS_MEET}")  # 梅花: ume no hana
    if lemma.endswith("は") and kana.endswith("は") and len(kana) > 1 and lemma != "はは":
        said = said[:-1] + "わ"  # 今は, ものかは: the particle closes the word
    return ReadWord(
        written,
        said,
        pos,
        kana=kana.replace(_PARTS_MEET, "").replace(" ", ""),
        conjugation=conjugation,
        form=form,
        lemma=lemma,
        origin=origin,
        gloss=gloss,
        note=note,
        connection=int(left),
        right_connection=int(right),
        cost=int(cost),
        parts=_words_of(written, parts.split("/"), kana.split(" "), note) if parts else (),
    )


def _words_of(written: str, parts: list[str], kana: list[str], note: str) -> tuple[ReadWord, ...]:
    """Return the words an entry is shown as (花の色), cut where they meet in what is written."""
    words: list[ReadWord] = []
    start = 0
    for number, (part, said) in enumerate(zip(parts, kana, strict=True), start=1):
        spelt, part_of_speech, gloss = part.split(":")
        end = start + len(spelt) if number < len(parts) else len(written)
        here = written[start:end]
        why = "" if note == VOICING_NOT_MARKED and here == said else note
        words.append(
            ReadWord(here, said, part_of_speech, lemma=spelt, origin="和", gloss=gloss, note=why)
        )
        start = end
    return tuple(words)


def unidic_piece(written: str, feature: str) -> ReadWord:
    """Return a word from UniDic itself, or one it does not know."""
    fields = feature.split(",")
    if '"' in feature:
        import csv

        fields = next(csv.reader([feature]))
    pos = "-".join(part for part in fields[:4] if part != "*")
    if len(fields) < 18 or written in UNREAD_SIGNS:
        return unknown_piece(written, part_of_speech=pos)
    if fields[7] == "言う" and fields[19][:1] == "ユ" and written[:1] != "ゆ":
        fields[9] = fields[17] = fields[19] = (
            "イ" + fields[19][1:]
        )  # 言う is spelt いう however said
    said = spoken(fields[19], fields[9]) if not pos.startswith("助詞") else hiragana(fields[17])
    return ReadWord(
        written,
        said,
        pos,
        conjugation=fields[4],
        form=fields[5],
        lemma=fields[7],
        origin=fields[12],
        kana=hiragana(fields[17] if pos.startswith("助詞") else fields[19]),
    )


def unknown_piece(
    written: str, *, connection: int = 0, cost: int = _UNKNOWN_COST, part_of_speech: str = "未知語"
) -> ReadWord:
    """Return a word no dictionary has; it stands for itself, but for marks without a reading."""
    return ReadWord(
        written,
        _UNREAD
        if written in UNREAD_SIGNS or written[:1] == "［"
        else ""
        if written[:1] == "（"
        else hiragana(written),
        part_of_speech,
        connection=connection,
        cost=cost,
        known=False,
    )


def unread_piece(sign: str, count: int) -> ReadWord:
    """Return a sign that cannot be read, standing for ``count`` morae."""
    piece = unknown_piece(sign, cost=4000 + 800 * count, part_of_speech="補助記号")
    piece.morae = count
    piece.beat = beat_number((count, False, False, False, False))
    return piece


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
VOICED_AS_SECOND = "voiced as the second part of a compound"


@tables.cached(4096)
def voiced_first(piece: ReadWord) -> ReadWord:
    """Return a word whose first consonant is voiced, as in the second part of a compound."""
    said = piece.said.lstrip(_PARTS_MEET)
    first = _VOICED_FIRST[said[0]]
    spoken_first = {"ぢ": "じ", "づ": "ず"}.get(first, first)
    return ReadWord(
        piece.written,
        spoken_first + said[1:],
        piece.part_of_speech,
        lemma=piece.lemma,
        origin=piece.origin,
        gloss=piece.gloss,
        note=VOICED_AS_SECOND,
        connection=piece.connection,
        right_connection=piece.right_connection,
        cost=piece.cost,
    )
