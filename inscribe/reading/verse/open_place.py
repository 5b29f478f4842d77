"""A text with one place left open: what its words cost with each sign that may stand there.

What stands before and after the place is searched once, as MeCab does it (least cost of words and
connections), and kept by the class of the word that it meets; only the words over the place are
looked up sign by sign, those of one sign once for all texts.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.mecab import NOWHERE, UNKNOWN_MORE, CompiledWord, CompiledWords
from inscribe.reading.verse.tagger import from_folder, verse_connections

_FAR = 1 << 40  # dearer than any reading
_EDGE = 0  # the class of the beginning and the end of a text
_FILES = {True: ("sys.dic",), False: ("sys.dic", "unvoiced.dic")}  # where voicing is marked, or not
_MADE_UP, _SYMBOL = "unk.dic", "SYMBOL"  # the words MeCab makes up, by the sort of their signs
_UNREAD = "□"
_RECENT = 400  # signs and sets of signs whose words are kept

# The class of words on the left, on the right, and the words: their sign, cost and feature.
_SameClasses = tuple[int, int, list[tuple[str, int, int]]]


class Way(NamedTuple):
    """The cheapest words through a stretch: their cost, and the numbers of their beats."""

    cost: int
    beats: tuple[int, ...]


class OpenPlace:
    """What stands beside one place of a text, read once for all signs that may stand there."""

    def __init__(self, before: str, after: str, *, voiced: bool) -> None:
        """Read what stands before and after; ``voiced`` is whether the text marks voicing."""
        self._names = _FILES[voiced]
        self._before, self._after = before, after
        side, _ = verse_connections()
        self._ended = [_Ways(1, side) for _ in range(len(before) + 1)]
        self._begun = [_Ways(side, 1) for _ in range(len(after) + 1)]
        self._read_before()
        self._read_after()

    def cheapest(self, signs: tuple[str, ...]) -> dict[str, Way]:
        """Return the cheapest words of the text with each sign that words have in the place.

        Of equals those are taken that begin later, as MeCab takes them.
        """
        best = dict.fromkeys(signs, _FAR)
        chosen: dict[str, tuple[_Ways, int, str, int, _Ways, int]] = {}
        before, after = self._ended[-1], self._begun[0]
        for name in self._names:
            for left, right, same in _words_of_one_sign(name, signs):
                beside = before[left] + after[right]
                for sign, cost, feature in same:
                    cost += beside
                    if cost <= best[sign] and (cost < best[sign] or feature < chosen[sign][3]):
                        best[sign] = cost
                        chosen[sign] = before, left, name, feature, after, right
        for sign, before, name, words, after in self._longer(signs):
            for left, right, _, cost, feature, _ in words:
                cost += before[left] + after[right]
                if cost < best.get(sign, 0):
                    best[sign] = cost
                    chosen[sign] = before, left, name, feature, after, right
        return {
            sign: Way(best[sign], (*head.beats[left], _beat(name, feature), *tail.beats[right]))
            for sign, (head, left, name, feature, tail, right) in chosen.items()
        }

    def _longer(
        self, signs: tuple[str, ...]
    ) -> Iterator[tuple[str, _Ways, str, list[CompiledWord], _Ways]]:
        """Yield words of several signs over the place, between the ways before and after them."""
        for name in self._names:
            for sign, place in _going_on(name, signs, self._after[:1]):
                yield from self._ending_after(sign, self._ended[-1], name, place, 1)
        for first in range(len(self._before) - 1, -1, -1):
            for name in self._names if self._ended[first].nearest else ():
                file = _file(name)
                place = file.after(file.start, self._before[first:])
                for sign, reached in file.signs_after(place) if place != NOWHERE else ():
                    yield from self._ending_after(sign, self._ended[first], name, reached, 0)

    def _ending_after(
        self, sign: str, before: _Ways, name: str, place: int, end: int
    ) -> Iterator[tuple[str, _Ways, str, list[CompiledWord], _Ways]]:
        """Yield the words that have come to a place so many signs after the open one."""
        file = _file(name)
        while place != NOWHERE:
            yield sign, before, name, file.words(place), self._begun[end]
            if end == len(self._after):
                break
            place = file.after(place, self._after[end])
            end += 1

    def _read_before(self) -> None:
        """Find the ways up to each offset."""
        self._ended[0].note(_EDGE, 0, ())
        for first, ways in enumerate(self._ended[:-1]):
            for end, name, words in self._words_from(self._before, first):
                for left, right, _, cost, feature, _ in words:
                    cost += ways[left]
                    beats = (*ways.beats[left], _beat(name, feature))
                    self._ended[end].note(right, cost, beats)

    def _read_after(self) -> None:
        """Find the ways on from each offset."""
        self._begun[-1].note(_EDGE, 0, ())
        for first in range(len(self._after) - 1, -1, -1):
            for end, name, words in self._words_from(self._after, first):
                ways = self._begun[end]
                for left, right, _, cost, feature, _ in words:
                    cost += ways[right]
                    beats = (_beat(name, feature), *ways.beats[right])
                    self._begun[first].note(left, cost, beats)

    def _words_from(self, text: str, first: int) -> Iterator[tuple[int, str, list[CompiledWord]]]:
        """Yield the words that begin at an offset, what MeCab prefers among equals last."""
        for name in reversed(self._names):
            file = _file(name)
            place = file.start
            for end in range(first + 1, len(text) + 1):
                place = file.after(place, text[end - 1])
                if place == NOWHERE:
                    break
                yield end, name, file.words(place)[::-1]
        if text[first] == _UNREAD:  # those that follow one another are one word
            yield len(text) - len(text[first:].lstrip(_UNREAD)), _MADE_UP, _unread()


class _Ways(dict[int, int]):
    """What the ways on one side of an offset cost, by the class of the word they meet there."""

    def __init__(self, stride: int, stride_met: int) -> None:
        """Take the steps in the matrix of connections from one class to the next on either side."""
        self._strides = stride, stride_met
        self.nearest: dict[int, Way] = {}  # by the class of their word nearest to the offset
        self.beats: dict[int, tuple[int, ...]] = {}  # of the cheapest, as ``self`` has the costs

    def note(self, nearest: int, cost: int, beats: tuple[int, ...]) -> None:
        """Note a way, unless a cheaper one has the same class nearest to the offset."""
        known = self.nearest.get(nearest)
        if known is None or cost <= known.cost:
            self.nearest.pop(nearest, None)  # the last of equals is taken
            self.nearest[nearest] = Way(cost, beats)

    def __missing__(self, met: int) -> int:
        _, cells = verse_connections()
        stride, stride_met = self._strides
        row, best = stride_met * met, _FAR
        beats: tuple[int, ...] = ()
        for nearest, way in self.nearest.items():
            total = way.cost + cells[stride * nearest + row]
            if total <= best:
                best, beats = total, way.beats
        self[met], self.beats[met] = best, beats
        return best


@tables.cached()
def _file(name: str) -> CompiledWords:
    return from_folder(lambda folder: CompiledWords(folder / name))


@tables.cached()
def _unread() -> list[CompiledWord]:
    """Return what signs that cannot be read may be."""
    file = _file(_MADE_UP)
    words = file.words(file.after(file.start, _SYMBOL))
    return [
        (left, right, sort, cost + UNKNOWN_MORE, feature, parts)
        for left, right, sort, cost, feature, parts in words
    ]


@tables.cached(50_000)
def _beat(name: str, feature: int) -> int:
    """Return the number of a word's beat; nobody knows that of signs that cannot be read."""
    if name == _MADE_UP:
        return 0
    return int(_file(name).told(feature).rpartition(",")[2])


@tables.cached(_RECENT)
def _words_of_one_sign(name: str, signs: tuple[str, ...]) -> list[_SameClasses]:
    """Return the words of one file that are one of the signs, by their classes."""
    file = _file(name)
    found: dict[tuple[int, int], list[tuple[str, int, int]]] = {}
    for sign in signs:
        place = file.after(file.start, sign)
        for left, right, _, cost, feature, _ in file.words(place) if place != NOWHERE else ():
            found.setdefault((left, right), []).append((sign, cost, feature))
    return [(left, right, words) for (left, right), words in found.items()]


@tables.cached(_RECENT)
def _going_on(name: str, signs: tuple[str, ...], then: str) -> list[tuple[str, int]]:
    """Return the signs after which another may stand within a word, and where the two lead."""
    file = _file(name)
    places = ((sign, file.after(file.start, sign + then)) for sign in signs if then)
    return [(sign, place) for sign, place in places if place != NOWHERE]
