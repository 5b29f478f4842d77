"""The orders in which a run of Chinese characters may be read in Japanese.

>>> [order.signs for order in orders("見花")]
[(1, 0)]
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.collation.align.sides import ByLetter, Reading, Side, by_letter, governs
from inscribe.reading import spelling

if TYPE_CHECKING:
    from inscribe.reading.words import Token

NESTED = 7  # signs of a run in which signs that govern may be moved inside each other (不見人)
MOST = 150  # orders of a run; those that move fewer signs are tried first
FORMULAS = 3  # proposals of the reading stage that are tried
PARTICLES = ("を", "に", "の", "と")


class Order(NamedTuple):
    """The signs of a run as they are read, and how the reading stage reads stretches of them."""

    signs: tuple[int, ...]
    words: tuple[tuple[int, int, str], ...] = ()  # (first sign, signs, kana)
    by_formula: bool = False  # whether a formula of signatures is read so


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
            if first == sign and stays_together(first, length)
            for pattern in spelling.patterns(kana)
        )

    return Side(
        tuple(side.raw[sign] for sign in order.signs),
        tuple(side.norm[sign] for sign in order.signs),
        tuple(side.sort[sign] for sign in order.signs),
        tuple(side.letters[sign] for sign in order.signs),
        tuple(tuple(known_at(sign)) for sign in order.signs),
        (False, *(True for _ in order.signs[1:]), False),
    )


@tables.cached(256)
def orders(text: str) -> tuple[Order, ...]:
    """Return the other orders in which a run of Chinese characters may be read.

    The order in which they stand is not among them.
    """
    carved = tuple(range(len(text)))
    said = tuple(_as_said(text))
    found = {order.signs: order for order in (*_by_formulas(text, said), *_by_grammar(text, said))}
    moved = sorted(_nested(text), key=lambda signs: _far(signs, carved))
    for signs in (*moved[:MOST], *_moved(text, carved)):
        found.setdefault(signs, Order(signs, said))
    found.pop(carved, None)
    return tuple(found.values())


def _far(signs: tuple[int, ...], carved: tuple[int, ...]) -> int:
    return sum(one != other for one, other in zip(signs, carved, strict=True))


def _nested(text: str) -> tuple[tuple[int, ...], ...]:
    """Return every order in which signs that govern stand behind what they govern."""
    if len(text) > NESTED:
        return ()
    return _orders_between(tuple(map(governs, text)), 0, len(text))


@tables.cached(4096)
def _orders_between(
    governing: tuple[bool, ...], start: int, end: int
) -> tuple[tuple[int, ...], ...]:
    if start >= end:
        return ((),)
    found: dict[tuple[int, ...], None] = {}
    for cut in range(start + 1, end + 1 if governing[start] else start + 2):
        for inner in _orders_between(governing, start + 1, cut):
            for rest in _orders_between(governing, cut, end):
                found[(*inner, start, *rest)] = None
    return tuple(found)


def _moved(text: str, signs: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
    """Yield ``signs`` with one that governs moved behind those that follow it, near or far."""
    for at in range(len(signs) - 1):
        if governs(text[signs[at]]):
            for end in range(at + 2, len(signs) + 1):
                yield (*signs[:at], *signs[at + 1 : end], signs[at], *signs[end:])


def _as_said(text: str) -> Iterator[tuple[int, int, str]]:
    """Yield how each sign, and each two, may be said in Chinese text: 可 べし, 不可 べからず."""
    from inscribe.reading.chinese import spoken_forms

    for first in range(len(text)):
        for length in (1, 2):
            for kana in sorted(spoken_forms(text[first : first + length])):
                if first + length <= len(text):
                    yield first, length, kana


def _by_grammar(text: str, said: tuple[tuple[int, int, str], ...]) -> Iterator[Order]:
    """Yield the order in which the reading stage's grammar of Chinese reads ``text``."""
    from inscribe.reading.chinese import words_in_order

    words = words_in_order(text)
    signs = tuple(word.first + n for word in words for n in range(len(word.written)))
    if sorted(signs) == [*range(len(text))]:
        yield Order(signs, said)


def _by_formulas(text: str, said: tuple[tuple[int, int, str], ...]) -> Iterator[Order]:
    """Yield the orders in which the reading stage reads ``text`` as a signature."""
    from inscribe.forms import normalise_text
    from inscribe.reading.signatures import read_signature

    for proposal in read_signature(normalise_text(text)).proposals[:FORMULAS]:
        tokens = proposal.tokens
        signs = tuple(sign for t in tokens for sign in range(t.first, t.last + 1))
        if sorted(signs) == [*range(len(text))]:
            words = (part for t in tokens for word in _words(t) for part in _cut_short(*word))
            yield Order(signs, (*dict.fromkeys(words), *said), True)


def _cut_short(first: int, length: int, kana: str) -> Iterator[tuple[int, int, str]]:
    """Yield a word, and without kana that may be written after it: 需 もとめ, 需め もと."""
    for end in range(len(kana), 1 if length == 1 else len(kana) - 1, -1):
        yield first, length, kana[:end]


def _words(token: Token) -> Iterator[tuple[int, int, str]]:
    """Yield how a token is read, without the particle before or behind it."""
    length = token.last + 1 - token.first
    parts = token.kana.split(" ")
    for start in range(len(parts)):
        for end in range(len(parts), start, -1):
            if end == len(parts) or parts[end] in PARTICLES:
                yield token.first, length, "".join(parts[start:end])
