"""A quick look whether a text is worth searching for a date: about a microsecond.

>>> may_hold_date("嘉永六年"), may_hold_date("あらざらむこの世のほかの思ひ出に")
(True, False)
"""

from __future__ import annotations

from inscribe.dates.written.numerals import STARTS

_STEM = "甲乙丙丁戊己庚辛壬癸"
_BRANCH = "子丑寅卯辰巳已午未申酉戌戍亥"
_ANIMAL = "鼠牛虎兎竜龍蛇馬羊猿鶏犬猪"
_OF = "のノ之"  # 甲の子
# A date that stands by itself holds 齢, or at least one of these pairs of signs.
_CYCLE_PAIRS = (
    (_STEM, f"{_BRANCH}□■"),
    (_BRANCH + _ANIMAL, "年秊歳春夏秋冬"),
    (_BRANCH, "初仲晩孟季"),
)
_PAIRS = (
    *_CYCLE_PAIRS,
    (f"{STARTS}元□■", "年秊季稔載歳歲才翁叟老月日暦歴祀童媼嫗余有"),
    (f"{STARTS}元", _BRANCH),
    ("吉", "日辰旦祥月良"),
    ("良佳嘉令穀", "日辰旦"),
    ("行享時", "年"),
    ("行", "歳"),
    ("同翌明前去昨当今本是此", "年月歳"),
    ("上中下初末", "旬浣澣"),
    ("年", "間中"),
    ("改", "元"),
    ("皇", "紀"),
    ("西", "暦"),
    ("古傘米白卒喜", "希稀寿"),
    ("年秊歳寿秋生満", STARTS),
    ("年歳", "古還喜米傘卒"),
    ("閼旃柔強著屠上重玄昭", "逢蒙兆圉雍維章光黓陽"),
)


def _firsts_by_second(pairs: tuple[tuple[str, str], ...]) -> dict[str, str]:
    found: dict[str, str] = {}
    for firsts, seconds in pairs:
        for second in seconds:
            found[second] = found.get(second, "") + firsts
    return found


_BEFORE = _firsts_by_second(_PAIRS)
_BEFORE_OF = _firsts_by_second(_CYCLE_PAIRS)


def may_hold_date(text: str) -> bool:
    """Return whether ``text`` may hold a date or an age that stands by itself."""
    if _BEFORE.keys().isdisjoint(text):
        return "齢" in text
    for at, sign in enumerate(text):
        before = text[at - 1 : at] or "."
        if before in _BEFORE.get(sign, ""):
            return True
        if before in _OF and (text[at - 2 : at - 1] or ".") in _BEFORE_OF.get(sign, ""):
            return True
    return "齢" in text
