"""Proverbs: a motto that is one is read as it is always said, however it is spelled.

The kanji of a text tell which proverb it may be; its kana must then say the same.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables
from inscribe.forms import same_character
from inscribe.reading.spelling import is_kanji
from inscribe.reading.verse import read_by_source
from inscribe.reading.words import ReadWord

_ANY = "?"
_LEAST_KANJI = 2
_LONGEST = 60  # signs


class Proverb(NamedTuple):
    """A proverb as the table has it."""

    written: str
    kana: str
    gloss: str


def proverb_words(text: str) -> tuple[list[ReadWord], Proverb] | None:
    """Return the words of a text that is a proverb, and which one; None if it is none.

    >>> found = proverb_words("急かは廻れ")
    >>> [word.kana for word in found[0]], found[1].written
    (['いそが', 'ば', 'まわれ'], '急がば廻れ')
    """
    for proverb in proverbs_like(text):
        read = read_by_source(text, proverb.kana)
        if read:
            return list(read.words), proverb
    return None


def proverbs_like(text: str) -> list[Proverb]:
    """Return the proverbs whose kanji a normalised text has, in order; one in another form.

    >>> [proverb.gloss for proverb in proverbs_like("石の上にも三年")]
    ['perseverance prevails']
    """
    kanji = "".join(filter(is_kanji, text))
    if not len(kanji) >= _LEAST_KANJI or len(text) > _LONGEST:
        return []
    found = {
        proverb: None
        for at in range(len(kanji))
        for own, proverb in _by_kanji().get(kanji[:at] + _ANY + kanji[at + 1 :], ())
        if own == kanji[at] or same_character(own, kanji[at])
    }
    return list(found)


@tables.cached()
def _by_kanji() -> dict[str, list[tuple[str, Proverb]]]:
    """Return the proverbs by their kanji with each in turn left open, and which that one is."""
    found: dict[str, list[tuple[str, Proverb]]] = {}
    for row in tables.rows("proverbs"):
        proverb = Proverb(row["written"], row["kana"], row["gloss"])
        kanji = "".join(filter(is_kanji, proverb.written))
        for at, sign in enumerate(kanji):
            found.setdefault(kanji[:at] + _ANY + kanji[at + 1 :], []).append((sign, proverb))
    return found
