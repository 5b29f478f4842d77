"""What a text costs in the language: the judge between a sign and one that it may be.

A signature is priced by the formula (cheapest division), a text with kana by the words and the
grammar of verse. A sign that another would make much cheaper is suspicious; one that a formula, a
date or a word explains is not.

>>> gain_in_signature("嶺ハ郎作", 1, "八") > 5, gain_in_signature("武州ニ住嶺暁作", 2, "二") > 0
(True, False)
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from inscribe.reading.signatures import UNEXPLAINED
from inscribe.scripts import hiragana

if TYPE_CHECKING:
    from inscribe.reading.signatures import SignatureDivision, SignaturePiece

# By how much less what stands beside another word may cost; beside one that calls for a place, a
# person or a deed.
_BESIDE, _CALLED_FOR = 1.0, 5.0
_CALLING = frozenset({"opener", "object", "residence", "place_suffix"})


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


def most_gained(text: str, at: int, others: Iterable[str]) -> float:
    """Return at most how much cheaper a signature is with a word that other characters make.

    It takes little of what :func:`gain_in_signature` takes: all that they make is weighed at once,
    and no name.

    >>> most_gained("武州往嶺暁作", 2, ["住"]) >= gain_in_signature("武州往嶺暁作", 2, "住") > 0
    True
    """
    from inscribe.reading.signatures import dated_pieces, least_cost, words_over

    words: list[SignaturePiece] = []
    for changed in (replaced(text, at, other) for other in others):
        words += words_over(changed, at)
        words += (each for each, _ in dated_pieces(changed) if each.first <= at <= each.last)
    calls = any(word.kind in _CALLING for word in words)
    dated = [piece for piece, _ in dated_pieces(text)]
    least = least_cost(text, dated, at, words) - (_CALLED_FOR if calls else _BESIDE)
    return division(text).cost - least


def gain_in_words(text: str, at: int, other: str) -> float:
    """Return how much cheaper a text with kana is, in MeCab's costs, with another character."""
    from inscribe.reading.verse import path_cost, verse_words

    before, after = (hiragana(each) for each in (text, replaced(text, at, other)))
    return path_cost(verse_words(before)) - path_cost(verse_words(after))


def replaced(text: str, at: int, other: str) -> str:
    """Return a text with another character at a place."""
    return text[:at] + other + text[at + 1 :]
