"""Parts of a date that cannot be, or not beside each other: what is said of them."""

from __future__ import annotations

from dataclasses import replace

from inscribe.dates.model import SEASONS, DateReading, Part
from inscribe.dates.written import Expression, eras_most_like, value_of


def in_conflict(reading: DateReading, part: Part) -> DateReading:
    """Return the reading with one more part that disagrees."""
    return replace(reading, agreement="conflict", conflicts=(*reading.conflicts, part))


def with_unknown(reading: DateReading, expression: Expression) -> DateReading:
    """What stands in the place of an era's name or of a year's number and is none."""
    if expression.odd_number:
        caution = _about_odd_number(expression.odd_number)
    else:
        likes = " or ".join(like.era for like in eras_most_like(expression.unknown_era or ""))
        looks = f"; it is most like {likes}" if likes else ""
        caution = f"{expression.unknown_era} is the name of no era{looks}"
    reading = replace(reading, cautions=(*reading.cautions, caution))
    return reading if "year" in reading.conflicts else in_conflict(reading, "year")


def _about_odd_number(written: str) -> str:
    if value_of(written) == 0:
        return f"no era had a year {written}: the first year is 元年"
    return f"{written} is no number"


def with_odd_month(reading: DateReading) -> DateReading:
    """A number above 12 names no month: the reading has none."""
    caution = f"there is no month {reading.month}"
    cautions = (*reading.cautions, caution)
    return in_conflict(replace(reading, month=None, leap=False, cautions=cautions), "month")


def with_misplaced(reading: DateReading, word: str, month: int, day: int | None) -> DateReading:
    """A festival, or a month's name, is of another month or another day than is written."""
    part: Part = "day" if month == reading.month else "month"
    written = f"day {reading.day}" if part == "day" else reading.season or f"month {reading.month}"
    caution = f"{written} is written beside {word}"
    return in_conflict(replace(reading, cautions=(*reading.cautions, caution)), part)


def with_season(reading: DateReading) -> DateReading:
    """A month that does not lie in the season written beside it is a conflict."""
    season, month = reading.season, reading.month
    if season is None or month is None or season[-1] not in SEASONS:
        return reading
    right = SEASONS[(month - 1) // 3]
    if right == season[-1]:
        return reading
    caution = f"month {month} is {right}, not {season}"
    return in_conflict(replace(reading, cautions=(*reading.cautions, caution)), "month")
