"""Divide a signature into its parts: the likeliest path through all words and names it could hold.

Every stretch that is a word of the glossary, a date, a mark (□, kao, seal) or could be a name is a
piece; which class of piece follows which has a price. Dynamic programming finds the cheapest
divisions.

>>> [(piece.text, piece.kind) for piece in divisions("武州住政広作")[0].pieces]
[('武州', 'place'), ('住', 'residence'), ('政広', 'name'), ('作', 'verb')]
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass

from inscribe import tables
from inscribe.reading import names
from inscribe.reading.name_elements import usualness
from inscribe.reading.name_lists import place_names, surnames, surnames_from
from inscribe.reading.signature_words import Word, order_cost, words_from

# A kao, a seal, a gap, an unreadable sign: as inscribe.forms writes them.
MARK = re.compile(r"（花押）|（印「[^」]*」）|（印）|［[^］]*］|□")

_KEPT = 2  # divisions kept at each place and class (_extend relies on there being two)
_HOPELESS = 9.0
_UNLISTED_ORDER = 3.0  # what it costs that classes meet of which the table says nothing
_NAME = 2.2  # an art name of two usual characters
_RARE_CHARACTER = 0.55  # for each step by which a character is less usual in its place
_USUAL_CHARACTER = 3.6  # from this usualness on a character costs nothing
_SINGLE_NAME = 5.2
_ENDED_NAME = 2.0  # with a studio or everyday ending
_LONG_STEM = 1.5  # for each character more than one before an ending
_DOUBTFUL_ENDING = 4.0
_LONG_NAME = 8.0  # three characters without a known pattern
_LONGEST_NAME = 6
_SURNAME = 1.3
_UNLISTED_SURNAME = 4.3
_LISTED_PLACE = 2.2  # in place_names.tsv
_UNLISTED_PLACE = 4.0
_CALLS_FOR_PLACE = frozenset("於于在住")
_OWN_NAME = 0.3
_FORMULA_SIGN = 2.0  # a sign of the formulas (作 住 於) within a name
_FORMULA_KINDS = frozenset({"verb", "opener", "residence"})
_OTHER = 6.0
_DATE = 0.3
_ACROSS_COLUMNS = 0.4


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the text (``first`` to ``last``, offsets, both counted) and what it is."""

    text: str
    kind: str
    first: int
    last: int
    cost: float
    word: Word | None = None
    order_kind: str = ""  # the class by which the order of pieces is priced, with its family


@dataclass(frozen=True, slots=True)
class Division:
    """One way of dividing a text, and its price (lower is better)."""

    pieces: tuple[Piece, ...]
    cost: float


@dataclass(slots=True)  # not frozen: thousands are made for one signature
class _Path:
    cost: float
    piece: Piece | None
    before: _Path | None


def divisions(
    text: str, breaks: Collection[int] = (), dated: Collection[Piece] = ()
) -> tuple[Division, ...]:
    """Return the cheapest divisions of a normalised text, the best first.

    Args:
        text: the signature in current forms, marks as ``inscribe.forms`` writes them.
        breaks: offsets at which a column begins; a piece seldom runs over one.
        dated: pieces of kind date and age found beforehand.
    """
    pieces = _pieces(text, dated)
    ends: list[dict[str, list[_Path]]] = [{} for _ in range(len(text) + 1)]
    ends[0]["start"] = [_Path(0.0, None, None)]
    for position in range(len(text)):
        arrived = _within_reach(ends[position])
        for piece in pieces[position] if arrived else ():
            across = sum(piece.first < edge <= piece.last for edge in breaks) if breaks else 0
            price = piece.cost + across * _ACROSS_COLUMNS
            _extend(arrived, ends[piece.last + 1], piece, price)
    final = [
        (path.cost + _order(kind, "end"), path)
        for kind, paths in ends[len(text)].items()
        for path in paths
    ]
    best = sorted(final, key=lambda item: item[0])[: _KEPT + 1]
    return tuple(Division(_pieces_of(path), cost) for cost, path in best)


def _within_reach(paths: dict[str, list[_Path]]) -> list[tuple[str, list[_Path]]]:
    """Return the paths to a place that are not so much dearer than the best as to be hopeless."""
    if not paths:
        return []
    limit = min(kept[0].cost for kept in paths.values()) + _HOPELESS
    return [(kind, kept) for kind, kept in paths.items() if kept[0].cost <= limit]


def _extend(
    arrived: list[tuple[str, list[_Path]]],
    ends: dict[str, list[_Path]],
    piece: Piece,
    price: float,
) -> None:
    """Lengthen the paths by a piece, and keep the cheapest that end with its class."""
    kind = piece.order_kind
    steps = _steps_to(kind)
    grown: list[_Path] = ends.get(kind, [])
    for before, paths in arrived:
        step = (steps[before] if before in steps else _order(before, kind)) + price
        for path in paths:
            cost = path.cost + step
            if len(grown) < _KEPT:
                grown.append(_Path(cost, piece, path))
            elif cost < grown[-1].cost:
                grown[-1] = _Path(cost, piece, path)
            else:
                break
            if len(grown) == _KEPT and grown[0].cost > grown[1].cost:
                grown.reverse()
    ends[kind] = grown


@tables.compiled
def _known_steps() -> dict[str, dict[str, float]]:
    return {}


def _steps_to(after: str) -> dict[str, float]:
    return _known_steps().setdefault(after, {})


def _order(before: str, after: str) -> float:
    """Return the price of an order, by family (opener:place) or else by class (opener)."""
    steps = _steps_to(after)
    if before not in steps:
        steps[before] = _looked_up_order(before, after)
    return steps[before]


def _looked_up_order(before: str, after: str) -> float:
    for left in _general(before):
        for right in _general(after):
            found = order_cost(left, right)
            if found is not None:
                return found
    return _UNLISTED_ORDER


def _general(kind: str) -> tuple[str, ...]:
    plain = kind.partition(":")[0]
    return (kind, plain) if plain != kind else (kind,)


def _pieces_of(path: _Path) -> tuple[Piece, ...]:
    found: list[Piece] = []
    step: _Path | None = path
    while step is not None and step.piece is not None:
        found.append(step.piece)
        step = step.before
    return tuple(reversed(found))


def _pieces(text: str, dated: Collection[Piece]) -> list[list[Piece]]:
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
    for written, words in words_from(text[position]).items():
        if text.startswith(written, position):
            for word in words:
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
    listed = surnames_from(text[position])
    own = names.own_names()
    for length in range(1, longest + 1):
        name = text[position : position + length]
        if name in own:
            kind = own[name][0].kind
            yield _piece(name, _PIECE_KINDS.get(kind, "name"), position, _OWN_NAME)
        yield from _given_pieces(name, position)
        if name in listed:
            yield _piece(name, "surname", position, _surname_cost(name))
        elif 1 < length < 4 and "□" not in name:
            yield _unlisted_surname(name, position)
    yield from _place_pieces(text, position, longest)


def _unlisted_surname(name: str, position: int) -> Piece:
    cost = _UNLISTED_SURNAME + 2.0 * (len(name) - 2)
    return _piece(name, "surname", position, cost + _formula_signs_cost(name))


def _place_pieces(text: str, position: int, longest: int) -> Iterator[Piece]:
    """Yield the places that cities.tsv lacks, where the formula calls for one."""
    after_opener = position > 0 and text[position - 1] in _CALLS_FOR_PLACE
    for length in range(2, min(longest, 3) + 1):
        name = text[position : position + length]
        following = text[position + length : position + length + 1]
        if "□" in name or not (after_opener or (following and _follows_place(following))):
            continue
        cost = _LISTED_PLACE if place_names(name) else _UNLISTED_PLACE + length - 2
        yield _piece(name, "unlisted_place", position, cost + _formula_signs_cost(name))


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


def _given_pieces(name: str, position: int) -> Iterator[Piece]:
    if len(name) == 1:
        if name != "□":
            yield _piece(name, "name", position, _SINGLE_NAME)
        return
    ending = names.ending_of(name)
    if len(name) == 2:
        cost = _NAME + _rarity(name[0], "first") + _rarity(name[1], "last")
        cost += _FORMULA_SIGN * sum(map(_is_formula_sign, name))
        sort = ending and ending.kind == "art" and ending.weight >= 1
        yield _piece(name, "art_name" if sort else "name", position, cost)
    elif ending and "□" not in name:
        stem = name[: -len(ending.text)]
        cost = (
            _ENDED_NAME
            + _DOUBTFUL_ENDING * (1 - ending.weight)
            + _LONG_STEM * (len(stem) - 1) * (0.4 if ending.kind == "art" else 1.0)
        )
        cost += sum(_rarity(char, "first") for char in stem) / 2
        cost += _FORMULA_SIGN * sum(map(_is_formula_sign, stem))
        yield _piece(name, f"{ending.kind}_name", position, cost)
    if len(name) == 3:
        yield _piece(name, "name", position, _LONG_NAME)


def _rarity(char: str, place: str) -> float:
    """Return what a character costs for being unusual at this place of a name."""
    if char == "□":
        return 1.0
    found = usualness(char, "first" if place == "first" else "last")
    return max(0.0, _USUAL_CHARACTER - found) * _RARE_CHARACTER
