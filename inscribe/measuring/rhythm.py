"""How long each sign of a column is likely to be, as a share of a full Chinese character.

Sizes differ from hand to hand; these are wide expectations. Common practice, no source; the shares
are from memory, and weigh little where the picture speaks.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.signs import Certainty, Kind, Sign

LONG_MARKS = "〱〲〳〵"
SHORT_MARKS = "ゝゞ々〻ヽヾ"
FLAT = "一ー丶"
LOW = "二へつエ工八"


class Expected(NamedTuple):
    """A sign's likely length, how far it may be off (log), and whether it must show strokes."""

    length: float
    spread: float
    shows: bool = True


def expected(sign: Sign) -> Expected:
    """Return what is to be expected of a sign.

    >>> expected(Sign("花")).length, expected(Sign("の")).length
    (1.0, 0.75)
    """
    if sign.kind is Kind.GAP:
        return Expected(3.0, 0.7, shows=False)
    if sign.kind is not Kind.CHARACTER:
        return Expected(1.3, 0.5)
    if sign.certainty is Certainty.UNREADABLE or not sign.text:
        return Expected(1.0, 0.35, shows=False)
    first = sign.text[0]
    if first in LONG_MARKS:
        return Expected(2.0, 0.4)
    if first in SHORT_MARKS:
        return Expected(0.55, 0.4)
    if first in FLAT:
        return Expected(0.22, 0.7)
    if first in LOW:
        return Expected(0.6, 0.35)
    return Expected(0.75, 0.3) if _is_kana(first) else Expected(1.0, 0.25)


def _is_kana(sign: str) -> bool:
    return "ぁ" <= sign <= "ヿ" or "\U0001b000" <= sign <= "\U0001b16f"
