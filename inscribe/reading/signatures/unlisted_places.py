"""Places that no table of towns has, told by the formula around them: 於 before, 住 after.

>>> list(unlisted_places("於綾郷", 1))
[('綾郷', 4.0)]
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.reading.names import known, place_names, surnames
from inscribe.reading.signatures.names import (
    SURNAME,
    formula_signs_cost,
    is_kanji,
    is_known_place,
    is_name_character,
)
from inscribe.reading.words import words_from

_LISTED_PLACE = 2.2  # in place_names.tsv
_PLACE_OF_DICTIONARY = 2.9
_UNLISTED_PLACE = 4.0
_QUARTER = 1.5
_LONGEST_TOWN = 4  # signs
_WORN_PROVINCE = "□州"
_CALLS_FOR_PLACE = frozenset("於于在")
_TEMPLES, _BUDDHIST = frozenset("寺院宮社堂"), "寺"
_BESIDE_TEMPLES = ("門前", "境内", "社前", "前", "辺", "畔", "内", "中", "塔頭")
_LENGTH_OF_TEMPLE = 3
_TEMPLE, _UNLISTED_TEMPLE = 0.5, 2.0
_END_PROVINCES = frozenset("州国")


def unlisted_places(text: str, position: int) -> Iterator[tuple[str, float]]:
    """Yield the places that may begin at a place of the text, with their prices."""
    after_opener = position > 0 and text[position - 1] in _CALLS_FOR_PLACE
    after_opener = after_opener or (position == 1 and text[0] == "住")
    if position and text[position] in _END_PROVINCES:
        return
    for length in (2, 3):
        name = text[position : position + length]
        following = text[position + length : position + length + 1]
        called_for = after_opener or (following and _follows_place(following))
        if not called_for or len(name) < length or not all(map(is_name_character, name)):
            continue
        if is_known_place(name) or (length > 2 and is_known_place(name[:2])):
            continue  # and the table of all places need not be loaded
        if _ends_in_known_place(name):
            continue
        if "□" in name and (length > 2 or name == "□□"):
            continue
        if name == _WORN_PROVINCE:
            yield name, SURNAME
            continue
        yield name, _place_cost(name)


def temples(text: str, position: int) -> Iterator[tuple[str, float]]:
    """Yield the temples and shrines that may begin at a place, if a formula names a place there.

    >>> list(temples("於浅草寺辺作之", 1)), list(temples("霞雲寺門前住", 0))
    ([('浅草寺', 0.5)], [('霞雲寺', 2.0)])
    """
    for length in (3, 4):
        name = text[position : position + length]
        if len(name) < length or name[-1] not in _TEMPLES or not all(map(is_kanji, name)):
            continue
        after_opener = _is_called_for(text, position)
        within = any(text.startswith(word, position + length) for word in _BESIDE_TEMPLES)
        if known(name).place and (after_opener or within):
            yield name, _TEMPLE
        elif (within or after_opener) and length == _LENGTH_OF_TEMPLE and name[-1] in _BUDDHIST:
            yield name, _UNLISTED_TEMPLE


def quarters(text: str, position: int) -> Iterator[tuple[str, float]]:
    """Yield the known places that may be a quarter of a town after 於: 新橋 in 於江戸新橋.

    >>> list(quarters("於江戸新橋造之", 3)), list(quarters("江戸新橋造之", 2))
    ([('新橋', 1.5)], [])
    """
    if not _is_called_for(text, position) or text[position - 1] in _CALLS_FOR_PLACE:
        return
    for length in (2, 3):
        name = text[position : position + length]
        if len(name) == length and all(map(is_name_character, name)) and not is_known_place(name):
            if surnames(name):
                continue  # 於江戸三輪綾国作之
            if place_names(name):
                yield name, _QUARTER
            elif known(name).place and not known(name).given:
                yield name, _QUARTER + _LISTED_PLACE


def _is_called_for(text: str, position: int) -> bool:
    """Return whether 於 stands before a place of the text, or before a known place before it."""
    if position and text[position - 1] in _CALLS_FOR_PLACE:
        return True
    starts = range(max(1, position - _LONGEST_TOWN), position - 1)
    openers = (start for start in starts if text[start - 1] in _CALLS_FOR_PLACE)
    return any(is_known_place(text[start:position]) for start in openers)


def _place_cost(name: str) -> float:
    """Return the price of a place: signs of the formulas (桐生) are nothing odd in a listed one."""
    if place_names(name):
        return _LISTED_PLACE
    if known(name).place:
        return _PLACE_OF_DICTIONARY + formula_signs_cost(name) / 2
    return _UNLISTED_PLACE + len(name) - 2 + formula_signs_cost(name)


def _ends_in_known_place(name: str) -> bool:
    """Return whether a known place ends a stretch that is none itself: 州津, not 宮津."""
    inside = any(is_known_place(name[start:]) for start in range(1, len(name)))
    return inside and not (place_names(name) or known(name).place)


def _follows_place(char: str) -> bool:
    for word in words_from(char).get(char, ()):
        if word.kind in ("residence", "place_suffix"):
            return True
    return False
