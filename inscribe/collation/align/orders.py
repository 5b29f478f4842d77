"""The orders in which a run of Chinese characters may be read in Japanese.

>>> [order.signs for order in orders("見花")]
[(1, 0)]
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.collation.align.readings import ByLetter, Reading, by_letter, governs
from inscribe.collation.align.sides import Side
from inscribe.reading import spelling

if TYPE_CHECKING:
    from inscribe.reading.words import Token

NESTED = 4  # signs of a run in which two signs may be moved (不見人: 人を見ず)
FORMULAS = 3  # proposals of the reading stage that are tried
PARTICLES = ("を", "に", "の", "と")


class Order(NamedTuple):
    """The signs of a run as they are read, and how the reading stage reads stretches of them."""

    signs: tuple[int, ...]
    words: tuple[tuple[int, int, str], ...] = ()  # (first sign, signs, kana)


def put_in(order: Order, side: Side) -> Side:
    """Return the signs of a run in another order.

    Readings of several signs are kept only where the signs still stand together.
    """
    place = {sign: at for at, sign in enumerate(order.signs)}

    def stays_together(first: int, length: int) -> bool:
        return all(place.get(a + 1) == place[a] + 1 for a in range(first, first + length - 1))

    def known_at(sign: int) -> Iterator[ByLetter]:
        for known in side.readings[sign]:
            if all(reading.length == 1 for reading in known[""]):
                yield known
            else:
                yield by_letter(r for r in known[""] if stays_together(sign, r.length))
        yield by_letter(
            Reading(length, pattern, "word", kana, "the reading of the formula")
            for first, length, kana in order.words
            if first == sign
            for pattern in spelling.patterns(kana)
        )

    return Side(
        tuple(side.raw[sign] for sign in order.signs),
        tuple(side.norm[sign] for sign in order.signs),
        tuple(side.sort[sign] for sign in order.signs),
        tuple(side.letters[sign] for sign in order.signs),
        tuple(tuple(known_at(sign)) for sign in order.signs),
    )


@tables.cached(256)
def orders(text: str) -> tuple[Order, ...]:
    """Return the other orders in which a run of Chinese characters may be read.

    The order in which they stand is not among them.
    """
    found = {order.signs: order for order in _by_formulas(text)}
    carved = tuple(range(len(text)))
    once = list(_moved(text, carved))
    twice = (signs for first in once for signs in _moved(text, first))
    for signs in (*once, *(twice if len(text) <= NESTED else ())):
        found.setdefault(signs, Order(signs))
    found.pop(carved, None)
    return tuple(found.values())


def _moved(text: str, signs: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
    """Yield ``signs`` with one that governs moved behind those that follow it, near or far."""
    for at in range(len(signs) - 1):
        if governs(text[signs[at]]):
            for end in range(at + 2, len(signs) + 1):
                yield (*signs[:at], *signs[at + 1 : end], signs[at], *signs[end:])


def _by_formulas(text: str) -> Iterator[Order]:
    """Yield the orders in which the reading stage reads ``text`` as a signature."""
    from inscribe.forms import normalise_text
    from inscribe.reading.signatures import read_signature

    for proposal in read_signature(normalise_text(text)).proposals[:FORMULAS]:
        tokens = proposal.tokens
        signs = tuple(sign for t in tokens for sign in range(t.first, t.last + 1))
        if sorted(signs) == [*range(len(text))]:
            yield Order(signs, tuple(word for t in tokens for word in _words(t)))


def _words(token: Token) -> Iterator[tuple[int, int, str]]:
    """Yield how a token is read, without the particle before or behind it."""
    length = token.last + 1 - token.first
    parts = token.kana.split(" ")
    for start in range(len(parts)):
        for end in range(len(parts), start, -1):
            if end == len(parts) or parts[end] in PARTICLES:
                yield token.first, length, "".join(parts[start:end])
