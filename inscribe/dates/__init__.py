"""What a carved date says, which days it names, and whether it agrees with itself.

``find`` is asked about every text that is read, and most have no date: importing this package
loads only what it needs to say no, the rest comes with the first date found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inscribe.dates.finding import find, resolve, resolve_all

if TYPE_CHECKING:
    from inscribe.dates.model import Age, Candidate, DateReading, Explanation, Piece
    from inscribe.dates.pronounce import SpokenWord, words
    from inscribe.dates.several import Comparison, compared

_HOMES = {
    "Age": "model",
    "Candidate": "model",
    "DateReading": "model",
    "Explanation": "model",
    "Piece": "model",
    "SpokenWord": "pronounce",
    "words": "pronounce",
    "Comparison": "several",
    "compared": "several",
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


def __getattr__(name: str) -> Any:
    """Load a public name from its module when it is first asked for."""
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f"inscribe.dates.{_HOMES[name]}"), name)
