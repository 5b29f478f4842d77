"""What a carved date says, which days it names, and whether it agrees with itself."""

from inscribe.dates.finding import find, resolve
from inscribe.dates.model import Age, Candidate, DateReading, Explanation, Piece
from inscribe.dates.pronounce import SpokenWord, words

__all__ = [
    "Age",
    "Candidate",
    "DateReading",
    "Explanation",
    "Piece",
    "SpokenWord",
    "find",
    "resolve",
    "words",
]
