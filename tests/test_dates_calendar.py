"""The lunisolar calendar: every day has one name, and every name one day."""

from datetime import date, timedelta

import pytest
from hypothesis import given, strategies as st

from inscribe.dates.calendar import cycle, eras, lunisolar
from inscribe.errors import InputError

FIRST, LAST = date(1600, 2, 15), date(1872, 12, 31)


def test_every_day_has_one_name_and_is_found_by_it() -> None:
    day = FIRST
    before = None
    while day <= LAST:
        lunar = lunisolar.of_day(day)
        assert lunisolar.to_gregorian(lunar) == day
        if before is not None:
            follows = lunar.day == before.day + 1 and lunar.month == before.month
            assert follows or lunar.day == 1
        before, day = lunar, day + timedelta(1)


@given(st.dates(FIRST, LAST))
def test_a_day_lies_in_its_month_and_its_year(day: date) -> None:
    lunar = lunisolar.of_day(day)
    month = lunisolar.month_of(lunar.year, lunar.month, lunar.leap)
    assert month is not None
    assert month.first_day <= day <= month.last_day
    year = lunisolar.days_of(lunar.year)
    assert year is not None
    assert year[0] <= day <= year[1]


@pytest.mark.parametrize("day", [FIRST - timedelta(1), LAST + timedelta(1)])
def test_a_day_outside_the_table_is_refused(day: date) -> None:
    with pytest.raises(InputError, match="outside the tabulated calendar"):
        lunisolar.of_day(day)


def test_years_follow_each_other_without_a_gap() -> None:
    for year in range(lunisolar.FIRST_YEAR, lunisolar.LAST_YEAR):
        end = lunisolar.months_of(year)[-1].last_day
        assert lunisolar.months_of(year + 1)[0].first_day == end + timedelta(1)


def test_months_have_29_or_30_days_and_years_12_or_13_months() -> None:
    for year in range(lunisolar.FIRST_YEAR, lunisolar.LAST_YEAR + 1):
        months = lunisolar.months_of(year)
        assert len(months) == 12 + any(month.leap for month in months)
        lengths = {month.length for month in months[: 11 if year == 1872 else None]}
        assert lengths <= {29, 30}
    assert lunisolar.months_of(1872)[-1].length == 2


def test_a_day_that_does_not_exist_has_no_date() -> None:
    assert lunisolar.to_gregorian(lunisolar.LunarDay(1863, 1, False, 30)) is None
    assert lunisolar.to_gregorian(lunisolar.LunarDay(1853, 8, True, 1)) is None
    assert lunisolar.to_gregorian(lunisolar.LunarDay(1599, 1, False, 1)) is None


@given(st.integers(0, 59))
def test_a_pair_gives_back_its_place(index: int) -> None:
    pair = cycle.pair(index)
    assert cycle.index_of(pair[0], pair[1]) == index


def test_half_of_all_pairs_do_not_exist() -> None:
    found = [cycle.index_of(s, b) for s in cycle.STEMS for b in cycle.BRANCHES]
    assert sorted(i for i in found if i is not None) == list(range(60))


def test_every_year_since_the_first_era_is_counted_but_two_gaps() -> None:
    without = [year for year in range(645, 2030) if not eras.of_year(year)]
    assert without == [*range(655, 672), *range(687, 701)]


def test_the_two_courts_are_kept_apart() -> None:
    found = {era.name: era.court for era, _ in eras.of_year(1357)}
    assert found == {"正平": "south", "延文": "north"}


@pytest.mark.parametrize("name", ["建武", "慶長", "明治"])
def test_an_era_is_followed_by_the_next(name: str) -> None:
    following = eras.after(eras.by_name()[name])
    assert following is not None
    assert following.start > eras.by_name()[name].start


def test_each_era_lasts_to_the_year_in_which_the_next_began() -> None:
    two_courts = range(1329, 1394)
    for era in eras.by_name().values():
        following = eras.after(era)
        if following and era.first > 701 and era.first not in two_courts:
            assert era.last == following.first
