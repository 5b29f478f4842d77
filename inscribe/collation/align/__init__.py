"""What in a copy answers what in its source, and what kind of difference lies between.

In reading order: ``sides`` (a text as a lattice of sounds), ``searching`` (the cheapest way
through both), ``long_texts`` (cut into blocks), ``differences`` (widened to words, in Chinese
order, moved, doubled), ``aligning`` (all of it in order), ``extent`` (how much of the source was
copied).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.align.extent import Extent as Extent, align_extent as align_extent
    from inscribe.collation.align.sides import Side as Side, side as side
else:
    __getattr__ = late.door(
        __name__,
        {
            "extent": "Extent align_extent",
            "sides": "Side side",
        },
    )
