"""Signs in the place of an era's name that are none (元緑三年), and the eras they are like.

>>> [(like.era, like.why) for like in eras_like("元緑")][0]
('元禄', '元 is the same, 緑 shares parts with and sounds like 禄')
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.dates import calendar
from inscribe.dates.written import numerals

_UNREAD = "□■"
_FITTINGS_FROM = 1570  # western year
_SAME, _OPEN = 1.0, 0.4  # of one sign: it is the same; it cannot be read
_LEAST = 0.5  # of all signs together, from which a name is like an era's
SURE = 0.75  # from which the likeness alone tells that an era was meant
_PAIR = "[甲乙丙丁戊己庚辛壬癸][子丑寅卯辰巳午未申酉戌亥]"
_NUMBER = f"(?:[{numerals.STARTS}{_UNREAD}]{{1,5}}|元)"
_YEAR_FOLLOWS = f"{_NUMBER}(?:[年秊稔]|季(?![春夏秋冬])|{_PAIR})"
# What belongs to other words of a date, and is never the sign of an era that was misread.
_OF_DATES = frozenset(
    "年秊稔季歳歳月日時刻甲乙丙丁戊己庚辛壬癸子丑寅卯辰巳午未申酉戌亥春夏秋冬閏同"
)


class Like(NamedTuple):
    """An era that a name may stand for, how like it is (0 to 1), and why."""

    era: str
    share: float
    why: str


def unknown_era_at(text: str, position: int) -> str:
    """Return the signs that stand here in the place of an era without being one, or nothing.

    >>> unknown_era_at("于時元緑三年", 2), unknown_era_at("嘉永三年", 0)
    ('元緑', '')
    """
    for length in (2, 1):
        name = text[position : position + length]
        if len(name) < length or not _year_follows(text, position + length):
            continue
        if length == 1 and (position > 0 and _may_be_misread(text[position - 1])):
            continue
        if not all(map(_may_be_misread, name)) or name in calendar.by_name():
            continue
        if _begins_a_word(name, text, position) or (length == 1 and not eras_like(name)):
            return ""
        return name
    return ""


def _year_follows(text: str, position: int) -> bool:
    sign = text[position : position + 1]
    may_be_a_number = sign in numerals.DIGITS or sign in numerals.UNITS or sign in numerals.TENS
    if not may_be_a_number and sign not in ("元", *_UNREAD):
        return False
    return re.compile(_YEAR_FOLLOWS).match(text, position) is not None


def _may_be_misread(sign: str) -> bool:
    """Whether a sign may be one of an era's name that was misread: a kanji, or one unread."""
    if sign in _OF_DATES or sign in numerals.STARTS:
        return False
    return sign in _UNREAD or "\u3400" <= sign <= "\u9fff" or sign >= "\U00020000"


def _begins_a_word(name: str, text: str, position: int) -> bool:
    """Whether a word of dates stands here, or ends here: 皇紀二千年, 安政二年の政二年."""
    from inscribe.dates.written.vocabulary import words_from

    for start in range(max(0, position - 3), position + len(name)):
        for word in words_from(text[start]):
            end = start + len(word.text)
            if len(word.text) > 1 and end > position and text.startswith(word.text, start):
                return True
    return False


@tables.cached(4096)
def eras_like(written: str) -> tuple[Like, ...]:
    """Return the eras that a name is like, the likeliest first; □ may be any sign.

    Signs count that are the same in the same place, that look alike, share their parts or are read
    alike. Of a name of one sign, the other has been lost.
    """
    likes = (_like(written, era) for era in calendar.by_name())
    kept = [like for like in likes if like is not None and like.share >= _LEAST]
    return tuple(sorted(kept, key=_place))


def eras_most_like(written: str) -> tuple[Like, ...]:
    """Return the eras that a name is most like: more than one where none is more so than others.

    >>> [like.era for like in eras_most_like("□緑")]
    ['文禄', '元禄']
    """
    likes = eras_like(written)
    most = [like for like in likes if _place(like) == _place(likes[0])]
    return tuple(like for like in most if like.share > _LEAST)


def _place(like: Like) -> tuple[float, bool]:
    """Return by what likenesses are ranked: the eras in which fittings were made first."""
    return -like.share, calendar.by_name()[like.era].first < _FITTINGS_FROM


def _like(written: str, era: str) -> Like | None:
    if len(written) == 1 and len(era) == 2:
        return Like(era, _LEAST, f"{written} is one of its signs") if written in era else None
    if len(written) != len(era):
        return None
    shares, reasons = [], []
    for share, why in _compared(written, era):
        shares.append(share)
        reasons.append(why)
    return Like(era, sum(shares) / len(shares), ", ".join(filter(None, reasons)))


def _compared(written: str, era: str) -> Iterator[tuple[float, str]]:
    for sign, right in zip(written, era, strict=True):
        if sign == right:
            yield _SAME, f"{sign} is the same"
        elif sign in _UNREAD:
            yield _OPEN, ""
        else:
            from inscribe.forms import likeness

            alike = likeness(sign, right)
            yield (alike.share, f"{sign} {alike.why} {right}") if alike else (0.0, "")


def had_year(era: str, number: int) -> bool:
    """Whether an era reached a year of this number."""
    return 1 <= number <= calendar.by_name()[era].years
