"""A text with one place left open: what its words cost with each sign that may stand there.

What stands before and after the place is searched once, as MeCab does it (least cost of words and
connections), and kept by the class of the word that it meets; only the words over the place are
looked up sign by sign, those of a sign, and of a sign with the one after it, once for all texts.
Many classes have the same words at costs that differ alike; the best of them stands for all.
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
_NUMBERS = 1 << 20  # more than there are words of one sign
_RECENT = 400  # signs and sets of signs whose words are kept

# By the beats of the words, what they cost with each sign that makes them the cheapest.
Ways = dict[tuple[int, ...], dict[str, int]]


class _Over(NamedTuple):
    """A word over the place as its neighbours meet it, and its beat."""

    first: int  # how many signs before the place it begins
    left: int
    beat: int
    last: int  # how many signs after the place it ends
    right: int


class _Class(NamedTuple):
    """Words that meet their neighbours alike."""

    left: int
    right: int
    cost: int  # that of the cheapest
    words: list[tuple[str, int]]  # the sign in the place, and how much dearer, with its number


class _Words(NamedTuple):
    """The words that begin in the place and end at the same offset.

    Classes stand together that have the same signs, each so much dearer than the cheapest: where
    one of them is cheaper in a place than the others, it is so for all of its signs. A word's
    number is its place among all words; a cost times ``_NUMBERS`` and the number are one sum, the
    least of which is the word that MeCab takes.
    """

    alike: list[list[_Class]]
    over: list[_Over]  # by number
    further: list[tuple[str, str, int]]  # where words may go on: the file, the sign, the place


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

    def cheapest(self, signs: tuple[str, ...]) -> Ways:
        """Return the cheapest words of the text with each sign that words have in the place.

        Of equals those are taken that begin later, as MeCab takes them.
        """
        best: dict[str, int] = {}
        chosen: dict[str, _Over] = {}
        for then in ("", self._after[:1])[: len(self._after) + 1]:
            words = _words_of(self._names, signs, then)
            for sign, summed in self._best_of(words, len(then)).items():
                if summed // _NUMBERS < best.get(sign, _FAR):
                    best[sign] = summed // _NUMBERS
                    chosen[sign] = words.over[summed % _NUMBERS]
        for sign, first, name, longer, last in self._longer(signs):
            before, after = self._ended[-1 - first], self._begun[last]
            for left, right, _, cost, feature, _ in longer:
                cost += before[left] + after[right]
                if cost < best.get(sign, _FAR):
                    best[sign] = cost
                    chosen[sign] = _Over(first, left, _beat(name, feature), last, right)
        ways: Ways = {}
        read_so: dict[_Over, dict[str, int]] = {}
        for sign, over in chosen.items():
            if over not in read_so:
                before, after = self._ended[-1 - over.first], self._begun[over.last]
                beats = (*before.beats[over.left], over.beat, *after.beats[over.right])
                read_so[over] = ways.setdefault(beats, {})
            read_so[over][sign] = best[sign]
        return ways

    def _best_of(self, words: _Words, last: int) -> dict[str, int]:
        """Return what the text costs with the best word of each sign, with the word's number."""
        before, after = self._ended[-1], self._begun[last]
        best: dict[str, int] = {}
        for alike in words.alike:
            besides = [before[left] + after[right] + cost for left, right, cost, _ in alike]
            least = min(besides)
            summed = least * _NUMBERS
            for beside, same in zip(besides, alike, strict=True):
                for sign, more in same.words if beside == least else ():
                    if summed + more < best.get(sign, _FAR * _NUMBERS):
                        best[sign] = summed + more
        return best

    def _longer(
        self, signs: tuple[str, ...]
    ) -> Iterator[tuple[str, int, str, list[CompiledWord], int]]:
        """Yield other words over the place: how many signs before they begin, and after end."""
        if self._after:
            further = _words_of(self._names, signs, self._after[0]).further
            for name, sign, place in further:
                for words, last in self._ending_after(name, place, 1):
                    yield sign, 0, name, words, last
        wanted = frozenset(signs)
        for first in range(1, len(self._before) + 1):
            for name in self._names if self._ended[-1 - first].nearest else ():
                file = _file(name)
                place = file.after(file.start, self._before[-first:])
                for sign, reached, here in _going_on(name, place) if place != NOWHERE else ():
                    if sign in wanted:
                        if here:
                            yield sign, first, name, here, 0
                        for words, last in self._ending_after(name, reached, 0):
                            yield sign, first, name, words, last

    def _ending_after(
        self, name: str, place: int, last: int
    ) -> Iterator[tuple[list[CompiledWord], int]]:
        """Yield the words that go on from a place, and how many signs after the open one."""
        file = _file(name)
        for sign in self._after[last:]:
            place = file.after(place, sign)
            if place == NOWHERE:
                break
            last += 1
            yield file.words(place), last

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


class _CheapestWords(NamedTuple):
    """The cheapest words through a stretch: their cost, and the numbers of their beats."""

    cost: int
    beats: tuple[int, ...]


class _Ways(dict[int, int]):
    """What the ways on one side of an offset cost, by the class of the word they meet there."""

    def __init__(self, stride: int, stride_met: int) -> None:
        """Take the steps in the matrix of connections from one class to the next on either side."""
        self._strides = stride, stride_met
        self.nearest: dict[
            int, _CheapestWords
        ] = {}  # by the class of their word nearest to the offset
        self.beats: dict[int, tuple[int, ...]] = {}  # of the cheapest, as ``self`` has the costs

    def note(self, nearest: int, cost: int, beats: tuple[int, ...]) -> None:
        """Note a way, unless a cheaper one has the same class nearest to the offset."""
        known = self.nearest.get(nearest)
        if known is None or cost <= known.cost:
            self.nearest.pop(nearest, None)  # the last of equals is taken
            self.nearest[nearest] = _CheapestWords(cost, beats)

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
def _words_of(names: tuple[str, ...], signs: tuple[str, ...], then: str) -> _Words:
    """Return the words of some files that are one of the signs with what comes then."""
    best: dict[tuple[int, int], dict[str, int]] = {}
    over: list[_Over] = []
    known: dict[_Over, _Over] = {}
    further: list[tuple[str, str, int]] = []
    for name in names:
        file = _file(name)
        for sign in signs:
            place = file.after(file.start, sign + then)
            if place == NOWHERE:
                continue
            further.append((name, sign, place))
            for left, right, _, cost, feature, _ in file.words(place):
                summed = cost * _NUMBERS + len(over)
                same = best.setdefault((left, right), {})
                same[sign] = min(summed, same.get(sign, summed))
                met = _Over(0, left, _beat(name, feature), len(then), right)
                over.append(known.setdefault(met, met))
    alike: dict[frozenset[tuple[str, int]], list[_Class]] = {}
    for (left, right), same in best.items():
        least = min(same.values()) // _NUMBERS
        words = [(sign, summed - least * _NUMBERS) for sign, summed in same.items()]
        costs = frozenset((sign, summed // _NUMBERS) for sign, summed in words)
        alike.setdefault(costs, []).append(_Class(left, right, least, words))
    return _Words([*alike.values()], over, further)


@tables.cached(_RECENT)
def _going_on(name: str, place: int) -> list[tuple[str, int, list[CompiledWord]]]:
    """Return the signs by which words go on from a place, where to, and the words that end so."""
    file = _file(name)
    return [(sign, to, file.words(to)) for sign, to in file.signs_after(place)]
