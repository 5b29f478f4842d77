"""From what is written to what it means: the year, the days, and whether the parts agree."""

from __future__ import annotations

from dataclasses import replace

from inscribe.dates import calendar
from inscribe.dates.meaning.account import MOST_CANDIDATES, account_of, suggestions_of
from inscribe.dates.meaning.candidates import candidates_of, pair_fits, says_something_of_the_year
from inscribe.dates.meaning.contradicting import (
    in_conflict,
    with_misplaced,
    with_odd_month,
    with_season,
    with_unknown,
)
from inscribe.dates.meaning.interval import LARGEST_DAY, in_force, interval_of, with_day_of_pair
from inscribe.dates.meaning.pronouncing import words
from inscribe.dates.model import Agreement, DateReading
from inscribe.dates.written import Expression

Between = tuple[int, int]


def resolved(
    expression: Expression, text: str, between: Between | None, before: DateReading | None = None
) -> DateReading:
    """Return what ``expression`` (found in ``text``) means.

    ``between`` narrows the years a sexagenary year without an era may mean (western years, both
    included); ``before`` is the date that "the same year" refers to.
    """
    reading = _as_written(expression, text)
    if expression.same:
        reading = _with_reference(reading, expression, before)
    reading = _with_year(reading, expression, between)
    if expression.odd_number or expression.unknown_era:
        reading = with_unknown(reading, expression)
    if expression.odd_month:
        reading = with_odd_month(reading)
    if expression.misplaced:
        reading = with_misplaced(reading, *expression.misplaced)
    reading = _with_leap_month(reading)
    reading = with_season(reading)
    reading = _with_days(reading, expression)
    reading = with_birth(reading)
    return _as_said(_with_account(reading, expression, between))


def _as_said(reading: DateReading) -> DateReading:
    """Return the reading with how it is said, and the sexagenary sign of its year."""
    spoken = words(reading)
    return replace(
        reading,
        kana=" ".join(word.kana for word in spoken),
        romaji=" ".join(word.romaji for word in spoken),
        year_sexagenary=None if reading.year is None else calendar.pair_of_year(reading.year),
    )


def _as_written(expression: Expression, text: str) -> DateReading:
    era = calendar.by_name().get(expression.era or "")
    first, last = expression.first, expression.last
    months = expression.months
    return DateReading(
        text=text[first : last + 1],
        era=era.name if era else None,
        era_romaji=era.romaji if era else None,
        year_of_era=expression.number if era else None,
        sexagenary=expression.odd_pair or _pair(expression.stem, expression.branch),
        month=months[0] if months and months[0] == months[1] else None,
        leap=expression.leap,
        day=expression.day,
        day_word=expression.day_word,
        first=first,
        last=last,
        zodiac=expression.branch if expression.stem is None else None,
        season=expression.season,
        month_name=expression.month_word,
        day_sexagenary=_pair(expression.day_stem, expression.day_branch),
        age=expression.age,
        sure=expression.sure,
        pieces=expression.pieces,
    )


def _pair(stem: str | None, branch: str | None) -> str | None:
    return stem + branch if stem and branch else None


def _with_reference(
    reading: DateReading, expression: Expression, before: DateReading | None
) -> DateReading:
    """Take over the year, month and day that 同年, 同月, 翌年 refer to."""
    if before is None or before.year is None:
        caution = "it refers to a date named before it, and none is known"
        return replace(reading, cautions=(*reading.cautions, caution))
    offsets = dict(expression.same)
    if "era" in offsets:
        return _with_era_before(reading, expression, before)
    year = before.year + offsets.get("year", 0)
    if "year" not in offsets:
        year, month = _month_on(before, offsets.get("month", 0))
        same_month = not offsets.get("month")
        reading = replace(reading, month=reading.month or month, leap=before.leap and same_month)
    elif "month" in offsets:
        reading = replace(reading, month=before.month, leap=before.leap)
    if "day" in offsets and before.day:
        reading = replace(reading, day=before.day + offsets["day"])
    return _with_era_of(replace(reading, year=year), before.era)


def _with_era_before(
    reading: DateReading, expression: Expression, before: DateReading
) -> DateReading:
    """Take over the era that 同五年 refers to."""
    era = calendar.by_name().get(before.era or "")
    if era is None or expression.number is None:
        return reading
    named = replace(reading, era=era.name, era_romaji=era.romaji, year_of_era=expression.number)
    return replace(named, year=era.western(expression.number))


def _month_on(before: DateReading, offset: int) -> tuple[int, int | None]:
    """Return the year and month so many months on; leap months are not counted."""
    assert before.year is not None
    if before.month is None:
        return before.year, None
    years, month = divmod(before.month + offset - 1, 12)
    return before.year + years, month + 1


def _with_era_of(reading: DateReading, preferred: str | None) -> DateReading:
    """Name the era of the reading's year: the preferred one if it has that year, else the last."""
    if reading.year is None or reading.era is not None:
        return reading
    days = calendar.days_of(reading.year, reading.month, leap=reading.leap)
    named = {era.name: (era, number) for era, number in in_force(reading.year, days)}
    if not named:
        return reading
    era, number = named.get(preferred or "") or list(named.values())[-1]
    return replace(reading, era=era.name, era_romaji=era.romaji, year_of_era=number)


def _with_year(
    reading: DateReading, expression: Expression, between: Between | None
) -> DateReading:
    """Set the western year and the agreement of era year and sexagenary year."""
    era = calendar.by_name().get(expression.era or "")
    if era and expression.number:
        reading = replace(reading, year=era.western(expression.number))
        if not era.has(era.western(expression.number)):
            reading = in_conflict(reading, "year")
    elif expression.epoch is not None and expression.number:
        reading = replace(reading, year=expression.number + expression.epoch)
    if reading.year is None:
        return _with_candidates(reading, expression, between)
    if not (expression.branch or expression.stem or expression.odd_pair):
        return reading
    agrees = pair_fits(reading.year, expression) and not expression.odd_pair
    if not agrees:
        return in_conflict(reading, "year") if not reading.conflicts else reading
    agreement: Agreement = "conflict" if reading.conflicts else "agrees"
    return replace(reading, agreement=agreement)


def _with_candidates(
    reading: DateReading, expression: Expression, between: Between | None
) -> DateReading:
    """Set the years a date without a certain year may mean; the year where only one is left."""
    if not says_something_of_the_year(expression):
        return reading
    found = candidates_of(expression, between)
    reading = replace(reading, candidates=found)
    if expression.odd_pair or not _exists(expression) or (expression.era and not found):
        reading = in_conflict(reading, "year")
    elif expression.era and (expression.stem or expression.branch):
        reading = replace(reading, agreement="agrees")
    if len(found) != 1:
        return reading
    reading = replace(reading, year=found[0].year)
    names = [name for name, _, _ in found[0].eras]
    if reading.era is None and len(names) != 1:
        return reading
    number = next((number for name, _, number in found[0].eras if name == reading.era), None)
    if reading.era is not None:
        return replace(reading, year_of_era=number)
    return _with_era_of(reading, names[0])


def _exists(expression: Expression) -> bool:
    """Return whether the sexagenary pair as written is one of the sixty (or not wholly written)."""
    if expression.stem is None or expression.branch is None:
        return True
    return calendar.index_of(expression.stem, expression.branch) is not None


def _with_leap_month(reading: DateReading) -> DateReading:
    """Set the number of a bare leap month; a leap month the year did not have is a conflict."""
    year = reading.year
    if reading.leap and year is not None and year > calendar.LAST_YEAR:
        return in_conflict(reading, "month")
    if not reading.leap or year is None or not calendar.is_tabulated(year):
        return reading
    there = calendar.leap_month(year)
    if reading.month is None and there is not None:
        # a bare 閏月
        return replace(reading, month=there)
    fits = there is not None and reading.month == there
    return reading if fits else in_conflict(reading, "month")


def _with_days(reading: DateReading, expression: Expression) -> DateReading:
    """Set the Gregorian days and how precise they are."""
    reading = with_day_of_pair(reading, expression)
    interval = interval_of(reading, expression)
    reading = replace(
        reading,
        day=interval.day if interval.day is not None else _possible(reading.day),
        first_day=interval.first,
        last_day=interval.last,
        precision=interval.precision,
        cautions=(*reading.cautions, *interval.cautions),
    )
    if interval.impossible and "month" not in reading.conflicts:
        return in_conflict(reading, "day")
    return reading


def _possible(day: int | None) -> int | None:
    return None if day is not None and day > LARGEST_DAY else day


def with_birth(reading: DateReading) -> DateReading:
    """Return the reading with the year of birth that its age gives, for every candidate too."""
    age = reading.age
    if age is None:
        return reading
    candidates = tuple(
        each._replace(birth_year=age.birth_year(each.year)) for each in reading.candidates
    )
    birth = age.birth_year(reading.year) if reading.year is not None else None
    return replace(reading, birth_year=birth, candidates=candidates)


def with_age_at(reading: DateReading, dated: DateReading) -> DateReading:
    """Return an age that stands by itself with the year of birth a date in its text gives."""
    if reading is dated or reading.age is None or reading.year is not None or reading.candidates:
        return reading
    births = [reading.age.birth_year(each.year) for each in dated.candidates]
    if dated.year is not None:
        births = [reading.age.birth_year(dated.year)]
    listed = ", ".join(str(year) for year in births[:MOST_CANDIDATES])
    why = f"{reading.why.partition(';')[0]}; with {dated.text} in the same text: born {listed}"
    return replace(reading, birth_year=births[0] if len(births) == 1 else None, why=why)


def _with_account(
    reading: DateReading, expression: Expression, between: Between | None
) -> DateReading:
    if reading.conflicts:
        from inscribe.dates.meaning.conflict import explanations_of

        reading = replace(reading, explanations=explanations_of(reading, expression, between))
    reading = replace(reading, suggestions=suggestions_of(reading))
    return replace(reading, why=account_of(reading, expression, between))
