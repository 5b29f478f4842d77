"""Whether a stretch names one person or two: names, verbs, families and ranks that are too many."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from inscribe.forms import KAO
from inscribe.reading.passages.order import ranks
from inscribe.reading.signatures import SignaturePiece, is_joint
from inscribe.reading.words import POET, Role, words_of

MAKERS = frozenset({"name", "art_name", "common_name"})
NAMES = MAKERS | {"surname", "clan"}
_TOLD = frozenset({"prefix", "relation"})
_PICTURES = frozenset("図画絵意様稿")


def names_nobody(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether no person is named; a name that cannot be read beside other parts is one."""
    if pieces[0].kind == "opener" and _is_formula_alone(pieces):
        return True  # whose wish it was is told, or whose picture, and nothing else
    kinds = {piece.kind for piece in pieces}
    return kinds.isdisjoint(NAMES) and not ("unread" in kinds and "date" not in kinds)


def _is_formula_alone(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether the formula that the first piece opens is closed by the last: 依某画, 応某氏需."""
    family = pieces[0].word.family if pieces[0].word else ""
    if family not in ("patron", "model") or len(pieces) < 2:
        return False
    inside, closer = pieces[1:-1], pieces[-1].order_kind
    pictured = family == "model" and any(
        word.kind == "closer" and word.family == family for word in words_of(pieces[-1].text)
    )
    makers = sum(piece.kind in MAKERS for piece in inside)
    return makers < 2 and (closer == f"closer:{family}" or (pictured and _is_picture(pieces[-1])))


def _is_picture(piece: SignaturePiece) -> bool:
    return piece.text[-1] in _PICTURES


def names_two_persons(pieces: Sequence[SignaturePiece], role: Role | None) -> bool:
    """Whether two persons are named: both do something, or the one writes with a name too many."""
    named = done = again = told = False
    for piece, after in pairwise((*pieces, pieces[-1])):
        bare = piece.kind == "surname" and after.kind == "verb"  # a pen name like a surname
        if piece.kind in MAKERS or bare:
            again = again or (done and not told)
            named = True
        elif piece.kind == "verb" and named:
            if again:
                return True
            done = True
        told = piece.kind in _TOLD  # 父某作 子某彫: they signed as one
    if _has_two_full_names(pieces) and not is_joint(pieces[-1]):
        return True  # but 三輪某鵜殿某合作
    if _is_named_after_one_esteemed(pieces) or _is_named_after_a_kao(pieces):
        return True
    if pieces[0].kind == POET and any(piece.kind in MAKERS for piece in pieces):
        return True  # 紀貫之詠蒼翁書
    makers = [piece for piece in pieces if piece.kind in NAMES]
    if any(piece.word is not None and piece.word.family == POET for piece in makers[:-1]):
        return True
    return role in ("wrote", "composed") and sum(p.kind in MAKERS for p in pieces) > 1


def _is_named_after_one_esteemed(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether one named with respect stands first, and another person follows: 義輝公｜鷺坂苗道."""
    head = next((at for at, piece in enumerate(pieces) if piece.kind not in NAMES), 0)
    esteemed = head > 0 and pieces[head].kind == "honorific"
    return esteemed and any(piece.kind in NAMES for piece in pieces[head + 1 : head + 2])


def _is_named_after_a_kao(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether a kao closes one person's signing, and another is named: 鷺坂苗道（花押）萩灘刻之."""
    kao = next((at for at, piece in enumerate(pieces) if piece.text == KAO), 0)
    kinds = [piece.kind in NAMES for piece in pieces]
    return any(kinds[:kao]) and any(kinds[kao + 1 :]) if kao else False


def _has_two_full_names(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether two families with a name each are named, neither a patron, model or master."""
    full = 0
    for at, (piece, after) in enumerate(pairwise(pieces)):
        if piece.kind in ("opener", "relation", "closer", "honorific", "school", "joiner"):
            return False
        following = pieces[at + 2].kind if at + 2 < len(pieces) else ""
        full += piece.kind == "surname" and after.kind in MAKERS and following != "honorific"
    return full > 1


def has_rank_inside(plain: str) -> bool:
    """Return whether a rank that poets bear stands inside: it ends a name, and another follows.

    >>> has_rank_inside("定家卿綾国"), has_rank_inside("宮内卿綾国")
    (True, False)
    """
    inside = ((plain.find(rank, 1), rank) for rank in ranks() if rank in plain)
    return any(
        at > 0 and not plain.endswith(rank) and not is_title_word(plain[: at + len(rank)])
        for at, rank in inside
    )


def is_title_word(text: str) -> bool:
    """Whether a text is a title of the tables: 宮内卿."""
    return any(word.kind == "title" for word in words_of(text))
