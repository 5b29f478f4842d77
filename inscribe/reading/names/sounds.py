"""How two on-readings of a name sound together: doubled, half-voiced, or side by side."""

from __future__ import annotations

from inscribe.reading.names.elements import Choice

# 徳軒 is Tokken and 竹渓 rather Chikukei: how often く or き doubles before k.
_DOUBLED = 0.55


def sounded(head: Choice, tail: Choice) -> list[tuple[str, float]]:
    """Return two readings as they sound together, each way with its weight."""
    plain = f"{head.kana}|{tail.kana}"
    joined = joined_on(head.kana, tail.kana) if head.is_on and tail.is_on else plain
    if joined != plain and head.kana[-1] in "くき":
        return [(joined, _DOUBLED), (plain, 1.0 - _DOUBLED)]
    return [(joined, 1.0)]


def joined_on(head: str, tail: str) -> str:
    """Return two on-readings as they sound together.

    >>> joined_on("いち", "さい"), joined_on("しゅん", "ほう"), joined_on("とく", "けん")
    ('いっさい', 'しゅんぽう', 'とっけん')
    """
    half_voiced = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))
    first = tail[:1]
    if len(head) > 1 and head[-1] in "つち" and first in "かきくけこさしすせそたちつてとはひふへほ":
        return f"{head[:-1]}っ{half_voiced.get(first, first)}{tail[1:]}"
    if len(head) > 1 and head[-1] in "くき" and first in "かきくけこ" and first:
        return f"{head[:-1]}っ{tail}"
    if head.endswith("ん") and first in half_voiced:
        return f"{head}{half_voiced[first]}{tail[1:]}"
    return f"{head}|{tail}"
