"""A reading of verse with its phrases told apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inscribe.reading.words import Proposal


def phrased(proposal: Proposal, what: str) -> str:
    """Return the reading with `` / `` where a phrase of verse ends."""
    if not proposal.phrases:
        return str(getattr(proposal, what))
    from inscribe.reading.spelling import KanaWord, separator

    firsts = {first for _, first in proposal.phrases if first}
    out = ""
    before: KanaWord | None = None
    for index, token in enumerate(proposal.tokens):
        if not getattr(token, what):
            continue
        word = KanaWord(token.kana, token.part_of_speech)
        if index in firsts:
            out += " / "
        elif before is not None:
            out += separator(before, word) if what == "romaji" else " "
        out += getattr(token, what)
        before = word
    return out
