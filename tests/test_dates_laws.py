"""Laws of the date parser, over made-up dates and over anything at all."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings, strategies as st

from inscribe.dates import find, resolve, words
from inscribe.dates.calendar import cycle, eras, lunisolar
from inscribe.dates.meaning.carved import as_carved
from inscribe.dates.written.numerals import as_kanji, possible_values, value_of
from inscribe.errors import InputError

SIGNS = (
    "嘉永天保文政安元六十二廿三年歳月日癸丑甲寅戌戊閏仲秋春吉上浣"
    "行翁才同翌之の□■ 　中初末正皇紀一八五改〇卯つちのえ"
)
anything = st.one_of(st.text(st.sampled_from(SIGNS), max_size=14), st.text(max_size=8))


@given(anything, st.booleans())
def test_finding_never_fails_and_offsets_point_into_the_text(text: str, weak: bool) -> None:
    end = -1
    for reading in find(text, weak=weak):
        assert end < reading.first <= reading.last < len(text)
        assert reading.text == text[reading.first : reading.last + 1]
        end = reading.last
        assert reading.month is None or 1 <= reading.month <= 12
        assert reading.day is None or 1 <= reading.day <= 31
        if reading.first_day and reading.last_day:
            assert reading.first_day <= reading.last_day
        for word in words(reading):
            assert reading.first <= word.first <= word.last <= reading.last


@given(anything)
def test_a_text_is_resolved_or_refused_with_a_sentence(text: str) -> None:
    try:
        found = resolve(text)
    except InputError:
        assert find(text) == ()
    else:
        assert (found.agreement == "conflict") == bool(found.conflicts)
        if found.conflicts:
            assert found.suggestions


@given(st.integers(1, 9999))
def test_a_number_written_is_read_back(number: int) -> None:
    assert value_of(as_kanji(number)) == number


@given(st.integers(11, 99), st.data())
def test_a_damaged_number_may_be_what_it_was(number: int, data: st.DataObject) -> None:
    written = as_kanji(number)
    lost = data.draw(st.integers(0, len(written) - 1))
    damaged = written[:lost] + "□" + written[lost + 1 :]
    assert number in possible_values(damaged)


@st.composite
def era_years(draw: st.DrawFn) -> tuple[str, int, int]:
    era = draw(st.sampled_from(list(eras.by_name().values())))
    number = draw(st.integers(1, min(era.years, 64)))
    return era.name, number, era.western(number)


@settings(max_examples=300)
@given(era_years(), st.sampled_from(["{e}{n}年{p}", "{e}{n}{p}年", "{e}{p}", "于時{e}{n}年{p}歳"]))
def test_an_era_year_agrees_with_its_sexagenary_year(
    made: tuple[str, int, int], shape: str
) -> None:
    name, number, year = made
    numeral = "元" if number == 1 else as_kanji(number)
    pair = cycle.pair(cycle.year_index(year))
    found = resolve(shape.format(e=name, n=numeral, p=pair))
    assert (found.era, found.agreement) == (name, "agrees")
    if len(found.candidates) < 2:
        assert (found.year, found.year_of_era) == (year, number)


@settings(max_examples=300)
@given(era_years(), st.integers(1, 59))
def test_a_wrong_sexagenary_year_is_a_conflict_and_the_right_one_is_proposed(
    made: tuple[str, int, int], off: int
) -> None:
    name, number, year = made
    numeral = "元" if number == 1 else as_kanji(number)
    wrong, right = (cycle.pair(cycle.year_index(year) + step) for step in (off, 0))
    found = resolve(f"{name}{numeral}年{wrong}")
    assert found.agreement == "conflict"
    assert any(each.read == right and each.year == year for each in found.explanations)


@st.composite
def lunar_days(draw: st.DrawFn) -> lunisolar.LunarDay:
    year = draw(st.integers(1600, 1871))
    month = draw(st.sampled_from(lunisolar.months_of(year)))
    return lunisolar.LunarDay(year, month.number, month.leap, draw(st.integers(1, month.length)))


@settings(max_examples=300)
@given(lunar_days())
def test_a_day_written_out_is_the_day_of_the_calendar(day: lunisolar.LunarDay) -> None:
    era, number = eras.of_year(day.year)[-1]
    leap = "閏" if day.leap else ""
    numeral = "元" if number == 1 else as_kanji(number)
    text = f"{era.name}{numeral}年{leap}{as_kanji(day.month)}月{as_kanji(day.day)}日"
    found = resolve(text)
    assert (found.year, found.month, found.leap, found.day) == (
        day.year,
        day.month,
        day.leap,
        day.day,
    )
    assert found.first_day == found.last_day == lunisolar.to_gregorian(day)
    assert not found.conflicts


@settings(max_examples=200)
@given(st.dates(date(1600, 2, 15), date(2030, 12, 31)))
def test_a_day_carved_is_resolved_to_itself(day: date) -> None:
    found = resolve(as_carved(day))
    assert (found.first_day, found.last_day, found.agreement) == (day, day, "agrees")


@pytest.mark.parametrize("unit", ["十", "之", "□十", "癸之", "嘉永", "年", "閏"])
def test_a_long_run_of_one_sign_is_searched_in_time_that_grows_with_its_length(unit: str) -> None:
    assert len(find(unit * 3000, weak=True)) <= 3000
