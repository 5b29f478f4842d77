"""The best reading of a poem: MeCab's lattice searched again with the metre in view.

MeCab finds the path of words whose word and connection costs are least. A poem adds what MeCab
cannot weigh: where its phrases end. So every word MeCab found (its lattice, with costs) is
searched once more, the state of the search being the word before, the phrase, and the morae of
the phrase so far. The score of a reading is minus the sum of path cost and metre cost
(``inscribe.reading.metre``); the reading returned has the least sum of all that the beam kept.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe.reading.metre import ACROSS, DEPENDENT, Metre, phrase_cost
from inscribe.reading.pieces import Piece

BEAM = 9000  # partial readings that cost this much more than the best at their place are dropped


class Node(NamedTuple):
    """A word of the lattice and the offsets between which it stands."""

    start: int
    end: int
    piece: Piece


class Path(NamedTuple):
    """A reading: its cost and its words."""

    cost: int
    nodes: tuple[Node, ...]


# phrase, morae in it, whether it holds a bare vowel
_State = tuple[int, int, bool]
# cost, class of the last word, trail of words
_Partial = tuple[int, int, "_Trail"]
_Trail = tuple["_Trail", Node] | None


def best_path(
    nodes: Sequence[Node],
    length: int,
    metre: Metre,
    connections: tuple[int, memoryview],
    breaks: frozenset[int] = frozenset(),
) -> Path | None:
    """Return the reading of least cost in ``metre``, or None if no reading fits it.

    ``connections`` are the side and cells of MeCab's matrix; ``breaks`` are offsets where a
    phrase must end.
    """
    starting: dict[int, list[Node]] = {}
    for node in nodes:
        starting.setdefault(node.start, []).append(node)
    columns: dict[int, dict[_State, dict[int, _Partial]]] = {0: {(0, 0, False): {0: (0, 0, None)}}}
    for position in range(length):
        states = columns.pop(position, None)
        if not states or position not in starting:
            continue
        kept = _within_beam(states)
        for node in starting[position]:
            _extend(kept, node, metre, connections, columns, node.end in breaks)
    return _finished(columns.get(length, {}), metre, connections)


def _within_beam(
    states: dict[_State, dict[int, _Partial]],
) -> list[tuple[_State, list[_Partial]]]:
    limit = min(p[0] for partials in states.values() for p in partials.values()) + BEAM
    kept = []
    for state, partials in states.items():
        within = [partial for partial in partials.values() if partial[0] <= limit]
        if within:
            kept.append((state, within))
    return kept


def _extend(
    kept: list[tuple[_State, list[_Partial]]],
    node: Node,
    metre: Metre,
    connections: tuple[int, memoryview],
    columns: dict[int, dict[_State, dict[int, _Partial]]],
    at_break: bool,
) -> None:
    connection = node.piece.connection
    side, cells = connections
    row = side * connection
    right = node.piece.right_connection
    for state, partials in kept:
        after = _states_after(state, node, metre, at_break)
        if not after:
            continue
        cost, trail = min(
            (partial[0] + cells[partial[1] + row], index) for index, partial in enumerate(partials)
        )
        cost += node.piece.cost
        new_trail = (partials[trail][2], node)
        for new_state, more in after:
            bucket = columns.setdefault(node.end, {}).setdefault(new_state, {})
            there = bucket.get(right)
            if there is None or cost + more < there[0]:
                bucket[right] = (cost + more, right, new_trail)


def _states_after(
    state: _State, node: Node, metre: Metre, at_break: bool
) -> list[tuple[_State, int]]:
    phrase, count, vowel = state
    if phrase >= len(metre.phrases):
        return []
    target = metre.phrases[phrase]
    piece = node.piece
    vowel = vowel or piece.inner_vowel or (count > 0 and piece.starts_with_vowel)
    leaning = DEPENDENT if count == 0 and phrase and piece.dependent else 0
    count += piece.morae
    after: list[tuple[_State, int]] = []
    if count < target + 2 and not at_break:
        after.append(((phrase, count, vowel), leaning))
    ending = phrase_cost(count, target, vowel=vowel)
    if ending is not None:
        after.append(((phrase + 1, 0, False), ending + leaning))
    elif count > target and not at_break and phrase + 1 < len(metre.phrases):
        after.append(((phrase + 1, count - target, False), ACROSS))
    return after


def _finished(
    states: dict[_State, dict[int, _Partial]],
    metre: Metre,
    connections: tuple[int, memoryview],
) -> Path | None:
    ended = states.get((len(metre.phrases), 0, False))
    if not ended:
        return None
    cost, last = min(
        (partial[0] + connections[1][partial[1]], connection)
        for connection, partial in ended.items()
    )
    words: list[Node] = []
    trail = ended[last][2]
    while trail is not None:
        trail, node = trail
        words.append(node)
    return Path(cost, tuple(reversed(words)))
