"""Temples, lakes, islands and roads that are all of a text: 東大寺, 琵琶湖, 淡路島, 東海道.

ENAMDICT has them as places, and no list of families counts anybody so called (小野寺 is a family).
"""

from __future__ import annotations

from inscribe.forms import carved_between
from inscribe.reading.names import known, readings, surnames
from inscribe.reading.words import InscribedText, Token

_ENDS = frozenset("寺湖島嶋道")
_SHORTEST = 3  # signs: 光寺, 大島 may as well be names


def is_landmark(plain: str) -> bool:
    """Whether a text is the name of a landmark and nothing else.

    >>> is_landmark("東大寺"), is_landmark("小野寺"), is_landmark("大島")
    (True, False, False)
    """
    if len(plain) < _SHORTEST or plain[-1] not in _ENDS:
        return False
    return bool(known(plain).place) and not surnames(plain)


def landmark(text: InscribedText) -> tuple[Token, ...]:
    """Return the one word that a landmark is; nothing where the text is none."""
    normal = text.normal
    if not is_landmark(normal.text):
        return ()
    best = readings(normal.text, "place")[0]
    word = Token(
        carved_between(normal, 0, len(normal.text) - 1),
        normal.text,
        best.plain_kana,
        best.romaji,
        normal.origin[0],
        normal.origin[-1],
        part_of_speech="place",
    )
    return (word,)
