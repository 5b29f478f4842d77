"""Dates that do not agree with themselves, and the ways out that are proposed."""

import pytest

from inscribe.dates import resolve


def best(text: str, between: tuple[int, int] | None = None) -> str:
    found = resolve(text, between)
    assert found.agreement == "conflict"
    return found.explanations[0].read


@pytest.mark.parametrize(
    ("text", "reading"),
    [
        ("嘉永六年甲寅", "嘉永七年"),  # off by one
        ("嘉永六年癸巳", "癸丑"),  # one sign wrong
        ("文政五年戌午", "壬午"),  # no pair; the year's own
        ("嘉永元年戌申", "戊申"),  # a look-alike
        ("天保六年丁酉", "天保八年"),  # 六 for 八
        ("天保二年辛丑", "天保十二年"),  # ten dropped
        ("天保三年壬子", "壬辰"),  # one sign
        ("文化八年乙酉", "文政"),  # another era that begins alike
        ("弘化三年閏六月", "閏五月"),
        ("天保三年閏十月", "閏十一月"),
    ],
)
def test_the_likeliest_explanation_comes_first(text: str, reading: str) -> None:
    assert best(text) == reading


def test_another_form_of_a_sign_is_no_conflict() -> None:
    assert resolve("天明三年癸夘").agreement == "agrees"


def test_what_is_written_stays_in_the_reading() -> None:
    found = resolve("嘉永六年甲寅")
    assert (found.sexagenary, found.year_of_era, found.year) == ("甲寅", 6, 1853)
    assert found.conflicts == ("year",)
    assert found.suggestions == tuple(each.text for each in found.explanations)


def test_explanations_are_ranked_and_say_what_they_change() -> None:
    found = resolve("天保二年辛丑").explanations
    weights = [each.weight for each in found]
    assert weights == sorted(weights, reverse=True)
    assert {each.kind for each in found} >= {"era year", "sexagenary year"}
    assert all(each.written and each.read and each.text for each in found)


@pytest.mark.parametrize(("text", "years"), [("嘉永八年", 7), ("天保二十年", 15), ("元治三年", 2)])
def test_a_year_the_era_did_not_reach_is_a_conflict(text: str, years: int) -> None:
    found = resolve(text)
    assert found.agreement == "conflict"
    assert f"only {years} years" in found.why
    assert any("counted on" in each for each in found.suggestions)


def test_an_era_without_that_sexagenary_year_is_a_conflict() -> None:
    found = resolve("安永癸丑")
    assert found.agreement == "conflict"
    assert found.year is None
    assert "no year of An'ei" in found.why


def test_a_pair_that_does_not_exist_is_a_conflict() -> None:
    found = resolve("甲丑年")
    assert found.agreement == "conflict"
    assert "no pair of the sexagenary cycle" in found.why


def test_a_look_alike_sign_leaves_the_years_it_may_mean() -> None:
    found = resolve("戌申年", (1780, 1900))
    assert [each.year for each in found.candidates] == [1788, 1848]
    assert found.explanations[0].read == "戊申"


def test_a_day_its_month_did_not_have_is_a_conflict() -> None:
    found = resolve("嘉永六年二月三十日")
    assert (found.agreement, found.conflicts, found.day) == ("conflict", ("day",), 30)
    assert "only 29 days" in found.why


def test_a_month_that_may_have_been_longer_is_no_conflict() -> None:
    found = resolve("文久三年正月三十日")
    assert found.agreement == "unchecked"
    assert "may have had 30" in found.why


@pytest.mark.parametrize(
    "text", ["嘉永六年十三月", "嘉永六年三十五日", "昭和五年二月三十日", "嘉永六年春八月", "甲丑"]
)
def test_what_no_calendar_has_is_a_conflict_with_a_way_out(text: str) -> None:
    found = resolve(text)
    assert found.agreement == "conflict"
    assert found.suggestions


def test_a_sexagenary_day_is_held_against_the_day() -> None:
    assert resolve("文化元年二月四日甲子").agreement == "unchecked"
    wrong = resolve("文化元年二月五日甲子")
    assert wrong.agreement == "conflict"
    assert "that day was 乙丑" in wrong.why


def test_a_leap_month_in_a_year_without_one_is_a_conflict() -> None:
    found = resolve("明和五年閏月")
    assert found.agreement == "conflict"
    assert "no leap month" in found.why


def test_candidates_of_a_bare_sexagenary_year() -> None:
    found = resolve("癸丑")
    assert [each.year for each in found.candidates] == [1613, 1673, 1733, 1793, 1853]
    assert (found.year, found.agreement) == (None, "unchecked")
    assert found.candidates[-1].eras == (("嘉永", "Kaei", 6),)


def test_a_range_narrows_them_to_one() -> None:
    found = resolve("癸丑仲秋", (1820, 1870))
    assert (found.year, found.era, found.year_of_era) == (1853, "嘉永", 6)
    assert str(found.first_day) == "1853-09-03"


def test_an_animal_alone_comes_round_every_twelve_years() -> None:
    found = resolve("丑年", (1830, 1870))
    assert [each.year for each in found.candidates] == [1841, 1853, 1865]
    assert found.zodiac == "丑"


def test_a_number_without_its_era_narrows_the_animal() -> None:
    assert [each.year for each in resolve("六丑年", (1800, 1870)).candidates] == [1853]


def test_a_leap_month_narrows_a_bare_sexagenary_year() -> None:
    assert resolve("壬辰閏十一月", (1600, 1872)).year == 1832


def test_candidates_carry_the_year_of_birth() -> None:
    found = resolve("癸丑行年六十三", (1790, 1870))
    assert [(each.year, each.birth_year) for each in found.candidates] == [
        (1793, 1731),
        (1853, 1791),
    ]


def test_a_child_born_in_1800_is_51_in_1850() -> None:
    assert resolve("嘉永三年行年五十一").birth_year == 1800
    assert resolve("嘉永三年満五十").birth_year == 1800


def test_a_range_that_excludes_a_certain_year_is_remarked() -> None:
    assert "outside 1700-1800" in resolve("嘉永六年", (1700, 1800)).why


@pytest.mark.parametrize("text", ["平成九千年", "令和七九八一年閏五月三日", "平成八八一一年立春"])
def test_a_year_that_no_calendar_reaches_has_no_days(text: str) -> None:
    reading = resolve(text)
    assert reading.first_day is None
    assert f"no carving bears a date of the year {reading.year}" in reading.why


@pytest.mark.parametrize(
    ("written", "part", "read"),
    [
        ("三月重陽", "month", "九月"),
        ("文政十年三月重陽", "month", "九月"),
        ("文政十年三月仲秋", "month", "八月"),
        ("文政十年春重陽", "month", ""),
        ("文政十年九月八日重陽", "day", "九日"),
    ],
)
def test_a_word_of_another_month_or_day_contradicts(written: str, part: str, read: str) -> None:
    found = resolve(written)
    assert found.text == written
    assert found.conflicts == (part,)
    assert found.explanations[0].read == read


@pytest.mark.parametrize("written", ["文政十年九月九日重陽", "文政十年秋重陽", "八月仲秋"])
def test_a_word_of_the_month_and_day_written_agrees(written: str) -> None:
    found = resolve(written)
    assert (found.text, found.conflicts) == (written, ())


def test_a_stem_without_its_branch_is_held_against_the_year() -> None:
    assert resolve("嘉永六年癸").agreement == "agrees"
    found = resolve("嘉永六年甲")
    assert (found.text, found.agreement) == ("嘉永六年甲", "conflict")
    assert "1853 is not 甲 but 癸丑" in found.why
    assert [each.year for each in found.explanations[:2]] == [1854, 1853]


@pytest.mark.parametrize(
    ("written", "left"),
    [
        ("嘉永六年甲斐", "甲斐 is"),
        ("嘉永六年花", "花 is"),
        ("閏年嘉永六年□", "閏年, □ are"),
        ("天明二年八月八月", "八月 is"),
        ("文政十年八月九日二十日", "二十日 is"),
    ],
)
def test_what_no_date_takes_is_named(written: str, left: str) -> None:
    assert f"{left} not taken for a part of the date" in resolve(written).why


def test_what_only_divides_a_date_is_not_named() -> None:
    assert "not taken" not in resolve("行年七十三翁／安政二年、八月").why


def test_a_leap_month_that_had_the_day_is_named_as_such() -> None:
    found = resolve("天保三年十一月三日乙亥")
    assert found.suggestions[1] == "乙亥 was day 3 of 閏十一月 in that year"


def test_a_year_of_another_era_is_said_to_be_the_same_only_where_its_number_is() -> None:
    other = [each for each in resolve("天保三年丙子").explanations if each.kind == "another cycle"]
    assert [each.text for each in other] == [
        "丙子 is 文化十三年 (1816): the sexagenary year is right and the era year is not",
        "丙子 is 明治九年 (1876): the sexagenary year is right and the era year is not",
    ]
    meiji = resolve("天保三年庚午").explanations[0].text
    assert meiji.endswith("the era year is not, the same year of another era")
