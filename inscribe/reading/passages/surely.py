"""Columns and texts that are plainly one signing or one date: there is nothing to weigh."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import dropwhile, pairwise, takewhile

from inscribe.reading.passages.days import Days
from inscribe.reading.passages.not_signed import begins_with_text, begins_with_title, is_headed
from inscribe.reading.passages.persons_named import (
    MAKERS,
    NAMES,
    has_rank_inside,
    names_two_persons,
)
from inscribe.reading.passages.roles import closing_of
from inscribe.reading.passages.sayings import holds_saying
from inscribe.reading.passages.signings import A_DATE, SIGN, SIGNED, has_foreign_part
from inscribe.reading.passages.stretches import PassageStretch, part_of
from inscribe.reading.signatures import USUAL_SIGN, SignaturePiece, dated_pieces, divisions
from inscribe.reading.spelling import KANA
from inscribe.reading.words import MARK, InscribedText

_WHERE = frozenset(
    {"opener", "place", "city", "quarter", "place_suffix", "unlisted_place", "residence"}
)
_DONE = frozenset({"verb", "object", "mark"})
_SURELY_SIGNED = frozenset({"verb", "residence", "title", "office", "mark", "age"})
_SIGNED_AND_DATED = ["date", "signature"]


def whole_columns(text: InscribedText, days: Days) -> tuple[PassageStretch, ...]:
    """Return the columns that are plainly one signing or one date: no passages meet in them.

    >>> from inscribe.forms import normalise_text
    >>> carved = "武州住綾国作天保三年八月"
    >>> text = InscribedText(normalise_text(carved), carved, frozenset({6}))
    >>> [(each.end, each.kind, each.role) for each in whole_columns(text, Days(carved))]
    [(6, 'signature', 'carved'), (12, 'date', None)]
    """
    return tuple(_whole_columns(text, days))


def _whole_columns(text: InscribedText, days: Days) -> Iterator[PassageStretch]:
    plain = text.normal.text
    for first, end in pairwise((0, *sorted(text.breaks), len(plain))):
        column = plain[first:end]
        if KANA.search(column) or "（印" in column:
            continue
        if days.fills(first, end):
            yield PassageStretch(first, end, "date", 0.0, None, (A_DATE,))
        elif is_surely_signed(part_of(text, first, end)):
            role, _ = closing_of(MARK.sub("", column))
            yield PassageStretch(first, end, "signature", 0.0, role, (SIGNED,))


def are_signed_and_dated(columns: Sequence[PassageStretch], text: InscribedText) -> bool:
    """Whether a text is two columns, of which the one is plainly signed and the other dated."""
    kinds = sorted(column.kind for column in columns)
    return kinds == _SIGNED_AND_DATED and len(text.breaks) == 1


def is_surely_signed(text: InscribedText) -> bool:
    """Whether a text is the signing of one person and nothing else, without a closer look.

    >>> from inscribe.forms import normalise_text
    >>> carved = ("武州住綾国作", "楓畦書綾国刻之")
    >>> [is_surely_signed(InscribedText(normalise_text(t), t)) for t in carved]
    [True, False]
    """
    plain = text.normal.text
    dated = [piece for piece, _ in dated_pieces(plain)]
    if text.breaks and any(piece.kind == "date" for piece in dated):
        return False
    best = divisions(plain, text.breaks, dated, text.cuts)[0]
    kinds = {piece.kind for piece in best.pieces}
    if kinds.isdisjoint(_SURELY_SIGNED) or kinds.isdisjoint(MAKERS):
        return False
    most = SIGN if _is_enclosed(best.pieces) else USUAL_SIGN
    if best.cost > most * len(plain):
        return False
    if begins_with_title(plain) or not _name_one(best.pieces, plain):
        return False
    if text.breaks and begins_with_text(plain[: min(text.breaks)]):
        return False
    return not has_foreign_part(plain, text, (0, len(plain)), best.pieces)


def _is_enclosed(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether nothing but names stands after where somebody lived or worked, up to what was done.

    However rare the names are, they are a person's: 武州住某, 於東都某造之.
    """
    kinds = [piece.kind for piece in pieces]
    head = list(takewhile(_WHERE.__contains__, kinds))
    done = list(dropwhile(NAMES.__contains__, kinds[len(head) :]))
    lived = "residence" in head or (pieces[0].order_kind == "opener:place" and bool(done))
    return lived and len(head) + len(done) < len(kinds) and _DONE.issuperset(done)


def names_one(text: InscribedText) -> bool:
    """Whether a text names no more than one person, and has no saying in it.

    >>> from inscribe.forms import normalise_text
    >>> [names_one(InscribedText(normalise_text(t), t)) for t in ("綾国刻", "定家卿綾国刻")]
    [True, False]
    """
    plain = text.normal.text
    dated = [piece for piece, _ in dated_pieces(plain)]
    return _name_one(divisions(plain, text.breaks, dated, text.cuts)[0].pieces, plain)


def _name_one(pieces: Sequence[SignaturePiece], plain: str) -> bool:
    role, _ = closing_of(MARK.sub("", plain))
    several = names_two_persons(pieces, role) or has_rank_inside(plain)
    return not several and not is_headed(plain, pieces) and not holds_saying(plain)
