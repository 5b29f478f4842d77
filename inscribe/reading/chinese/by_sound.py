"""Chinese text without return marks: each sign by its Chinese sound, where words would be guessed.

A dictionary of Japanese finds words, and even people's names, in any row of characters. Where what
it finds is no run of Chinese compounds, a plain sound for each sign says less and is true.

>>> [piece.romaji for piece in sign_by_sign("坐看雲起時")]
['za', 'kan', 'un', 'ki', 'ji']
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.spelling import hiragana
from inscribe.reading.words import ReadWord, unknown_piece

NOTE = "its Chinese sound; no word is guessed"
_IN_COMPOUNDS = 0.7  # of the signs must stand in compounds for the words to be believed
_ORIGINS = ("漢", "固")  # Chinese; proper names (明治), people's left out
_PERSON = "人名"


def are_compounds(words: Sequence[ReadWord], *, verse: bool) -> bool:
    """Whether the words of a text in kanji are mostly compounds of Chinese origin, and no names.

    In ``verse``, where words of one sign are the rule, all must be.
    """
    if any(_PERSON in word.part_of_speech for word in words):
        return False
    signs = sum([word.length for word in words])
    sure = [word for word in words if word.length > 1 and word.known and word.origin in _ORIGINS]
    return sum([word.length for word in sure]) >= (1 if verse else _IN_COMPOUNDS) * signs


def sign_by_sign(text: str) -> list[ReadWord]:
    """Return each kanji as a word with its first Chinese reading; its first native one, if none."""
    from inscribe.forms import readings

    words = []
    for sign in text:
        found = readings(sign)
        sounds = found.on or tuple(kun.partition(".")[0].strip("-") for kun in found.kun)
        if sounds:
            piece = ReadWord(
                sign, hiragana(sounds[0]), "名詞-普通名詞-一般", origin="漢", note=NOTE
            )
        else:
            piece = unknown_piece(sign)
        words.append(piece)
    return words
