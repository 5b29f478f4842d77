"""A quick look whether a text is worth searching for a date: about a microsecond.

>>> may_hold_date("嘉永六年"), may_hold_date("あらざらむこの世のほかの思ひ出に")
(True, False)
"""

from __future__ import annotations

import re

from inscribe.dates.numerals import STARTS

_BRANCH = "[子丑寅卯辰巳已午未申酉戌戍亥]"
_ANIMAL = "[鼠牛虎兎竜龍蛇馬羊猿鶏犬猪]"
# A date that stands by itself holds at least one of these.
_TRACE = re.compile(
    f"[{STARTS}元□■][年秊季稔載歳歲才翁叟老月日暦歴祀童媼嫗余有]"
    f"|[甲乙丙丁戊己庚辛壬癸][のノ之]?(?:{_BRANCH}|[□■])"
    f"|(?:{_BRANCH}|{_ANIMAL})[のノ之]?[年秊歳]|吉[日辰旦祥月良]|[良佳嘉令穀][日辰旦]"
    "|[行享時]年|行歳|齢|[同翌明前去昨当今本是此][年月歳]"
    "|[上中下初末][旬浣澣]|年[間中]|改元|皇紀|西暦"
    "|[古傘米白卒喜][希稀寿]|[閼旃柔強著屠上重玄昭][逢蒙兆圉雍維章光黓陽]"
)


def may_hold_date(text: str) -> bool:
    """Return whether ``text`` may hold a date or an age that stands by itself."""
    return _TRACE.search(text) is not None
