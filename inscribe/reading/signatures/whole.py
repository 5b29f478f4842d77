"""What a division costs more as a whole, beside the prices of its parts and of their order.

An opener wants its closer (応 … 需), a model is copied once, and two persons work together.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.names import surnames
from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.words import words_of

TOGETHER = frozenset("合共同")  # 合作, 共彫: what two persons do
_UNOPENED = 2.0
_UNCLOSED = 3.0  # 応某作, with no word for what the patron wished
_NO_STAY = 8.0  # 在 … 時 are there together
_BEFORE_WISHES = frozenset({"closer", "subject", "honorific", "model_subject"})
_STAY, _WITH, _COMPANY = "stay", "与", "opener:company"
_ORDER = "order"  # 令某彫之
_DONE_AFTER = frozenset({"closer", "model_subject"})
_WORD_DIVIDED = 4.0
_HOUSE, _CLANS, _CLANSMAN = "家", "源平橘", 4.0  # 源義家: 義家 of the Minamoto
_MAKERS = frozenset({"name", "art_name", "common_name", "relation", "unread"})


def whole_cost(pieces: Sequence[SignaturePiece]) -> float:
    """Return what a division costs for what its parts are to one another, not side by side."""
    cost = 0.0
    waiting = before = text = ""  # the family of the last opener, until its closer has come
    for piece in pieces:
        cost += _cost_after(piece, before, text, waiting)
        if piece.kind == "opener":
            waiting = _family(piece)
        elif piece.kind == "closer" and (waiting == _family(piece) or before in _BEFORE_WISHES):
            waiting = ""
        text, before = piece.text, piece.kind
    made = any(piece.kind in ("verb", "transitive") for piece in pieces)
    cost += _UNCLOSED * (waiting == "patron" or (waiting == _ORDER and not made))
    return cost + _NO_STAY * (waiting == _STAY) + _cost_of_company(pieces)


def _cost_after(piece: SignaturePiece, before: str, text: str, waiting: str) -> float:
    """Return what a piece costs after one of a class and text, an opener waiting for its closer."""
    cost = 0.0
    if piece.order_kind == "opener:model" and before in _DONE_AFTER:
        cost += _UNOPENED  # 古金工風写: the copying is over
    if piece.kind == "verb" and before == "closer" and _may_close_model(piece):
        cost += _UNOPENED  # and 写 is what was made
    if piece.text == _HOUSE:
        cost += _house_cost(piece, before, text, waiting)
    if before == "model_subject" and _is_model(text + piece.text):
        cost += _WORD_DIVIDED
    if piece.kind == "closer" and waiting != _family(piece) and before not in _BEFORE_WISHES:
        cost += _NO_STAY if _family(piece) == _STAY else _UNOPENED
    return cost


def _cost_of_company(pieces: Sequence[SignaturePiece]) -> float:
    """Return what it costs that two worked together and one is named, or one alone with 与."""
    joint = {piece.kind for piece in pieces if is_joint(piece)}
    kinds = {piece.kind for piece in pieces}
    taken = [piece.order_kind == _COMPANY for piece in pieces if piece.text == _WITH]
    cost = _UNCLOSED * sum(each != bool(joint) for each in taken)
    if joint:
        cost += _UNCLOSED * (_MAKERS.isdisjoint(kinds) + ("unlisted_place" in kinds))
        cost += _UNOPENED * (any(taken) and "verb" not in joint)  # 合作 is what they did there
    return cost


def _family(piece: SignaturePiece) -> str:
    return piece.word.family if piece.word else ""


def is_joint(piece: SignaturePiece) -> bool:
    """Return whether a piece says that two persons made a thing: 合作."""
    return piece.kind in ("verb", "material") and len(piece.text) > 1 and piece.text[0] in TOGETHER


def _may_close_model(piece: SignaturePiece) -> bool:
    """Return whether a verb may as well be a noun for a copy: 写, 模."""
    return any(word.kind == "closer" and word.family == "model" for word in words_of(piece.text))


def _house_cost(house: SignaturePiece, before: str, text: str, waiting: str) -> float:
    """Return what 家 costs: it is no house after 源義, nor a dwelling where no 於 is before it."""
    person = before == "name" or (before == "surname" and not surnames(text))
    clansman = person and len(text) == 2 and text[0] in _CLANS
    dwelling = house.kind == "residence" and waiting != "place"
    return _CLANSMAN * clansman + _UNOPENED * dwelling


def _is_model(text: str) -> bool:
    """Return whether a text is one word for a model, as 古図 is: it is not divided."""
    return any(word.kind == "model_subject" for word in words_of(text))
