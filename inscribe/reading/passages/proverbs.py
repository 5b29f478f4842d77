"""Proverbs: a motto that is one is read as it is always said, however it is spelled.

The kanji of a text tell which proverb it may be; its kana must then say the same.
"""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.spelling import is_kanji
from inscribe.reading.verse import VerseReading, read_by_source
from inscribe.reading.words import ReadWord

_LEAST_KANJI = 2  # that a text and a proverb share
_SHARED = 0.5  # of the kanji of either, at least
_LONGEST = 60  # signs
_MORE_OR_LESS = 1  # kana by which a text may be longer or shorter than the proverb it is
_KEPT = 1000  # texts that were asked of


class Proverb(NamedTuple):
    """A proverb as the table has it."""

    written: str
    kana: str
    gloss: str


@tables.cached(_KEPT)
def proverb_words(text: str) -> tuple[tuple[ReadWord, ...], Proverb] | None:
    """Return the words of a text that is a proverb, and which one; None if it is none.

    A text is asked of as a whole, as a passage, and when it is read.

    >>> found = proverb_words("急かは廻れ")
    >>> [word.kana for word in found[0]], found[1].written
    (['いそが', 'ば', 'まわれ'], '急がば廻れ')
    """
    for proverb in proverbs_like(text):
        read = read_by_source(text, proverb.kana)
        if read and not read.own and _is_all_of(read, proverb):
            return tuple(read.words), proverb
    return None


def proverbs_like(text: str) -> list[Proverb]:
    """Return the proverbs that share their kanji with a normalised text, the likest first.

    A text of more signs than a proverb has kana says more than it.

    >>> proverbs_like("猿も木から落る")[0].written
    '猿も木から落ちる'
    """
    kanji = set(filter(is_kanji, text))
    if len(kanji) < _LEAST_KANJI or len(text) > _LONGEST:
        return []
    signs = sum(map(str.isalnum, text))
    shared = Counter(proverb for sign in kanji for proverb in _by_kanji().get(sign, ()))
    likely = [
        (count, proverb)
        for proverb, count in shared.items()
        if count >= _LEAST_KANJI
        and signs <= len(proverb.kana) + _MORE_OR_LESS
        and count >= _SHARED * max(len(kanji), len(set(filter(is_kanji, proverb.written))))
    ]
    return [proverb for _, proverb in sorted(likely, key=lambda each: (-each[0], each[1]))]


def _is_all_of(read: VerseReading, proverb: Proverb) -> bool:
    """Whether the words are as long as the proverb, and no piece of it."""
    said = sum(len(word.kana) for word in read.words)
    return abs(said - len(proverb.kana)) <= _MORE_OR_LESS


@tables.cached()
def _by_kanji() -> dict[str, list[Proverb]]:
    """Return the proverbs that have a kanji."""
    found: dict[str, list[Proverb]] = {}
    for row in tables.rows("proverbs"):
        proverb = Proverb(row["written"], row["kana"], row["gloss"])
        for sign in set(filter(is_kanji, proverb.written)):
            found.setdefault(sign, []).append(proverb)
    return found
