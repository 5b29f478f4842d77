"""What the words of prose are, in whatever spelling, and how they are written today.

In reading order: ``old_forms`` (the old spellings of an entry of UniDic), ``rows`` (the dictionary
made of them), ``current`` (a text in current spelling), ``reader`` (the words of prose),
``alternatives`` (what else they may be read).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.prose.alternatives import (
        ProseSwap as ProseSwap,
        prose_swaps as prose_swaps,
    )
    from inscribe.reading.prose.current import (
        gathering as gathering,
        has_kept_signs as has_kept_signs,
        is_in_katakana as is_in_katakana,
        modern_normal as modern_normal,
    )
    from inscribe.reading.prose.reader import prose_words as prose_words
else:
    __getattr__ = late.door(
        __name__,
        {
            "alternatives": "ProseSwap prose_swaps",
            "current": "gathering has_kept_signs is_in_katakana modern_normal",
            "reader": "prose_words",
        },
    )
