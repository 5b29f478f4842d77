"""What may stand in a worn place of a signature: all ways to divide it, weighed together.

A signature is taken for a walk from class to class (place, residence, surname, name, verb, ...),
each class saying one of its words. The chance of a step comes from ``signature_order.tsv``, that
of a word from ``signature_chances.tsv`` and the tables of names and dates. All walks that agree
with the legible signs are added up (the forward and backward sums of a hidden semi-Markov model),
so the shares of the signs that may stand in the worn place are probabilities.

>>> best = max(signs_at("武州住澄国□", 5).items(), key=lambda item: item[1].chance)
>>> best[0], best[1].kind
('作', 'verb')
"""

from __future__ import annotations

import math
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from inscribe import tables
from inscribe.reading.signature_words import order
from inscribe.restoring.chances import weights, word_chances
from inscribe.restoring.name_chances import (
    NO_NAMES,
    UNREAD,
    Names,
    fillings,
    place_chances,
    surname_chances,
)

MARK = re.compile(r"（花押）|（印「[^」]*」）|（印）|［[^］]*］")
_LONGEST = 8
_LONGEST_NAME = 5
_UNLISTED_STEP = 3.0  # as the splitter of signatures has it
_ANY_SIGN = 1e-5  # chance that a legible sign stands for something no table knows
_SCALE = 400.0  # keeps products of chances, one factor a sign, within what a float holds
_MOST_UNREAD_IN_WORD = 2


@dataclass(slots=True)
class Possible:
    """A sign that may stand in the place: its chance, and the likeliest word it is part of."""

    chance: float = 0.0
    kind: str = ""
    word: str = ""
    best: float = 0.0


@dataclass(frozen=True, slots=True)
class _Edge:
    start: int
    end: int
    kind: str
    chance: float
    words: tuple[tuple[float, str], ...]  # where the stretch has a sign that cannot be read


def signs_at(text: str, at: int, names: Names = NO_NAMES) -> dict[str, Possible]:
    """Return the signs that may stand at offset ``at`` of a signature, their chances adding to 1.

    ``text`` is in current forms, □ for each sign that cannot be read; ``names`` are names that are
    to be expected (in a collection), with how often.
    """
    found: defaultdict[str, Possible] = defaultdict(Possible)
    for share, kind, word, start in _weighed_words(text, at, at + 1, names):
        possible = found[word[at - start]]
        possible.chance += share
        if share > possible.best:
            possible.best, possible.kind, possible.word = share, kind, word
    total = sum(possible.chance for possible in found.values())
    for possible in found.values():
        possible.chance /= total or 1.0
    return dict(found)


def words_at(text: str, first: int, last: int, names: Names = NO_NAMES) -> dict[str, Possible]:
    """Return the words that may fill offsets ``first`` to ``last`` (exclusive), all worn.

    The chances are comparable between texts that differ in the number of worn signs only.
    """
    found: defaultdict[str, Possible] = defaultdict(Possible)
    scale = _SCALE ** (last - first)
    for share, kind, word, start in _weighed_words(text, first, last, names):
        if start == first and len(word) == last - first:
            possible = found[word]
            possible.chance += share / scale
            if share > possible.best:
                possible.best, possible.kind, possible.word = share, kind, word
    return dict(found)


def _weighed_words(
    text: str, first: int, last: int, names: Names
) -> Iterator[tuple[float, str, str, int]]:
    """Yield share, class, writing and offset of every word that may cover a worn stretch."""
    edges = list(_edges(text, names))
    forward, backward = _forward(edges, len(text)), _backward(edges, len(text))
    for edge in edges:
        if edge.words and edge.start <= first and last <= edge.end:
            around = _into(forward[edge.start], edge.kind)
            around *= backward[edge.end].get(edge.kind, 0.0)
            for chance, word in edge.words if around else ():
                yield around * chance, edge.kind, word, edge.start


def _edges(text: str, names: Names) -> Iterator[_Edge]:
    position = 0
    while position < len(text):
        if mark := MARK.match(text, position):
            kind = "mark" if mark.group()[0] == "（" else "unread"
            yield _Edge(position, mark.end(), kind, 1.0, ())
            position = mark.end()
            continue
        for end in range(position + 1, min(position + _LONGEST, len(text)) + 1):
            stretch = text[position:end]
            if "（" in stretch or "［" in stretch:
                break
            yield from _words_in(stretch, position, names)
        position += 1


def _words_in(stretch: str, start: int, names: Names) -> Iterator[_Edge]:
    scale = _SCALE ** len(stretch)
    end = start + len(stretch)
    if UNREAD not in stretch:
        for kind, chance in _chances_of(stretch, names).items():
            yield _Edge(start, end, kind, chance * scale, ())
        if len(stretch) == 1:
            yield _Edge(start, end, "other", _ANY_SIGN * scale, ())
    elif stretch.count(UNREAD) <= _MOST_UNREAD_IN_WORD or stretch.strip(UNREAD):
        by_kind: defaultdict[str, list[tuple[float, str]]] = defaultdict(list)
        for kind, chance, word in _matching(stretch, names):
            by_kind[kind].append((chance * scale, word))
        for kind, words in by_kind.items():
            yield _Edge(start, end, kind, sum(chance for chance, _ in words), tuple(words))


def _chances_of(stretch: str, names: Names) -> dict[str, float]:
    found = dict(word_chances().get(stretch, {}))
    if len(stretch) <= _LONGEST_NAME:
        for kind, chances in (("surname", surname_chances()), ("unlisted_place", place_chances())):
            if stretch in chances:
                found[kind] = chances[stretch]
        for kind in ("name", "art_name", "common_name"):
            chance = sum(chance for chance, _ in fillings(stretch, kind, names))
            if chance:
                found[kind] = found.get(kind, 0.0) + chance
    return found


def _matching(stretch: str, names: Names) -> Iterator[tuple[str, float, str]]:
    """Yield class, chance and writing of every word that agrees with a stretch."""
    pattern = re.compile("(?<=\n)" + re.escape(stretch).replace(UNREAD, "[^\n]") + "(?=\n)")
    for word in pattern.findall(_joined_words()):
        for kind, chance in word_chances()[word].items():
            yield kind, chance, word
    if len(stretch) <= _LONGEST_NAME:
        for word in pattern.findall(_joined_surnames()):
            yield "surname", surname_chances()[word], word
        for word in pattern.findall(_joined_places()):
            yield "unlisted_place", place_chances()[word], word
        for kind in ("name", "art_name", "common_name"):
            for chance, word in fillings(stretch, kind, names):
                yield kind, chance, word


@tables.compiled
def _joined_words() -> str:
    return "\n" + "\n".join(word for word in word_chances() if len(word) <= _LONGEST) + "\n"


@tables.compiled
def _joined_surnames() -> str:
    return "\n" + "\n".join(surname_chances()) + "\n"


@tables.compiled
def _joined_places() -> str:
    return "\n" + "\n".join(place_chances()) + "\n"


_Sums = list[dict[str, float]]


def _forward(edges: list[_Edge], length: int) -> _Sums:
    sums: _Sums = [defaultdict(float) for _ in range(length + 1)]
    sums[0]["start"] = 1.0
    for edge in sorted(edges, key=lambda edge: edge.start):
        if into := _into(sums[edge.start], edge.kind):
            sums[edge.end][edge.kind] += into * edge.chance
    return sums


def _backward(edges: list[_Edge], length: int) -> _Sums:
    """Return, for each place and class of the word before it, the chance of all that follows."""
    sums: _Sums = [defaultdict(float) for _ in range(length + 1)]
    kinds = {"start"} | {edge.kind for edge in edges}
    sums[length] = {kind: steps_from(kind).get("end", 0.0) for kind in kinds}
    for edge in sorted(edges, key=lambda edge: -edge.start):
        rest = sums[edge.end].get(edge.kind, 0.0) * edge.chance
        if rest:
            here = sums[edge.start]
            for before in kinds:
                if step := steps_from(before).get(edge.kind, 0.0):
                    here[before] += step * rest
    return sums


def _into(arrived: dict[str, float], kind: str) -> float:
    return sum(chance * steps_from(before).get(kind, 0.0) for before, chance in arrived.items())


@tables.compiled
def _known_steps() -> dict[str, dict[str, float]]:
    return {}


def steps_from(before: str) -> dict[str, float]:
    """Return the chance of each class (and ``end``) after a class; they add up to 1."""
    known = _known_steps()
    if before not in known:
        known[before] = _steps(before)
    return known[before]


def _steps(before: str) -> dict[str, float]:
    inner = _inner_order().get(before, {})
    total = sum(inner.values())
    found = {after: weight / total for after, weight in inner.items() if after != "out"}
    leaving = inner.get("out", 0.0) / total if inner else 1.0
    if leaving:
        outer = before.partition(">")[0]
        weighed = {
            after: weight * math.exp(-_order_cost(outer, after.partition(">")[0]))
            for after, weight in weights()["class"].items()
        }
        whole = sum(weighed.values())
        for after, weight in weighed.items():
            found[after] = found.get(after, 0.0) + leaving * weight / whole
    return found


@tables.compiled
def _inner_order() -> dict[str, dict[str, float]]:
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for (before, after, weight), _ in tables.rows(
        "signature_date_order", ("before", "after", "weight")
    ):
        found[before].setdefault(after, float(weight))
    return dict(found)


def _order_cost(before: str, after: str) -> float:
    for left in (before, before.partition(":")[0]):
        for right in (after, after.partition(":")[0]):
            found = order().get(left, {}).get(right)
            if found is not None:
                return found
    return _UNLISTED_STEP
