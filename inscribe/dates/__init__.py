"""What a carved date says, which days it names, and whether it agrees with itself.

``find`` is asked about every text that is read, and most have no date: importing this package
loads only what it needs to say no, the rest comes with the first date found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late
from inscribe.dates.finding import find, resolve, resolve_all

if TYPE_CHECKING:
    from inscribe.dates.model import Age, Candidate, DateReading, Explanation, Piece
    from inscribe.dates.pronounce import SpokenWord, words
    from inscribe.dates.several import Comparison, compared

_HOMES = {
    "Age": "inscribe.dates.model",
    "Candidate": "inscribe.dates.model",
    "DateReading": "inscribe.dates.model",
    "Explanation": "inscribe.dates.model",
    "Piece": "inscribe.dates.model",
    "SpokenWord": "inscribe.dates.pronounce",
    "words": "inscribe.dates.pronounce",
    "Comparison": "inscribe.dates.several",
    "compared": "inscribe.dates.several",
}

__all__ = [
    "Age",
    "Candidate",
    "Comparison",
    "DateReading",
    "Explanation",
    "Piece",
    "SpokenWord",
    "compared",
    "find",
    "resolve",
    "resolve_all",
    "words",
]

__getattr__ = late.names(__name__, _HOMES)
