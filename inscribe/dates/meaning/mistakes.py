"""What the explanations of a conflict share: how likely a slip is, and how a year is named."""

from __future__ import annotations

from inscribe.dates import calendar
from inscribe.dates.written import are_alike, as_kanji


def year_name(era: calendar.Era, number: int) -> str:
    """Return an era year as it is written: 嘉永七年, 安政元年."""
    return f"{era.name}{'元' if number == 1 else as_kanji(number)}年"


def pair_weight(wrong: list[tuple[str, str]], length: int) -> tuple[float, str]:
    """Return how likely signs were mistaken, given pairs of (written, right), and why."""
    if all(are_alike(a, b) for a, b in wrong):
        signs = " and ".join(f"{b} misread as {a}" for a, b in wrong)
        return 0.9, f"{signs}: the signs look alike"
    if len(wrong) == 1 and length == 2:
        a, b = wrong[0]
        return 0.5, f"one of its two signs is wrong ({a} for {b})"
    return 0.3, "the sexagenary year is wrong and the era year right"
