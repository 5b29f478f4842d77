"""The cheapest alignment of two texts, exactly, by shortest path.

A state is a place in both texts and, inside a group, what is still owed: having read 夢 as ゆめ,
the copy is ahead by ゆめ until the source has supplied it, kana by kana or by a character of its
own. Only states that could lie on a path cheaper than the best are visited, so two texts that
differ little cost little more than their length.

The cost of a path is the sum of the prices in ``glossary/collation_costs.tsv``; a difference in
wording of m signs against n costs ``open`` + max(m, n) * ``wrong``.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator
from typing import Literal, NamedTuple

from inscribe.collate import pairs, sounds
from inscribe.collate.costs import prices
from inscribe.collate.sides import UNWRITTEN, Edge, Side

Mode = Literal["closed", "copy ahead", "source ahead", "wrong", "added", "omitted", "copy gap", "source gap"]


class State(NamedTuple):
    """A place in copy and source, and what is going on there."""

    i: int
    j: int
    mode: Mode = "closed"
    owed: str = ""  # letters the side that is behind has yet to supply


class Step(NamedTuple):
    """One move of the alignment: the signs it takes on each side, and its reason."""

    state: State  # where it leads
    price: int
    step: str  # row of the cost table
    why: str = ""


class Path(NamedTuple):
    """The cheapest alignment: its cost and its steps, first to last."""

    cost: int
    start: State
    steps: tuple[Step, ...]


class Search:
    """The moves between two given texts."""

    def __init__(self, copy: Side, source: Side) -> None:
        self.copy = copy
        self.source = source
        self.price = prices()

    def cheapest(self, *, excerpt: bool = False) -> Path:
        """Return the cheapest path through both texts; of an ``excerpt``, through part of the source."""
        starts = [State(0, j) for j in range(len(self.source) + 1 if excerpt else 1)]
        best: dict[State, int] = dict.fromkeys(starts, 0)
        came: dict[State, tuple[State, Step]] = {}
        queue = [(0, -s.j, n, s) for n, s in enumerate(starts)]
        heapq.heapify(queue)
        count = len(starts)
        while queue:
            cost, _, _, state = heapq.heappop(queue)
            if cost > best[state]:
                continue
            if self._is_end(state, excerpt):
                return _path(cost, state, came)
            for step in self.moves(state):
                total = cost + step.price
                if total < best.get(step.state, total + 1):
                    best[step.state] = total
                    came[step.state] = (state, step)
                    count += 1
                    heapq.heappush(queue, (total, -step.state.i - step.state.j, count, step.state))
        raise AssertionError("every text can be aligned with every other")

    def _is_end(self, state: State, excerpt: bool) -> bool:
        done = excerpt or state.j == len(self.source)
        return state.mode == "closed" and state.i == len(self.copy) and done

    def moves(self, state: State) -> Iterator[Step]:
        """Yield every step from ``state``."""
        if state.mode == "closed":
            yield from self._matches(state.i, state.j)
            yield from self._readings(state.i, state.j)
            yield from self._unread(state.i, state.j)
            yield from self._wrong(state, self.price["open"])
        elif state.mode == "copy ahead":
            yield from self._catch_up(state, self.source, state.j)
        elif state.mode == "source ahead":
            yield from self._catch_up(state, self.copy, state.i)
        elif state.mode in ("copy gap", "source gap"):
            yield from self._in_gap(state)
        else:
            yield Step(State(state.i, state.j), 0, "close")
            yield from self._wrong(state, 0)

    def _matches(self, i: int, j: int) -> Iterator[Step]:
        if i < len(self.copy) and j < len(self.source):
            found = pairs.match(self.copy, i, self.source, j)
            if found:
                yield Step(State(i + 1, j + 1), self.price[found.step], found.step, found.why)
            yield from self._joined(i, j)
        for side, at, state in (
            (self.copy, i, State(i + 1, j)),
            (self.source, j, State(i, j + 1)),
        ):
            if at < len(side) and side.sort[at] == "stop":
                yield Step(state, self.price["punctuation"], "punctuation", "punctuation")

    def _joined(self, i: int, j: int) -> Iterator[Step]:
        """A sign that stands for several (repeat mark, ligature) against those several."""
        copy, source = self.copy, self.source
        if len(copy.norm[i]) > 1 and (end := _spelled_out(source, j, copy.norm[i])):
            yield self._join_step(copy.raw[i], copy.norm[i], State(i + 1, end))
        if len(source.norm[j]) > 1 and (end := _spelled_out(copy, i, source.norm[j])):
            yield self._join_step(source.raw[j], source.norm[j], State(end, j + 1))

    def _join_step(self, raw: str, norm: str, state: State) -> Step:
        step = "repeat" if raw in pairs.REPEAT_MARKS else "ligature"
        return Step(state, self.price[step], step, f"{raw} stands for {norm}")

    def _readings(self, i: int, j: int) -> Iterator[Step]:
        copy, source = self.copy, self.source
        if i == len(copy) or j == len(source):
            return
        if copy.sort[i] == source.sort[j] == "kanji" and copy.norm[i] == source.norm[j]:
            yield from self._okurigana(i, j)
            return
        for edge in copy.edges[i]:
            if _may_begin(edge.pattern, source, j):
                yield from self._read(edge, i, copy, "copy ahead", State(edge.end, j, owed=edge.pattern))
        if copy.letters[i]:
            for edge in source.edges[j]:
                if _may_begin(edge.pattern, copy, i):
                    ahead = State(i, edge.end, owed=edge.pattern)
                    yield from self._read(edge, j, source, "source ahead", ahead)

    def _read(self, edge: Edge, start: int, side: Side, mode: Mode, ahead: State) -> Iterator[Step]:
        """The step of reading ``edge``, and again with a particle that may be left unwritten after it."""
        why = _reason(side, start, edge)
        yield Step(ahead._replace(mode=mode), self.price[edge.step], edge.step, why)
        if side.sort[start] == "kanji" and edge.end < len(side) and side.sort[edge.end] == "kanji":
            for particle in UNWRITTEN:
                owed = ahead.owed + particle
                price = self.price[edge.step] + self.price["link"]
                yield Step(ahead._replace(mode=mode, owed=owed), price, "link", f"{why} + {particle}")

    def _okurigana(self, i: int, j: int) -> Iterator[Step]:
        char, price = self.copy.norm[i], self.price["okurigana"]
        for mode, behind, at, side, ahead in (
            ("copy ahead", self.source, j, self.copy, i),
            ("source ahead", self.copy, i, self.source, j),
        ):
            left = pairs.tails(char)
            if ahead + 1 < len(side) and side.sort[ahead + 1] == "kanji":
                left = (*left, *UNWRITTEN)
            for owed in left:
                if at + 1 < len(behind) and _letter_fits(owed, behind.letters[at + 1]):
                    state = State(i + 1, j + 1, "copy ahead" if mode == "copy ahead" else "source ahead", owed)
                    yield Step(state, price, "okurigana", f"{char} is written with more or fewer kana")

    def _catch_up(self, state: State, behind: Side, at: int) -> Iterator[Step]:
        if at == len(behind):
            return
        if behind.letters[at]:
            spoken = behind.norm[at]
            kana = Edge(at + 1, behind.letters[at], "kana", spoken, "")
            yield from self._supply(state, kana, "")
        for edge in behind.edges[at]:
            if sounds.starts_alike(state.owed, edge.pattern):
                yield from self._supply(state, edge, _reason(behind, at, edge))
                follows = edge.end < len(behind) and behind.sort[edge.end] == "kanji"
                if follows and behind.sort[at] == "kanji":
                    for particle in UNWRITTEN:
                        linked = edge._replace(pattern=edge.pattern + particle)
                        yield from self._supply(state, linked, "", self.price["link"])

    def _supply(self, state: State, edge: Edge, why: str, extra: int = 0) -> Iterator[Step]:
        """The side that is behind supplies ``edge``: the debt shrinks, is paid, or changes sides."""
        owed, pattern = state.owed, edge.pattern
        if not sounds.starts_alike(owed, pattern):
            return
        ahead = state.mode
        i, j = (state.i, edge.end) if ahead == "copy ahead" else (edge.end, state.j)
        if len(owed) > len(pattern):
            new = State(i, j, ahead, owed[len(pattern) :])
        elif len(owed) == len(pattern):
            new = State(i, j)
        else:
            other: Mode = "source ahead" if ahead == "copy ahead" else "copy ahead"
            new = State(i, j, other, pattern[len(owed) :])
        yield Step(new, self.price[edge.step] + extra, edge.step, why)

    def _wrong(self, state: State, opening: int) -> Iterator[Step]:
        i, j, mode = state.i, state.j, state.mode
        more_copy, more_source = i < len(self.copy), j < len(self.source)
        price = self.price["wrong"] + opening
        if mode in ("closed", "wrong") and more_copy and more_source:
            yield Step(State(i + 1, j + 1, "wrong"), price, "wrong")
        if mode in ("closed", "wrong", "added") and more_copy:
            yield Step(State(i + 1, j, "added"), price, "wrong")
        if mode in ("closed", "wrong", "omitted") and more_source:
            yield Step(State(i, j + 1, "omitted"), price, "wrong")

    def _unread(self, i: int, j: int) -> Iterator[Step]:
        copy, source = self.copy, self.source
        one, more = self.price["unread"], self.price["unread_more"]
        if i < len(copy) and copy.sort[i] == "unread":
            for width in range(1, min(3, len(source) - j) + 1):
                yield Step(State(i + 1, j + width), one + more * (width - 1), "unread", "cannot be read")
        if j < len(source) and source.sort[j] == "unread":
            for width in range(1, min(3, len(copy) - i) + 1):
                yield Step(State(i + width, j + 1), one + more * (width - 1), "unread", "cannot be read")
        if i < len(copy) and copy.sort[i] == "gap":
            yield Step(State(i + 1, j, "copy gap"), self.price["gap"], "gap", "a gap in the copy")
        if j < len(source) and source.sort[j] == "gap":
            yield Step(State(i, j + 1, "source gap"), self.price["gap"], "gap", "a gap in the source")

    def _in_gap(self, state: State) -> Iterator[Step]:
        i, j = state.i, state.j
        yield Step(State(i, j), 0, "close")
        if state.mode == "copy gap" and j < len(self.source):
            yield Step(State(i, j + 1, "copy gap"), self.price["gap_sign"], "gap")
        if state.mode == "source gap" and i < len(self.copy):
            yield Step(State(i + 1, j, "source gap"), self.price["gap_sign"], "gap")


def _spelled_out(side: Side, at: int, text: str) -> int:
    """Return where ``text`` ends if the signs from ``at`` spell it out, else 0."""
    end, written = at, ""
    while end < len(side) and len(written) < len(text):
        written += side.norm[end]
        end += 1
    alike = written == text or (
        len(written) == len(text) and all(map(sounds.is_kana, written + text)) and sounds.fold(written) == sounds.fold(text)
    )
    return end if alike and end - at > 1 else 0


def _may_begin(pattern: str, side: Side, at: int) -> bool:
    """Whether a reading may begin as the signs of ``side`` at ``at`` do."""
    if _letter_fits(pattern, side.letters[at]):
        return True
    return any(sounds.starts_alike(pattern, edge.pattern) for edge in side.edges[at])


def _letter_fits(pattern: str, letters: str) -> bool:
    return bool(letters) and sounds.starts_alike(pattern, letters)


def _reason(side: Side, start: int, edge: Edge) -> str:
    if edge.step == "long":
        return "historical against modern spelling"
    return f"{''.join(side.norm[start : edge.end])} is read {edge.spoken} ({edge.source})"


def _path(cost: int, end: State, came: dict[State, tuple[State, Step]]) -> Path:
    steps: list[Step] = []
    state = end
    while state in came:
        state, step = came[state]
        steps.append(step)
    return Path(cost, state, tuple(reversed(steps)))
