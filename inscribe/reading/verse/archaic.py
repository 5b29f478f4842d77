"""How older verse said a word: ime for yume, kamukaze for kamikaze, sosoku for sosogu.

>>> from inscribe.reading.verse.tagger import verse_words
>>> [archaic.kana for word in verse_words("神風の夢") if (archaic := as_of_old(word))]
['かむかぜ', 'いめ']
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.words import ReadWord, said_otherwise

ARCHAIC = "the archaic reading"
COST = 3200  # what it costs more than the reading of later verse; by hand
_FIRST_PART = "神"  # kami by itself was no kamu
_ROWS = ("がぎぐげご", "かきくけこ", "わいうえお", "らりるれろ")


def as_of_old(word: ReadWord) -> ReadWord | None:
    """Return a word as older verse said it; None where it said it alike, or nobody knows."""
    for now, old, written in _beginnings().get(word.kana[:2], ()):
        alone = word.written == written == _FIRST_PART
        if word.kana.startswith(now) and word.written.startswith(written) and not alone:
            return said_otherwise(word, old + word.kana[len(now) :], ARCHAIC)
    return None


@tables.cached()
def _beginnings() -> dict[str, list[tuple[str, str, str]]]:
    """Return what words begin with now and began with, and their kanji, by the first two kana."""
    found: dict[str, list[tuple[str, str, str]]] = {}
    for row in tables.rows("verse_archaic"):
        for now, old in _forms(row["kana"], row["archaic"]):
            found.setdefault(now[:2], []).append((now, old, row["written"]))
    return found


def _forms(now: str, old: str) -> Iterator[tuple[str, str]]:
    """Yield both in every form of a verb, or as they are.

    >>> list(_forms("そそぐ", "そそく"))[:2], list(_forms("もみじ", "もみち"))
    ([('そそが', 'そそか'), ('そそぎ', 'そそき')], [('もみじ', 'もみち')])
    """
    rows = [next((row for row in _ROWS if row[2] == kana), "") for kana in (now[-1], old[-1])]
    if not all(rows):
        yield now, old
        return
    for ending, ended in zip(*rows, strict=True):
        yield now[:-1] + ending, old[:-1] + ended
