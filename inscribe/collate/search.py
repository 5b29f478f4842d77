"""The cheapest alignment of two texts, exactly, by shortest path.

A state is a place in both texts and, inside a group, what is still owed: having read 夢 as ゆめ,
the copy is ahead by ゆめ until the source has supplied it, kana by kana or by a character of its
own. The search (A*) visits states by the cost so far plus what is sure to come: a state from which
the end cannot be reached without a difference in wording must still pay for one. So texts that
differ little cost little more than their length.

The cost of a path is the sum of the prices in ``glossary/collation_costs.tsv``; a difference in
wording of m signs against n costs ``open`` + max(m, n) * ``wrong``.
"""

from __future__ import annotations

import heapq
from typing import NamedTuple

from inscribe.collate.moves import Moves, State, Step
from inscribe.collate.sides import Side
from inscribe.errors import InputError


class Path(NamedTuple):
    """The cheapest alignment: its cost, where it starts, and its steps, first to last."""

    cost: int
    start: State
    steps: tuple[Step, ...]

    @property
    def differs_in_wording(self) -> bool:
        """Whether some step finds no answer in the other text."""
        return any(step.step == "wrong" for step in self.steps)


def cheapest(copy: Side, source: Side, *, excerpt: bool = False) -> Path:
    """Return the cheapest path through both texts; an ``excerpt`` takes part of the source.

    Raises:
        InputError: the texts are long and so unlike that the search would take minutes.
    """
    return _Search(copy, source, excerpt=excerpt).path()


MOST_STATES = 1_000_000  # of one search, some ten seconds; most take a thousandth of it


class _Search:
    def __init__(self, copy: Side, source: Side, *, excerpt: bool) -> None:
        self._moves = Moves(copy, source)
        self._ends = (len(copy), len(source))
        self._excerpt = excerpt
        self._can_finish: dict[State, bool] = {}
        self._wrong = self._moves.price["wrong"]
        self._open = self._moves.price["open"] + self._wrong

    def path(self) -> Path:
        starts = [State(0, j) for j in range(self._ends[1] + 1 if self._excerpt else 1)]
        best: dict[State, int] = dict.fromkeys(starts, 0)
        came: dict[State, tuple[State, Step]] = {}
        queue = [(self._ahead(s), -s.j, n, 0, s) for n, s in enumerate(starts)]
        heapq.heapify(queue)
        count = len(starts)
        while queue:
            _, _, _, cost, state = heapq.heappop(queue)
            if cost > best[state]:
                continue
            if self._is_end(state):
                return _path(cost, state, came)
            for step in self._moves.after(state):
                after, total = step.state, cost + step.price
                if total < best.get(after, total + 1):
                    best[after] = total
                    came[after] = (state, step)
                    count += 1
                    if count > MOST_STATES:
                        raise self._too_unlike()
                    entry = (total + self._ahead(after), -after.i - after.j, count, total, after)
                    heapq.heappush(queue, entry)
        raise AssertionError("every text can be aligned with every other")

    def _too_unlike(self) -> InputError:
        signs, of_source = self._ends
        return InputError(
            f"{signs:,} signs of the copy and {of_source:,} of the source have too little in common"
            " to be collated within the limit of the search",
            hint="collate the parts that belong together, or use --excerpt",
        )

    def _is_end(self, state: State) -> bool:
        done = self._excerpt or state.j == self._ends[1]
        return done and state.i == self._ends[0] and state.mode == "closed"

    def _ahead(self, state: State) -> int:
        """Return the least that is still to be paid from ``state``."""
        if state.mode in ("wrong", "added", "omitted"):
            return 0 if self._finishes(State(state.i, state.j)) else self._wrong
        return 0 if self._finishes(state) else self._open

    def _finishes(self, state: State) -> bool:
        """Whether the end can be reached from ``state`` without a difference in wording."""
        known = self._can_finish
        if state in known:
            return known[state]
        trail = [(state, iter(self._moves.answering(state)))]
        known[state] = self._is_end(state)
        while trail:
            here, steps = trail[-1]
            step = None if known[here] else next(steps, None)
            if step is None:
                trail.pop()
                if known[here] and trail:
                    known[trail[-1][0]] = True
            elif step.state not in known:
                known[step.state] = self._is_end(step.state)
                trail.append((step.state, iter(self._moves.answering(step.state))))
            elif known[step.state]:
                known[here] = True
        return known[state]


def _path(cost: int, end: State, came: dict[State, tuple[State, Step]]) -> Path:
    steps: list[Step] = []
    state = end
    while state in came:
        state, step = came[state]
        steps.append(step)
    return Path(cost, state, tuple(reversed(steps)))
