"""How well a query fits a passage: the best way through its lattice, over the passage's letters.

A letter of the query that finds its place in the passage counts 1; a legible sign without a place,
and a letter of the passage passed over between two that were found, cost something; a sign that
cannot be read may take up to three letters. The ends of the passage are free, so that a fragment
fits wherever it stands; a fit at an end is worth a little more. The prices are from memory of what
copies look like.
"""

from __future__ import annotations

from dataclasses import dataclass

from inscribe.sources.keys import UNKNOWN
from inscribe.sources.query import SourceQuery

NO_PLACE = 0.7  # a legible sign that has no place in the passage
PASSED_OVER = 0.35  # a letter of the passage between two found ones
WIDTHS = ((1, 0.0), (2, 0.1), (3, 0.3), (0, 0.4))  # letters an unreadable sign takes, and the price
AT_AN_END = 0.2  # a fit that begins or ends where the passage does: copies mostly do
IN_GAP = 0.02  # a letter of the passage in a gap of unknown length
NEVER = float("-inf")


@dataclass(frozen=True, slots=True)
class Fit:
    """How a query fits a passage; ``gain`` is in letters, ``start`` and ``end`` are letters."""

    gain: float
    start: int
    end: int


def fit(query: SourceQuery, passage: str, turn: float = NEVER) -> Fit:
    """Return the best fit of ``query`` in the letters of a passage.

    ``turn`` is what it gains (less than nothing) to go on anywhere else in the passage, where its
    phrases may stand in another order.
    """
    size = len(passage) + 1
    gains = [[NEVER] * size for _ in range(len(query) + 1)]
    starts = [[0] * size for _ in range(len(query) + 1)]
    gains[0], starts[0] = [AT_AN_END, *[0.0] * (size - 1)], list(range(size))
    for at, kind in enumerate(query.kinds):
        here, origin = gains[at], starts[at]
        if at > 0:
            _pass_over(here, origin, IN_GAP if kind == "gap" else PASSED_OVER)
            if turn > NEVER:
                _turn(here, origin, turn)
        if kind == "read":
            _skip_sign(here, origin, gains[at + 1], starts[at + 1], NO_PLACE)
            for end, letters in query.arcs[at]:
                _place(passage, letters, (here, origin), (gains[end], starts[end]))
        elif kind == "gap":
            _skip_sign(here, origin, gains[at + 1], starts[at + 1], 0.0)
        else:
            for width, price in WIDTHS:
                _take(here, origin, gains[at + 1], starts[at + 1], width, price)
    last = gains[-1]
    last[-1] += AT_AN_END
    end = max(range(size), key=last.__getitem__)
    return Fit(last[end], starts[-1][end], end)


def _pass_over(gains: list[float], starts: list[int], price: float) -> None:
    for j in range(1, len(gains)):
        if gains[j - 1] - price > gains[j]:
            gains[j], starts[j] = gains[j - 1] - price, starts[j - 1]


def _turn(gains: list[float], starts: list[int], turn: float) -> None:
    best = max(range(len(gains)), key=gains.__getitem__)
    gain, start = gains[best] + turn, starts[best]
    for j, reached in enumerate(gains):
        if gain > reached:
            gains[j], starts[j] = gain, start


def _skip_sign(
    here: list[float], origin: list[int], gains: list[float], starts: list[int], price: float
) -> None:
    _take(here, origin, gains, starts, 0, price)


def _take(
    here: list[float],
    origin: list[int],
    gains: list[float],
    starts: list[int],
    width: int,
    price: float,
) -> None:
    for j in range(len(here) - width):
        gain = here[j] - price
        if gain > gains[j + width]:
            gains[j + width], starts[j + width] = gain, origin[j]


def _place(
    passage: str,
    letters: str,
    here: tuple[list[float], list[int]],
    there: tuple[list[float], list[int]],
) -> None:
    length = len(letters)
    at = passage.find(letters)
    while at >= 0:
        gain = here[0][at] + length
        if gain > there[0][at + length]:
            there[0][at + length], there[1][at + length] = gain, here[1][at]
        at = passage.find(letters, at + 1)


def sign_gain(query: SourceQuery, signs: str) -> float:
    """Return how many signs of the query stand in a passage in the same order, as letters.

    A Chinese character counts two letters, a kana one.
    """
    from rapidfuzz.distance import LCSseq

    if not signs or query.signs == UNKNOWN:
        return 0.0
    share = LCSseq.similarity(query.signs, signs) / len(query.signs)
    return share * query.weight
