"""The best reading of a poem: MeCab's lattice searched again with the metre in view.

MeCab finds the path of words whose word and connection costs are least. A poem adds what MeCab
cannot weigh: where its phrases end. So every word MeCab found (its lattice, with costs) is
searched once more, the state of the search being the word before, the phrase, and the morae of
the phrase so far. The score of a reading is minus the sum of path cost and metre cost
(``inscribe.reading.verse.metre``); the reading returned has the least sum of all that the beam
kept.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.verse.metre import ACROSS, DEPENDENT, Metre, phrase_cost
from inscribe.reading.words import Beat, ReadWord, beat_of

BEAM = 9000  # partial readings that cost this much more than the best at their place are dropped
_FAR = 10_000  # more morae than any text has
_NONE_YET = 1 << 60  # dearer than any reading
_SHORT_BY = 4  # the phrases to come may together have so many morae too many,
_LONG_BY = 2  # or so many too few
_FARTHEST = 6000  # so are words that cost this much more than the cheapest for the same signs


class Node(NamedTuple):
    """A word of the lattice and the offsets between which it stands."""

    start: int
    end: int
    piece: ReadWord


# A word's class as seen from the left, its cost, its class as seen from the right, its beat.
_Weighed = tuple[int, int, int, int, ReadWord]


class Homographs(NamedTuple):
    """The words that are written the same."""

    every: tuple[ReadWord, ...]
    worth_trying: tuple[ReadWord, ...]
    weighed: tuple[_Weighed, ...]  # what the search needs to know of each worth trying
    fewest: int  # morae of those worth trying
    most: int


class LatticeSpan(NamedTuple):
    """The offsets between which words may stand, and the words."""

    start: int
    end: int
    words: Homographs


class LatticePath(NamedTuple):
    """A reading: its cost and its words."""

    cost: int
    words: tuple[ReadWord, ...]


class Surroundings(NamedTuple):
    """What stands around the stretch that is searched: classes, and whether a phrase precedes."""

    before: int = 0
    after: int = 0
    first: bool = True  # the stretch begins the poem


AT_EDGES = Surroundings()

# A state is one number: the phrase, the morae in it, and whether it holds a bare vowel.
_State = int
# A reading so far: its cost, the class of its last word, the reading before that word, the word.
_Partial = tuple[int, int, "_Partial | None", ReadWord | None]
_Kept = list[tuple[_State, _Partial, list[_Partial]]]  # the first of a state, and the others
# The states a word leads to, what the metre costs there, and the morae then still due.
_Steps = tuple[tuple[_State, int, int], ...]


class _Place:
    """The partial readings that end at one place in the text."""

    __slots__ = ("beam", "cheapest", "fewest", "most", "partials")

    def __init__(self, fewest: int, most: int, beam: int = BEAM) -> None:
        self.beam = beam
        self.cheapest = _NONE_YET  # the cost of the cheapest, kept or not
        self.fewest = fewest  # morae that may be due here
        self.most = most
        self.partials: dict[_State, dict[int, _Partial]] = {}

    def within_beam(self) -> _Kept:
        """Return the partial readings cheap enough to go on from."""
        limit = self.cheapest + self.beam
        kept = []
        for state, partials in self.partials.items():
            within = [partial for partial in partials.values() if partial[0] <= limit]
            if within:
                kept.append((state, within[0], within[1:]))
        return kept


def state_of(phrase: int, count: int, vowel: bool) -> _State:
    """Return the state of a search: the phrase, the morae in it, whether it holds a bare vowel."""
    return phrase << 7 | count << 1 | vowel


def best_path(
    spans: Iterable[LatticeSpan],
    length: int,
    metre: Metre,
    connections: tuple[int, memoryview],
    breaks: frozenset[int] = frozenset(),
    around: Surroundings = AT_EDGES,
) -> LatticePath | None:
    """Return the reading of least cost in ``metre``, or None if no reading fits it.

    ``connections`` are the side and cells of MeCab's matrix; ``breaks`` are offsets where a
    phrase must end.
    """
    starting: dict[int, list[LatticeSpan]] = {}
    for span in spans:
        starting.setdefault(span.start, []).append(span)
    phrases = metre.phrases
    places = places_of(starting, length)
    places[0].partials[0] = {around.before: (0, around.before, None, None)}
    places[0].cheapest = 0
    elsewhere, at_break = (steps_of(metre, at, around.first) for at in (False, True))
    for position in range(length):
        place = places[position]
        if not place.partials or position not in starting:
            continue
        kept = place.within_beam()
        for span in starting[position]:
            steps = at_break if span.end in breaks else elsewhere
            _extend(kept, span.words.weighed, places[span.end], steps, connections)
    ended = places[length].partials.get(state_of(len(phrases), 0, False))
    return _cheapest_path(ended, connections, around.after) if ended else None


def spans_of(nodes: Iterable[Node]) -> list[LatticeSpan]:
    """Return the words of a lattice, those between the same offsets together."""
    at: dict[tuple[int, int], list[ReadWord]] = {}
    for start, end, piece in nodes:
        at.setdefault((start, end), []).append(piece)
    return [LatticeSpan(start, end, homographs(pieces)) for (start, end), pieces in at.items()]


def homographs(pieces: Iterable[ReadWord]) -> Homographs:
    """Return words that are written the same, reduced to those the best path can use.

    Of words with the same class and morae only the cheapest can be on it, and none that is far
    dearer than the cheapest of all.
    """
    every = tuple(pieces)
    best: dict[tuple[int, int, int, bool], ReadWord] = {}
    for piece in every:
        key = (piece.connection, piece.right_connection, piece.morae, piece.inner_vowel)
        there = best.get(key)
        if there is None or piece.cost < there.cost:
            best[key] = piece
    limit = min([piece.cost for piece in every], default=0) + _FARTHEST
    worth = tuple([piece for piece in best.values() if piece.cost <= limit])
    counts = [piece.morae for piece in worth]
    weighed = tuple([(p.connection, p.cost, p.right_connection, p.beat, p) for p in worth])
    return Homographs(every, worth, weighed, min(counts, default=0), max(counts, default=0))


def places_of(starting: dict[int, list[LatticeSpan]], length: int) -> list[_Place]:
    """Return the places of a text, with the morae that the words from there on may have."""
    places = [_Place(_FAR, -_FAR) for _ in range(length)]
    places.append(
        _Place(-_SHORT_BY, _LONG_BY, _NONE_YET)
    )  # whole readings are held against no other
    for position in range(length - 1, -1, -1):
        place = places[position]
        for _, end, words in starting.get(position, ()):
            fewest, most = places[end].fewest + words.fewest, places[end].most + words.most
            if fewest < place.fewest:
                place.fewest = fewest
            if most > place.most:
                place.most = most
    return places


def _extend(
    kept: _Kept,
    words: Iterable[_Weighed],
    place: _Place,
    steps: dict[int, dict[_State, _Steps]],
    connections: tuple[int, memoryview],
) -> None:
    """Put each word that ends at ``place`` behind the partial readings that end where it starts.

    Partial readings that the beam would drop at once are left out. The beam is measured from the
    cheapest, even if the morae of the cheapest cannot fit the rest of the metre.
    """
    side, cells = connections
    reached, cheapest, beam = place.partials, place.cheapest, place.beam
    fewest, most = place.fewest, place.most
    for connection, own, right, beat, piece in words:
        row = side * connection
        after_word = steps[beat]
        for state, before, others in kept:
            cost = before[0] + cells[before[1] + row]
            for other in others:
                other_cost = other[0] + cells[other[1] + row]
                if other_cost < cost:
                    cost, before = other_cost, other
            cost += own
            if cost > cheapest + beam:
                continue
            for new_state, more, due in after_word[state]:
                total = cost + more
                if total < cheapest:
                    cheapest = total
                if not fewest <= due <= most:
                    continue
                bucket = reached.get(new_state)
                if bucket is None:
                    bucket = reached[new_state] = {}
                there = bucket.get(right)
                if there is None or total < there[0]:
                    bucket[right] = (total, right, before, piece)
    place.cheapest = cheapest


class _StepsOfBeat(dict[_State, _Steps]):
    """What the words of one beat do to each state.

    It is worked out when it is first asked for.
    """

    def __init__(self, beat: Beat, metre: Metre, at_break: bool, first: bool) -> None:
        self._how = (beat, metre, at_break, first)

    def __missing__(self, state: _State) -> _Steps:
        after = self[state] = _states_after(state, *self._how)
        return after


class _StepsOfBeats(dict[int, dict[_State, _Steps]]):
    """What each kind of word does to each state, by the number of its beat."""

    def __init__(self, metre: Metre, at_break: bool, first: bool) -> None:
        self._how = (metre, at_break, first)

    def __missing__(self, beat: int) -> dict[_State, _Steps]:
        steps = self[beat] = _StepsOfBeat(beat_of(beat), *self._how)
        return steps


@tables.cached()
def steps_of(metre: Metre, at_break: bool, first: bool) -> _StepsOfBeats:
    """Return what words do to a state, which depends on so few things that it can be kept."""
    return _StepsOfBeats(metre, at_break, first)


def _states_after(state: _State, beat: Beat, metre: Metre, at_break: bool, first: bool) -> _Steps:
    phrase, count, vowel = state >> 7, state >> 1 & 63, bool(state & 1)
    morae, inner_vowel, starts_with_vowel, dependent, foreign = beat
    phrases = metre.phrases
    if phrase >= len(phrases):
        return ()
    target = phrases[phrase]
    vowel = vowel or inner_vowel or (count > 0 and starts_with_vowel)
    leaning = DEPENDENT if count == 0 and dependent and (phrase or not first) else 0
    leaning += metre.foreign * foreign
    count += morae
    due = sum(phrases[phrase:])
    after: list[tuple[_State, int, int]] = []
    if count < target + 2 and not at_break:
        after.append((state_of(phrase, count, vowel), leaning, due - count))
    ending = phrase_cost(count, target, vowel=vowel)
    if ending is not None:
        after.append((state_of(phrase + 1, 0, False), ending + leaning, due - target))
    elif target < count < target + 60 and not at_break and phrase + 1 < len(phrases):
        after.append((state_of(phrase + 1, count - target, False), ACROSS, due - count))
    return tuple(after)


def _cheapest_path(
    ended: dict[int, _Partial], connections: tuple[int, memoryview], after: int
) -> LatticePath:
    side, cells = connections
    cost, last = min(
        (partial[0] + cells[partial[1] + side * after], connection)
        for connection, partial in ended.items()
    )
    words: list[ReadWord] = []
    partial: _Partial | None = ended[last]
    while partial is not None:
        _, _, partial, word = partial
        if word is not None:
            words.append(word)
    return LatticePath(cost, tuple(reversed(words)))
