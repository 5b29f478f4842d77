"""The best reading of a poem: MeCab's lattice searched again with the metre in view.

MeCab finds the path of words whose word and connection costs are least. A poem adds what MeCab
cannot weigh: where its phrases end. So every word MeCab found (its lattice, with costs) is
searched once more, the state of the search being the word before, the phrase, and the morae of
the phrase so far. The score of a reading is minus the sum of path cost and metre cost
(``inscribe.reading.metre``); the reading returned has the least sum of all that the beam kept.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from inscribe.reading.metre import ACROSS, Metre, phrase_cost

BEAM = 9000  # partial readings that cost this much more than the best at their place are dropped


class Node(NamedTuple):
    """A word of the lattice: where it stands, its class and cost, its morae, MeCab's feature."""

    start: int
    end: int
    connection: int
    cost: int
    morae: int
    bare_vowel: bool  # one of its morae (but a first one) is a bare vowel
    starts_with_vowel: bool
    feature: str


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
    connection_cost: Callable[[int, int], int],
    breaks: frozenset[int] = frozenset(),
) -> Path | None:
    """Return the reading of least cost in ``metre``, or None if no reading fits it.

    ``connection_cost(left, right)`` is MeCab's; ``breaks`` are offsets where a phrase must end.
    """
    starting: dict[int, list[Node]] = {}
    for node in nodes:
        starting.setdefault(node.start, []).append(node)
    columns: dict[int, dict[_State, dict[int, _Partial]]] = {0: {(0, 0, False): {0: (0, 0, None)}}}
    for position in range(length):
        states = columns.pop(position, None)
        if states is None or position not in starting:
            continue
        kept = _within_beam(states)
        for node in starting[position]:
            _extend(kept, node, metre, connection_cost, columns, node.end in breaks)
    return _finished(columns.get(length, {}), metre, connection_cost)


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
    connection_cost: Callable[[int, int], int],
    columns: dict[int, dict[_State, dict[int, _Partial]]],
    at_break: bool,
) -> None:
    connection = node.connection
    target_column = columns.setdefault(node.end, {})
    for state, partials in kept:
        after = _states_after(state, node, metre, at_break)
        if not after:
            continue
        cost, trail = min(
            (partial[0] + connection_cost(partial[1], connection), index)
            for index, partial in enumerate(partials)
        )
        cost += node.cost
        new_trail = (partials[trail][2], node)
        for new_state, more in after:
            bucket = target_column.setdefault(new_state, {})
            there = bucket.get(connection)
            if there is None or cost + more < there[0]:
                bucket[connection] = (cost + more, connection, new_trail)


def _states_after(
    state: _State, node: Node, metre: Metre, at_break: bool
) -> list[tuple[_State, int]]:
    phrase, count, vowel = state
    if phrase >= len(metre.phrases):
        return []
    target = metre.phrases[phrase]
    vowel = vowel or node.bare_vowel or (count > 0 and node.starts_with_vowel)
    count += node.morae
    after: list[tuple[_State, int]] = []
    if count < target + 2 and not at_break:
        after.append(((phrase, count, vowel), 0))
    ending = phrase_cost(count, target, vowel=vowel)
    if ending is not None:
        after.append(((phrase + 1, 0, False), ending))
    elif count > target and not at_break and phrase + 1 < len(metre.phrases):
        after.append(((phrase + 1, count - target, False), ACROSS))
    return after


def _finished(
    states: dict[_State, dict[int, _Partial]],
    metre: Metre,
    connection_cost: Callable[[int, int], int],
) -> Path | None:
    ended = states.get((len(metre.phrases), 0, False))
    if not ended:
        return None
    cost, last = min(
        (partial[0] + connection_cost(partial[1], 0), connection)
        for connection, partial in ended.items()
    )
    words: list[Node] = []
    trail = ended[last][2]
    while trail is not None:
        trail, node = trail
        words.append(node)
    return Path(cost, tuple(reversed(words)))
