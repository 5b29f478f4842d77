"""What may stand in a worn place of a signature: all ways to divide it, weighed together.

A signature is taken for a walk from class to class (place, residence, surname, name, verb, ...),
each class saying one of its words. The chance of a step comes from ``signature_order.tsv``, that
of a word from ``signature_chances.tsv`` and the tables of names and dates. All walks that agree
with the legible signs are added up (the forward and backward sums of a hidden semi-Markov model),
so the shares of the signs that may stand in the worn place are probabilities.

>>> best = max(signs_at("武州住綾国□", 5).items(), key=lambda item: item[1].chance)
>>> best[0], best[1].kind
('作', 'verb')
"""

from __future__ import annotations

import math
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from inscribe import tables
from inscribe.reading.words import order
from inscribe.restoring.chances import likelier_after, weights
from inscribe.restoring.name_chances import NO_NAMES, UNREAD, Names
from inscribe.restoring.stretches import LONGEST, Worn, WornStretches, common

MARK = re.compile(r"（花押）|（印「[^」]*」）|（印）|［[^］]*］")
_UNLISTED_STEP = 3.0  # as the splitter of signatures has it
_ANY_SIGN = 1e-5  # chance that a legible sign stands for something no table knows
_SCALE = 400.0  # keeps products of chances, one factor a sign, within what a float holds
_MOST_UNREAD_IN_WORD = 3
# Classes at the borders of a formula, by which signature_order.tsv knows it from outside.
_BORDERS = {
    "patron": ("opener:patron", "closer:patron"),
    "purpose": ("opener:purpose", "closer:patron"),
    "model": ("opener:model", "closer:model"),
}


@dataclass(slots=True)
class Possible:
    """A sign that may stand in the place: its chance, and the likeliest word it is part of."""

    chance: float = 0.0
    kind: str = ""
    word: str = ""
    best: float = 0.0

    def add(self, chance: float, best: float, kind: str, word: str) -> None:
        """Count another way in which it may stand there."""
        self.chance += chance
        if best > self.best:
            self.best, self.kind, self.word = best, kind, word


@dataclass(frozen=True, slots=True)
class _Transition:
    start: int
    end: int
    kind: str
    chance: float
    worn: Worn | None = None


class Walks:
    """All ways to divide a signature, □ standing for each sign that cannot be read.

    ``names`` are names that are to be expected (in a collection), with how often.
    """

    def __init__(self, text: str, names: Names = NO_NAMES) -> None:
        self._text = text
        self._edges = list(_edges(text, WornStretches(names) if names else common()))

    @cached_property
    def _forward(self) -> _Sums:
        return _forward(self._edges, len(self._text))

    @cached_property
    def _backward(self) -> _Sums:
        return _backward(self._edges, len(self._text))

    def signs_at(self, at: int) -> dict[str, Possible]:
        """Return the signs that may stand at an offset, their chances adding to 1."""
        found: defaultdict[str, Possible] = defaultdict(Possible)
        for around, edge, worn in self._worn_over(at, at + 1):
            for sign, (chance, best, word) in worn.signs_at(at - edge.start).items():
                found[sign].add(around * chance, around * best, edge.kind, word)
        total = sum(possible.chance for possible in found.values())
        for possible in found.values():
            possible.chance /= total or 1.0
        return dict(found)

    def words_at(self, first: int, last: int) -> dict[str, Possible]:
        """Return the words that may fill offsets ``first`` to ``last`` (exclusive), all worn.

        The chances are comparable between texts that differ in the number of worn signs only.
        """
        found: defaultdict[str, Possible] = defaultdict(Possible)
        for around, edge, worn in self._worn_over(first, last):
            if (edge.start, edge.end) == (first, last):
                around /= _SCALE ** (last - first)
                for chance, word in worn.words:
                    found[word].add(around * chance, around * chance, edge.kind, word)
        return dict(found)

    def _worn_over(self, first: int, last: int) -> Iterator[tuple[float, _Transition, Worn]]:
        """Yield the worn stretches over some offsets, and the chance of all around each."""
        for edge in self._edges:
            if edge.worn and edge.start <= first and last <= edge.end:
                around = _into(self._forward[edge.start], edge.kind)
                around *= self._backward[edge.end].get(edge.kind, 0.0)
                if around:
                    yield around * _SCALE ** (edge.end - edge.start), edge, edge.worn


def signs_at(text: str, at: int, names: Names = NO_NAMES) -> dict[str, Possible]:
    """Return the signs that may stand at offset ``at`` of a signature, their chances adding to 1.

    ``text`` is in current forms; the rest is as in :class:`Walks`.
    """
    return Walks(text, names).signs_at(at)


def _edges(text: str, stretches: WornStretches) -> Iterator[_Transition]:
    position = 0
    while position < len(text):
        if mark := MARK.match(text, position):
            kind = "mark" if mark.group()[0] == "（" else "unread"
            yield _Transition(position, mark.end(), kind, 1.0)
            position = mark.end()
            continue
        for end in range(position + 1, min(position + LONGEST, len(text)) + 1):
            stretch = text[position:end]
            if "（" in stretch or "［" in stretch:
                break
            yield from _words_in(stretch, position, stretches)
        position += 1


def _words_in(stretch: str, start: int, stretches: WornStretches) -> Iterator[_Transition]:
    scale = _SCALE ** len(stretch)
    end = start + len(stretch)
    if UNREAD not in stretch:
        for kind, chance in stretches.legible(stretch).items():
            yield _Transition(start, end, kind, chance * scale)
        if len(stretch) == 1:
            yield _Transition(start, end, "other", _ANY_SIGN * scale)
    elif stretch.count(UNREAD) <= _MOST_UNREAD_IN_WORD or stretch.strip(UNREAD):
        for kind, worn in stretches.worn(stretch):
            yield _Transition(start, end, kind, worn.chance * scale, worn)


_Sums = list[dict[str, float]]


def _forward(edges: list[_Transition], length: int) -> _Sums:
    sums: _Sums = [defaultdict(float) for _ in range(length + 1)]
    sums[0]["start"] = 1.0
    for edge in sorted(edges, key=lambda edge: edge.start):
        if into := _into(sums[edge.start], edge.kind):
            sums[edge.end][edge.kind] += into * edge.chance
    return sums


def _backward(edges: list[_Transition], length: int) -> _Sums:
    """Return, for each place and class of the word before it, the chance of all that follows."""
    sums: _Sums = [defaultdict(float) for _ in range(length + 1)]
    before: list[set[str]] = [{"start"}, *(set[str]() for _ in range(length))]  # classes that end
    for edge in edges:
        before[edge.end].add(edge.kind)
    sums[length] = {kind: steps_from(kind).get("end", 0.0) for kind in before[length]}
    for edge in sorted(edges, key=lambda edge: -edge.start):
        rest = sums[edge.end].get(edge.kind, 0.0) * edge.chance
        if rest:
            here = sums[edge.start]
            for kind in before[edge.start]:
                if step := steps_from(kind).get(edge.kind, 0.0):
                    here[kind] += step * rest
    return sums


def _into(arrived: dict[str, float], kind: str) -> float:
    return sum(chance * steps_from(before).get(kind, 0.0) for before, chance in arrived.items())


@tables.cached()
def steps_from(before: str) -> dict[str, float]:
    """Return the chance of each class (and ``end``) after a class; they add up to 1."""
    inner = _inner_order().get(before, {})
    total = sum(inner.values())
    found = {after: weight / total for after, weight in inner.items() if after != "out"}
    leaving = inner.get("out", 0.0) / total if inner else 1.0
    if leaving:
        likelier = likelier_after().get(before, {})
        weighed = {
            after: weight
            * likelier.get(after, 1.0)
            * math.exp(-_order_cost(_seen_from_outside(before, 1), _seen_from_outside(after, 0)))
            for after, weight in weights()["class"].items()
        }
        whole = sum(weighed.values())
        for after, weight in weighed.items():
            found[after] = found.get(after, 0.0) + leaving * weight / whole
    return found


@tables.cached()
def _inner_order() -> dict[str, dict[str, float]]:
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for row in tables.rows("signature_date_order"):
        found[row["before"]].setdefault(row["after"], float(row["weight"]))
    return dict(found)


def _seen_from_outside(kind: str, side: int) -> str:
    """Return the class by which a kind borders on others: before it (side 0) or after (side 1)."""
    outer, divided, _ = kind.partition(">")
    return _BORDERS[outer][side] if divided and outer in _BORDERS else outer


def _order_cost(before: str, after: str) -> float:
    for left in (before, before.partition(":")[0]):
        for right in (after, after.partition(":")[0]):
            found = order().get(left, {}).get(right)
            if found is not None:
                return found
    return _UNLISTED_STEP
