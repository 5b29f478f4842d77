"""Divide a signature into its parts: the likeliest path through all words and names it could hold.

Every stretch that is a word of the glossary, a date, a mark (□, kao, seal) or could be a name is a
piece; which class of piece follows which has a price. Dynamic programming finds the cheapest
divisions.

>>> [(piece.text, piece.kind) for piece in divisions("武州住綾国作")[0].pieces]
[('武州', 'place'), ('住', 'residence'), ('綾国', 'name'), ('作', 'verb')]
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.signatures.pieces import SignaturePiece, pieces_of
from inscribe.reading.signatures.whole import whole_cost
from inscribe.reading.words import order_cost

USUAL_SIGN = 1.25  # the price of a division, a sign, of a signature whose parts are all usual
_KEPT = 2  # divisions kept at each place and class (the code relies on there being two)
_COMPARED = 6  # divisions compared once more as wholes
_RECENT = 8
_HOPELESS = 6.0
_UNLISTED_ORDER = 3.0  # what it costs that classes meet of which the table says nothing
_ACROSS_COLUMNS = 0.4
_ACROSS_SPACE = 2.5


class SignatureDivision(NamedTuple):
    """One way of dividing a text, and its price (lower is better)."""

    pieces: tuple[SignaturePiece, ...]
    cost: float


_Node = tuple[float, SignaturePiece | None, int]  # price so far, last piece, the node before
_Ways = tuple[tuple[float, int], ...]  # (price, node) of one or two, the best first
_Arrived = list[tuple[str, _Ways]]  # by class


def divisions(
    text: str,
    breaks: Collection[int] = (),
    dated: Collection[SignaturePiece] = (),
    cuts: Collection[int] = (),
) -> tuple[SignatureDivision, ...]:
    """Return the cheapest divisions of a normalised text, the best first.

    Args:
        text: the signature in current forms, marks as ``inscribe.forms`` writes them.
        breaks: offsets at which a column begins; a piece seldom runs over one.
        dated: pieces of kind date and age found beforehand.
        cuts: offsets before which the transcriber left a space; hardly any piece runs over one.
    """
    return _divided(text, tuple(sorted(breaks)), tuple(sorted(cuts)), tuple(dated))


def _edges(breaks: Collection[int], cuts: Collection[int]) -> dict[int, float]:
    """Return what a piece costs that runs over the end of a column, or over a space."""
    return {**dict.fromkeys(breaks, _ACROSS_COLUMNS), **dict.fromkeys(cuts, _ACROSS_SPACE)}


@tables.cached(_RECENT)  # the kind of passage is judged by the division that is then read
def _divided(
    text: str,
    breaks: tuple[int, ...],
    cuts: tuple[int, ...],
    dated: tuple[SignaturePiece, ...],
) -> tuple[SignatureDivision, ...]:
    nodes, ends = _spread(_pieces(text, dated), 0, _edges(breaks, cuts))
    return _cheapest(nodes, ends[len(text)], _KEPT + 1)


@tables.cached(_RECENT)
def _pieces(text: str, dated: tuple[SignaturePiece, ...]) -> list[list[SignaturePiece]]:
    return pieces_of(text, dated)


def least_cost(
    text: str, dated: Collection[SignaturePiece], at: int, words: Iterable[SignaturePiece]
) -> float:
    """Return what a text costs at least in which one of some words stands over an offset.

    What stands beside it is taken for what it could be in the text as it is.
    """
    pieces = [
        [piece for piece in some if not piece.first <= at <= piece.last]
        for some in _pieces(text, tuple(dated))
    ]
    for word in words:
        pieces[word.first].append(word)
    _, ends = _spread(pieces, 0, {})
    arrived = ends[len(text)].items()
    return min((kept[0][0] + _order(kind, "end") for kind, kept in arrived), default=math.inf)


def _pieces_between(
    text: str, dated: Collection[SignaturePiece], filling: Collection[SignaturePiece]
) -> list[list[SignaturePiece]]:
    """Return the pieces of a text, by their first offset, some dates standing apart."""
    found: list[list[SignaturePiece]] = []
    ends = [(piece.first, [piece]) for piece in sorted(filling, key=lambda piece: piece.first)]
    for end, date in (*ends, (len(text), [])):
        start = len(found)
        within = (piece for piece in dated if start <= piece.first and piece.last < end)
        made = _pieces(text[start:end], tuple(_moved(piece, -start) for piece in within))
        found += [[_moved(piece, start) for piece in some] for some in made] if start else made
        found += [date, *([] for _ in date[0].text[1:])] if date else []
    return found


def _moved(piece: SignaturePiece, by: int) -> SignaturePiece:
    return piece._replace(first=piece.first + by, last=piece.last + by)


class CheapestDivisions:
    """The cheapest divisions of all stretches of one text, found together from each first sign."""

    def __init__(
        self,
        text: str,
        breaks: Collection[int],
        dated: Collection[SignaturePiece],
        cuts: Collection[int],
    ) -> None:
        """Find what the text could be made of; the arguments are those of :func:`divisions`.

        Nothing else is made of the signs of a date that fills columns.
        """
        edges = {0, len(text), *breaks}
        filling = [
            piece
            for piece in dated
            if breaks and piece.kind == "date" and {piece.first, piece.last + 1} <= edges
        ]
        self._pieces = _pieces_between(text, dated, filling)
        self._edges = _edges(breaks, cuts)
        self._from: dict[int, tuple[list[_Node], list[dict[str, _Ways]]]] = {}

    def division(self, first: int, end: int) -> SignatureDivision | None:
        """Return the cheapest division of a stretch; None where none was found.

        >>> CheapestDivisions("綾国作武州住", (), (), ()).division(3, 6).pieces[0].text
        '武州'
        """
        if first not in self._from:
            self._from[first] = _spread(self._pieces, first, self._edges)
        nodes, ends = self._from[first]
        found = _cheapest(nodes, ends[end], 1)
        return found[0] if found else None


def _spread(
    by_offset: list[list[SignaturePiece]], first: int, edges: dict[int, float]
) -> tuple[list[_Node], list[dict[str, _Ways]]]:
    """Return the nodes of the search, and the ways to each offset, from ``first`` on."""
    nodes: list[_Node] = [(0.0, None, -1)]
    ends: list[dict[str, _Ways]] = [{} for _ in range(len(by_offset) + 1)]
    ends[first]["start"] = ((0.0, 0),)
    for position in range(first, len(by_offset)):
        arrived = _within_reach(ends[position])
        ways: dict[str, _Ways] = {}  # by the class of the piece that follows
        for piece in by_offset[position] if arrived else ():
            kind = piece.order_kind
            if kind not in ways:
                ways[kind] = _two_cheapest(arrived, kind)
            price = piece.cost
            if edges:
                price += sum(edges[at] for at in edges if piece.first < at <= piece.last)
            there = ends[piece.last + 1]
            there[kind] = _lengthened(nodes, ways[kind], there.get(kind, ()), piece, price)
    return nodes, ends


def _cheapest(
    nodes: list[_Node], arrived: dict[str, _Ways], count: int
) -> tuple[SignatureDivision, ...]:
    """Return so many divisions of what arrived at an offset, the cheapest first."""
    final = [
        (price + _order(kind, "end"), node)
        for kind, kept in arrived.items()
        for price, node in kept
    ]
    found: list[SignatureDivision] = []
    for cost, node in sorted(final)[:_COMPARED]:
        if len(found) >= count and cost >= found[count - 1].cost:
            break  # as a whole it is no cheaper than its parts
        pieces = _pieces_to(nodes, node)
        found.append(SignatureDivision(pieces, cost + whole_cost(pieces)))
        found.sort(key=lambda division: division.cost)
    return tuple(found[:count])


def _within_reach(ends: dict[str, _Ways]) -> _Arrived:
    """Return the ways to a place that are not so much dearer than the best as to be hopeless."""
    if not ends:
        return []
    limit = min(kept[0][0] for kept in ends.values()) + _HOPELESS
    return [(kind, kept) for kind, kept in ends.items() if kept[0][0] <= limit]


def _two_cheapest(arrived: _Arrived, kind: str) -> _Ways:
    """Return the two cheapest ways to a piece of a class: their prices and last nodes."""
    first = second = (math.inf, -1)
    for before, kept in arrived:
        step = _order(before, kind)
        for cost, node in kept:
            reached = cost + step
            if reached < first[0]:
                first, second = (reached, node), first
            elif reached < second[0]:
                second = (reached, node)
            else:
                break
    return (first, second) if second[1] >= 0 else (first,)


def _lengthened(
    nodes: list[_Node], ways: _Ways, kept: _Ways, piece: SignaturePiece, price: float
) -> _Ways:
    """Lengthen the ways by a piece; return the two cheapest that end where it ends in its class."""
    for cost, node in ways:
        total = cost + price
        if len(kept) == _KEPT and total >= kept[-1][0]:
            break
        new = (total, len(nodes))
        nodes.append((total, piece, node))
        kept = (kept[0], new) if kept and total >= kept[0][0] else (new, *kept[:1])
    return kept


@tables.cached()
def _order(before: str, after: str) -> float:
    """Return the price of an order, by family (opener:place) or else by class (opener)."""
    for left in _general(before):
        for right in _general(after):
            found = order_cost(left, right)
            if found is not None:
                return found
    return _UNLISTED_ORDER


def _general(kind: str) -> tuple[str, ...]:
    plain = kind.partition(":")[0]
    return (kind, plain) if plain != kind else (kind,)


def _pieces_to(nodes: list[_Node], node: int) -> tuple[SignaturePiece, ...]:
    found: list[SignaturePiece] = []
    _, piece, before = nodes[node]
    while piece is not None:
        found.append(piece)
        _, piece, before = nodes[before]
    return tuple(reversed(found))
