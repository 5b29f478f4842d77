"""Kana that were typed for kanji that look like them, and kanji for kana: 嶺ハ郎作, 江戸二於テ.

>>> [(found.at, found.instead) for found in mistaken_kana("嶺ハ郎作")]
[(1, '八')]
>>> [(found.at, found.instead) for found in mistaken_kana("江戸二於テ嶺暁作ル")]
[(2, 'ニ')]
>>> list(mistaken_kana("江戸ニ於テ嶺暁作ル"))
[]
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe.forms import look_alikes
from inscribe.reading.signatures import is_kanji, may_be_signature
from inscribe.reading.suspicious.pricing import gain_in_signature, gain_in_words
from inscribe.scripts import hiragana, is_kana

_KANA_FOR_KANJI = "a kana that looks like a kanji"
_KANJI_FOR_KANA = "a kanji that looks like a kana"
_ALONE = "a kana alone among kanji"
_CHEAPER = 4.0  # by what a signature must be cheaper with the other sign
_CHEAPER_BESIDE_KANA = 10.0  # the same where other katakana show that the text has particles
_CHEAPER_WORDS = 8000  # the same in MeCab's costs, where a word that is rare costs as much
_IN_WORDS = frozenset("八二力口卜夕工")  # kanji mistaken for kana; 千 and 才 are kana of verse too
_PARTICLES = frozenset("のにをとはがもてやよりる")
_BRACKET = {"へ": "〈", "ヘ": "〈", "く": "〱"}  # what else a kana alone may have been typed for


class Mistaken(NamedTuple):
    """A sign at an offset of a text, what it may be instead, and why."""

    at: int
    instead: str
    why: str


def mistaken_kana(text: str) -> Iterator[Mistaken]:
    """Yield the kana of a text in current forms that are rather kanji, and the reverse."""
    kana = [at for at, sign in enumerate(text) if is_kana(sign)]
    if not kana:
        return
    as_signature = may_be_signature(text)
    for at, sign in enumerate(text):
        if is_kana(sign):
            yield from _as_kanji(text, at, kana, as_signature)
        elif sign in _IN_WORDS:
            yield from _as_kana(text, at, as_signature)


def _as_kanji(text: str, at: int, kana: list[int], as_signature: bool) -> Iterator[Mistaken]:
    others = [other for other in look_alikes(text[at]) if is_kanji(other)]
    plain = any(not _has_twin(text[other]) for other in kana)
    least = _CHEAPER_BESIDE_KANA if plain else _CHEAPER
    for other in others:
        if as_signature and gain_in_signature(text, at, other) >= least:
            yield Mistaken(at, other, _KANA_FOR_KANJI)
            return
        if not as_signature and gain_in_words(text, at, other) >= _CHEAPER_WORDS:
            yield Mistaken(at, other, _KANA_FOR_KANJI)
            return
    if as_signature and len(kana) == 1 and _stands_alone(text, at):
        yield Mistaken(at, _BRACKET.get(text[at], ""), _ALONE)


def _as_kana(text: str, at: int, as_signature: bool) -> Iterator[Mistaken]:
    for other in filter(is_kana, look_alikes(text[at])):
        gain = (
            gain_in_signature(text, at, other) / _CHEAPER
            if as_signature
            else gain_in_words(text, at, other) / _CHEAPER_WORDS
        )
        if gain >= 1:
            yield Mistaken(at, _in_script_of(text, other), _KANJI_FOR_KANA)
            return


def _in_script_of(text: str, katakana: str) -> str:
    """Return a katakana as hiragana where the text has no other kana."""
    if any("ァ" <= sign <= "ヺ" for sign in text):
        return katakana
    return hiragana(katakana)


def _stands_alone(text: str, at: int) -> bool:
    """Whether a hiragana that is no particle stands between two kanji."""
    between = 0 < at < len(text) - 1 and is_kanji(text[at - 1]) and is_kanji(text[at + 1])
    return between and "ぁ" <= text[at] <= "ゖ" and text[at] not in _PARTICLES


def _has_twin(kana: str) -> bool:
    return any(map(is_kanji, look_alikes(kana)))
