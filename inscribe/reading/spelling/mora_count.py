"""Counting morae: one kana is a mora, a small ゃ ゅ ょ ァ ... belongs to the one before it.

>>> morae("きょう"), morae("あき"), morae("つってん")
(2, 2, 4)
"""

from __future__ import annotations

_SMALL = "ゃゅょぁぃぅぇぉゎャュョァィゥェォヮ|・、。 　"


_BARE_VOWELS = frozenset("あいうえお")


def morae(kana: str) -> int:
    """Return the number of morae of a word in kana."""
    return len(kana) - sum(kana.count(small) for small in _SMALL if small in kana)


def begins_with_vowel(kana: str) -> bool:
    """Whether a word begins with a bare vowel.

    Inside a word, the vowels of current spelling were mostly は-row or わ-row kana, and not bare.
    """
    return kana[:1] in _BARE_VOWELS
