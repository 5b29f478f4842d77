"""Words made of the features MeCab prints: UniDic's, or those of the dictionary of verse."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from inscribe.reading.spelling import hiragana, spoken
from inscribe.reading.words.pieces import (
    PARTS_MEET,
    UNKNOWN_COST,
    Beat,
    ReadWord,
    beat_number,
    number_of_beat,
)

# Notes of the words with which a text is read that marks no voicing.
VOICING_NOT_MARKED = "voicing not marked"
OKURIGANA_LEFT_OUT = "okurigana left out"
AS_SPELLED = "as the source spells it"
_LAST_OF_THE_FIRST_PLANE = "\uffff"
_TOLD = "kana part_of_speech conjugation form lemma origin gloss note said parts is_simple prefix"
_OF_FEATURE = frozenset(_TOLD.split())  # what the file of features tells of a word
_UNREAD = "…"
UNREAD_SIGNS = frozenset("□々ゝゞ")  # a repeat mark is left where what it repeats cannot be read


def verse_piece(written: str, printed: str, feature_at: Callable[[int], str]) -> ReadWord:
    """Return a word from the dictionary of verse, its feature read when it is asked for.

    MeCab prints its classes, its cost, where ``feature_at`` finds what else is told of it
    (see ``mecab.DictionaryEntry``), and its beat.
    """
    return _VerseWord(written, printed, feature_at)


class _VerseWord(ReadWord):
    """A word of verse: of most, the search for the best reading asks only cost, classes, beat."""

    __slots__ = ("_feature_at", "_place")

    def __init__(self, written: str, printed: str, feature_at: Callable[[int], str]) -> None:
        left, right, cost, place, beat = printed.split(",")
        self.written = written
        self.length = len(written)
        self.connection = int(left)
        self.right_connection = int(right)
        self.cost = int(cost)
        self.known = True
        self.hears(int(beat))
        self._place = int(place)
        self._feature_at = feature_at

    def __getattr__(self, name: str) -> Any:
        if name not in _OF_FEATURE:
            return super().__getattr__(name)
        feature = self._feature_at(self._place)
        kana, pos, conjugation, form, lemma, origin, gloss, note, parts = feature.split(",")
        super().__init__(
            self.written,
            _said(kana, lemma, parts),
            pos,
            kana=_unmarked(kana),
            conjugation=conjugation,
            form=form,
            lemma=lemma,
            origin=origin,
            gloss=gloss,
            note=note,
            connection=self.connection,
            right_connection=self.right_connection,
            cost=self.cost,
            parts=_words_of(self.written, parts.split("/"), kana.split(" "), note) if parts else (),
        )
        return getattr(self, name)


def beat_of_entry(kana: str, part_of_speech: str, lemma: str, origin: str, parts: str) -> int:
    """Return the number of the beat of a word of verse, from what its dictionary says of it."""
    return number_of_beat(_unmarked(kana), _said(kana, lemma, parts), part_of_speech, origin)


def _unmarked(kana: str) -> str:
    return kana.replace(PARTS_MEET, "").replace(" ", "")


def _said(kana: str, lemma: str, parts: str) -> str:
    """Return the kana of an entry as it is said, marked where its parts meet."""
    said = kana.replace(" ", PARTS_MEET if parts else f" {PARTS_MEET}")  # 梅花: ume no hana
    if lemma.endswith("は") and kana.endswith("は") and len(kana) > 1 and lemma != "はは":
        return said[:-1] + "わ"  # 今は, ものかは: the particle closes the word
    return said


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
    written: str, *, connection: int = 0, cost: int = UNKNOWN_COST, part_of_speech: str = "未知語"
) -> ReadWord:
    """Return a word no dictionary has; it stands for itself, but for marks without a reading."""
    if written[:1] > _LAST_OF_THE_FIRST_PLANE:
        from inscribe.forms import is_siddham

        if is_siddham(written):
            return _seed_syllable(written)
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


def _seed_syllable(written: str) -> ReadWord:
    """Return Siddham letters as they are said, else as they are spelt."""
    from inscribe.forms import seed, spelt

    found = seed(written)
    said = hiragana(found.kana) or spelt(written)
    return ReadWord(written, said, "記号-文字", gloss=found.gloss, known=bool(found.kana))


def unread_piece(sign: str, count: int) -> ReadWord:
    """Return a sign that cannot be read, standing for ``count`` morae."""
    piece = unknown_piece(sign, cost=4000 + 800 * count, part_of_speech="補助記号")
    piece.hears(beat_number(Beat(count, False, False, False, False)))
    return piece
