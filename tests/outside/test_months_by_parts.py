"""Names of months and feasts by their parts, where EDICT has the parts and not the names.

Sources: EDICT (EDRDG) for branches, pitches, seasons' months and feasts; the Erya, 釈天, for its
twelve names of months and the order 孟, 仲, 季 of a season's months (both typed from memory). Old
months have at most thirty days, and there are twelve.
"""

from __future__ import annotations

import re
from functools import cache

import edrdg
import pytest
from test_edrdg import MONTHS as MONTHS_OF_THE_YEAR, days_said, months_said

from inscribe import tables

SEASONS = "春夏秋冬"
FIRST, MIDDLE, LAST = "孟初首上始新早開肇発献維", "仲中半盛正", "季晩暮末杪窮残殿深"
ERYA = "陬如寎余皋且相壮玄陽辜涂"
BRANCHES = "子丑寅卯辰巳午未申酉戌亥"
NUMBERS = {"三": 3, "五": 5, "七": 7, "九": 9, "午": 5}  # 午 is the branch of the fifth month
# The season in these is not that of the year: the harvest of wheat, bamboo that sheds its leaves.
NO_SEASON = {
    "麦秋",
    "竹秋",
    "小春",
    "小春月",
    "小陽春",
    "初春月",
    "常夏月",
    "春待月",
    "梅夏",
    "秋初月",
}
MONTHS = [(row["written"], int(row["month"]), row["kana"]) for row in tables.rows("month_names")]


@cache
def _spoken() -> dict[str, list[tuple[str, set[str]]]]:
    """Return the words of EDICT that name a month, by their kana."""
    found: dict[str, list[tuple[str, set[str]]]] = {}
    for written, by_kana in edrdg.all_words().items():
        for kana, gloss in by_kana.items():
            if "month" in gloss and (months := months_said("", gloss)):
                found.setdefault(kana, []).append((written, months))
    return found


def _by_sound(written: str, kana: str) -> set[str]:
    """Return the months of the words said so that share a sign with a name, or that it spells."""
    signs = set(written) - {"月"}
    spelt = all(sign < "ヿ" for sign in written)
    words = _spoken().get(kana, [])
    return {m for word, months in words if spelt or signs & set(word) for m in months}


def test_names_of_months_are_said_like_those_of_edict() -> None:
    told = {(w, m): said for w, m, kana in MONTHS if (said := _by_sound(w, kana))}
    assert len(told) > 100
    assert not {name: said for name, said in told.items() if str(name[1]) not in said}


def test_a_month_of_a_season_lies_in_it_and_has_its_place_there() -> None:
    strange, compared = set(), 0
    for written, month, _ in MONTHS:
        season = next((n for n, sign in enumerate(SEASONS) if sign in written), None)
        if season is None or written in NO_SEASON:
            continue
        in_season, place = divmod(month - 1, 3)
        places = {n for n, signs in enumerate((FIRST, MIDDLE, LAST)) if set(signs) & set(written)}
        compared += bool(places)
        if in_season != season or (len(places) == 1 and place not in places):
            strange.add((written, month))
    assert not strange
    assert compared > 70


@pytest.mark.parametrize("form", ["建{}", "建{}月", "{}月"])
def test_months_of_the_branches_are_those_of_edict(form: str) -> None:
    ours = {written: month for written, month, _ in MONTHS}
    for branch in BRANCHES:
        named = form.format(branch)
        if named in ours and named != "卯月":  # うづき, the fourth
            said = {m for gloss in edrdg.words(branch).values() for m in months_said("", gloss)}
            number = (BRANCHES.index(branch) - 2) % 12 + 1  # the first month is that of the tiger
            assert said in (set(), {str(number)}), named
            assert ours[named] == number, named


def test_names_of_months_in_the_erya() -> None:
    ours = {written: month for written, month, _ in MONTHS}
    named = {f"{sign}月": n for n, sign in enumerate(ERYA, 1) if f"{sign}月" in ours}
    assert len(named) > 8
    assert {name: ours[name] for name in named} == named


A_DAY = "|".join((*MONTHS_OF_THE_YEAR, " day of ", "New Year's"))
FEASTS = {row["written"]: (int(row["month"]), int(row["day"])) for row in tables.rows("festivals")}


@cache
def _feasts_of_edict() -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for written, by_kana in edrdg.all_words().items():
        dated = [gloss for gloss in by_kana.values() if re.search(A_DAY, gloss)]
        days = {day for gloss in dated for day in days_said(written, gloss)}
        if days and len(written) > 1:
            found[written] = days
    return found


def _is_within(part: str, whole: str) -> bool:
    signs = iter(whole)
    return all(sign in signs for sign in part)


def test_a_feast_falls_on_the_day_of_the_feast_whose_name_is_in_its_own() -> None:
    compared = 0
    for written, (month, day) in FEASTS.items():
        related = [
            days
            for other, days in _feasts_of_edict().items()
            if _is_within(other, written) or _is_within(written, other)
        ]
        compared += bool(related)
        assert not related or any(f"{month}/{day}" in days for days in related), written
    assert compared > 25


def test_twice_a_number_is_that_day_of_that_month() -> None:
    twice = {name: NUMBERS[name[1]] for name in FEASTS if name[0] in "重双" and name[1] in NUMBERS}
    assert len(twice) > 3
    assert {name: FEASTS[name] for name in twice} == {name: (n, n) for name, n in twice.items()}


def test_feasts_fall_on_days_that_old_months_have() -> None:
    assert all(1 <= month <= 12 and 1 <= day <= 30 for month, day in FEASTS.values())
    assert {FEASTS[name] for name in FEASTS if name[0] in "除歳" and name[1] in "夜日夕除尽"} == {
        (12, 30)
    }
    assert all(FEASTS[name] == (12, 8) for name in FEASTS if name.startswith("臘八"))
