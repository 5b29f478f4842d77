"""What carvers write for a date, and what is made of it."""

import pytest

from inscribe.dates import find, resolve
from inscribe.errors import InputError
from inscribe.forms import normalise_text

# text: era, year of era, sexagenary (or zodiac) as read, western year, month, leap, day
DATES = {
    "嘉永六年癸丑仲秋": ("嘉永", 6, "癸丑", 1853, 8, False, None),
    "寶曆九己夘歲八月日": ("宝暦", 9, "己卯", 1759, 8, False, None),
    "慶應三丁卯年卯月朔日": ("慶応", 3, "丁卯", 1867, 4, False, 1),
    "于時文政十有二年己丑春三月中浣": ("文政", 12, "己丑", 1829, 3, False, None),
    "維時天保十四癸卯歳次季春": ("天保", 14, "癸卯", 1843, 3, False, None),
    "旹文久元辛酉秊孟冬日": ("文久", 1, "辛酉", 1861, 10, False, None),
    "嘉永癸丑": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "嘉永六癸丑歳": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "癸丑嘉永六年": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "龍集文政己丑": ("文政", 12, "己丑", 1829, None, False, None),
    "享和三稔癸亥": ("享和", 3, "癸亥", 1803, None, False, None),
    "寛政七暦乙卯": ("寛政", 7, "乙卯", 1795, None, False, None),
    "弘化二乙巳載晩夏": ("弘化", 2, "乙巳", 1845, 6, False, None),
    "安政改元甲寅": ("安政", 1, "甲寅", 1854, None, False, None),
    "天保壬辰閏十一月": ("天保", 3, "壬辰", 1832, 11, True, None),
    "天保十一庚子年正月元日": ("天保", 11, "庚子", 1840, 1, False, 1),
    "文政己丑夏五月念三日": ("文政", 12, "己丑", 1829, 5, False, 23),
    "天保七丙申端午": ("天保", 7, "丙申", 1836, 5, False, 5),
    "安政三丙辰除夜": ("安政", 3, "丙辰", 1856, 12, False, 30),
    "文久三年癸亥正月晦日": ("文久", 3, "癸亥", 1863, 1, False, 29),
    "文化乙丑三月初三": ("文化", 2, "乙丑", 1805, 3, False, 3),
    "文化元年甲子二月甲子日": ("文化", 1, "甲子", 1804, 2, False, 4),
    "文化十三年丙子大簇": ("文化", 13, "丙子", 1816, 1, False, None),
    "嘉永六年中秋": ("嘉永", 6, None, 1853, 8, False, None),
    "嘉永六十二月": ("嘉永", 6, None, 1853, 12, False, None),
    "嘉永6年8月15日": ("嘉永", 6, None, 1853, 8, False, 15),
    "嘉永癸の丑": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "嘉永六年みづのとうし": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "文久二戌年": ("文久", 2, None, 1862, None, False, None),
    "明治廿三年一月": ("明治", 23, None, 1890, 1, False, None),
    "昭和十二丁丑年": ("昭和", 12, "丁丑", 1937, None, False, None),
    "皇紀二千五百十三年": (None, None, None, 1853, None, False, None),
    "一八五三年": (None, None, None, 1853, None, False, None),
    "天正十年六月二日": ("天正", 10, None, 1582, 6, False, 2),
    "延文二年": ("延文", 2, None, 1357, None, False, None),
    "正平十二年": ("正平", 12, None, 1357, None, False, None),
    "慶応四戊辰年閏四月": ("慶応", 4, "戊辰", 1868, 4, True, None),
    "弘化三年閏月": ("弘化", 3, None, 1846, 5, True, None),
    "嘉永□年癸丑": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "□永六年癸丑": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "天保十□年辰": ("天保", 15, None, 1844, None, False, None),
    "嘉永六才癸丑": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "嘉永第六癸丑": ("嘉永", 6, "癸丑", 1853, None, False, None),
    "嘉永三庚戌霜月中の五日": ("嘉永", 3, "庚戌", 1850, 11, False, 15),
    "文化二年二月初午": ("文化", 2, None, 1805, 2, False, 4),
    "文化七庚午六月廿又五日": ("文化", 7, "庚午", 1810, 6, False, 25),
    "元祿六年癸酉": ("元禄", 6, "癸酉", 1693, None, False, None),
    "明治卅貳秊": ("明治", 32, None, 1899, None, False, None),
    "嘉永\n六年\n八月": ("嘉永", 6, None, 1853, 8, False, None),
}

AGES = {
    "行年七十三翁": 73,
    "行年六十八歳": 68,
    "七十有三翁": 73,
    "時年八十一歳": 81,
    "年六十五": 65,
    "齢八十翁": 80,
    "歳七十七": 77,
    "六十九叟": 69,
    "八十二老人": 82,
    "十三童": 13,
    "六十一才": 61,
    "米寿翁": 88,
    "古希": 70,
    "七十有三": 73,
    "壱百弐歳": 102,
}


@pytest.mark.parametrize("text", DATES)
def test_a_date_is_resolved(text: str) -> None:
    found = resolve(text)
    month = (found.month, found.leap, found.day)
    assert (found.era, found.year_of_era, found.sexagenary, found.year, *month) == DATES[text]
    assert found.agreement != "conflict"


@pytest.mark.parametrize("text", AGES)
def test_an_age_is_read(text: str) -> None:
    found = resolve(text)
    assert found.age is not None
    assert found.age.years == AGES[text]
    assert found.year is None


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("嘉永六年八月吉日", "吉日"),
        ("甲午仲秋吉祥日", "吉祥日"),
        ("文政八年八月上浣", "上浣"),
        ("文政八年八月中浣吉辰", "中浣吉辰"),
        ("天保七年八月日", "日"),
        ("嘉永六年秋日", "日"),
    ],
)
def test_the_word_for_the_day_is_kept(text: str, word: str) -> None:
    assert resolve(text).day_word == word


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("嘉永六年仲秋", "仲秋 is month 8"),
        ("天保七丙申端午", "端午 is month 5, day 5"),
        ("安政三丙辰除夜", "除夜 is month 12, its last day"),
        ("嘉永六年八月望", "望 is day 15 of the month"),
    ],
)
def test_a_name_is_explained(text: str, why: str) -> None:
    assert why in resolve(text).why


def test_ten_day_periods_bound_the_days() -> None:
    found = resolve("文政十二年三月中浣")
    assert (str(found.first_day), str(found.last_day)) == ("1829-04-14", "1829-04-23")
    assert found.precision == "part of month"


def test_the_last_days_of_a_short_month_end_with_it() -> None:
    found = resolve("文久三年正月下浣")
    assert (str(found.first_day), str(found.last_day)) == ("1863-03-10", "1863-03-18")


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("安政元年十二月吉日", "1855-01-18", "1855-02-16"),
        ("元禄十五年十二月十四日", "1703-01-30", "1703-01-30"),
        ("嘉永六年", "1853-02-08", "1854-01-28"),
        ("嘉永六年秋", "1853-08-05", "1853-10-31"),
        ("明治六年一月", "1873-01-01", "1873-01-31"),
        ("昭和五年", "1930-01-01", "1930-12-31"),
    ],
)
def test_the_gregorian_days_enclose_the_date(text: str, first: str, last: str) -> None:
    found = resolve(text)
    assert (str(found.first_day), str(found.last_day)) == (first, last)


def test_an_era_year_is_bounded_by_the_change_of_era() -> None:
    assert str(resolve("安政元年").first_day) == "1855-01-15"
    assert str(resolve("嘉永七年").last_day) == "1855-01-14"


def test_before_1600_only_the_year_is_given_and_it_is_said() -> None:
    found = resolve("天正十年六月二日")
    assert found.first_day is None
    assert found.precision == "year"
    assert "before 1600" in found.why


def test_a_month_before_its_era_was_proclaimed_is_remarked() -> None:
    found = resolve("安政元年三月")
    assert found.agreement == "unchecked"
    assert any("Kaei 7" in each for each in found.suggestions)


def test_a_winter_solstice_falls_in_december() -> None:
    found = resolve("嘉永六年冬至")
    assert found.first_day is not None
    assert found.first_day.month == 12


@pytest.mark.parametrize("text", ["", "   ", "某作", "□", "（花押）", "hello", "\x00", "山川草木"])
def test_a_text_without_a_date_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="no date or age"):
        resolve(text)


def test_offsets_are_those_of_the_carved_text() -> None:
    text = "武州住某作 寶曆九己夘歲"
    found = resolve(text)
    assert text[found.first : found.last + 1] == "寶曆九己夘歲" == found.text


# Poems of the Kokinshu (numbers given) and others before 1600: none holds a date.
POEMS = [
    "年の内に春は来にけり一年を去年とやいはむ今年とやいはむ",  # Kokinshu 1
    "月見ればちぢにものこそ悲しけれわが身ひとつの秋にはあらねど",  # Kokinshu 193
    "袖ひちてむすびし水のこほれるを春立つけふの風やとくらむ",  # Kokinshu 2
    "五月待つ花橘の香をかげば昔の人の袖の香ぞする",  # Kokinshu 139
    "天の原ふりさけ見れば春日なる三笠の山にいでし月かも",  # Kokinshu 406
    "神無月時雨もいまだ降らなくにかねてうつろふ神なびの森",  # Kokinshu 253
]


@pytest.mark.parametrize("poem", POEMS)
def test_no_date_is_found_in_a_poem(poem: str) -> None:
    assert find(poem) == ()


def test_dates_are_found_where_they_stand_in_a_signature() -> None:
    text = "於東都某彫之嘉永六年癸丑仲秋行年六十八歳"
    (found,) = find(text)
    assert text[found.first : found.last + 1] == "嘉永六年癸丑仲秋行年六十八歳"
    assert found.birth_year == 1786


def test_weak_dates_come_only_when_asked_for() -> None:
    assert find("仲秋某作") == ()
    (found,) = find("仲秋某作", weak=True)
    assert (found.month, found.sure) == (8, False)


@pytest.mark.parametrize(
    "text", ["三老人図", "二童子図", "千年", "鶴千年亀万年", "百歳", "五郎三郎", "三才図会"]
)
def test_numbers_of_other_things_are_no_ages_and_no_years(text: str) -> None:
    assert find(text) == ()


def test_a_makers_name_may_be_an_eras() -> None:
    (found,) = find("正平六十八歳作")
    assert (found.text, found.era) == ("六十八歳", None)


@pytest.mark.parametrize(
    ("text", "date"),
    [
        ("江戸住萩次嘉永六年造", "嘉永六年"),
        ("苗時嘉永六年", "嘉永六年"),
        ("政寿七十三翁", "七十三翁"),
        ("政一七十三翁", "七十三翁"),
        ("嘉永六年八月日向守某作", "嘉永六年八月"),
        ("嘉永六年八月望月某作", "嘉永六年八月"),
        ("嘉永六年在江戸造之", "嘉永六年"),
        ("嘉永六年八月日吉次作", "嘉永六年八月日"),
        ("天保十二十二月某作", "天保十二十二月"),
    ],
)
def test_a_date_ends_where_a_name_begins(text: str, date: str) -> None:
    (found,) = find(text)
    assert found.text == date


def test_a_sign_that_opens_a_text_introduces_the_date() -> None:
    assert resolve("時嘉永六年").text == "時嘉永六年"
    assert resolve("某作 時嘉永六年").text == "時嘉永六年"


def test_the_same_year_refers_back() -> None:
    first, second = find("嘉永六年八月吉日同年十一月吉日")
    assert (first.month, second.year, second.month) == (8, 1853, 11)
    assert str(second.first_day) == "1853-12-01"


def test_the_next_year_may_be_another_era() -> None:
    _, second = find("嘉永七年八月吉日翌年二月吉日")
    assert (second.era, second.year_of_era, second.year) == ("安政", 2, 1855)


def test_an_age_takes_its_year_from_the_date_in_the_same_text() -> None:
    found = find("嘉永六年八月於東都某作行年七十")
    assert found[-1].birth_year == 1784


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("慶應三卯臘月", (1867, 12, None)),  # the branch alone after the number
        ("享保拾三申天", (1728, None, None)),  # 天 for 年
        ("寛政九巳天二月", (1797, 2, None)),
        ("嘉永三戌端午之日", (1850, 5, 5)),
        ("安政二卯重陽ノ日", (1855, 9, 9)),
    ],
)
def test_a_year_with_its_branch_alone_is_found(text: str, expected: tuple[object, ...]) -> None:
    current = normalise_text(text).text
    (found,) = find(f"磯永作{current}")
    assert (found.text, found.year, found.month, found.day) == (current, *expected)
    assert found.agreement == "agrees"


@pytest.mark.parametrize("text", ["端午之日", "重陽", "立春", "七十有五"])
def test_a_day_that_has_a_name_or_a_number_with_you_is_found_where_nothing_else_stands(
    text: str,
) -> None:
    assert [found.text for found in find(text)] == [text]
    assert not find(f"霞{text}霞")
