"""Texts that are too long to be searched whole.

``soundings`` (where both go together, by ear), ``cutting`` (blocks that are aligned exactly),
``exchanged`` (long stretches that stand elsewhere), ``coarse`` (what has nothing in common).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.align.long_texts.coarse import (
        WHY as WHY,
        as_one as as_one,
        equal as equal,
        note as note,
        one_difference as one_difference,
        price as price,
    )
    from inscribe.collation.align.long_texts.cutting import (
        Block as Block,
        blocks as blocks,
        finer as finer,
    )
    from inscribe.collation.align.long_texts.exchanged import (
        Stretch as Stretch,
        around_moved as around_moved,
    )
    from inscribe.collation.align.long_texts.soundings import (
        begin_and_end_alike as begin_and_end_alike,
        loudness as loudness,
        whereabouts as whereabouts,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "coarse": "WHY as_one equal note one_difference price",
            "cutting": "Block blocks finer",
            "exchanged": "Stretch around_moved",
            "soundings": "begin_and_end_alike loudness whereabouts",
        },
    )
