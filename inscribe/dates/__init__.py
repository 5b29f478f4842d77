"""What a carved date says, which days it names, and whether it agrees with itself."""

from inscribe.dates.finding import find, resolve
from inscribe.dates.model import Age, Candidate, DateReading, Explanation, Piece
from inscribe.dates.pronounce import SpokenWord, words
from inscribe.dates.several import Comparison, compared

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
    "words",
]
