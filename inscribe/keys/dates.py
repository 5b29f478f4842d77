"""Keys of ``inscribe date``, of one date and of several on one object."""

from __future__ import annotations

from typing import Annotated, NotRequired, TypedDict

from inscribe.keys.base import Day, Keyword, Share, Signs
from inscribe.terms import Agreement, Part, Precision


class AgeKeys(TypedDict):
    """An age that stands in the date."""

    text: Annotated[str, "as written"]
    years: Annotated[int, "in years"]
    about: Annotated[bool, "whether it says no exact number (seventy-odd)"]
    western: Annotated[bool, "counted from birthday to birthday, not by calendar years from one"]


class EraYearKeys(TypedDict):
    """A year by its era."""

    era: Annotated[str, "the era's name"]
    era_romaji: Annotated[str, "the same in Latin letters"]
    year_of_era: Annotated[int, "the year of the era, from 1"]


class CandidateYearKeys(TypedDict):
    """One year that a bare sexagenary year may mean."""

    year: Annotated[int, "the western year in which it began"]
    eras: Annotated[list[EraYearKeys], "the eras of that year"]
    first_day: Annotated[Day | None, "its first day"]
    last_day: Annotated[Day | None, "its last day"]
    birth_year: Annotated[int | None, "the year of birth that an age beside it gives"]


class ExplanationKeys(TypedDict):
    """One way out of a contradiction."""

    kind: Annotated[str, "what is taken to be wrong"]
    written: Annotated[str, "what is written"]
    read: Annotated[str, "what would be read instead"]
    year: Annotated[int | None, "the western year it gives"]
    weight: Annotated[Share, "ranks the explanations: a judgement, not a probability"]
    text: Annotated[str, "the same as a sentence"]


class DateKeys(TypedDict):
    """One date or age, resolved and checked."""

    text: Annotated[str, "as carved"]
    era: Annotated[str | None, "the era's name"]
    era_romaji: Annotated[str | None, "the era's name in Latin letters"]
    year_of_era: Annotated[int | None, "the year of the era, from 1"]
    sexagenary: Annotated[str | None, "the sexagenary year as written, in current forms"]
    year: Annotated[int | None, "the western year in which the Japanese year began"]
    month: Annotated[int | None, Keyword("minimum", 1), Keyword("maximum", 12), "the month"]
    leap: Annotated[bool, "whether it is a leap month"]
    day: Annotated[
        int | None, Keyword("minimum", 1), Keyword("maximum", 31), "the day of the month"
    ]
    day_word: Annotated[str | None, "a word for the day, as 吉日"]
    first_day: Annotated[Day | None, "the first day it may mean"]
    last_day: Annotated[Day | None, "the last day it may mean"]
    agreement: Annotated[Agreement, "whether its parts agree with each other"]
    suggestions: Annotated[list[str], "ways out of a contradiction, or years it may mean, in words"]
    why: Annotated[str, "how it was resolved"]
    precision: Annotated[Precision, "how closely the days are known"]
    year_sexagenary: Annotated[str | None, "the sexagenary sign of the year it was resolved to"]
    western_years: Annotated[list[int], "the western years in which its days lie"]
    zodiac: Annotated[str | None, "a branch that stands without its stem"]
    season: Annotated[str | None, "the season, as written"]
    month_name: Annotated[str | None, "the month as written, where that is no plain number"]
    day_sexagenary: Annotated[str | None, "the sexagenary day as written"]
    age: Annotated[AgeKeys | None, "the age beside it"]
    birth_year: Annotated[int | None, "the western year of birth that follows from the age"]
    kana: Annotated[str, "how it is said, in kana"]
    romaji: Annotated[str, "how it is said, in Latin letters"]
    candidates: Annotated[list[CandidateYearKeys], "the years a bare sexagenary year may mean"]
    conflicts: Annotated[list[Part], "the parts that disagree"]
    explanations: Annotated[
        list[ExplanationKeys], "ways out of a contradiction, the likeliest first"
    ]
    cautions: Annotated[list[str], "what the calendar does not allow or does not know"]
    signs: Annotated[Signs, "where it stands in the text"]


class DateAnswerKeys(DateKeys):
    """The date of one text."""

    others: NotRequired[Annotated[list[DateKeys], "further dates of that text"]]


class DatesKeys(TypedDict):
    """The dates of one object and what they say together."""

    dates: Annotated[list[DateKeys], "each date, in the order of the inscriptions"]
    not_after: Annotated[Day | None, "the object existed by that day, if its earliest date is true"]
    birth_years: Annotated[list[int], "the years of birth that all ages allow"]
    agreement: Annotated[Agreement, "whether all ages can be one carver's"]
    statements: Annotated[list[str], "what follows, in sentences"]
