"""The lines of a Chinese text, each read: as a saying, or in Japanese order by the grammar.

Verse has lines of five or seven signs, prose goes in fours; column ends count for little, as
carvers end columns where the metal ends. Of all ways to divide a text the one is taken whose lines
read best.

>>> [line.text for line in read_lines("孤村煙雨暗遠寺暮鐘鳴", frozenset())]
['孤村煙雨暗', '遠寺暮鐘鳴']
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.chinese.grammar import parse
from inscribe.reading.chinese.phrases import Phrase, Said
from inscribe.reading.chinese.sayings import Saying, known_saying

_LENGTHS = (5, 7, 4)  # of lines that follow one another
_LONGEST = 10  # signs of a line that is neither
_LONGEST_TEXT = 84  # signs, twelve lines of seven
_BEATS = {4: (2,), 5: (2,), 7: (2, 4), 8: (2, 4, 6)}
_VERSE = (5, 7)
_A_LINE = 0.5  # what each further line costs
_BREAK_WITHIN = 0.3  # a column ends inside a line
_UNEVEN = 1.5  # lines are not of one length
_SAYING_COST = 0.5  # of each sign


class ReadLine(NamedTuple):
    """A line with the saying it is, or its phrase in Japanese order."""

    text: str
    saying: Saying | None
    phrase: Phrase | None

    @property
    def cost(self) -> float:
        """What its reading costs in the grammar's units."""
        if self.phrase is None:
            return _SAYING_COST * len(self.text)
        return self.phrase.cost


def read_lines(text: str, breaks: frozenset[int]) -> tuple[ReadLine, ...]:
    """Return the lines of a text in kanji, or nothing where it cannot be divided or is long."""
    best: tuple[ReadLine, ...] = ()
    if len(text) > _LONGEST_TEXT:
        return best
    least = float("inf")
    for cuts in _divisions(len(text), breaks):
        lines = [_read(text[start:end]) for start, end in pairwise((0, *cuts, len(text)))]
        if all(line.saying or line.phrase for line in lines):
            within = len([at for at in breaks if at not in cuts])
            uneven = _UNEVEN * (len({len(line.text) for line in lines}) > 1)
            cost = sum(line.cost for line in lines) + _A_LINE * len(cuts)
            cost += _BREAK_WITHIN * within + uneven
            if cost < least:
                best, least = tuple(lines), cost
    return best


def is_verse(text: str) -> bool:
    """Return whether a line is as long as a line of verse."""
    return len(text) in _VERSE


def _divisions(length: int, breaks: frozenset[int]) -> Iterator[tuple[int, ...]]:
    """Yield the places where lines may begin, the first one left out."""
    if length <= _LONGEST and length != 2 * _VERSE[0]:
        yield ()
    for each in _LENGTHS:
        if length > each and length % each == 0:
            yield tuple(range(each, length, each))
    inside = sorted(at for at in breaks if 0 < at < length)
    if inside and max(b - a for a, b in pairwise((0, *inside, length))) <= _LONGEST:
        yield tuple(inside)
    if length > _LONGEST and all(length % each for each in _LENGTHS):
        yield tuple(range(_LONGEST - 2, length - 1, _LONGEST - 2))


@tables.cached(1024)
def _read(text: str) -> ReadLine:
    saying = known_saying(text) if len(text) > 1 else None
    phrase = None if saying else parse(text, _BEATS.get(len(text), ()))
    if phrase is not None and not is_verse(text):
        phrase = phrase.with_topic()
    return ReadLine(text, saying, phrase)


def words_in_order(text: str) -> tuple[Said, ...]:
    """Return the words of a text as the grammar puts them in Japanese order, nothing if it cannot.

    >>> [(word.first, word.kana) for word in words_in_order("不知老")]
    [(2, 'おい を'), (1, 'しら'), (0, 'ず')]
    """
    found: list[Said] = []
    start = 0
    for line in read_lines(text, frozenset()) or (ReadLine(text, None, None),):
        phrase = line.phrase or parse(line.text, _BEATS.get(len(line.text), ()))
        if phrase is None:
            return ()
        words = phrase.ending("終止形")
        found += [word._replace(first=word.first + start) for word in words]
        start += len(line.text)
    return tuple(found)
