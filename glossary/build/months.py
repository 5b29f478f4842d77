"""Build glossary/dates/months.tsv: the lunisolar years 1600-1872, month by month, by computation.

Needs the PyPI package astronomy-engine, and about half a minute.

No published table is copied. A month begins on the day of a new moon at Kyoto (135.77 E); the
month that holds the winter solstice is the eleventh; of two solstices thirteen months apart, the
first month without a principal solar term is the leap month. Principal terms are true ones from
1844 on, and divide the year evenly before. Until 1684 the calendar in force (Senmyo, of 822) had
drifted: its own mean year and mean month are used there, together with its rule that a new moon
in the last quarter of the day puts the first of the month on the day after.
"""

from __future__ import annotations

import csv
import itertools
from bisect import bisect_left
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

import astronomy
from sources import listed

FIRST_YEAR, LAST_YEAR = 1600, 1872
KYOTO = 135.77 / 360  # days ahead of Greenwich
J2000 = 2451545.0  # Julian date of astronomy-engine's time zero
TRUE_TERMS_FROM = 1844
SENMYO_UNTIL = 1684
SENMYO_DAY, SENMYO_YEAR, SENMYO_MONTH = 8400, 3068055, 248057  # parts a day, a year, a month
SENMYO_YEARS_TO_822 = 7070138
POSTPONED_FROM = 0.75  # Senmyo: later new moons count for the next day
END_OF_LAST_MONTH = 2405160  # Julian day number of 1873-01-01, when the Gregorian calendar began
# How near midnight the new moon makes a first day doubtful, in days: judged from how far each
# calendar's own theory of the moon may stray; the last year it was in force.
DOUBT = ((1684, 0.12), (1797, 0.06), (1843, 0.03), (1872, 0.015))
HERE = Path(__file__).parent
CORRECTIONS = HERE / "months_corrections.tsv"


@dataclass(frozen=True)
class Month:
    """One computed month: its place in the year, its first day, and how sure that day is."""

    year: int
    number: int
    leap: bool
    first: int  # Julian day number
    margin: float  # days between the new moon and the moment that would change the day


def local(time: astronomy.Time) -> float:
    """Return Kyoto mean time as a Julian date whose whole part changes at midnight."""
    return float(time.ut) + J2000 + 0.5 + KYOTO


def new_moons(first: int, last: int) -> list[float]:
    """Return the true new moons at Kyoto of the western years ``first`` to ``last``."""
    found = []
    time = astronomy.Time.Make(first, 1, 1, 0, 0, 0)
    while time.Utc().year <= last:
        time = astronomy.SearchMoonPhase(0.0, time, 40.0)
        found.append(local(time))
        time = time.AddDays(20.0)
    return found


def sun_at(longitude: float, year: int, month: int) -> float:
    """Return when the sun reaches ``longitude`` (degrees) around that month, at Kyoto."""
    start = astronomy.Time.Make(year, month, 1, 0, 0, 0)
    found = astronomy.SearchSunLongitude(longitude, start, 40.0)
    assert found is not None
    return local(found)


def true_terms(year: int) -> list[float]:
    """Return the 12 true principal terms from the winter solstice of ``year`` - 1 on."""
    terms = []
    for step in range(12):
        month = (11 + step) % 12 + 1
        terms.append(sun_at((270.0 + 30 * step) % 360, year - (month == 12), month))
    return terms


def mean_terms(year: int) -> list[float]:
    """Return the 12 principal terms of the mean sun, from the winter solstice of ``year`` - 1 on.

    The mean sun's longitude is that of Meeus, Astronomical Algorithms (1991), chapter 25. It
    reaches 270 degrees some seven hours before the true sun does in these years.
    """
    rate, zero = 36000.76983 / 36525, 280.46646
    near = (year - 2000) * 365.2425 - 11  # days from J2000
    turns = round((zero + rate * near - 270) / 360)
    solstice = (270 + 360 * turns - zero) / rate + J2000 + 0.5 + KYOTO
    return [solstice + 30 * step / rate for step in range(12)]


def senmyo_solstice(year: int) -> float:
    """Return the winter solstice of ``year`` - 1 by the Senmyo reckoning, as a Julian date."""
    parts = (SENMYO_YEARS_TO_822 + year - 822) * SENMYO_YEAR
    cycle = parts % (60 * SENMYO_DAY) / SENMYO_DAY
    near = sun_at(270.0, year - 1, 12) - 2  # it had fallen about two days early by 1684
    base = near - (near + 49.0) % 60  # Julian day of a kinoe-ne day (midnight start)
    return min((base + cycle + 60 * turn for turn in (-1, 0, 1)), key=lambda day: abs(day - near))


def senmyo_terms(year: int) -> list[float]:
    """Return the 12 mean principal terms of the Senmyo reckoning."""
    start = senmyo_solstice(year)
    return [start + SENMYO_YEAR / SENMYO_DAY * step / 12 for step in range(12)]


def terms_of(year: int) -> list[float]:
    """Return the principal terms in force, from the solstice of ``year`` - 1 on."""
    if year <= SENMYO_UNTIL:
        return senmyo_terms(year)
    return true_terms(year) if year >= TRUE_TERMS_FROM else mean_terms(year)


def senmyo_lag(year: int) -> float:
    """Return by how many days the Senmyo mean new moon follows the astronomers' one."""
    parts = (SENMYO_YEARS_TO_822 + year - 822) * SENMYO_YEAR
    age = parts % SENMYO_MONTH / SENMYO_DAY  # of the mean moon at the solstice
    moon = senmyo_solstice(year) - age
    # Mean lunation of Meeus, Astronomical Algorithms (1991), chapter 49 (dynamical time)
    period, zero = 29.530588861, 2451550.09766 + 0.5 + KYOTO
    centuries = (moon - J2000) / 36525
    delta_t = (120 - 0.6 * (year - 1600)) / 86400  # near enough for 1600-1684, in days
    turn = round((moon - zero) / period)
    return moon - (zero + turn * period + 0.00015437 * centuries**2 - delta_t)


def first_days(moons: list[float]) -> list[tuple[int, float]]:
    """Return the first day of the month each new moon begins, and its margin in days."""
    days = []
    for moon in moons:
        year = round((moon - 1721060) / 365.2425)
        if moon < 2336514.0:  # up to the last day of the Senmyo calendar, early in 1685
            moon += senmyo_lag(year) + (1 - POSTPONED_FROM)
        fraction = moon % 1
        days.append((int(moon), min(fraction, 1 - fraction)))
    return days


def months() -> list[Month]:
    """Return every month of the years asked for, in order."""
    moons = first_days(new_moons(FIRST_YEAR - 2, LAST_YEAR + 1))
    firsts = [day for day, _ in moons]
    found: list[Month] = []
    for year in range(FIRST_YEAR - 1, LAST_YEAR + 2):
        terms = terms_of(year)
        start = month_of(firsts, int(terms[0]))
        end = month_of(firsts, int(terms_of(year + 1)[0]))
        found += numbered(year, moons[start : end + 1], terms)
    return [month for month in found if FIRST_YEAR <= month.year <= LAST_YEAR]


def month_of(firsts: list[int], day: int) -> int:
    """Return the index of the month that holds ``day``."""
    return bisect_left(firsts, day + 1) - 1


def numbered(year: int, moons: list[tuple[int, float]], terms: list[float]) -> list[Month]:
    """Return the months from the eleventh of ``year`` - 1 up to the tenth of ``year``."""
    days = {int(term) for term in terms}
    leap_due = len(moons) == 14
    number, result = 10, []
    for (first, margin), (following, _) in itertools.pairwise(moons):
        empty = not any(first <= day < following for day in days)
        leap = leap_due and empty
        leap_due = leap_due and not leap
        number += 0 if leap else 1
        of_year = year - 1 if number <= 12 else year
        result.append(Month(of_year, (number - 1) % 12 + 1, leap, first, margin))
    return result


def corrected(computed: list[Month]) -> list[Month]:
    """Return the months named as they were in force, from the documented corrections."""
    leaps = {(month.year, month.number) for month in computed if month.leap}
    for wrong, right in corrections():
        leaps.remove(wrong)
        leaps.add(right)
    year, number, leap = computed[0].year, 1, False
    result = []
    for month in computed:
        result.append(replace(month, year=year, number=number, leap=leap))
        leap = not leap and (year, number) in leaps
        if not leap:
            year, number = (year, number + 1) if number < 12 else (year + 1, 1)
    return result


def corrections() -> list[tuple[tuple[int, int], tuple[int, int]]]:
    """Return pairs of (year, month) after which a leap month was computed and really stood."""
    with CORRECTIONS.open(encoding="utf-8", newline="") as file:
        lines = [line for line in file if not line.startswith("#")]
    rows = csv.DictReader(lines, delimiter="\t")
    return [(year_month(row["computed"]), year_month(row["actual"])) for row in rows]


def year_month(text: str) -> tuple[int, int]:
    """Return the year and month of ``YYYY-M``."""
    year, month = text.split("-")
    return int(year), int(month)


def as_date(julian_day: int) -> date:
    """Return the Gregorian day that begins at that Julian date's midnight."""
    return date.fromordinal(julian_day - 1721425)


def doubt_below(year: int) -> float:
    """Return the margin in days below which a first day may be a day off in that year."""
    return next(margin for until, margin in DOUBT if year <= until)


def table_rows(all_months: list[Month]) -> list[tuple[str, ...]]:
    """Return a row for each year."""
    rows: list[tuple[str, ...]] = []
    ends = [month.first for month in all_months[1:]] + [END_OF_LAST_MONTH]
    with_ends = list(zip(all_months, ends, strict=True))
    for year, group in itertools.groupby(with_ends, key=lambda pair: pair[0].year):
        of_year = list(group)
        leap = next((str(month.number) for month, _ in of_year if month.leap), "")
        lengths = "".join(
            {30: "大", 29: "小", 2: "二"}[end - month.first] for month, end in of_year
        )
        doubtful = listed(
            ("閏" if month.leap else "") + str(month.number)
            for month, _ in of_year
            if month.margin < doubt_below(year)
        )
        new_year = str(as_date(of_year[0][0].first))
        rows.append((str(year), new_year, leap, lengths, doubtful))
    return rows


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    return {"months": table_rows(corrected(months()))}
