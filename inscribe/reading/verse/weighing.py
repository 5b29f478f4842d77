"""The chance of a poem's reading and of each of its words, from what else they may be read."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import exp, prod

from inscribe.reading.verse.alternatives import FARTHEST, Swap
from inscribe.reading.verse.readings import VerseReading
from inscribe.reading.words import (
    AS_SPELLED,
    OKURIGANA_LEFT_OUT,
    VOICING_NOT_MARKED,
    Chances,
    ReadWord,
    chance,
    chances_of,
)

_BY_SOURCE = 0.97  # of a word that the source spells out in kana; by hand
_A_TIME = 700.0  # of MeCab's units make a reading e times less likely
_THOUSAND = 1000.0


def verse_chances(reading: VerseReading, swaps: Sequence[Swap]) -> Chances:
    """Return the chances of a poem's reading; ``swaps`` are what its words may else be read."""
    words = [_word_chance(word, at, swaps, reading) for at, word in enumerate(reading.words)]
    if reading.own is not None:
        others = [
            sure for word, sure in zip(reading.words, words, strict=True) if word.note != AS_SPELLED
        ]
        return Chances(_BY_SOURCE * prod(others), tuple(words))
    return chances_of("verse", words, dict(_of_the_whole(reading)))


def _word_chance(word: ReadWord, at: int, swaps: Sequence[Swap], reading: VerseReading) -> float:
    if word.note.startswith("settled"):
        return 1.0
    if word.note == AS_SPELLED:
        return _BY_SOURCE
    costs = [swap.cost for swap in swaps if swap.word == at]
    nearest = min(costs, default=FARTHEST)
    in_kana = word.written == word.kana
    evidence = {
        "margin": nearest / _THOUSAND,
        "rivals": sum(exp(-cost / _A_TIME) for cost in costs),
        "kana": float(in_kana),
        "alone": float(not costs),
        "no okurigana": float(word.note == OKURIGANA_LEFT_OUT),
        "no voicing": float(word.note == VOICING_NOT_MARKED),
        "voicing open": float(not reading.voiced and in_kana),
        "unknown": float(not word.known),
        "foreign": float(word.foreign),
        "name": float("固有名詞" in word.part_of_speech),
        "kanji": float(sum(map(_is_kanji, word.written)) > 1),
    }
    return chance("verse word", evidence)


def _is_kanji(sign: str) -> bool:
    return "\u4e00" <= sign <= "\u9fff"


def _of_the_whole(reading: VerseReading) -> Iterator[tuple[str, float]]:
    yield "no metre", float(reading.metre is None)
    yield "broken metre", float(reading.metre is not None and not reading.regular)
    yield "no voicing", float(not reading.voiced)
    yield "searched", float(reading.searched)
    yield "haiku", float(reading.metre is not None and reading.metre.length < 20)
