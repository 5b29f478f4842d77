"""The return marks of Chinese text read as Japanese: the Kanbun block of Unicode, U+3190 to U+319F.

Apart from what is done with them (``inscribe.reading.chinese.order``), because every text is asked
whether it has any.
"""

from __future__ import annotations

LINK, RETURN = "㆐", "㆑"
ROWS = ("㆒㆓㆔㆕", "㆖㆗㆘", "㆙㆚㆛㆜", "㆝㆞㆟")
MARKS = frozenset((LINK, RETURN, *"".join(ROWS)))


def has_marks(text: str) -> bool:
    """Return whether ``text`` has a return mark in it."""
    return not MARKS.isdisjoint(text)


def without_marks(text: str) -> str:
    """Return ``text`` in the order it is written, its return marks left out.

    >>> without_marks("於㆓東都㆒造㆑之")
    '於東都造之'
    """
    return "".join([sign for sign in text if sign not in MARKS]) if has_marks(text) else text
