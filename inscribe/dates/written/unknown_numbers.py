"""What stands where the number of an era's year is expected, and is no number: 天保十ニ年, 天保△年.

>>> unknown_number_at("十ニ年三月", 0), unknown_number_at("十二年", 0), unknown_number_at("辰年", 0)
('十ニ', '', '')
>>> numbers_like("十ニ")
((12, 'ニ looks like 二'),)
"""

from __future__ import annotations

import re
from itertools import product

from inscribe.dates.written import numerals

_LONGEST = 4  # signs
_MOST_WAYS = 200
_BEFORE_YEAR = re.compile(f"([^\\s／、。・年秊稔歳月日]{{1,{_LONGEST}}})[年秊稔]")
_NO_NUMBER_WANTED = frozenset("某何幾数諸新旧来")  # 嘉永某年: a year that is not told


def unknown_number_at(text: str, position: int) -> str:
    """Return what stands here before 年 and is neither a number nor a word of dates, or nothing."""
    from inscribe.dates.written.vocabulary import words_from

    match = _BEFORE_YEAR.match(text, position)
    if match is None or numerals.value_of(match[1]) is not None:
        return ""
    unknown = [at for at in range(position, match.end(1)) if text[at] not in numerals.STARTS]
    if not unknown or any(text[at] in "□■" or text[at] in _NO_NUMBER_WANTED for at in unknown):
        return ""
    for at in unknown:
        if any(text.startswith(word.text, at) for word in words_from(text[at])):
            return ""
    return match[1]


def numbers_like(written: str) -> tuple[tuple[int, str], ...]:
    """Return the numbers that signs may stand for, some of which are none, and why."""
    from inscribe.forms import look_alikes

    choices = [
        [sign] if sign in numerals.STARTS else _in_order(look_alikes(sign)) for sign in written
    ]
    found: dict[int, str] = {}
    for _, signs in zip(range(_MOST_WAYS), product(*choices), strict=False):
        number = numerals.value_of("".join(signs))
        changed = [(a, b) for a, b in zip(written, signs, strict=True) if a != b]
        if number and changed:
            found.setdefault(number, ", ".join(f"{a} looks like {b}" for a, b in changed))
    return tuple(found.items())


def _in_order(alike: dict[str, str]) -> list[str]:
    return [sign for sign in alike if sign in numerals.STARTS]
