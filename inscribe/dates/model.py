"""What a date expression was resolved to, and the types the resolving hands on."""

from __future__ import annotations

from datetime import date
from typing import Literal, NamedTuple

Agreement = Literal["agrees", "conflict", "unchecked"]
Precision = Literal["day", "part of month", "month", "season", "year", "era", "none"]


SEASONS = "春夏秋冬"
Part = Literal["year", "month", "day"]


class DatePiece(NamedTuple):
    """One word of a date: what it says, where it stands, and how it is read.

    ``kind`` is that of the glossary tables (era, number, year, month, ...); ``first`` and ``last``
    are offsets in the text that was searched.
    """

    kind: str
    text: str
    first: int
    last: int
    kana: str = ""
    romaji: str = ""
    value: str = ""
    also: tuple[str, ...] = ()  # other romanised readings


class Age(NamedTuple):
    """An age as written, counted by calendar years (one at birth)."""

    text: str
    years: int
    about: bool = False  # "seventy-odd"
    western: bool = False  # counted from the birthday (満), not by calendar years

    def birth_year(self, year: int) -> int:
        """Return the year of birth of someone of this age in ``year``.

        >>> Age("五十一歳", 51).birth_year(1850)
        1800
        """
        return year - self.years + (0 if self.western else 1)


class CandidateYear(NamedTuple):
    """One year that a bare sexagenary year may mean; ``eras`` are (name, romaji, year of era)."""

    year: int
    eras: tuple[tuple[str, str, int], ...] = ()
    first_day: date | None = None
    last_day: date | None = None
    birth_year: int | None = None


class Explanation(NamedTuple):
    """One way out of a contradiction: what would be read instead, and the year it gives.

    ``weight`` (0 to 1) ranks the explanations; it is a judgement, not a probability.
    """

    kind: str
    written: str
    read: str
    year: int | None
    weight: float
    text: str


class DateReading(NamedTuple):
    """One date expression, what it names, and whether its parts agree.

    ``year`` is the lunisolar year, named by the western year in which it began; ``first_day`` and
    ``last_day`` are days of the Gregorian calendar that enclose the date as far as it is known, and
    may lie in the next western year. ``first`` and ``last`` are offsets of its first and last
    character in the text that was searched.
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
    precision: Precision = "none"
    zodiac: str | None = None  # a branch written alone
    season: str | None = None
    month_name: str | None = None  # as written, where it is not a plain number
    day_sexagenary: str | None = None
    age: Age | None = None
    birth_year: int | None = None
    candidates: tuple[CandidateYear, ...] = ()
    conflicts: tuple[Part, ...] = ()  # which parts disagree
    explanations: tuple[Explanation, ...] = ()
    cautions: tuple[str, ...] = ()
    sure: bool = True  # False: only by itself doubtful as a date, e.g. a lone 仲秋 in a poem
    pieces: tuple[DatePiece, ...] = ()
