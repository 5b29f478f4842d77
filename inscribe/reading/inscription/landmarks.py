"""Temples, lakes, islands and roads that are all of a text: 東大寺, 琵琶湖, 淡路島, 東海道."""

from __future__ import annotations

from inscribe.forms import carved_between
from inscribe.reading.names import readings
from inscribe.reading.passages import is_landmark
from inscribe.reading.words import InscribedText, Token


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
