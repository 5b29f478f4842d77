"""Pieces of a signature as units with their readings, outside of formulas."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import takewhile

from inscribe import tables
from inscribe.reading.names import known, surnames
from inscribe.reading.signatures.options import (
    GIVEN,
    PEN,
    Option,
    Unit,
    option,
    piece_options,
)
from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.signatures.whole import is_joint

_CLAN_UNLINKED = 1.0
_RELATION_LINKED = 0.8
# After these words stand names that are read by on-readings (common practice, no source).
_SAYS_ART_NAME = frozenset(
    {"字", "号", "雅号", "別号", "又号", "亦号", "自号", "改号", "後号", "初号", "俳名", "俳号"}
    | {"斎号", "堂号", "画号", "道号", "法名", "法号", "戒名", "旧号", "後改号", "更号", "一号"}
)
_TONSURED = frozenset({"入道", "沙門", "釈", "僧", "法印", "比丘", "沙弥", "禅師", "和尚"})
_PRIESTS = frozenset({"法師", "上人", "禅師", "大師", "和尚", "僧正", "僧都", "律師", "阿闍梨"})
_PAIR = 2
_LIKE = frozenset("写風様形調")  # one word with what is before them: 唐物写 karamono utsushi
_AFTER_FAMILIES = frozenset({"name", "art_name", "common_name", "clan", "title", "office"}) | {
    "honorific",
    "generation",
    "unread",
    "relation",
    "school",
    "heading",
}
_FAMILIES = frozenset({"surname", "clan", "common_name"})


def unit(piece: SignaturePiece, options: tuple[Option, ...], *, hyphen: bool = False) -> Unit:
    """Return a piece with its readings."""
    gloss = piece.word.gloss if piece.word else ""
    return Unit(piece.text, piece.kind, piece.first, piece.last, options, hyphen, gloss)


def plain(piece: SignaturePiece, *, linked: bool = False) -> Unit:
    """Return a piece that stands for itself; a closer without its opener is linked by の.

    ``linked``: a 之 before it is that の already.
    """
    options = piece_options(piece)
    if piece.kind == "office" and piece.word:  # 大掾 with no province before it
        options = (option(piece.word.kana.removeprefix("の "), capital=True),)
    if piece.kind == "relation" and piece.word and piece.first and not linked:
        options = (*options, *_linked(piece))
    if piece.kind == "day_word" and piece.text == "日" and piece.first:
        options = (option("の ひ"), *options)  # 冬至日
    if piece.kind == "closer" and piece.word and piece.first and not linked:
        kana = piece.word.kana
        first, then = (kana, f"の {kana}") if piece.text in _LIKE else (f"の {kana}", kana)
        why = f"{piece.text} with or without no"
        options = (option(first), option(then, _RELATION_LINKED, why))
    return unit(piece, options, hyphen=_is_suffix(piece))


def _linked(piece: SignaturePiece) -> tuple[Option, ...]:
    """Return a relation said with の after the name before it: 某次男, bō jinan or bō no jinan."""
    kana = piece.word.kana if piece.word else piece.text
    if kana.startswith("の "):
        return ()
    return (option(f"の {kana}", _RELATION_LINKED, f"{piece.text} may be said with no"),)


def with_sorts_of_names(pieces: Sequence[SignaturePiece]) -> list[SignaturePiece]:
    """Return the pieces, of names said what they are where their neighbours tell it.

    After a family or a clan stands a given name; before a family, or a word of writing or composing
    with no family, a pen name; elsewhere it is not known.
    """
    found = list(pieces)
    for at, piece in enumerate(pieces):
        before = pieces[at - 1] if at else None
        after = pieces[at + 1] if at + 1 < len(pieces) else None
        if _is_rather_a_name(piece, after, last=after is None) or _is_of_two(pieces, at):
            piece = found[at] = piece._replace(kind="name", order_kind="name")
        named_so = before is not None and before.text in _SAYS_ART_NAME
        if named_so and piece.kind == "surname" and len(piece.text) == _PAIR:
            piece = found[at] = piece._replace(kind="name", order_kind="name")
        if piece.kind != "name" or piece.word is not None:
            continue
        if named_so or (before and before.text in _TONSURED) or _is_priestly(after):
            found[at] = piece._replace(order_kind=PEN)
        elif before and before.kind in _FAMILIES:
            found[at] = piece._replace(order_kind=GIVEN)
        elif after and (after.kind == "surname" or after.text in _words_of_writing()):
            found[at] = piece._replace(order_kind=PEN)
    return found


def _is_rather_a_name(piece: SignaturePiece, after: SignaturePiece | None, *, last: bool) -> bool:
    """Return whether what might be a family no list has is a name: none stands after it.

    Of a family that only the dictionary of names has it is so where it ends the text.
    """
    if piece.kind != "surname" or len(piece.text) != _PAIR or "□" in piece.text:
        return False
    followed = after is not None and after.kind in _AFTER_FAMILIES and not _is_priestly(after)
    listed = surnames(piece.text) or (not last and known(piece.text).surname)
    return not followed and not listed


def _is_of_two(pieces: Sequence[SignaturePiece], at: int) -> bool:
    """Return whether what might be a family no list has is one of two who made it: 合作 follows."""
    piece, rest = pieces[at], pieces[at + 1 :]
    if piece.kind != "surname" or len(piece.text) != _PAIR or surnames(piece.text):
        return False
    names = list(takewhile(lambda each: each.kind in ("name", "surname"), rest))
    return bool(names) and len(names) < len(rest) and is_joint(rest[len(names)])


def _is_priestly(after: SignaturePiece | None) -> bool:
    """Whether a word follows that is said of priests, whose names are read by their sound."""
    return after is not None and after.text in _PRIESTS


@tables.cached()
def _words_of_writing() -> frozenset[str]:
    rows = tables.rows("passage_roles")
    return frozenset(row["written"] for row in rows if row["role"] != "carved")


def clan_options(piece: SignaturePiece) -> tuple[Option, ...]:
    """Return the readings of a clan before a name: Fujiwara no, or Fujiwara.

    With no first: 源 平 藤原 橘 name a descent (uji), which no joins to a name, and biographical
    dictionaries read it so of whoever claims it; a family (surname) has none. Both are right.
    """
    options = piece_options(piece)
    kana = piece.word.kana if piece.word else ""
    linked = option(f"{kana} の", 0.0, f"{piece.text} is a clan, linked by no", capital=True)
    unlinked = [o._replace(cost=o.cost + _CLAN_UNLINKED) for o in options]
    return (linked, unlinked[0]._replace(reason="the clan without no"), *unlinked[1:])


def _is_suffix(piece: SignaturePiece) -> bool:
    """Return whether a word is joined to the name before it with a hyphen: Miwa-shi, Nara-ken."""
    if piece.word is None or " " in piece.word.kana:
        return False
    if piece.kind == "place_suffix":
        return piece.word.kana in _hyphened()
    return piece.kind == "honorific"


@tables.cached()
def _hyphened() -> frozenset[str]:
    rows = tables.rows("word_division")
    return frozenset(row["kana"] for row in rows if row["kind"] == "hyphen")
