"""What a text costs in the language: the judge between a sign and one that it may be.

A signature is priced by the formula (cheapest division), a text with kana by the words and the
grammar of verse. A sign that another would make much cheaper is suspicious; one that a formula, a
date or a word explains is not.

>>> gain_in_signature("嶺ハ郎作", 1, "八") > 5, gain_in_signature("武州ニ住嶺暁作", 2, "二") > 0
(True, False)
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from inscribe.reading.signatures import UNEXPLAINED
from inscribe.scripts import hiragana

if TYPE_CHECKING:
    from inscribe.reading.signatures import SignatureDivision, SignaturePiece


def division(text: str) -> SignatureDivision:
    """Return the cheapest division of a signature in current forms."""
    from inscribe.reading.signatures import dated_pieces, divisions

    return divisions(text, (), tuple(piece for piece, _ in dated_pieces(text)))[0]


def piece_at(found: SignatureDivision, at: int) -> SignaturePiece:
    """Return the piece of a division in which a character stands."""
    return next(piece for piece in found.pieces if piece.first <= at <= piece.last)


def is_explained(found: SignatureDivision, at: int) -> bool:
    """Whether a word of the formula, a place, a title or a date explains a character."""
    return piece_at(found, at).kind not in UNEXPLAINED


def gain_in_signature(text: str, at: int, other: str) -> float:
    """Return how much cheaper a signature is with another character at a place."""
    return division(text).cost - division(replaced(text, at, other)).cost


def most_gained(text: str, at: int, other: str) -> float:
    """Return at most how much cheaper a signature is with a word that another character makes.

    It costs half of what :func:`gain_in_signature` takes, for no name needs to be weighed there.

    >>> most_gained("武州往嶺暁作", 2, "住") >= gain_in_signature("武州往嶺暁作", 2, "住") > 0
    True
    """
    from inscribe.reading.signatures import dated_pieces, divisions

    changed = replaced(text, at, other)
    found = divisions(changed, (), [piece for piece, _ in dated_pieces(changed)], word_at=at)
    return division(text).cost - found[0].cost if found else -math.inf


def gain_in_words(text: str, at: int, other: str) -> float:
    """Return how much cheaper a text with kana is, in MeCab's costs, with another character."""
    from inscribe.reading.verse import path_cost, verse_words

    before, after = (hiragana(each) for each in (text, replaced(text, at, other)))
    return path_cost(verse_words(before)) - path_cost(verse_words(after))


def replaced(text: str, at: int, other: str) -> str:
    """Return a text with another character at a place."""
    return text[:at] + other + text[at + 1 :]
