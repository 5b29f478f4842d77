"""The characters of names: how each is read, by its place in the name, and how usual that is.

A made name of two characters (綾国, 静葭) is read either with name readings or with on-readings,
and each character prefers some readings at the head and others at the end. The figures come from
``name_elements.tsv`` and ``name_signs.tsv`` (both counted) and ``name_preferences.tsv`` (kept by
hand, and stronger).

>>> [choice.kana for choice in choices("広", "last")][:2]
['ひろ', 'こう']
>>> choices("広", "last")[0].is_on, usualness("広", "last") > usualness("銘", "last")
(False, True)
"""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from inscribe import tables
from inscribe.reading.spelling import hiragana

Position = Literal["first", "last", "stem", "alone"]

_BORROWED_FROM: tuple[Position, ...] = ("first", "last", "stem")
# What a reading seen only elsewhere in names, or only in a dictionary, weighs against one counted.
_BORROWED = 0.15
_DICTIONARY = 0.3
_OFTEN = 10  # the weight of a reading that the art names of a character often have
_ENOUGH_NAMES = 20  # a share of fewer names says nothing


class Choice(NamedTuple):
    """One reading of a character in a name, with its share of the readings in that place."""

    kana: str
    is_on: bool
    share: float  # 0 to 1
    source: str  # which table or dictionary gives it
    counted: float | None = None  # its share of the names counted in that place, where they suffice
    weight: float = math.inf  # the names it was counted in; below 1.5 a dictionary alone has it


@tables.cached()
def _elements() -> tables.Rows:
    return tables.Rows("name_elements")


def _counted(char: str) -> tables.Row | None:
    """Return the row of a character, with a cell for each position."""
    return next(_elements().about(char), None)


@tables.cached()
def _signs() -> tables.Sorted:
    return tables.Sorted("name_signs")


def _counted_in_men(char: str, position: Position) -> list[tuple[str, bool, float]]:
    """Return the readings of a character in men's names, those of a dictionary among them."""
    row = _signs().first_about(char)
    if row is None or position == "alone":
        return []
    return _weights((row["last"] if position == "last" else "") or row["first"])


@tables.cached()
def _preferences() -> tables.Rows:
    return tables.Rows("name_preferences")


def _preferred(char: str) -> dict[str, str]:
    """Return how a character is preferably read, by its place in the name."""
    found: dict[str, str] = {}
    for row in _preferences().about(char):
        for position in tables.listed(row["place"]):
            found.setdefault(position, row["readings"])
    return found


def has_stem_preference(char: str) -> bool:
    """Return whether name_preferences.tsv gives a character as usual in everyday names."""
    return "stem" in _preferred(char)


def is_said_alone(char: str) -> bool:
    """Return whether name_preferences.tsv has a character as one that names a person alone: 某."""
    return "alone" in _preferred(char)


@tables.cached()
def preferred_readings() -> frozenset[str]:
    """Return the name readings (no on-readings) of the characters of name_preferences.tsv."""
    return frozenset(
        kana
        for char in _preferences().signs()
        for cell in _preferred(char).values()
        for kana, is_on, weight in _weights(cell)
        if not is_on and weight >= _OFTEN
    )


def _weights(cell: str) -> list[tuple[str, bool, float]]:
    items = (item.partition(":") for item in tables.listed(cell))
    return [(hiragana(kana), kana[0] >= "ァ", float(weight)) for kana, _, weight in items]


@tables.cached()
def choices(char: str, position: Position) -> tuple[Choice, ...]:
    """Return the readings of a character at a place in a name, the most usual first.

    Readings counted in other places of names follow those of the place asked for; a character
    that occurs in no name is read as in KANJIDIC2. Empty for what is no kanji.
    """
    weights: dict[tuple[str, bool], float] = {}
    preferred = _preferred(char).get(position)
    counted = _counted(char)
    if preferred:
        _gather(weights, _weights(preferred), 1.0)
    else:
        if counted:
            _gather(weights, _weights(counted[position]), 1.0)
        for kana, is_on, weight in _counted_in_men(char, position):
            weights[kana, is_on] = weights.get((kana, is_on), 0.0) + weight
    if not preferred:
        factor = _BORROWED if position != "alone" else _BORROWED / 100
        for other in _BORROWED_FROM:
            if other != position:
                elsewhere = _weights(counted[other]) if counted else []
                _gather(weights, [*elsewhere, *_counted_in_men(char, other)], factor)
    source = "preferred in art names" if preferred else "counted in given names"
    if not weights:
        source = "of the dictionary"
        _gather(weights, _dictionary_weights(char), _DICTIONARY)
    total = sum(weights.values()) or 1.0
    shares = _counted_shares(char, position) if counted and not preferred else {}
    found = [
        Choice(k, on, weight / total, source, shares.get((k, on)), weight)
        for (k, on), weight in weights.items()
        if weight
    ]
    return tuple(sorted(found, key=lambda choice: -choice.share))


@tables.cached()
def _everyday() -> tables.Sorted:
    return tables.Sorted("everyday_stems")


@tables.cached()
def everyday_stem(stem: str) -> tuple[Choice, ...]:
    """Return how the start of an everyday name in 兵衛 or 衛門 is read, as counted in such names.

    Those names are read by on-readings where others are not. Empty for what is in none of them.

    >>> [choice.kana for choice in everyday_stem("清")], choices("清", "stem")[0].kana
    (['せい', 'きよ'], 'きよ')
    """
    row = _everyday().first_about(stem)
    weights = _weights(row["readings"]) if row else []
    total = sum(weight for _, _, weight in weights)
    source = "counted in everyday names"
    return tuple(Choice(kana, False, weight / total, source) for kana, _, weight in weights)


def _counted_shares(char: str, position: Position) -> dict[tuple[str, bool], float]:
    """Return each reading's share of the names counted in one place; none where they are few."""
    counted = _counted(char)
    if counted is None or position == "alone":
        return {}
    weights = _weights(counted[position])
    names = sum(weight for _, _, weight in weights if weight >= 1)
    if names < _ENOUGH_NAMES:
        return {}
    return {(kana, on): weight / names for kana, on, weight in weights if weight >= 1}


def _gather(
    weights: dict[tuple[str, bool], float], given: list[tuple[str, bool, float]], factor: float
) -> None:
    for kana, is_on, weight in given:
        key = (kana, is_on)
        weights[key] = max(weights.get(key, 0.0), weight * factor)


def _dictionary_weights(char: str) -> list[tuple[str, bool, float]]:
    from inscribe.forms import readings  # a large table, for rare characters only

    found = readings(char)
    weights = [(kana, False, 1.0) for kana in found.names]
    weights += [(kana.partition(".")[0].strip("-"), False, 0.5) for kana in found.kun]
    weights += [(kana.strip("-"), True, 1.5) for kana in found.on]
    return [(hiragana(kana), on, weight) for kana, on, weight in weights if kana]


@tables.cached()
def usualness(char: str, position: Position) -> float:
    """Return how usual a character is at a place of a name: 0 (never seen) to about 5.

    It is the natural logarithm of one more than the number of names it was counted in.
    """
    preferred = _preferred(char).get(position)
    counted = _counted(char)
    sums = [0.0]
    if preferred:
        sums.append(sum(weight for _, _, weight in _weights(preferred)))
    if counted and (cell := counted[position]):
        sums.append(sum(weight for _, _, weight in _weights(cell)))
    return math.log1p(max(sums))
