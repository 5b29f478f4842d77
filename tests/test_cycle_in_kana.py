"""All sixty pairs of the cycle, in signs, in kana, with and without voicing marks, with its year.

The names of the stems and branches are those of any dictionary (typed from memory); the year of a
pair is reckoned: the cycle began in AD 4.
"""

from __future__ import annotations

import pytest

from inscribe.dates import resolve

STEMS = dict(zip("甲乙丙丁戊己庚辛壬癸", (
    "きのえ", "きのと", "ひのえ", "ひのと", "つちのえ", "つちのと", "かのえ", "かのと",
    "みずのえ", "みずのと",
), strict=True))  # fmt: skip
BRANCHES = dict(zip("子丑寅卯辰巳午未申酉戌亥", (
    "ね", "うし", "とら", "う", "たつ", "み", "うま", "ひつじ", "さる", "とり", "いぬ", "い",
), strict=True))  # fmt: skip
LATIN = dict(zip(BRANCHES, (
    "ne", "ushi", "tora", "u", "tatsu", "mi", "uma", "hitsuji", "saru", "tori", "inu", "i",
), strict=True))  # fmt: skip
LATIN_STEMS = dict(zip(STEMS, (
    "kinoe", "kinoto", "hinoe", "hinoto", "tsuchinoe", "tsuchinoto", "kanoe", "kanoto", "mizunoe",
    "mizunoto",
), strict=True))  # fmt: skip
PAIRS = ["甲乙丙丁戊己庚辛壬癸"[n % 10] + "子丑寅卯辰巳午未申酉戌亥"[n % 12] for n in range(60)]
FIRST, UNTIL = 1804, 1864  # 文化元年 is 甲子; eras and their first years: CLDR
ERAS = {"文化": 1804, "文政": 1818, "天保": 1830, "弘化": 1844, "嘉永": 1848, "安政": 1854,
        "万延": 1860, "文久": 1861}  # fmt: skip


def year_in_signs(year: int) -> str:
    era, first = max((each for each in ERAS.items() if each[1] <= year), key=lambda each: each[1])
    number = year - first + 1
    tens, ones = divmod(number, 10)
    written = "十" * bool(tens) + ("一二三四五六七八九"[ones - 1] if ones else "")
    return f"{era}{'元' if number == 1 else written}年"


@pytest.mark.parametrize("year", range(FIRST, UNTIL))
def test_the_cycle_agrees_with_its_year_and_with_no_other(year: int) -> None:
    right, wrong = PAIRS[(year - 4) % 60], PAIRS[(year - 3) % 60]
    found = resolve(year_in_signs(year) + right)
    assert (found.agreement, found.year, found.sexagenary) == ("agrees", year, right)
    assert resolve(year_in_signs(year) + wrong).agreement == "conflict"


@pytest.mark.parametrize("pair", PAIRS)
@pytest.mark.parametrize("marks", ["as said", "old spelling"])
def test_a_pair_in_kana_is_the_pair_in_signs(pair: str, marks: str) -> None:
    kana = STEMS[pair[0]] + BRANCHES[pair[1]]
    if marks == "old spelling":
        kana = kana.replace("みずの", "みづの").replace("ゐ", "い")
    year = next(y for y in range(FIRST, UNTIL) if PAIRS[(y - 4) % 60] == pair)
    found = resolve(year_in_signs(year) + kana)
    assert (found.agreement, found.year, found.sexagenary) == ("agrees", year, pair)
    assert found.romaji.endswith(f"{LATIN_STEMS[pair[0]]}-{LATIN[pair[1]]}")
    assert found.kana.replace(" ", "").endswith(STEMS[pair[0]] + BRANCHES[pair[1]])


@pytest.mark.parametrize("branch", BRANCHES)
def test_an_animal_alone_agrees_every_twelve_years(branch: str) -> None:
    years = [y for y in range(FIRST, UNTIL) if PAIRS[(y - 4) % 60][1] == branch]
    assert len(years) == 5
    for year in years:
        assert resolve(f"{year_in_signs(year)}{branch}").agreement == "agrees"
        assert resolve(f"{year_in_signs(year + 1)}{branch}").agreement == "conflict"
