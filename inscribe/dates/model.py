"""What a date expression was resolved to."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

Agreement = Literal["agrees", "conflict", "unchecked"]


@dataclass(frozen=True, slots=True)
class DateReading:
    """One date expression, what it names, and whether its parts agree.

    ``first_day`` and ``last_day`` are days of the Gregorian calendar that enclose the date as far
    as it is known; ``first`` and ``last`` are the indexes of its first and last sign.
    """

    text: str
    era: str | None = None
    era_romaji: str | None = None
    year_of_era: int | None = None
    sexagenary: str | None = None
    year: int | None = None
    month: int | None = None
    leap: bool = False
    day: int | None = None
    day_word: str | None = None
    first_day: date | None = None
    last_day: date | None = None
    agreement: Agreement = "unchecked"
    suggestions: tuple[str, ...] = ()
    why: str = ""
    first: int = 0
    last: int = 0
