"""Dates that stand alone: 文化七庚午年三月, a worn 嘉永五壬子□二□吉日."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from inscribe.dates import find
from inscribe.reading.passages.language import is_common_noun
from inscribe.reading.words import MARK

if TYPE_CHECKING:
    from inscribe.dates import DateReading

_SIGN = 2.4  # of a date; a little more than a signature gets for its own
_WORN_SIGN = 2.2
_TIME = re.compile("(?:于時|干時|時維|維時|時|旹|此時)")
_PARTS = "一二三四五六七八九十廿卅元正年歳秊月日朔望晦吉祥良辰旦上中下旬浣春夏秋冬孟仲季初晩暮弥生"
_STEMS, _BRANCHES = "甲乙丙丁戊己庚辛壬癸", "子丑寅卯辰巳午未申酉戌亥"
_OF_DATES = frozenset(_PARTS + _STEMS + _BRANCHES)
_UNITS = frozenset("年月日歳")
_SEASONS, _OF_SEASONS = frozenset("春夏秋冬"), frozenset("孟仲季初晩暮")
_ERA_SIGNS = 2  # signs of a worn era that are no numbers


class Days:
    """The stretches of one text as dates."""

    def __init__(self, text: str, faces: Iterable[int] = ()) -> None:
        """Find the dates of a normalised text, none of which runs over the end of a face."""
        self.text = text
        found = [d for d in _dates(text, faces) if d.age is None] if _may_hold(text) else []
        self._spans = [(date.first, date.last + 1) for date in found]
        self._sure = {(d.first, d.last + 1): _is_sure(d) for d in found}

    def weight(self, first: int, end: int) -> float:
        """Return the log odds that a stretch is a date and nothing else; 0 where it is none.

        >>> Days("文化七庚午年三月").weight(0, 8) > 10, Days("于時天保十五甲辰年").weight(0, 9) > 10
        (True, True)
        >>> Days("□政□年八月［　　］").weight(0, 10) > 3, Days("芹沢種峰作之").weight(0, 6)
        (True, 0.0)
        """
        text = self.text[first:end]
        if "□" in text or "［" in text:
            return max(_worn(MARK.sub("", text)), self._before_gap(first, end))
        at = first
        if (time := _TIME.match(text)) and self.begins(at + time.end()):
            at += time.end()
        sure = False
        for one, two in self._spans:
            if one == at:
                at, sure = two, sure or self._sure[one, two]
        return _SIGN * len(text) if at == end and sure else 0.0

    def _before_gap(self, first: int, end: int) -> float:
        """Return the weight of a sure date that a gap ends, and nothing else: 天保七年［　］."""
        return max(
            (
                _SIGN * (two - one)
                for (one, two), sure in self._sure.items()
                if sure and one == first and two < end and not MARK.sub("", self.text[two:end])
            ),
            default=0.0,
        )

    def edges(self) -> Iterator[int]:
        """Yield the offsets at which dates begin and end, inside the text."""
        for span in self._spans:
            yield from (at for at in span if 0 < at < len(self.text))

    def fills(self, first: int, end: int) -> bool:
        """Whether a stretch is one sure date; in 天保三年春 the season may begin a name (春房)."""
        bare = self.text[end - 1] in _SEASONS and self.text[end - 2] not in _OF_SEASONS
        return self._sure.get((first, end), False) and not bare

    def begins(self, at: int) -> bool:
        """Whether a date begins at an offset."""
        return any(first == at for first, _ in self._spans)


def is_date(plain: str) -> bool:
    """Whether a text is one date beyond doubt, and nothing else.

    >>> is_date("安政二年乙卯仲秋"), is_date("天保三年春房")
    (True, False)
    """
    return Days(plain).fills(0, len(plain))


def _is_sure(date: DateReading) -> bool:
    """Whether a date says a year, a month or a day beyond doubt: 文化七年, 八月, 己巳之春.

    What seems to be an era that is not known may be a word: 創業五十年.
    """
    if date.year is None and date.text[0] not in _OF_DATES and is_common_noun(date.text[:2]):
        return False
    cyclic = date.text[0] in _STEMS and date.text[1:2] in _BRANCHES
    return date.year is not None or cyclic or not _UNITS.isdisjoint(date.text)


def _dates(text: str, faces: Iterable[int]) -> Iterator[DateReading]:
    for first, end in pairwise((0, *sorted(faces), len(text))):
        for date in find(text[first:end], weak=True):
            yield replace(date, first=date.first + first, last=date.last + first)


def _may_hold(text: str) -> bool:
    return not _OF_DATES.isdisjoint(text)


def _worn(plain: str) -> float:
    """Return the weight of a date in which signs are lost, by what is left of it."""
    left = [sign for sign in plain if sign != "□"]
    of_dates = sum(sign in _OF_DATES for sign in left)
    if len(left) - of_dates > _ERA_SIGNS or of_dates < 2 or _UNITS.isdisjoint(left):
        return 0.0
    return _WORN_SIGN * of_dates
