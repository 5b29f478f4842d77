"""What a date expression was resolved to, and the types the resolving hands on."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from inscribe import notebook
from inscribe.terms import Agreement as Agreement, Part as Part, Precision as Precision

if TYPE_CHECKING:
    from inscribe.keys import AgeKeys, CandidateYearKeys, DateKeys, ExplanationKeys


SEASONS = "春夏秋冬"


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

    def to_dict(self) -> AgeKeys:
        """Return it as printed in JSON."""
        return {
            "text": self.text,
            "years": self.years,
            "about": self.about,
            "western": self.western,
        }


class CandidateYear(NamedTuple):
    """One year that a bare sexagenary year may mean; ``eras`` are (name, romaji, year of era)."""

    year: int
    eras: tuple[tuple[str, str, int], ...] = ()
    first_day: date | None = None
    last_day: date | None = None
    birth_year: int | None = None

    def to_dict(self) -> CandidateYearKeys:
        """Return it as printed in JSON."""
        return {
            "year": self.year,
            "eras": [
                {"era": name, "era_romaji": romaji, "year_of_era": number}
                for name, romaji, number in self.eras
            ],
            "first_day": iso(self.first_day),
            "last_day": iso(self.last_day),
            "birth_year": self.birth_year,
        }


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

    def to_dict(self) -> ExplanationKeys:
        """Return it as printed in JSON."""
        return {
            "kind": self.kind,
            "written": self.written,
            "read": self.read,
            "year": self.year,
            "weight": round(self.weight, 3),
            "text": self.text,
        }


@dataclass(frozen=True, slots=True, repr=False)
class DateReading:
    """One date expression, what it names, and whether its parts agree.

    ``year`` is the lunisolar year, named by the western year in which it began; ``first_day`` and
    ``last_day`` are days of the Gregorian calendar that enclose the date as far as it is known, and
    may lie in the next western year. ``first`` and ``last`` are offsets of its first and last
    character in the text that was searched.

    >>> from inscribe import resolve_date
    >>> date = resolve_date("嘉永六年癸丑")
    >>> date.year, date.agreement, date.first_day.isoformat()
    (1853, 'agrees', '1853-02-08')
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
    kana: str = ""  # how it is said
    romaji: str = ""
    year_sexagenary: str | None = None  # the sexagenary sign of ``year``

    def to_dict(self) -> DateKeys:
        """Return it as ``inscribe date --format json`` prints it."""
        return {
            "text": self.text,
            "era": self.era,
            "era_romaji": self.era_romaji,
            "year_of_era": self.year_of_era,
            "sexagenary": self.sexagenary,
            "year": self.year,
            "month": self.month,
            "leap": self.leap,
            "day": self.day,
            "day_word": self.day_word,
            "first_day": iso(self.first_day),
            "last_day": iso(self.last_day),
            "agreement": self.agreement,
            "suggestions": list(self.suggestions),
            "why": self.why,
            "precision": self.precision,
            "year_sexagenary": self.year_sexagenary,
            "western_years": self._western_years(),
            "zodiac": self.zodiac,
            "season": self.season,
            "month_name": self.month_name,
            "day_sexagenary": self.day_sexagenary,
            "age": self.age.to_dict() if self.age else None,
            "birth_year": self.birth_year,
            "kana": self.kana,
            "romaji": self.romaji,
            "candidates": [each.to_dict() for each in self.candidates],
            "conflicts": list(self.conflicts),
            "explanations": [each.to_dict() for each in self.explanations],
            "cautions": list(self.cautions),
            "signs": [self.first, self.last],
        }

    def __repr__(self) -> str:
        year = "no year" if self.year is None else self.year
        return f"<DateReading of {notebook.short(self.text)}: {year}, {self.agreement}>"

    def _repr_html_(self) -> str:
        """Return what was resolved as a table, as notebooks show it."""
        days = f"{iso(self.first_day)} to {iso(self.last_day)}" if self.first_day else ""
        return notebook.facts(
            {
                "as carved": self.text,
                "reading": self.romaji,
                "year": "" if self.year is None else str(self.year),
                "days": days,
                "agreement": self.agreement,
                "why": self.why,
                "consider": "; ".join(self.suggestions),
            }
        )

    def _western_years(self) -> list[int]:
        """Return the western years the days lie in: of a twelfth month usually the next one."""
        if self.first_day is None or self.last_day is None:
            return []
        return list(range(self.first_day.year, self.last_day.year + 1))


def iso(day: date | None) -> str | None:
    """Return a day as 1853-02-08, nothing for none."""
    return day.isoformat() if day else None
