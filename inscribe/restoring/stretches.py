"""What a stretch of a signature may be: its classes, or the words it agrees with where it is worn.

Each stretch is looked up once; what was found is kept for the next inscription, up to so many
bytes: 嶺□ alone may be some 3,000 names.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.restoring.chances import INSIDE, word_chances
from inscribe.restoring.name_chances import (
    NO_NAMES,
    UNREAD,
    Names,
    fillings,
    place_chances,
    surname_chances,
)

LONGEST = 8  # signs of a word
_LONGEST_NAME = 5
_LONGEST_UNREAD_NAME = 2
_NAMES = ("name", "art_name", "common_name")
_MOST_LEGIBLE = 3000  # legible stretches kept, each with a chance for a few classes
MOST_BYTES = 48 * 2**20  # kept of worn stretches, those used last
_BYTES_A_WORD = 300  # of a word that agrees, and of the sign it has in the worn place; measured


class PossibleSign(NamedTuple):
    """A sign that may stand in a worn place: its chance, and the likeliest word with it there."""

    chance: float
    best: float
    word: str


class Worn:
    """The words of one class that agree with a worn stretch, with their chances."""

    __slots__ = ("_signs", "chance", "words")

    def __init__(self, words: tuple[tuple[float, str], ...]) -> None:
        self.words = words
        self.chance = sum(chance for chance, _ in words)
        self._signs: dict[int, dict[str, PossibleSign]] = {}

    def signs_at(self, offset: int) -> dict[str, PossibleSign]:
        """Return the signs that these words have at an offset."""
        if offset not in self._signs:
            found: dict[str, PossibleSign] = {}
            for chance, word in self.words:
                known = found.get(word[offset])
                if known is None:
                    found[word[offset]] = PossibleSign(chance, chance, word)
                else:
                    best = (chance, word) if chance > known.best else known[1:]
                    found[word[offset]] = PossibleSign(known.chance + chance, *best)
            self._signs[offset] = found
        return self._signs[offset]


Found = tuple[tuple[str, Worn], ...]  # the words of each class that agree with a stretch


class WornStretches:
    """Looks stretches up, names to be expected in a collection among them."""

    def __init__(self, names: Names = NO_NAMES) -> None:
        self._names = names
        self._legible: dict[str, dict[str, float]] = {}
        self._worn: dict[str, Found] = {}  # the stretch used last comes last
        self._bytes = 0  # of what is kept in _worn

    def legible(self, stretch: str) -> dict[str, float]:
        """Return the chance that a word of each class is this one."""
        if stretch not in self._legible:
            if len(self._legible) >= _MOST_LEGIBLE:
                self._legible.clear()
            self._legible[stretch] = self._classes(stretch)
        return self._legible[stretch]

    def worn(self, stretch: str) -> Found:
        """Return the words of each class that agree with a stretch with unread signs."""
        found = self._worn.pop(stretch, None)
        if found is None:
            found = self._agreeing(stretch)
            self._bytes += _size(found)
        self._worn[stretch] = found
        while self._bytes > MOST_BYTES and len(self._worn) > 1:
            oldest = next(iter(self._worn))
            self._bytes -= _size(self._worn.pop(oldest))
        return found

    def _agreeing(self, stretch: str) -> Found:
        by_kind: defaultdict[str, list[tuple[float, str]]] = defaultdict(list)
        for kind, chance, word in self._matching(stretch):
            by_kind[kind].append((chance, word))
        of_kind = {kind: Worn(tuple(words)) for kind, words in by_kind.items()}
        return tuple((each, found) for kind, found in of_kind.items() for each in _inside_too(kind))

    def _classes(self, stretch: str) -> dict[str, float]:
        found = dict(word_chances().get(stretch, {}))
        if len(stretch) <= _LONGEST_NAME:
            for kind, chances in _listed_names().items():
                if stretch in chances:
                    found[kind] = chances[stretch]
            for kind in _NAMES:
                if chance := sum(chance for chance, _ in fillings(stretch, kind, self._names)):
                    found[kind] = found.get(kind, 0.0) + chance
        return {each: chance for kind, chance in found.items() for each in _inside_too(kind)}

    def _matching(self, stretch: str) -> Iterator[tuple[str, float, str]]:
        agreeing = re.compile("(?<=\n)" + re.escape(stretch).replace(UNREAD, "[^\n]") + "(?=\n)")
        for word in agreeing.findall(_joined_words().get(len(stretch), "")):
            for kind, chance in word_chances()[word].items():
                yield kind, chance, word
        unread = stretch.strip(UNREAD) == ""
        if len(stretch) <= (_LONGEST_UNREAD_NAME if unread else _LONGEST_NAME):
            for kind, chances in _listed_names().items():
                for word in agreeing.findall(_joined_names()[kind].get(len(stretch), "")):
                    yield kind, chances[word], word
            for kind in _NAMES:
                for chance, word in fillings(stretch, kind, self._names):
                    yield kind, chance, word


@tables.cached()
def common() -> WornStretches:
    """Return what is known of stretches where no names are expected."""
    return WornStretches()


def _size(found: Found) -> int:
    """Return about how many bytes the words of a worn stretch take."""
    return _BYTES_A_WORD * (1 + sum(len(worn.words) for worn in {worn for _, worn in found}))


def _inside_too(kind: str) -> tuple[str, ...]:
    return (kind, *INSIDE.get(kind, ()))


@tables.cached()
def _listed_names() -> dict[str, dict[str, float]]:
    return {"surname": surname_chances(), "unlisted_place": place_chances()}


@tables.cached()
def _joined_names() -> dict[str, dict[int, str]]:
    return {kind: _joined(tuple(chances)) for kind, chances in _listed_names().items()}


@tables.cached()
def _joined_words() -> dict[int, str]:
    return _joined(tuple(word_chances()))


def _joined(words: tuple[str, ...]) -> dict[int, str]:
    """Return words by their length, each between line ends, to be searched at once."""
    by_length: defaultdict[int, list[str]] = defaultdict(list)
    for word in words:
        by_length[len(word)].append(word)
    return {length: "\n" + "\n".join(each) + "\n" for length, each in by_length.items()}
