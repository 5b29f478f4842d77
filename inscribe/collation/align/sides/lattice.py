"""One of two texts to be aligned: its signs, their sounds, and every way its stretches are read.

A text is a lattice over the positions between its signs. A reading leads from one position to a
later one and carries the sound the signs between may have: one character with one of its
readings, a word the dictionary knows, or kana that spell a long vowel.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import takewhile

from inscribe import tables
from inscribe.collation.align.sides import okurigana, words
from inscribe.collation.align.sides.readings import (
    ByLetter,
    Reading,
    by_letter,
    goes_on,
    readings_of,
)
from inscribe.collation.align.sides.repeats import is_mark, with_repeats
from inscribe.collation.align.sides.sounds import Sounds, sounds_of
from inscribe.forms import NormalText, marks
from inscribe.reading import spelling
from inscribe.signs import Certainty, Kind, Sign, Transcription

UNKNOWN = ("unread", "gap")
NEAR = 8  # signs around a difference in which the dictionary's words are looked up


@dataclass(frozen=True)
class Side:
    """A text as the aligner sees it; all tuples have one item a sign."""

    raw: tuple[str, ...]  # as carved
    norm: tuple[str, ...]  # in current forms; "" for a sign that is not there to read
    sort: tuple[str, ...]  # "kana", "kanji", "unread", "gap", "stop" or "other"
    letters: tuple[str, ...]  # the folded sound of kana, else "", as for a mark like 〳〵
    readings: tuple[tuple[ByLetter, ...], ...]  # beyond the sound of kana themselves
    # Whether の may be read, unwritten, before each sign, and behind the last: between two kanji.
    joins: tuple[bool, ...]

    def __len__(self) -> int:
        return len(self.raw)

    @cached_property
    def sounds(self) -> Sounds:
        """The sounds of the text as it is likeliest read."""
        return sounds_of(self.raw, self.norm, self.sort, self.letters, self.readings)

    def readings_at(self, at: int, letter: str) -> Iterator[Reading]:
        """Yield the readings at ``at`` that may begin with ``letter``, all of them for ""."""
        for known in self.readings[at]:
            yield from known.get(letter, ())

    def with_dictionary(self, stretches: Sequence[tuple[int, int]]) -> Side:
        """Return the text with the dictionary's words too, near the given stretches of signs."""
        readings = list(self.readings)
        for start, end in _merged(stretches, len(self)):
            if "kanji" in self.sort[start:end]:
                norm = self.norm[start:end]
                readings[start:end] = _with_words(readings[start:end], norm, words.dictionary_words)
        return replace(self, readings=with_repeats(readings, self.raw, self.letters, self.joins))

    def part(self, start: int, end: int) -> Side:
        """Return the signs ``start`` to ``end`` as a text of their own."""
        if (start, end) == (0, len(self)):
            return self
        cut = slice(start, end)
        readings = tuple(
            _within(known, end - start - place) for place, known in enumerate(self.readings[cut])
        )
        joins = self.joins[start : end + 1]
        return Side(
            self.raw[cut], self.norm[cut], self.sort[cut], self.letters[cut], readings, joins
        )


def _merged(stretches: Sequence[tuple[int, int]], length: int) -> list[tuple[int, int]]:
    """Return ``stretches`` widened by the length of a long word, overlapping ones made one."""
    merged: list[tuple[int, int]] = []
    for start, end in stretches:
        start, end = max(0, start - NEAR), min(length, end + NEAR)
        if merged and start <= merged[-1][1]:
            start, end = merged[-1][0], max(end, merged[-1][1])
            merged.pop()
        merged.append((start, end))
    return merged


def _within(known: tuple[ByLetter, ...], room: int) -> tuple[ByLetter, ...]:
    """Return the readings no longer than ``room`` signs."""
    if all(reading.length <= room for part in known for reading in part[""]):
        return known
    return (by_letter(r for part in known for r in part[""] if r.length <= room),)


def side(text: Transcription, normal: NormalText) -> Side:
    """Return ``text`` prepared for alignment; ``normal`` is its normalisation."""
    parts: list[list[str]] = [[] for _ in text.signs]
    for char, origin in zip(normal.text, normal.origin, strict=True):
        parts[origin].append(char)
    norm = tuple("".join(part) for part in parts)
    raw = tuple(sign.text or norm[sign.index] for sign in text.signs)
    sort = _sorts(text.signs, norm)
    letters = tuple(
        spelling.fold(n) if s == "kana" and not is_mark(r) else ""
        for n, s, r in zip(norm, sort, raw, strict=True)
    )
    joins = _joins(norm, sort, letters)
    readings = with_repeats(_readings(norm, sort, letters), raw, letters, joins)
    return Side(raw, norm, sort, letters, readings, joins)


def _joins(norm: Sequence[str], sort: Sequence[str], letters: Sequence[str]) -> tuple[bool, ...]:
    """Return where two nouns may stand side by side: not before a verb, 花散る is no 花の散る."""
    return (
        False,
        *(
            sort[at - 1] == sort[at] == "kanji"
            and not ((following := _following(letters, at)) and goes_on(norm[at], following))
            for at in range(1, len(norm))
        ),
        False,
    )


def _sorts(signs: Sequence[Sign], norm: Sequence[str]) -> tuple[str, ...]:
    """Return the sort of each sign; a repeat mark is as unread as the sign that it repeats."""
    found: list[str] = []
    for sign in signs:
        sort = _sort(sign, norm[sign.index])
        unresolved = sign.text == norm[sign.index] and sign.text in marks()
        found.append("unread" if unresolved and found and found[-1] in UNKNOWN else sort)
    return tuple(found)


def _sort(sign: Sign, norm: str) -> str:
    if sign.kind is Kind.GAP:
        return "gap"
    if sign.certainty is Certainty.UNREADABLE or norm == "□":
        return "unread"
    if sign.kind is not Kind.CHARACTER or not norm:
        return "other"
    if all(map(spelling.is_kana, norm)) or (is_mark(sign.text) and norm != sign.text):
        return "kana"
    if spelling.is_kanji(norm[0]):
        return "kanji"
    return "stop" if unicodedata.category(norm[0])[0] in "PZ" else "other"


def _readings(
    norm: Sequence[str], sort: Sequence[str], letters: Sequence[str]
) -> tuple[tuple[ByLetter, ...], ...]:
    known: list[tuple[ByLetter, ...]] = []
    for at, kind in enumerate(sort):
        if kind == "kana":
            known.append(_long_vowels(tuple(letters[at : at + 3])))
        elif kind == "kanji" and len(norm[at]) == 1:
            known.append((readings_of(norm[at], _following(letters, at)),))
        else:
            known.append(())
    return _with_words(known, norm, words.table_words) if "kanji" in sort else tuple(known)


def _following(letters: Sequence[str], at: int) -> str:
    """Return the letter of the kana behind a sign, two where the end of a verb may be changed."""
    first, second = (*(letter[:1] for letter in letters[at + 1 : at + 3]), "", "")[:2]
    return first + second if first in okurigana.CHANGED and second in ("て", "た") else first


def _with_words(
    known: Sequence[tuple[ByLetter, ...]],
    norm: Sequence[str],
    find: Callable[[str], Sequence[words.PossibleWord]],
) -> tuple[tuple[ByLetter, ...], ...]:
    """Return the readings with the words that ``find`` finds in the text, placed by sign."""
    sign_at = _sign_at(norm)
    found: dict[int, list[Reading]] = {}
    for word in find("".join(norm)):
        if word.start in sign_at and word.end in sign_at:
            start, length = sign_at[word.start], sign_at[word.end] - sign_at[word.start]
            found.setdefault(start, []).extend(
                Reading(length, pattern, word.plausibility, word.spoken, word.source)
                for pattern in spelling.patterns(word.spoken)
            )
    return tuple(
        (*own, by_letter(_unlike(found[at], own))) if at in found else own
        for at, own in enumerate(known)
    )


def _sign_at(norm: Sequence[str]) -> dict[int, int]:
    """Return the sign that begins at each offset of the text, and the end."""
    places: dict[int, int] = {}
    position = 0
    for index, part in enumerate(norm):
        places[position] = index
        position += len(part)
    places[position] = len(norm)
    return places


def _unlike(words: Sequence[Reading], known: Sequence[ByLetter]) -> list[Reading]:
    """Return the words whose sound is not known already."""
    sounds_of = {(reading.length, reading.pattern) for part in known for reading in part[""]}
    return [word for word in words if (word.length, word.pattern) not in sounds_of]


@tables.cached(16384)
def _long_vowels(letters: Sequence[str]) -> tuple[ByLetter, ...]:
    """Return the readings as a long vowel of kana, given by their letters, up to three."""
    run = "".join(takewhile(lambda part: len(part) == 1, letters))
    found = [
        Reading(length, written, "long", written, "historical spelling")
        for length, written in spelling.long_spellings(run)
    ]
    if run[:2] == "くわ":
        found.append(Reading(2, "か", "long", "か", "historical spelling"))
    return (by_letter(found),) if found else ()
