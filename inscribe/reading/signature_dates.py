"""The dates and ages of a signature as pieces with their readings."""

from __future__ import annotations

from inscribe.reading.signature_options import Option
from inscribe.reading.signature_split import Piece


def dated_pieces(text: str) -> list[tuple[Piece, tuple[Option, ...]]]:
    """Return every date and age in a text, with its readings."""
    return []
