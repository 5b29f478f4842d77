"""A date expression as written, before anything is made of it."""

from __future__ import annotations

from typing import NamedTuple

from inscribe.dates.model import Age, DatePiece

_AGE_ONLY = frozenset(("age", "age_before", "age_number", "age_after", "intro", "link"))


class Expression(NamedTuple):
    """What is written: each place of a date, filled or empty, and the pieces it is made of."""

    era: str | None = None
    damaged_era: str | None = None  # with □ for the sign that cannot be read
    unknown_era: str | None = None  # signs in an era's place that are the name of none
    number: int | None = None  # the year's number, in its era or since an epoch
    number_text: str = ""
    numbers: tuple[int, ...] = ()  # what a number with an unreadable sign may be
    odd_number: str | None = None  # what stands in the place of the year's number and is none
    epoch: int | None = None  # what to add to ``number`` for the western year
    era_part: str | None = None
    stem: str | None = None
    branch: str | None = None  # with a stem: the sexagenary year; alone: the zodiac year; a stem
    # alone stands where the branch cannot be read
    odd_pair: str | None = None  # two signs in a sexagenary year's place that are no such pair
    months: tuple[int, int] | None = None  # one month, or the first and last of a season
    month_word: str | None = None
    season: str | None = None
    odd_month: str | None = None  # a number no month has, as written
    misplaced: tuple[str, int, int | None] | None = None  # a word of another month, or of another
    # day, than is written: 重陽 in 三月重陽, with its month and its day
    leap: bool = False
    day: int | None = None
    days: tuple[int, int] | None = None  # a part of the month
    day_word: str | None = None
    day_stem: str | None = None
    day_branch: str | None = None
    day_turn: int = 0  # which of the month's days of that branch: 1 in 初午
    term: tuple[str, str] | None = None  # Gregorian month-days of a solar term
    same: tuple[tuple[str, int], ...] = ()
    age: Age | None = None
    sure: bool = False
    pieces: tuple[DatePiece, ...] = ()

    @property
    def says_when(self) -> bool:
        """Whether it says anything of a year, a month or a day, and is not only an age."""
        return any(piece.kind not in _AGE_ONLY for piece in self.pieces)

    @property
    def first(self) -> int:
        """Offset of its first character."""
        return self.pieces[0].first

    @property
    def last(self) -> int:
        """Offset of its last character."""
        return self.pieces[-1].last


class UnfinishedExpression:
    """An expression while it is being filled; kept inside the parser."""

    def __init__(self) -> None:
        self.places: dict[str, object] = {}
        self.pieces: list[DatePiece] = []
        self.strength = 0  # 2 and more: a date by itself

    def is_empty(self) -> bool:
        """Return whether nothing is filled yet."""
        return not self.pieces

    def has(self, *names: str) -> bool:
        """Return whether any of the places is filled."""
        return any(name in self.places for name in names)

    def fill(self, strength: int, pieces: list[DatePiece], **places: object) -> None:
        """Fill places that were empty."""
        self.places.update(places)
        self.pieces += pieces
        self.strength += strength

    def last_kind(self) -> str:
        """Return the kind of the last piece, or nothing."""
        return self.pieces[-1].kind if self.pieces else ""

    def finished(self) -> list[Expression]:
        """Return the expression, without introductions and links nothing follows, or nothing."""
        pieces = list(self.pieces)
        while pieces and pieces[-1].kind in ("intro", "link"):
            pieces.pop()
        if not self.places or not pieces:
            return []
        places: dict[str, object] = dict(self.places)
        return [Expression(**places, sure=self.strength >= 2, pieces=tuple(pieces))]  # type: ignore[arg-type]
