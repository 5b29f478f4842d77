"""The sexagenary cycle: ten stems, twelve branches, sixty pairs, of years and of days.

>>> pair(year_index(1853)), pair(day_index(date(2000, 1, 1)))
('癸丑', '戊午')
"""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from inscribe import tables

STEMS = "甲乙丙丁戊己庚辛壬癸"
BRANCHES = "子丑寅卯辰巳午未申酉戌亥"


class CycleSign(NamedTuple):
    """A stem or a branch: its place, its readings, and the other ways it is written."""

    kind: str
    place: int  # in the cycle, from 0
    sign: str
    kun: str
    kun_romaji: str
    on_romaji: str
    forms: tuple[str, ...]
    literary: tuple[str, ...]
    other: tuple[str, ...]


@tables.cached()
def signs() -> dict[str, CycleSign]:
    """Return the 22 signs of the cycle, each by its usual form."""
    found: dict[str, CycleSign] = {}
    for row in tables.rows("cycle"):
        sign = CycleSign(
            row["kind"],
            int(row["value"]),
            row["written"],
            row["kun"],
            row["kun_romaji"],
            row["on_romaji"],
            tables.listed(row["forms"]),
            tables.listed(row["literary"]),
            tables.listed(row["other"]),
        )
        found.setdefault(sign.sign, sign)
    return found


def pair(index: int) -> str:
    """Return the pair of signs with that place in the cycle (甲子 is 0; counted modulo 60)."""
    return STEMS[index % 10] + BRANCHES[index % 12]


def index_of(stem: str, branch: str) -> int | None:
    """Return the place of a pair in the cycle, or None for a pair that does not exist.

    >>> index_of("癸", "丑"), index_of("甲", "丑")
    (49, None)
    """
    first, second = STEMS.index(stem), BRANCHES.index(branch)
    if (first - second) % 2:
        return None
    return (6 * first - 5 * second) % 60


def year_index(year: int) -> int:
    """Return the place in the cycle of the lunisolar year that began in western ``year``."""
    return (year - 4) % 60


def pair_of_year(year: int) -> str:
    """Return the sexagenary sign of the lunisolar year that began in western ``year``.

    >>> pair_of_year(1853)
    '癸丑'
    """
    return pair(year_index(year))


def day_index(day: date) -> int:
    """Return the place in the cycle of a day of the Gregorian calendar."""
    return (day.toordinal() + 14) % 60


def years_of(stem: str | None, branch: str, first: int, last: int) -> list[int]:
    """Return the years from ``first`` to ``last`` that carry the pair, or the branch alone."""
    years = range(first, last + 1)
    if stem is None:
        place = BRANCHES.index(branch)
        return [year for year in years if (year - 4) % 12 == place]
    index = index_of(stem, branch)
    return [year for year in years if (year - 4) % 60 == index]
