"""The parts of a signature that no single formula gives: places, residence, names, relations."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe.reading.signatures.pieces import SignaturePiece

PLACES = frozenset(
    {"place", "city", "quarter", "place_suffix", "direction", "unlisted_place", "unread"}
)
NAMES = frozenset({"name", "art_name", "common_name"})


class PartSpan(NamedTuple):
    """A part of the signature: its key, and its first and last offset in the text."""

    key: str
    first: int
    last: int


def add_places(pieces: Sequence[SignaturePiece], spans: list[PartSpan]) -> None:
    """Give the runs of places that no formula holds: place, and residence where 住 follows."""
    position = 0
    while position < len(pieces):
        if pieces[position].kind not in ("place", "city", "quarter", "unlisted_place"):
            position += 1
            continue
        end = position
        while end < len(pieces) and pieces[end].kind in PLACES:
            end += 1
        first, last = pieces[position].first, pieces[end - 1].last
        after = pieces[end] if end < len(pieces) else None
        if not _held(spans, first) and not (after and after.kind == "office"):
            spans.append(PartSpan("place", first, last))
            if after and after.kind == "residence":
                spans.append(PartSpan("residence", first, after.last))
        position = end


def _held(spans: list[PartSpan], offset: int) -> bool:
    return any(span.first <= offset <= span.last for span in spans)


_WRITTEN_OUT = {"modelled": "model", "pictured": "model", "patron": "patron", "withal": "material"}
_BEFORE_PHRASES = NAMES | {
    "surname",
    "clan",
    "honorific",
    "object",
    "model_subject",
    "subject",
    "pictured",
    "material",
    "verb",
}


def add_phrases(pieces: Sequence[SignaturePiece], spans: list[PartSpan]) -> None:
    """Give the formulas that are written out in Japanese order: 綾郷ノ図ニ倣フ, 某氏之需ニ応シ.

    What they say something of stands before them and belongs to their part.
    """
    for at, piece in enumerate(pieces):
        key = _WRITTEN_OUT.get(piece.kind)
        if key is None or (piece.kind == "patron" and piece.text[0] not in "之ノの需好望命"):
            continue
        if at + 1 < len(pieces) and pieces[at + 1].kind == "modelled":
            continue
        if any(span.first < piece.first <= span.last for span in spans):
            continue  # a formula in Chinese order holds it
        start = at
        while start and _goes_with(pieces[start - 1], key):
            start -= 1
        first = pieces[start].first
        spans[:] = [span for span in spans if not first <= span.first <= piece.last]
        spans.append(PartSpan(key, first, piece.last))


def _goes_with(piece: SignaturePiece, key: str) -> bool:
    if key == "material":
        return piece.kind in ("material", "model_subject", "subject")
    return piece.kind in _BEFORE_PHRASES and (piece.kind != "verb" or piece.text in "図画作写")


def add_names(pieces: Sequence[SignaturePiece], spans: list[PartSpan]) -> None:
    """Give the makers' names, and those that a relation (門人, 男) refers to."""
    free: list[SignaturePiece] = []
    for at, piece in enumerate(pieces):
        if piece.kind not in NAMES | {"surname", "clan"} or _held(spans, piece.first):
            continue
        if manner := _manner_after(pieces, at):
            spans.append(PartSpan("model", piece.first, manner.last))
        elif related := _relation_after(pieces, at):
            spans.append(PartSpan("relation", piece.first, related.last))
        else:
            free.append(piece)
    has_name = any(piece.kind == "name" for piece in free)
    has_surname = any(piece.kind == "surname" for piece in free)
    for piece in free:
        key = piece.kind
        if key in ("art_name", "common_name") and not has_name:
            key, has_name = "name", True
        elif key == "clan" and not has_surname:
            key = "surname"
        spans.append(PartSpan(key, piece.first, piece.last))


def _manner_after(pieces: Sequence[SignaturePiece], at: int) -> SignaturePiece | None:
    """Return what makes a name that of a model where no opener does: the 筆意 of 某筆意."""
    for piece in pieces[at + 1 : at + 3]:
        if piece.order_kind == "closer:model":
            return piece
        if piece.kind not in NAMES | {"honorific"}:
            return None
    return None


def _relation_after(pieces: Sequence[SignaturePiece], at: int) -> SignaturePiece | None:
    for piece in pieces[at + 1 :]:
        if piece.kind == "relation":
            return piece
        if piece.kind not in NAMES | {"honorific", "generation"}:
            return None
        if piece.kind in NAMES and pieces[at].kind in NAMES:
            return None
    return None
