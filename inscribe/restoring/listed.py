"""Sayings, subjects of pictures and headings of poems that have a worn sign: 竹林七□ is 竹林七賢.

A set phrase of which three signs are legible leaves hardly a doubt about the fourth, whatever the
language says of it sign by sign. The more of it is legible, the more it weighs.

>>> listed_at("竹林七□之図", 3)
('竹林七賢', {'賢': 0.9})
"""

from __future__ import annotations

from inscribe import tables

_TABLES = ("sayings", "compounds", "subjects")
_UNREAD = "□"
_LONGEST = 12  # signs of a phrase
_TRUST = {2: 0.6, 3: 0.9}  # what a phrase weighs of which so many signs are legible; by trial
_MOST_TRUST = 0.97


def listed_at(text: str, at: int, legible: int = 2) -> tuple[str, dict[str, float]]:
    """Return the longest set phrase over the worn sign at ``at``, and the signs it may have there.

    Their weights add up to what the phrase is to be trusted; none where no phrase is over it of
    which at least ``legible`` signs can be read.
    """
    for length in range(min(_LONGEST, len(text)), legible, -1):
        for first in range(max(0, at - length + 1), min(at, len(text) - length) + 1):
            stretch = text[first : first + length]
            if stretch.count(_UNREAD) > 1 or not (found := _agreeing(stretch)):
                continue
            trust = _TRUST.get(length - 1, _MOST_TRUST)
            signs = dict.fromkeys(phrase[at - first] for phrase in found)
            return found[0], {sign: trust / len(signs) for sign in signs}
    return "", {}


def _agreeing(stretch: str) -> list[str]:
    """Return the phrases that a stretch of which one sign is worn may be."""
    end = 0 if stretch[0] != _UNREAD else -1
    before, _, after = stretch.partition(_UNREAD)
    phrases = _by_sign(end).get((len(stretch), stretch[end]), ())
    return [each for each in phrases if each.startswith(before) and each.endswith(after)]


@tables.cached()
def _by_sign(end: int) -> dict[tuple[int, str], list[str]]:
    """Return the phrases by their length and their first (0) or last (-1) sign."""
    found: dict[tuple[int, str], list[str]] = {}
    for phrase in _phrases():
        found.setdefault((len(phrase), phrase[end]), []).append(phrase)
    return found


@tables.cached()
def _phrases() -> tuple[str, ...]:
    from inscribe.reading.passages import set_headings

    cells = (row["written"] for table in _TABLES for row in tables.rows(table))
    return (*(written for cell in cells for written in tables.listed(cell)), *set_headings())
