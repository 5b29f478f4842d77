"""What people type whose keyboard is set to Japanese: full-width figures, marks and letters.

>>> plain("？舟＋公　"), plain("ｙ"), is_yes("はい"), is_yes("Ｎ")
('?舟+公', 'y', True, False)
"""

from __future__ import annotations

import re
import unicodedata
from datetime import date, timedelta

_YES = frozenset(("y", "yes", "はい", "ok"))
_NO = frozenset(("n", "no", "いいえ", ""))
_DAYS = {"today": 0, "今日": 0, "本日": 0, "yesterday": 1, "昨日": 1}
_DAY = re.compile(r"(\d{4})\s*[-/.年]\s*(\d{1,2})\s*[-/.月]\s*(\d{1,2})\s*日?")


def plain(typed: str) -> str:
    """Return an answer with full-width letters, figures and marks as their usual ones."""
    return unicodedata.normalize("NFKC", typed).strip()


def is_yes(typed: str) -> bool:
    """Whether an answer says yes."""
    return plain(typed).lower() in _YES


def is_yes_or_no(typed: str) -> bool:
    """Whether an answer says yes or no; an empty one says no."""
    return plain(typed).lower() in _YES | _NO


def day_of(typed: str, today: date | None = None) -> date | None:
    """Return the day that is meant: 2026-03-14, 2026/3/14, 2026年3月14日, today, yesterday.

    >>> day_of("２０２６．３．１４"), day_of("今日", date(2026, 3, 14)), day_of("spring")
    (datetime.date(2026, 3, 14), datetime.date(2026, 3, 14), None)
    """
    text = plain(typed).lower()
    if text in _DAYS:
        return (today or date.today()) - timedelta(days=_DAYS[text])
    found = _DAY.fullmatch(text)
    if found is None:
        return None
    try:
        return date(*map(int, found.groups()))
    except ValueError:
        return None
