"""The cheapest alignment of two texts, exactly, by shortest path.

A state is a place in both texts and, inside a group, what is still owed: having read 夢 as ゆめ,
the copy is ahead by ゆめ until the source has supplied it, kana by kana or by a character of its
own. Texts that agree in wording are aligned without a thought for differences: that path is the
cheapest if it costs no more than one difference would. Otherwise the search (A*) visits states by
the cost so far plus what is sure to come: a state from which the end cannot be reached without a
difference in wording must still pay for one.

The cost of a path is the sum of the prices in ``collation_costs.tsv``; a difference in
wording of m signs against n costs ``open`` + max(m, n) * ``wrong``.
"""

from __future__ import annotations

import heapq
from typing import NamedTuple

from inscribe.collation.align.searching.moves import OPEN, Moves
from inscribe.collation.align.searching.states import AlignmentMove, State
from inscribe.collation.align.sides import Side

MOST_WORK = 1_000_000  # of one search, in states; two unlike texts of 60 signs take a thirtieth


class TooMuchWorkError(Exception):
    """The texts are so unlike that the search would look at more states than it was allowed."""


class AlignmentPath(NamedTuple):
    """The cheapest alignment: its cost, where it starts, and its steps, first to last."""

    cost: int
    start: State
    steps: tuple[AlignmentMove, ...]
    work: int = 0  # states that were looked at to find it

    @property
    def differs_in_wording(self) -> bool:
        """Whether some step finds no answer in the other text."""
        return any(step.step == "wrong" for step in self.steps)


def cheapest(
    copy: Side,
    source: Side,
    *,
    excerpt: bool = False,
    most_work: int = MOST_WORK,
    linking: bool = False,
) -> AlignmentPath:
    """Return the cheapest path through both texts; an ``excerpt`` takes part of the source.

    With ``linking`` the source may have particles and endings that the copy leaves unwritten.

    Raises:
        TooMuchWorkError: the search would look at more than ``most_work`` states.
    """
    return _Search(copy, source, excerpt, most_work, linking).path()


def agreement(copy: Side, source: Side, most_work: int) -> tuple[bool, int]:
    """Return whether two texts can be read as the same words, and the states looked at to see.

    Texts for which that would take more than ``most_work`` states do not agree.
    """
    search = _Search(copy, source, False, most_work)
    try:
        return search.finishes(State(0, 0)), search.work
    except TooMuchWorkError:
        return False, search.work


def agreeing(
    copy: Side, source: Side, *, most_work: int, linking: bool = False
) -> AlignmentPath | None:
    """Return the cheapest path on which the texts never differ in wording, None if there is none.

    Raises:
        TooMuchWorkError: the search would look at more than ``most_work`` states.
    """
    return _Search(copy, source, False, most_work, linking).agreeing()


class _Search:
    def __init__(
        self, copy: Side, source: Side, excerpt: bool, most_work: int, linking: bool = False
    ) -> None:
        self._moves = Moves(copy, source, linking=linking)
        self._ends = (len(copy), len(source))
        self._excerpt = excerpt
        self._most_work = most_work
        self._can_finish: dict[State, bool] = {}
        self._wrong = self._moves.price["wrong"]
        self._open = self._moves.price["open"] + self._wrong
        self.work = 0

    def path(self) -> AlignmentPath:
        agreeing = self._cheapest(None)
        if agreeing is not None and agreeing.cost <= self._open:
            return agreeing
        found = self._cheapest(agreeing.cost if agreeing else self._most_possible())
        assert found is not None, "every text can be aligned with every other"
        return found

    def agreeing(self) -> AlignmentPath | None:
        return self._cheapest(None)

    def _most_possible(self) -> int:
        return self._open + max(self._ends) * self._wrong

    def _cheapest(self, most: int | None) -> AlignmentPath | None:
        """Return the cheapest path of a cost up to ``most``; for None, one that never differs."""
        starts = [State(0, j) for j in range(self._ends[1] + 1 if self._excerpt else 1)]
        best: dict[State, int] = dict.fromkeys(starts, 0)
        came: dict[State, tuple[State, AlignmentMove]] = {}
        queue = [(0, -s.j, n, 0, s) for n, s in enumerate(starts)]
        heapq.heapify(queue)
        count = len(starts)
        after_state = self._moves.answering if most is None else self._moves.after
        while queue:
            _, _, _, cost, state = heapq.heappop(queue)
            if cost > best[state]:
                continue
            if self._is_end(state):
                return _path(cost, state, came, self.work)
            self._look()
            for step in after_state(state):
                after, total = step.state, cost + step.price
                if total < best.get(after, total + 1):
                    ahead = 0 if most is None else self._ahead(after)
                    if most is not None and total + ahead > most:
                        continue
                    best[after] = total
                    came[after] = (state, step)
                    count += 1
                    entry = (total + ahead, -after.i - after.j, count, total, after)
                    heapq.heappush(queue, entry)
        return None

    def _look(self) -> None:
        self.work += 1
        if self.work > self._most_work:
            raise TooMuchWorkError

    def _is_end(self, state: State) -> bool:
        done = self._excerpt or state.j == self._ends[1]
        return done and state.i == self._ends[0] and state.mode == "closed"

    def _ahead(self, state: State) -> int:
        """Return the least that is still to be paid from ``state``."""
        closed = State(state.i, state.j) if state.mode in OPEN else state
        finishes = self._can_finish.get(closed)
        if finishes is None:
            finishes = self.finishes(closed)
        if finishes:
            return 0
        return self._open if closed is state else self._wrong

    def finishes(self, state: State) -> bool:
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
                self._look()
                known[step.state] = self._is_end(step.state)
                trail.append((step.state, iter(self._moves.answering(step.state))))
            elif known[step.state]:
                known[here] = True
        return known[state]


def _path(
    cost: int, end: State, came: dict[State, tuple[State, AlignmentMove]], work: int
) -> AlignmentPath:
    steps: list[AlignmentMove] = []
    state = end
    while state in came:
        state, step = came[state]
        steps.append(step)
    return AlignmentPath(cost, state, tuple(reversed(steps)), work)
