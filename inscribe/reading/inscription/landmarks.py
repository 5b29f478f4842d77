"""Places that are all of a text or title: 東大寺, 龍田川 Tatsutagawa, 明石浦 Akashi no ura."""

from __future__ import annotations

from inscribe.forms import carved_between
from inscribe.reading.names import known, places_of_verse, readings
from inscribe.reading.passages import OF_A_PLACE, is_landmark
from inscribe.reading.spelling import hepburn
from inscribe.reading.words import InscribedText, Token

_SIGHTS = frozenset("川山橋滝野")
_PAIR = 2  # signs: 大川, 松山 may as well be names


def landmark(text: InscribedText) -> tuple[Token, ...]:
    """Return the words of a place as titles say it; nothing where the text is none."""
    plain = text.normal.text
    end, said = len(plain) - 1, OF_A_PLACE.get(plain[-1:], "")
    sung = places_of_verse().get(plain, "")
    joined = sung.replace(" ", "")
    if said and (joined.endswith(f"の{said}") or (not sung and is_landmark(plain))):
        head = joined.removesuffix(f"の{said}")
        of_it = _word(text, end, end + 1, f"の {said}", f"no {hepburn(said)}")
        return _place(text, end, head), of_it
    sight = plain[-1:] in _SIGHTS and len(plain) > _PAIR and bool(known(plain).place)
    return (_place(text, len(plain), sung),) if sight or is_landmark(plain) else ()


def _place(text: InscribedText, end: int, sung: str) -> Token:
    """Return the signs up to an offset as the place they are, read as it is sung of."""
    place = text.normal.text[:end]
    if kana := sung or places_of_verse().get(place):
        letters = (word if word == "no" else word.capitalize() for word in hepburn(kana).split())
        return _word(text, 0, end, kana, " ".join(letters))
    best = readings(place, "place")[0]
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
