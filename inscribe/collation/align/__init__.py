"""What in a copy answers what in its source, and what kind of difference lies between.

In reading order: ``sides`` (a text as a lattice of sounds), ``words``, ``readings`` and
``okurigana`` (how its characters may be read), ``repeats`` (what 〳〵 may stand for), ``costs``,
``states``, ``pairs``, ``worn``, ``unwritten``, ``moves`` and ``search`` (the cheapest way through
both), ``groups``, ``orders`` and ``word_order`` (Chinese order), ``soundings``, ``blocks``,
``exchanged`` and ``coarse`` (long texts), ``extent`` (how much of the source was
copied), ``word_ends`` and ``whole_words`` (differences widened to words), ``moved``, ``doubled``,
``aligning`` (all of it in order).
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
