"""What the sources have in a worn place: the texts found, held against the inscription.

A source spelled otherwise helps too: where it has つき and one sign is worn, 月 is meant.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from inscribe import notation
from inscribe.collate import collate
from inscribe.collate.sounds import is_kana, is_kanji
from inscribe.errors import InputError
from inscribe.forms import same_character
from inscribe.reading.verse import marks_voicing
from inscribe.signs import Transcription
from inscribe.sources.find import Hit, find
from inscribe.sources.keys import letters
from inscribe.sources.library import Library

MOST_HITS = 3
LEAST_SCORE = 0.1
SURE = 0.98  # the most that sources together can weigh
_SAME = 1.0
_SAME_SOUND = 0.3  # weight of a sign that says what the source says in another spelling
_WORN_KANJI = 0.8  # the same where the source has more kana than a sign can hold
_OTHERWISE = 0.0
_OPEN_VOICING = 0.7  # of a voiced kana where the source marks no voicing, the inscription does
_KANJI_STEM = 1.4  # of a kanji, where a single kana begins a word in a source without kanji
_USUAL_READINGS = 4  # native readings of a kanji that count


@dataclass(frozen=True, slots=True)
class Answer:
    """What a source has where the inscription has a worn place, and how probable the source is."""

    hit: Hit
    text: str
    signs: int  # how many signs are worn there together
    position: int  # which of them this is, from 0
    spelled_out: bool = False  # the source is wholly in kana, the inscription is not
    voiced: bool = True  # the source marks voicing


def sources_of(text: Transcription, library: Library) -> tuple[Hit, ...]:
    """Return the texts that may be the source, the likeliest first; none if nothing is legible."""
    try:
        hits = find(library, text, MOST_HITS)
    except InputError:
        return ()
    return tuple(hit for hit in hits if hit.score >= LEAST_SCORE)


def answers(text: Transcription, hits: Iterable[Hit]) -> dict[int, list[Answer]]:
    """Return what each source has for each sign of ``text`` that is in a worn group, by sign."""
    found: dict[int, list[Answer]] = {}
    for hit in hits:
        passage = "\n".join(hit.text.lines[hit.first_line : hit.last_line + 1])
        try:
            source = notation.parse(passage)
        except InputError:
            continue
        spelled_out = not _has_kanji(source) and _has_kanji(text)
        source_voiced = marks_voicing(source.text)
        for group in collate(text, source).groups:
            size = len(group.copy)
            for sign in range(group.copy.start, group.copy.end):
                if group.source.text and group.kind == "unread":
                    position = sign - group.copy.start
                    answer = Answer(
                        hit, group.source.text, size, position, spelled_out, source_voiced
                    )
                    found.setdefault(sign, []).append(answer)
    return found


def _has_kanji(text: Transcription) -> bool:
    return any(map(is_kanji, text.text))


def weigh(answer: Answer, language: dict[str, float], *, voiced: bool) -> dict[str, float]:
    """Return the share of each sign that the source lets stand, from what it has there.

    ``language`` are the logarithms of the signs' weights by all other evidence, which decide
    between the spellings of one sound.
    """
    text = answer.text
    if len(text) == answer.signs:  # sign for sign
        stands = text[answer.position]
        match = _spelled_out if answer.spelled_out else _match
        open_voicing = voiced and not answer.voiced
        matches = {sign: match(sign, stands, open_voicing) for sign in {*language, stands}}
    elif answer.signs == 1:
        matches = {sign: _sounds_like(sign, text) for sign in language}
    else:
        return _among(text, language)
    kept = {sign: match for sign, match in matches.items() if match > 0}
    if not kept:
        return _among(text, language)
    floor = min(language.values(), default=0.0)
    top = max(language.get(sign, floor) for sign in kept)
    # Where the source says which sign it is, the language has little say.
    least, divisor = (-4.0, 4.0) if len(text) == answer.signs else (-30.0, 2.0)
    if answer.spelled_out:
        least, divisor = -30.0, 1.8
    shares = {
        sign: match * math.exp(max(least, (language.get(sign, floor) - top) / divisor))
        for sign, match in kept.items()
    }
    total = sum(shares.values())
    return {sign: share / total for sign, share in shares.items()}


def _among(text: str, language: dict[str, float]) -> dict[str, float]:
    """Return shares where only the stretch is known, not which of its signs stands here."""
    signs = [sign for sign in dict.fromkeys(text) if is_kana(sign) or is_kanji(sign)]
    floor = min(language.values(), default=0.0)
    top = max((language.get(sign, floor) for sign in signs), default=0.0)
    shares = {sign: math.exp((language.get(sign, floor) - top) / 2) for sign in signs}
    total = sum(shares.values()) or 1.0
    return {sign: share / total for sign, share in shares.items()}


def _match(sign: str, stands: str, open_voicing: bool) -> float:
    if sign == stands:
        return _SAME
    if same_character(sign, stands):
        return 0.1
    if is_kana(sign) and is_kana(stands) and letters(sign) == letters(stands):
        return _OPEN_VOICING if open_voicing else 0.05
    if is_kana(stands) != is_kana(sign):
        return 0.02 * _sounds_like(sign, stands)
    return _OTHERWISE


def _spelled_out(sign: str, stands: str, open_voicing: bool) -> float:
    """Return how well a sign answers one kana of a source that has no kanji at all."""
    if is_kana(sign):
        return _match(sign, stands, open_voicing)
    return _KANJI_STEM * _sounds_like(sign, stands)


def may_say(sign: str, text: str) -> bool:
    """Return whether a sign may be another spelling of what a source has.

    >>> may_say("夢", "ゆめ"), may_say("夢", "はな")
    (True, False)
    """
    return _sounds_like(sign, text) > 0


def _sounds_like(sign: str, text: str) -> float:
    """Return how well one sign says what a stretch of the source says."""
    if is_kana(sign):
        return _SAME_SOUND * (letters(sign) == letters(text))
    return _WORN_KANJI * (letters(text) in _readings(sign))


@lru_cache(maxsize=8192)
def _readings(kanji: str) -> frozenset[str]:
    """Return the sounds of a kanji as verse has it, endings left out or written."""
    from inscribe.forms import readings
    from inscribe.reading import mecab

    found = readings(kanji)
    said = {piece.kana for piece in mecab.readings_of(kanji)}
    for kun in found.kun[:_USUAL_READINGS]:
        stem, _, ending = kun.strip("-").partition(".")
        said |= {stem, stem + ending}
    return frozenset(letters(kana) for kana in said if kana)


def named(hit: Hit) -> str:
    """Return what to call a source, and how probable it is."""
    return f"{hit.text.title or hit.text.id} (probability {hit.score:.2f})"
