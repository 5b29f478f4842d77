"""What a text is written in: how much of it is kana, and whether it is kanji throughout."""

from __future__ import annotations

import re

from inscribe import tables

KANA = re.compile("[\u3041-\u3096\u30a1-\u30fa]")


@tables.cached(16)  # each register asks it of the same text
def kana_share(text: str) -> float:
    """Return the share of kana among the signs of a text."""
    return len(KANA.findall(text)) / len(text) if text else 0.0


def is_kanji_only(text: str) -> bool:
    """Whether a text is nothing but kanji and 々.

    >>> is_kanji_only("春色"), is_kanji_only("春の色"), is_kanji_only("")
    (True, False, False)
    """
    return bool(text) and all("\u3400" <= sign <= "\u9fff" or sign == "々" for sign in text)
