"""The best reading of a poem: MeCab's lattice searched again with the metre in view.

MeCab finds the path of words whose word and connection costs are least. A poem adds what MeCab
cannot weigh: where its phrases end. So every word MeCab found (its lattice, with costs) is
searched once more, the state of the search being the word before, the phrase, and the morae of
the phrase so far. The score of a reading is minus the sum of path cost and metre cost
(``inscribe.reading.metre``); the reading returned has the least sum of all that the beam kept.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from inscribe.reading.metre import ACROSS, DEPENDENT, Metre, phrase_cost
from inscribe.reading.pieces import BEATS, Beat, Piece

BEAM = 7000  # partial readings that cost this much more than the best at their place are dropped
_FAR = 10_000
_SHORT_BY = 4  # the phrases to come may together have so many morae too many,
_LONG_BY = 2  # or so many too few
_FARTHEST = 7000  # so are words that cost this much more than the cheapest for the same signs


class Node(NamedTuple):
    """A word of the lattice and the offsets between which it stands."""

    start: int
    end: int
    piece: Piece


class Path(NamedTuple):
    """A reading: its cost and its words."""

    cost: int
    nodes: tuple[Node, ...]


class Surroundings(NamedTuple):
    """What stands around the stretch that is searched: classes, and whether a phrase precedes."""

    before: int = 0
    after: int = 0
    first: bool = True  # the stretch begins the poem


AT_EDGES = Surroundings()

# A state is one number: the phrase, the morae in it, and whether it holds a bare vowel.
_State = int
_Trail = tuple["_Trail", Node] | None
_Partial = tuple[int, int, _Trail]  # cost, class of the last word, trail of words
_Column = dict[_State, dict[int, _Partial]]
_Steps = tuple[tuple[_State, int], ...]  # states a word leads to, and what the metre costs there


def _state(phrase: int, count: int, vowel: bool) -> _State:
    return phrase << 7 | count << 1 | vowel


def best_path(
    nodes: Iterable[Node],
    length: int,
    metre: Metre,
    connections: tuple[int, memoryview],
    breaks: frozenset[int] = frozenset(),
    around: Surroundings = AT_EDGES,
) -> Path | None:
    """Return the reading of least cost in ``metre``, or None if no reading fits it.

    ``connections`` are the side and cells of MeCab's matrix; ``breaks`` are offsets where a
    phrase must end.
    """
    starting: dict[int, list[Node]] = {}
    for node in worth_trying(nodes):
        starting.setdefault(node.start, []).append(node)
    columns: dict[int, _Column] = {0: {0: {around.before: (0, around.before, None)}}}
    phrases = metre.phrases
    fewest, most = _morae_to_come(starting, length)
    steps = _known_steps.setdefault((phrases, around.first), {})
    for position in range(length):
        states = columns.pop(position, None)
        if not states or position not in starting:
            continue
        kept = _within_beam(
            states, phrases, fewest[position] - _SHORT_BY, most[position] + _LONG_BY
        )
        for node in starting[position]:
            at_break = node.end in breaks
            _extend(kept, node, connections, columns, at_break, steps, phrases, around.first)
    ended = columns.get(length, {}).get(_state(len(phrases), 0, False))
    return _cheapest_path(ended, connections, around.after) if ended else None


def worth_trying(nodes: Iterable[Node]) -> list[Node]:
    """Return the nodes without those that another beats wherever they could stand.

    Of words for the same signs, of the same class and the same morae, only the cheapest can be
    on the best path; and those far dearer than the cheapest word for the same signs never are.
    """
    best: dict[tuple[int, int, int, int, int, bool], Node] = {}
    cheapest: dict[tuple[int, int], int] = {}
    for node in nodes:
        start, end, piece = node
        cost = piece.cost
        key = (start, end, piece.connection, piece.right_connection, piece.morae, piece.inner_vowel)
        there = best.get(key)
        if there is None or cost < there.piece.cost:
            best[key] = node
            span = (start, end)
            if cost < cheapest.get(span, cost + 1):
                cheapest[span] = cost
    return [
        node
        for node in best.values()
        if node.piece.cost <= cheapest[node.start, node.end] + _FARTHEST
    ]


def _morae_to_come(starting: dict[int, list[Node]], length: int) -> tuple[list[int], list[int]]:
    """Return the fewest and the most morae the words from each place on may have."""
    fewest, most = [_FAR] * length + [0], [-_FAR] * length + [0]
    for position in range(length - 1, -1, -1):
        for node in starting.get(position, ()):
            count, end = node.piece.morae, node.end
            if fewest[end] + count < fewest[position]:
                fewest[position] = fewest[end] + count
            if most[end] + count > most[position]:
                most[position] = most[end] + count
    return fewest, most


def _within_beam(
    states: _Column, phrases: tuple[int, ...], fewest: int, most: int
) -> list[tuple[_State, list[_Partial]]]:
    """Return the states worth going on from: cheap enough, and with the right morae to come."""
    limit = min([p[0] for partials in states.values() for p in partials.values()]) + BEAM
    kept = []
    for state, partials in states.items():
        due = sum(phrases[state >> 7 :]) - (state >> 1 & 63)
        if not fewest <= due <= most:
            continue
        within = [partial for partial in partials.values() if partial[0] <= limit]
        if within:
            kept.append((state, within))
    return kept


def _extend(
    kept: list[tuple[_State, list[_Partial]]],
    node: Node,
    connections: tuple[int, memoryview],
    columns: dict[int, _Column],
    at_break: bool,
    steps: dict[int, _Steps],
    phrases: tuple[int, ...],
    first: bool,
) -> None:
    """Lay a word after every partial reading that ends where it starts."""
    piece, end = node.piece, node.end
    side, cells = connections
    row, right, own = side * piece.connection, piece.right_connection, piece.cost
    beat = piece.beat << 1 | at_break
    column = columns.get(end)
    for state, partials in kept:
        key = beat << 12 | state
        after = steps.get(key)
        if after is None:
            after = steps[key] = _states_after(state, BEATS[piece.beat], phrases, at_break, first)
        if not after:
            continue
        cost, last, trail = partials[0]
        cost += cells[last + row]
        for other_cost, last, other in partials[1:]:
            other_cost += cells[last + row]
            if other_cost < cost:
                cost, trail = other_cost, other
        cost += own
        new_trail = (trail, node)
        if column is None:
            column = columns[end] = {}
        for new_state, more in after:
            bucket = column.get(new_state)
            if bucket is None:
                column[new_state] = {right: (cost + more, right, new_trail)}
                continue
            there = bucket.get(right)
            if there is None or cost + more < there[0]:
                bucket[right] = (cost + more, right, new_trail)


# What a word does to a state hangs on little, so it is worked out once: there are a few thousand.
_known_steps: dict[tuple[tuple[int, ...], bool], dict[int, _Steps]] = {}


def _states_after(
    state: _State, beat: Beat, phrases: tuple[int, ...], at_break: bool, first: bool
) -> _Steps:
    phrase, count, vowel = state >> 7, state >> 1 & 63, bool(state & 1)
    morae, inner_vowel, starts_with_vowel, dependent = beat
    if phrase >= len(phrases):
        return ()
    target = phrases[phrase]
    vowel = vowel or inner_vowel or (count > 0 and starts_with_vowel)
    leaning = DEPENDENT if count == 0 and dependent and (phrase or not first) else 0
    count += morae
    after: list[tuple[_State, int]] = []
    if count < target + 2 and not at_break:
        after.append((_state(phrase, count, vowel), leaning))
    ending = phrase_cost(count, target, vowel=vowel)
    if ending is not None:
        after.append((_state(phrase + 1, 0, False), ending + leaning))
    elif target < count < target + 60 and not at_break and phrase + 1 < len(phrases):
        after.append((_state(phrase + 1, count - target, False), ACROSS))
    return tuple(after)


def _cheapest_path(
    ended: dict[int, _Partial], connections: tuple[int, memoryview], after: int
) -> Path:
    side, cells = connections
    cost, last = min(
        (partial[0] + cells[partial[1] + side * after], connection)
        for connection, partial in ended.items()
    )
    words: list[Node] = []
    trail = ended[last][2]
    while trail is not None:
        trail, node = trail
        words.append(node)
    return Path(cost, tuple(reversed(words)))
