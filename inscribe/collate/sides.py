"""One of two texts to be aligned: its signs, their sounds, and every way its stretches are read.

A text is a lattice over the positions between its signs. A reading leads from one position to a
later one and carries the sound the signs between may have: one character with one of its
readings, a word the dictionary knows, or kana that spell a long vowel.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

from inscribe.collate import sounds, words
from inscribe.collate.readings import NO_READINGS, ByLetter, Reading, by_letter, readings_of
from inscribe.forms.normal import NormalText
from inscribe.signs import Certainty, Kind, Sign, Transcription

@dataclass(frozen=True, slots=True)
class Side:
    """A text as the aligner sees it; all tuples have one item a sign."""

    raw: tuple[str, ...]  # as carved
    norm: tuple[str, ...]  # in current forms; "" for a sign that is not there to read
    sort: tuple[str, ...]  # "kana", "kanji", "unread", "gap", "stop" or "other"
    letters: tuple[str, ...]  # the folded sound of kana, else ""
    readings: tuple[ByLetter, ...]  # beyond the sound of kana themselves, by first letter

    def __len__(self) -> int:
        return len(self.raw)

    def part(self, start: int, end: int) -> Side:
        """Return the signs ``start`` to ``end`` as a text of their own."""
        cut = slice(start, end)
        readings = tuple(
            _within(known, end - start - place) for place, known in enumerate(self.readings[cut])
        )
        return Side(self.raw[cut], self.norm[cut], self.sort[cut], self.letters[cut], readings)


def _within(known: ByLetter, room: int) -> ByLetter:
    """Return the readings no longer than ``room`` signs."""
    if all(reading.length <= room for reading in known.get("", ())):
        return known
    return by_letter(reading for reading in known[""] if reading.length <= room)


def side(text: Transcription, normal: NormalText) -> Side:
    """Return ``text`` prepared for alignment; ``normal`` is its normalisation."""
    parts: list[list[str]] = [[] for _ in text.signs]
    for char, origin in zip(normal.text, normal.origin, strict=True):
        parts[origin].append(char)
    norm = tuple("".join(part) for part in parts)
    raw = tuple(sign.text or norm[sign.index] for sign in text.signs)
    sort = tuple(_sort(sign, norm[sign.index]) for sign in text.signs)
    letters = tuple(sounds.fold(n) if s == "kana" else "" for n, s in zip(norm, sort, strict=True))
    return Side(raw, norm, sort, letters, _readings(norm, sort, letters))


def _sort(sign: Sign, norm: str) -> str:
    if sign.kind is Kind.GAP:
        return "gap"
    if sign.certainty is Certainty.UNREADABLE or norm == "□":
        return "unread"
    if sign.kind is not Kind.CHARACTER or not norm:
        return "other"
    if all(map(sounds.is_kana, norm)):
        return "kana"
    if sounds.is_kanji(norm[0]):
        return "kanji"
    return "stop" if unicodedata.category(norm[0])[0] in "PZ" else "other"


def _readings(
    norm: Sequence[str], sort: Sequence[str], letters: Sequence[str]
) -> tuple[ByLetter, ...]:
    found: list[ByLetter] = []
    words_at = _words(norm) if "kanji" in sort else {}
    for at, kind in enumerate(sort):
        if kind == "kana":
            long_vowels = _long_vowels(letters, at)
            found.append(by_letter(long_vowels) if long_vowels else NO_READINGS)
            continue
        own = readings_of(norm[at]) if kind == "kanji" and len(norm[at]) == 1 else NO_READINGS
        if at in words_at:
            own = by_letter([*own.get("", ()), *words_at[at]])
        found.append(own)
    return tuple(found)


def _words(norm: Sequence[str]) -> dict[int, list[Reading]]:
    """Return the dictionary words written with a Chinese character, by the sign they begin with."""
    sign_at: dict[int, int] = {}
    position = 0
    for index, part in enumerate(norm):
        sign_at[position] = index
        position += len(part)
    sign_at[position] = len(norm)
    found: dict[int, list[Reading]] = {}
    for word in words.words("".join(norm)):
        if word.start in sign_at and word.end in sign_at:
            start, length = sign_at[word.start], sign_at[word.end] - sign_at[word.start]
            found.setdefault(start, []).extend(
                Reading(length, pattern, word.plausibility, word.spoken, word.source)
                for pattern in sounds.patterns(word.spoken)
            )
    return found


def _long_vowels(letters: Sequence[str], at: int) -> list[Reading]:
    run = ""
    for part in letters[at : at + 3]:
        if len(part) != 1:
            break
        run += part
    found = [
        Reading(length, written, "long", written, "historical spelling")
        for length, written in sounds.long_spellings(run)
    ]
    if run[:2] == "くわ":
        found.append(Reading(2, "か", "long", "か", "historical spelling"))
    return found
