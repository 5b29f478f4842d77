"""Numbers as carvers write them, and how they are read in dates.

>>> value_of("廿三"), value_of("七十有三"), value_of("壱百弐拾"), value_of("一八五三")
(23, 73, 120, 1853)
>>> as_kanji(23)
'二十三'
"""

from __future__ import annotations

import re

from inscribe import tables

DIGITS = {sign: index for index, sign in enumerate("〇一二三四五六七八九")}
DIGITS |= dict(zip("零壱弐参肆伍陸漆捌玖", range(10), strict=True))
DIGITS |= dict(zip("０１２３４５６７８９", range(10), strict=True))
DIGITS |= dict(zip("0123456789", range(10), strict=True))
DIGITS |= {"壹": 1, "弌": 1, "貳": 2, "貮": 2, "弍": 2, "參": 3, "弎": 3, "䦉": 4, "亖": 4}
DIGITS |= {"柒": 7, "㭍": 7, "○": 0}
UNITS = {"十": 10, "拾": 10, "百": 100, "陌": 100, "佰": 100, "千": 1000, "阡": 1000, "仟": 1000}
TENS = {"廿": 20, "廾": 20, "卄": 20, "念": 20, "卅": 30, "丗": 30, "卌": 40}
STARTS = "".join(DIGITS) + "".join(UNITS) + "".join(TENS)
_ONES, _SCORES = "".join(DIGITS), "".join(TENS)
_STARTS = frozenset(STARTS)
LONGEST = 16  # signs; no number in a date is longer, and a text may be nothing but numerals
_COMPOUND = (
    f"(?:(?P<thousands>[{_ONES}]?)[千阡仟])?(?:(?P<hundreds>[{_ONES}]?)[百陌佰])?"
    f"(?:(?P<score>[{_SCORES}])|(?P<tens>[{_ONES}]?)[十拾])?[有又]?(?P<ones>[{_ONES}]?)"
)


@tables.cached()
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern)


def run_at(text: str, start: int) -> str:
    """Return the longest run of numeral signs of ``text`` from ``start`` on, or nothing."""
    end = start
    while end < min(len(text), start + LONGEST) and _continues(text, start, end):
        end += 1
    return text[start:end]


def _continues(text: str, start: int, at: int) -> bool:
    """Whether a number that began at ``start`` goes on; 有 and 又 (and) stand before ones only."""
    if text[at] in "有又":
        return at > start and text[at + 1 : at + 2] in DIGITS
    return text[at] in _STARTS


def value_of(text: str) -> int | None:
    """Return the number ``text`` writes, or None if it is not a well-formed number."""
    if not text:
        return None
    if all(sign in DIGITS for sign in text):
        return int("".join(str(DIGITS[sign]) for sign in text))
    found = _compiled(_COMPOUND).fullmatch(text)
    if not found:
        return None
    total = TENS.get(found["score"] or "", 0)
    for group, unit in (("thousands", 1000), ("hundreds", 100), ("tens", 10)):
        if found[group] is not None:
            total += unit * (DIGITS[found[group]] if found[group] else 1)
    return total + (DIGITS[found["ones"]] if found["ones"] else 0)


def split_off_last(text: str, largest: int) -> tuple[str, str] | None:
    """Split a run of numerals in two numbers, the second as long as it can be up to ``largest``.

    >>> split_off_last("六十二", 12)
    ('六', '十二')
    """
    for cut in range(1, len(text)):
        head, tail = text[:cut], text[cut:]
        number = value_of(tail)
        if value_of(head) and number is not None and 1 <= number <= largest:
            return head, tail
    return None


def as_kanji(number: int) -> str:
    """Return ``number`` (0-9999) in plain kanji numerals."""
    digits = "〇一二三四五六七八九"
    if number == 0:
        return digits[0]
    result = ""
    for unit, sign in ((1000, "千"), (100, "百"), (10, "十"), (1, "")):
        digit = number // unit % 10
        if digit:
            result += (digits[digit] if digit > 1 or not sign else "") + sign
    return result


def possible_values(damaged: str, largest: int = 99) -> tuple[int, ...]:
    """Return the numbers that a number with unreadable signs (□ or ■) may be.

    >>> possible_values("十□")
    (11, 12, 13, 14, 15, 16, 17, 18, 19)
    """
    pattern = re.compile("".join("." if sign in "□■" else sign for sign in damaged))
    readable = (number for number in range(1, largest + 1) if _matches(pattern, number))
    return tuple(readable)


def _matches(pattern: re.Pattern[str], number: int) -> bool:
    plain = as_kanji(number)
    written = {plain, plain.replace("二十", "廿"), plain.replace("三十", "卅")}
    return any(pattern.fullmatch(text) for text in written)
