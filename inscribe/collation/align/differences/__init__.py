"""Differences as an apparatus gives them, made of what the search found.

``word_ends`` and ``whole_words`` (widened to words), ``orders`` and ``word_order`` (Chinese order),
``moved`` (words that stand elsewhere), ``doubled`` (passages that one text has twice).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.align.differences.doubled import told_doubles as told_doubles
    from inscribe.collation.align.differences.moved import with_moves as with_moves
    from inscribe.collation.align.differences.whole_words import (
        over_whole_words as over_whole_words,
    )
    from inscribe.collation.align.differences.word_order import (
        in_japanese_order as in_japanese_order,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "doubled": "told_doubles",
            "moved": "with_moves",
            "whole_words": "over_whole_words",
            "word_order": "in_japanese_order",
        },
    )
