"""A line of Chinese put into Japanese order: the cheapest parse by the usual rules of kundoku.

Every stretch of the line is read in every way the rules allow, from short stretches to long ones,
and the cheapest of each kind is kept (``phrases``). Words come from ``chinese_words.tsv``
and from compounds. What stands in the rhythm of verse (2 + 3 signs, 2 + 2 + 3) goes together.

Source: the school rules of kundoku, from memory. The costs are plain guesses at how usual each
rule is; a sign more that must be guessed costs about 1.

>>> parsed = parse("白日依山尽", (2,))
>>> " ".join(word.kana for word in parsed.ending("終止形"))
'はくじつ やま に よりて つく'
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe.reading.chinese import sign_words
from inscribe.reading.chinese.governing import (
    before_mono,
    before_nari,
    before_no,
    before_ya,
    with_object,
)
from inscribe.reading.chinese.joining import joined, linked, stands_still
from inscribe.reading.chinese.phrases import (
    ADVERBIAL,
    CLAUSE,
    NOUN,
    PREDICATE,
    Phrase,
    Said,
    followed,
)
from inscribe.reading.chinese.sign_words import words_of
from inscribe.reading.chinese.single_words import set_phrase, sign_alone, two_signs

_LONGEST = 24  # signs
_SET_PHRASES = range(3, 6)  # signs
_ACROSS_A_BEAT = 0.7  # a phrase is divided elsewhere than at the beat inside it
_WORD_ACROSS_A_BEAT = 2.5
_AFTER_VERBS = "於于乎"  # 紅於二月花
Cell = dict[str, Phrase]  # the cheapest phrase of each kind
Chart = dict[tuple[int, int], Cell]


class Line(NamedTuple):
    """A line being read: its signs, its beats, the order its return marks ask for (or none)."""

    text: str
    beats: frozenset[int]
    places: Mapping[int, int] | None

    @property
    def is_verse(self) -> bool:
        """Whether it is as long as a line of verse and has its beats."""
        return len(self.text) in (5, 7) and bool(self.beats)

    def divided(self, start: int, cut: int, end: int) -> float:
        """Return what it costs to divide a stretch at a cut beside its beats."""
        inside = [beat for beat in self.beats if start < beat < end]
        return _ACROSS_A_BEAT if inside and cut not in inside else 0.0

    def allows(self, phrase: Phrase) -> bool:
        """Return whether a phrase says its signs in the order the return marks ask for.

        A sign that is said twice (未 imada ... zu) bears the mark of its second place.
        """
        if self.places is None:
            return True
        places: list[int] = []
        for word in phrase.said:
            if word.part_of_speech == "副詞" and any(w.before for w in words_of(word.written)):
                continue
            here = [self.places[word.first + n] for n in range(len(word.written))]
            places += sorted(here) if words_of(word.written) else here  # 不㆑如 is one word
        return all(before < after for before, after in pairwise(places))


def parse(
    text: str, beats: Sequence[int] = (), order: Sequence[int] | None = None
) -> Phrase | None:
    """Return a line in Japanese order, its last verb not inflected yet.

    Args:
        text: the signs of the line, kanji in current forms.
        beats: the signs before which the rhythm of verse divides the line.
        order: the indexes of the signs in the order in which they must be said, if it is known.

    Returns:
        None if the line is empty or too long, or the rules do not lead to ``order``.
    """
    if not 0 < len(text) <= _LONGEST:
        return None
    places = None if order is None else {sign: place for place, sign in enumerate(order)}
    line = Line(text, frozenset(beats), places)
    chart: Chart = {}
    for length in range(1, len(text) + 1):
        for start in range(len(text) - length + 1):
            chart[start, start + length] = _cell(line, chart, start, start + length)
    whole = chart[0, len(text)]
    ends = [whole[kind] for kind in (CLAUSE, PREDICATE) if kind in whole]
    if NOUN in whole:
        ends += [_more(whole[NOUN], 0.8), *_side_by_side(line, chart)]
    ends += _place_last(line, chart)
    allowed = [phrase for phrase in ends if line.allows(phrase)]
    return min(allowed, key=lambda phrase: phrase.cost, default=None)


def _side_by_side(line: Line, chart: Chart) -> Iterator[Phrase]:
    """Yield four signs as two words, neither of the other: 巧言令色."""
    if len(line.text) == 4 and 2 in line.beats:
        left, right = chart[0, 2].get(NOUN), chart[2, 4].get(NOUN)
        if left and right and len(left.words) == len(right.words) == 1:
            yield Phrase(NOUN, left.cost + right.cost + 0.9, left.words + right.words)


def _place_last(line: Line, chart: Chart) -> Iterator[Phrase]:
    """Yield verse in the order written, a place after the verb: 復照青苔上 また照らす青苔の上."""
    for cut in range(1, len(line.text) - 2) if line.is_verse else ():
        place = chart[cut, len(line.text)].get(NOUN)
        for kind in (PREDICATE, CLAUSE):
            verb = chart[0, cut].get(kind)
            if place and place.is_place and verb and verb.head and not stands_still(verb):
                cost = verb.cost + place.cost + 0.3
                yield Phrase(NOUN, cost, (*verb.ending("終止形"), *place.words))


def _more(phrase: Phrase, cost: float) -> Phrase:
    return phrase._replace(cost=phrase.cost + cost)


def _cell(line: Line, chart: Chart, start: int, end: int) -> Cell:
    """Return the cheapest phrase of each kind from one sign of the line to another."""
    found: Cell = {}
    for phrase in _phrases(line, chart, start, end):
        best = found.get(phrase.kind)
        if (best is None or phrase.cost < best.cost) and line.allows(phrase):
            found[phrase.kind] = phrase
    for phrase in list(found.values()):
        for other in _as_other_kinds(phrase):
            best = found.get(other.kind)
            if best is None or other.cost < best.cost:
                found[other.kind] = other
    return found


def _phrases(line: Line, chart: Chart, start: int, end: int) -> Iterator[Phrase]:
    yield from _words(line, start, end)
    yield from _governed(line, chart, start, end)
    yield from _with_particles(line, chart, start, end)
    for cut in range(start + 1, end):
        cost = line.divided(start, cut, end)
        for left in chart[start, cut].values():
            for right in chart[cut, end].values():
                for phrase in joined(left, right):
                    yield _more(phrase, left.cost + right.cost + cost)
        if line.text[cut] in "而是" + _AFTER_VERBS and cut + 1 < end:
            for left in chart[start, cut].values():
                for right in chart[cut + 1, end].values():
                    for phrase in linked(line.text[cut], cut, left, right):
                        yield _more(phrase, left.cost + right.cost + cost)


def _words(line: Line, start: int, end: int) -> Iterator[Phrase]:
    """Yield the single words that a stretch may be."""
    signs = line.text[start:end]
    if len(signs) == 1:
        yield from sign_alone(signs, start)
    elif len(signs) == 2:
        crossed = _WORD_ACROSS_A_BEAT if start + 1 in line.beats else 0.0
        for phrase in two_signs(signs, start):
            yield _more(phrase, crossed)
    elif len(signs) in _SET_PHRASES and signs != line.text:
        yield from set_phrase(signs, start)


def _as_other_kinds(phrase: Phrase) -> Iterator[Phrase]:
    """Yield what a phrase may be besides: a noun of place says where something happens."""
    if phrase.kind == NOUN:
        cost = 0.4 if phrase.is_place else 2.0
        yield Phrase(ADVERBIAL, phrase.cost + cost, followed(phrase.words, "に"))


def _governed(line: Line, chart: Chart, start: int, end: int) -> Iterator[Phrase]:
    """Yield verbs with what they govern, which is said before them: 依山 やまによる."""
    for length in (1, 2):
        after = start + length
        signs = line.text[start:after]
        if after >= end:
            break
        cost = line.divided(start, after, end)
        for rank, word in enumerate(words_of(signs)):
            for phrase in with_object(word, start, chart[after, end], rank):
                yield _more(phrase, cost)


def _with_particles(line: Line, chart: Chart, start: int, end: int) -> Iterator[Phrase]:
    """Yield phrases around 之, 者, 所 and 也, and nouns after 自, 以 and their like."""
    first, last = line.text[start], line.text[end - 1]
    if end - start == 1:
        return
    before, after = chart[start, end - 1], chart[start + 1, end]
    if last == "之":
        yield from before_no(before, end - 1)
    elif last == "者":
        yield from before_mono(before, end - 1)
    elif last == "也":
        yield from before_nari(before, end - 1)
    elif last in "乎哉":
        yield from before_ya(before, last, end - 1)
    if first == "所" and (verb := after.get(PREDICATE)):
        words = (*verb.ending("連体形"), Said(start, first, "ところ"))
        yield Phrase(NOUN, verb.cost + 0.5, words)
    noun = after.get(NOUN)
    for word in words_of(first) if noun else ():
        if word.conjugation == sign_words.AFTER_NOUN and noun:
            said = Said(start, first, word.stem, "助詞-格助詞")
            yield Phrase(ADVERBIAL, noun.cost + 0.5, (*noun.words, said))
        elif word.conjugation == sign_words.BEFORE_NOUN and noun:
            cost, words = noun.cost + 0.8, (Said(start, first, word.stem), *noun.words)
            yield Phrase(NOUN, cost, words, is_place=noun.is_place)
