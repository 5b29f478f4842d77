"""Whether a sign says what a source has in another spelling, and how usual that is.

>>> says("夢", "ゆめ") > says("夢", "はな") == 0
True
>>> says("糸", "ひと")  # letters fall together within words, not where a word begins
0.0
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.spelling import hiragana, is_kana
from inscribe.sources import letters

_BY_KANA = 0.3  # weight of a kana that says the same as a stretch of the source
_IN_VERSE = 0.8  # of a kanji whose reading is a word of verse ...
_NATIVE = 0.5  # ... is listed among its native readings
_CHINESE = 0.03  # ... or is its Chinese reading: used for its sound, as 奈 in 奈良
_USUAL_READINGS = 4  # native readings of a kanji that count
_H_ROW = frozenset("はひふへほ")


def says(sign: str, text: str) -> float:
    """Return how well one sign says what a stretch of the source says, from 0 to 1."""
    if is_kana(sign):
        return _BY_KANA * (letters(sign) == letters(text))
    return _sounds(sign).get(_key(text), 0.0) if text else 0.0


def left_over(kanji: str, text: str, signs: int) -> str:
    """Return what of a stretch of kana is left when a kanji has said its beginning.

    >>> left_over("思", "おもひ", 1)
    'ひ'
    """
    cuts = [cut for cut in range(1, len(text)) if says(kanji, text[:cut])]
    best = min(cuts, key=lambda cut: abs(len(text) - cut - signs), default=len(text))
    return text[best:]


@tables.cached(4096)
def _key(text: str) -> tuple[str, bool]:
    return letters(text), text[0] in _H_ROW


@tables.cached(8192)
def _sounds(kanji: str) -> dict[tuple[str, bool], float]:
    """Return the sounds of a kanji as verse has it, with weights."""
    found: dict[tuple[str, bool], float] = {}
    for kana, weight in _readings(kanji):
        if kana:
            found[_key(kana)] = max(weight, found.get(_key(kana), 0.0))
    return found


def _readings(kanji: str) -> Iterator[tuple[str, float]]:
    from inscribe.forms import readings
    from inscribe.reading import verse

    known = readings(kanji)
    for piece in verse.readings_of(kanji):
        yield piece.kana, _IN_VERSE
    for kun in known.kun[:_USUAL_READINGS]:
        stem, _, ending = kun.strip("-").partition(".")
        yield stem, _NATIVE
        yield stem + ending, _NATIVE
    for on in known.on:
        yield hiragana(on), _CHINESE
