"""A date as the plain object of the JSON contract."""

from __future__ import annotations

from datetime import date
from typing import Any

from inscribe.dates import Age, CandidateYear, DateReading, Explanation
from inscribe.dates.calendar import pair, year_index
from inscribe.dates.meaning import Comparison


def date_as_json(reading: DateReading) -> dict[str, Any]:
    """Return the keys of the contract first, then what more is known of the date."""
    return {
        "text": reading.text,
        "era": reading.era,
        "era_romaji": reading.era_romaji,
        "year_of_era": reading.year_of_era,
        "sexagenary": reading.sexagenary,
        "year": reading.year,
        "month": reading.month,
        "leap": reading.leap,
        "day": reading.day,
        "day_word": reading.day_word,
        "first_day": _day(reading.first_day),
        "last_day": _day(reading.last_day),
        "agreement": reading.agreement,
        "suggestions": list(reading.suggestions),
        "why": reading.why,
        **_more(reading),
    }


def _more(reading: DateReading) -> dict[str, Any]:
    from inscribe.dates.meaning import words

    spoken = words(reading)
    return {
        "precision": reading.precision,
        "year_sexagenary": None if reading.year is None else pair(year_index(reading.year)),
        "western_years": _western_years(reading.first_day, reading.last_day),
        "zodiac": reading.zodiac,
        "season": reading.season,
        "month_name": reading.month_name,
        "day_sexagenary": reading.day_sexagenary,
        "age": _age(reading.age),
        "birth_year": reading.birth_year,
        "kana": " ".join(word.kana for word in spoken),
        "romaji": " ".join(word.romaji for word in spoken),
        "candidates": [_candidate(each) for each in reading.candidates],
        "conflicts": list(reading.conflicts),
        "explanations": [_explanation(each) for each in reading.explanations],
        "cautions": list(reading.cautions),
        "signs": [reading.first, reading.last],
    }


def _western_years(first: date | None, last: date | None) -> list[int]:
    """Return the western years the days lie in: of a twelfth month usually the next one."""
    return list(range(first.year, last.year + 1)) if first and last else []


def _day(day: date | None) -> str | None:
    return day.isoformat() if day else None


def _age(age: Age | None) -> dict[str, Any] | None:
    if age is None:
        return None
    return {"text": age.text, "years": age.years, "about": age.about, "western": age.western}


def _candidate(candidate: CandidateYear) -> dict[str, Any]:
    return {
        "year": candidate.year,
        "eras": [
            {"era": name, "era_romaji": romaji, "year_of_era": number}
            for name, romaji, number in candidate.eras
        ],
        "first_day": _day(candidate.first_day),
        "last_day": _day(candidate.last_day),
        "birth_year": candidate.birth_year,
    }


def _explanation(explanation: Explanation) -> dict[str, Any]:
    return {
        "kind": explanation.kind,
        "written": explanation.written,
        "read": explanation.read,
        "year": explanation.year,
        "weight": round(explanation.weight, 3),
        "text": explanation.text,
    }


def comparison_as_json(comparison: Comparison) -> dict[str, Any]:
    """Return several dates of one object and what they say together."""
    return {
        "dates": [date_as_json(reading) for reading in comparison.readings],
        "not_after": _day(comparison.not_after),
        "birth_years": list(comparison.birth_years),
        "agreement": comparison.agreement,
        "statements": list(comparison.statements),
    }
