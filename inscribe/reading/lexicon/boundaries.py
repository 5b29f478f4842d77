"""Where the later parts of a compound verb begin in its kana: what is read by itself there."""

from __future__ import annotations

import re

from inscribe.reading.lexicon.nouns import noun_rows

_WHOLE_FIRST = re.compile("[見着来出寝居][はひふへほ]")  # 見はやす: mi, then hayasu
_KANA_RUN = re.compile("[\u3041-\u3096]+")


def okurigana_boundaries(written: str, kana: str) -> tuple[int, ...]:
    """Return where the later parts of a compound begin, as far as its okurigana show it."""
    found: list[int] = []
    position = 0
    if _WHOLE_FIRST.match(written) and len(kana) > 1:
        found.append(1)
    for match in _KANA_RUN.finditer(written):
        at = kana.find(match[0], position + (1 if match.start() else 0))
        if at < 0:
            return tuple(found)
        position = at + len(match[0])
        if match.end() < len(written) and position < len(kana):
            found.append(position)
    return tuple(found)


def part_readings(raw: list[tuple[str, str, str, str]]) -> dict[str, set[str]]:
    """Return the historical kana of single characters, as stems of verbs or as nouns."""
    readings: dict[str, set[str]] = {}
    for written, kana, _, _ in raw:
        if len(written) == 1 and kana:
            readings.setdefault(written, set()).add(kana)
    for written, historical, _, _, _ in noun_rows():
        if len(written) == 1:
            readings.setdefault(written, set()).add(historical)
    return readings


def kanji_boundaries(written: str, kana: str, readings: dict[str, set[str]]) -> tuple[int, ...]:
    """Return where the last, or the second, part of a compound in kanji alone begins."""
    if len(written) < 2 or _KANA_RUN.search(written) or written[-1] in "来為得経歴寝宿":
        return ()
    for last in sorted(readings.get(written[-1], ()), key=len, reverse=True):
        if kana.endswith(last) and len(last) < len(kana):
            return (len(kana) - len(last),)
    for first in sorted(readings.get(written[0], ()), key=len, reverse=True):
        if kana.startswith(first) and len(first) < len(kana):
            return (len(first),)
    return ()
