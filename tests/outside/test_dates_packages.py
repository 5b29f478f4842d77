"""Calendar and sexagenary years against independent packages.

sxtwl (BSD licence) reckons the Chinese calendar with its historical months and day names; ephem
(MIT licence) is an astronomy library with its own theory of the moon. Both are test-only and the
tests are skipped where they are not installed.
"""

from __future__ import annotations

import random
from datetime import date, datetime, timedelta

import pytest

from inscribe.dates.calendar import cycle, lunisolar

QING_FROM = date(1645, 1, 28)  # the Chinese calendar with true terms and a true new moon
KYOTO = timedelta(days=135.77 / 360)


def months(first: int, last: int = lunisolar.LAST_YEAR) -> list[lunisolar.Month]:
    return [month for year in range(first, last + 1) for month in lunisolar.months_of(year)]


def test_sexagenary_years_and_days_agree_with_sxtwl() -> None:
    sxtwl = pytest.importorskip("sxtwl")
    for year in range(645, 2030):
        pair = sxtwl.fromLunar(year, 6, 1, False).getYearGZ()
        assert cycle.pair(cycle.year_index(year)) == cycle.STEMS[pair.tg] + cycle.BRANCHES[pair.dz]
    chance = random.Random(5)
    for _ in range(500):
        day = date.fromordinal(chance.randrange(584000, 711000))
        pair = sxtwl.fromSolar(day.year, day.month, day.day).getDayGZ()
        assert cycle.pair(cycle.day_index(day)) == cycle.STEMS[pair.tg] + cycle.BRANCHES[pair.dz]


def test_months_differ_from_the_chinese_ones_only_as_the_longitude_explains() -> None:
    """Peking lies 77 minutes west of Kyoto: a Chinese month may begin one day earlier, never later.

    Expected share: 77 minutes of 1440, 5.3 %; some more because the Jokyo and later calendars are
    not used for first days here.
    """
    sxtwl = pytest.importorskip("sxtwl")
    earlier, all_months = 0, months(1685)
    for month in all_months:
        day = month.first_day
        chinese = sxtwl.fromSolar(day.year, day.month, day.day).getLunarDay()
        assert chinese in (1, 2), month
        earlier += chinese == 2
    assert 0.03 < earlier / len(all_months) < 0.08


def test_senmyo_months_begin_later_for_the_postponed_new_moon() -> None:
    """Until 1684 a new moon after six in the evening counted for the next day: a quarter more."""
    sxtwl = pytest.importorskip("sxtwl")
    found = [month for month in months(1645, 1684) if month.first_day > QING_FROM]
    days = [
        sxtwl.fromSolar(m.first_day.year, m.first_day.month, m.first_day.day).getLunarDay()
        for m in found
    ]
    assert set(days) == {1, 2}
    assert 0.22 < days.count(2) / len(days) < 0.36


def test_new_moons_agree_with_ephem_to_the_minute() -> None:
    ephem = pytest.importorskip("ephem")
    wrong = []
    for month in months(1685):
        near = datetime.combine(month.first_day, datetime.min.time()) + timedelta(days=2)
        moon = ephem.previous_new_moon(ephem.Date(near)).datetime() + KYOTO
        seconds = (moon - datetime.combine(month.first_day, datetime.min.time())).total_seconds()
        if not -60 <= seconds < 86400 + 60:
            wrong.append((month, moon))
    assert wrong == []
