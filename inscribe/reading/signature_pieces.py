"""Everything a signature could be made of: at each place, the words, names, dates and marks.

Each piece has a price: what is usual is cheap. Which of them it is made of, the splitter decides.

>>> [(p.text, p.kind) for p in pieces_of("武州作")[0] if p.cost < 3]
[('武州', 'place'), ('武州', 'name')]
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.made_names import ending_of
from inscribe.reading.name_elements import usualness
from inscribe.reading.name_lists import place_names, surnames, surnames_from
from inscribe.reading.names import own_names
from inscribe.reading.signature_words import Word, words_from

# A kao, a seal, a gap, an unreadable sign: as inscribe.forms writes them.
MARK = re.compile(r"（花押）|（印「[^」]*」）|（印）|［[^］]*］|□")

_NAME = 2.2  # an art name of two usual characters
_RARE_CHARACTER = 0.55  # for each step by which a character is less usual in its place
_USUAL_CHARACTER = 3.6  # from this usualness on a character costs nothing
_SINGLE_NAME = 5.2
_ENDED_NAME = 2.0  # with a studio or everyday ending
_LONG_STEM = 1.5  # for each character more before an ending than is usual
_DOUBTFUL_ENDING = 4.0
_LONG_NAME = 8.0  # three characters without a known pattern
_LONGEST_NAME = 6
_LONGEST_WORD = 8
_MOST_KNOWN = 50_000  # stretches whose prices are kept
_SURNAME = 1.3
_UNLISTED_SURNAME = 4.3
_LIKE_A_NAME = 1.5
_LISTED_PLACE = 2.2  # in place_names.tsv
_UNLISTED_PLACE = 4.0
_CALLS_FOR_PLACE = frozenset("於于在")
_OWN_NAME = 0.3
_FORMULA_SIGN = 2.0  # a sign of the formulas (作 住 於) within a name
_FORMULA_KINDS = frozenset({"verb", "opener", "residence"})
_OTHER = 6.0
_DATE = 0.3


class Piece(NamedTuple):
    """A stretch of the text (``first`` to ``last``, offsets, both counted) and what it is.

    A named tuple, as a signature of ten signs has some fifty of them.
    """

    text: str
    kind: str
    first: int
    last: int
    cost: float
    word: Word | None = None
    order_kind: str = ""  # the class by which the order of pieces is priced, with its family


def pieces_of(text: str, dated: Collection[Piece] = ()) -> list[list[Piece]]:
    """Return every piece the text could hold, by its first offset."""
    found: list[list[Piece]] = [[] for _ in text]
    for piece in dated:
        found[piece.first].append(piece)
    position = 0
    while position < len(text):
        if mark := MARK.match(text, position):
            kind = "unread" if mark.group()[0] in "□［" else "mark"
            found[position].append(_piece(mark.group(), kind, position, 0.0))
            if mark.group() == "□":
                found[position].extend(_name_pieces(text, position))
            position = mark.end()
            continue
        found[position].extend(_word_pieces(text, position))
        found[position].extend(_name_pieces(text, position))
        found[position].append(_piece(text[position], "other", position, _OTHER))
        position += 1
    return found


def _piece(text: str, kind: str, first: int, cost: float, word: Word | None = None) -> Piece:
    order_kind = f"{kind}:{word.family}" if word is not None and word.family else kind
    return Piece(text, kind, first, first + len(text) - 1, cost, word, order_kind)


def date_piece(text: str, first: int, last: int, kind: str) -> Piece:
    """Return a date or an age as a piece."""
    return Piece(text[first : last + 1], kind, first, last, _DATE, None, kind)


def _word_pieces(text: str, position: int) -> Iterator[Piece]:
    known = words_from(text[position])
    for length in range(1, min(_LONGEST_WORD, len(text) - position) + 1) if known else ():
        written = text[position : position + length]
        for word in known.get(written, ()):
            yield _piece(written, word.kind, position, word.cost, word)


def is_name_character(char: str) -> bool:
    """Return whether a character may stand in a name: a kanji, or a sign that cannot be read."""
    return "一" <= char <= "鿿" or char in "々□" or "㐀" <= char <= "䶿" or char >= "\U00020000"


def _name_pieces(text: str, position: int) -> Iterator[Piece]:
    longest = 0
    while (
        longest < _LONGEST_NAME
        and position + longest < len(text)
        and is_name_character(text[position + longest])
    ):
        longest += 1
    known = _known_names()
    for length in range(1, longest + 1):
        name = text[position : position + length]
        if name not in known:
            if len(known) > _MOST_KNOWN:
                known.clear()
            known[name] = tuple(_names_it_could_be(name))
        for kind, cost in known[name]:
            yield Piece(name, kind, position, position + length - 1, cost, None, kind)
    yield from _place_pieces(text, position, longest)


@tables.compiled
def _known_names() -> dict[str, tuple[tuple[str, float], ...]]:
    return {}


def _names_it_could_be(name: str) -> Iterator[tuple[str, float]]:
    """Yield the kinds of name a stretch could be, with their prices."""
    if own := own_names().get(name):
        yield _PIECE_KINDS.get(own[0].kind, "name"), _OWN_NAME
    yield from _given_names(name)
    if name in surnames_from(name[0]):
        yield "surname", _surname_cost(name)
    elif 1 < len(name) < 4 and "□" not in name:
        yield "surname", _unlisted_surname_cost(name)


def _unlisted_surname_cost(name: str) -> float:
    cost = _UNLISTED_SURNAME + 2.0 * (len(name) - 2)
    if len(name) == 2:  # what would make a good art name is the less likely a surname
        cost += max(0.0, _LIKE_A_NAME - _rarity(name[0], "first") - _rarity(name[1], "last"))
    return cost + _formula_signs_cost(name)


def _place_pieces(text: str, position: int, longest: int) -> Iterator[Piece]:
    """Yield the places that cities.tsv lacks, where the formula calls for one."""
    after_opener = position > 0 and text[position - 1] in _CALLS_FOR_PLACE
    after_opener = after_opener or (position == 1 and text[0] == "住")
    for length in range(2, min(longest, 3) + 1):
        name = text[position : position + length]
        following = text[position + length : position + length + 1]
        if "□" in name or not (after_opener or (following and _follows_place(following))):
            continue
        if any(_is_known_place(name[start:]) for start in range(length)):
            continue  # and the table of all places need not be loaded
        cost = _LISTED_PLACE if place_names(name) else _UNLISTED_PLACE + length - 2
        yield _piece(name, "unlisted_place", position, cost + _formula_signs_cost(name))


def _is_known_place(name: str) -> bool:
    words = words_from(name[0]).get(name, ())
    return any(word.kind in ("place", "city", "quarter") for word in words)


def _follows_place(char: str) -> bool:
    words = words_from(char).get(char, ())
    return any(word.kind in ("residence", "place_suffix") for word in words)


def _formula_signs_cost(name: str) -> float:
    return 2 * _FORMULA_SIGN * sum(map(_is_formula_sign, name))


def _is_formula_sign(char: str) -> bool:
    known = _formula_signs()
    if char not in known:
        known[char] = any(w.kind in _FORMULA_KINDS for w in words_from(char).get(char, ()))
    return known[char]


@tables.compiled
def _formula_signs() -> dict[str, bool]:
    return {}


_PIECE_KINDS = {
    "given": "name",
    "art": "art_name",
    "common": "common_name",
    "surname": "surname",
    "name": "name",
}


def _surname_cost(name: str) -> float:
    usual = _SURNAME + min(1.1, max(0.0, (surnames(name)[0][1] - 6500) / 2500))
    return usual + (1.8 if len(name) == 1 else 0.0)


def _given_names(name: str) -> Iterator[tuple[str, float]]:
    if len(name) == 1:
        if name != "□":
            yield "name", _SINGLE_NAME
        return
    ending = ending_of(name)
    if len(name) == 2:
        cost = _NAME + _rarity(name[0], "first") + _rarity(name[1], "last")
        cost += _FORMULA_SIGN * sum(map(_is_formula_sign, name))
        sort = ending and ending.kind == "art" and ending.weight >= 1
        yield "art_name" if sort else "name", cost
    elif ending and "□" not in name:
        stem = name[: -len(ending.text)]
        cost = (
            _ENDED_NAME
            + _DOUBTFUL_ENDING * (1 - ending.weight)
            + _LONG_STEM * max(0, len(stem) - (2 if ending.kind == "art" else 1))
        )
        cost += sum(_rarity(char, "first") for char in stem) / 2
        cost += _FORMULA_SIGN * sum(map(_is_formula_sign, stem))
        yield f"{ending.kind}_name", cost
    if len(name) == 3:
        yield "name", _LONG_NAME


def _rarity(char: str, place: str) -> float:
    """Return what a character costs for being unusual at this place of a name."""
    if char == "□":
        return 1.0
    found = usualness(char, "first" if place == "first" else "last")
    return max(0.0, _USUAL_CHARACTER - found) * _RARE_CHARACTER
