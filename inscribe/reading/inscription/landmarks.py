"""Places that are all of a text or title: 東大寺, 龍田川 Tatsutagawa, 明石浦 Akashi no ura."""

from __future__ import annotations

from inscribe.forms import carved_between
from inscribe.reading.names import known, place_names, readings
from inscribe.reading.passages import is_landmark
from inscribe.reading.spelling import hepburn
from inscribe.reading.words import InscribedText, Token

_OF_A_PLACE = {"浦": "の うら", "関": "の せき", "里": "の さと"}
_SIGHTS = frozenset("川山橋滝野")
_PAIR = 2  # signs: 大川, 松山 may as well be names


def landmark(text: InscribedText) -> tuple[Token, ...]:
    """Return the words of a place as titles say it; nothing where the text is none."""
    plain = text.normal.text
    end, said = len(plain) - 1, _OF_A_PLACE.get(plain[-1:], "")
    if said and place_names(plain[:end]):
        letters = " ".join(map(hepburn, said.split()))
        return _place(text, end), _word(text, end, end + 1, said, letters)
    sight = plain[-1:] in _SIGHTS and len(plain) > _PAIR and bool(known(plain).place)
    return (_place(text, len(plain)),) if sight or is_landmark(plain) else ()


def _place(text: InscribedText, end: int) -> Token:
    """Return the signs up to an offset as the place they are."""
    best = readings(text.normal.text[:end], "place")[0]
    return _word(text, 0, end, best.plain_kana, best.romaji)


def _word(text: InscribedText, first: int, end: int, kana: str, romaji: str) -> Token:
    normal = text.normal
    return Token(
        carved_between(normal, first, end - 1),
        normal.text[first:end],
        kana,
        romaji,
        normal.origin[first],
        normal.origin[end - 1],
        part_of_speech="place",
    )
