"""Pieces of a signature as units with their readings, outside of formulas."""

from __future__ import annotations

from inscribe import tables
from inscribe.reading.signatures.options import Option, Unit, option, piece_options
from inscribe.reading.signatures.pieces import SignaturePiece

_CLAN_LINKED = 1.0


def unit(piece: SignaturePiece, options: tuple[Option, ...], *, hyphen: bool = False) -> Unit:
    """Return a piece with its readings."""
    gloss = piece.word.gloss if piece.word else ""
    return Unit(piece.text, piece.kind, piece.first, piece.last, options, hyphen, gloss)


def plain(piece: SignaturePiece) -> Unit:
    """Return a piece that stands for itself; a closer without its opener is linked by の."""
    options = piece_options(piece)
    if piece.kind == "closer" and piece.word and piece.first:
        options = (option(f"の {piece.word.kana}"),)
    return unit(piece, options, hyphen=_is_suffix(piece))


def clan_options(piece: SignaturePiece) -> tuple[Option, ...]:
    """Return the readings of a clan before a name: Fujiwara, or Fujiwara no.

    Without no first: a carver's 藤原 is no more than a claim of descent, and catalogues read it as
    they do a surname. Poets and courtiers, whose clan it was, have no (poets_and_works.tsv).
    """
    options = piece_options(piece)
    kana = piece.word.kana if piece.word else ""
    linked = option(f"{kana} の", _CLAN_LINKED, f"{piece.text} may be linked by no", capital=True)
    return (*options[:1], linked, *options[1:])


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
