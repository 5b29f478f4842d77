"""Names of which a part is written in kana: とし女, 恒とも, たね広.

The kana of such a name must be what a character of names is read as, and its kanji one that names
usually have in that place; so 花のいろ and しら雪 are none.

>>> mixed_name("恒とも"), mixed_name("花いろ")
(('つね', 'とも'), ())
"""

from __future__ import annotations

from inscribe.reading.names.elements import Position, choices, preferred_readings, usualness
from inscribe.reading.names.shapes import half_in_kana, is_mixed_name
from inscribe.reading.spelling import hiragana, is_kanji_only

_WOMAN = "女"
_USUAL = 1.4  # usualness of a kanji that such a name may have
_LEAST_SHARE = 0.5  # of its first reading


def is_signed_with_mixed_name(text: str) -> bool:
    """Whether a text is a name half in kana, with residence, verb and kao at most.

    >>> is_signed_with_mixed_name("たね広作"), is_signed_with_mixed_name("夢のあと")
    (True, False)
    """
    name = half_in_kana(text)
    return bool(name and mixed_name(name))


def mixed_name(name: str) -> tuple[str, ...]:
    """Return the two halves of a name half in kana as they are read; empty where it is none."""
    if is_kanji_only(name) or not is_mixed_name(name):
        return ()
    kana_first = not "\u4e00" <= name[0] <= "\u9fff"
    kana, kanji = (name[:-1], name[-1]) if kana_first else (name[1:], name[0])
    kana = hiragana(kana)
    if kana_first and kanji == _WOMAN:
        verb = kana[-1] == "る" and kana not in preferred_readings()
        return () if verb or kana[-1] in "のが" else (kana, "じょ")
    read = _kanji_reading(kanji, "last" if kana_first else "first")
    if not read or kana not in preferred_readings():
        return ()
    return (kana, read) if kana_first else (read, kana)


def _kanji_reading(char: str, place: Position) -> str:
    """Return the name reading of a character that is usual in that place, or nothing."""
    if usualness(char, place) < _USUAL:
        return ""
    best = choices(char, place)[0]
    return "" if best.is_on or best.share < _LEAST_SHARE else best.kana
