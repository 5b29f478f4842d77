"""One of two texts to be aligned: every way in which its stretches may be read.

``okurigana`` and ``readings`` (one character), ``repeats`` (what 〳〵 may stand for), ``words``
(what dictionaries know), ``sounds`` (the likeliest), ``lattice`` (all of it over one text, a
``Side``).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.align.sides.lattice import Side as Side, side as side
    from inscribe.collation.align.sides.okurigana import may_be_inflected as may_be_inflected
    from inscribe.collation.align.sides.readings import (
        ByLetter as ByLetter,
        Reading as Reading,
        by_letter as by_letter,
        governs as governs,
        kana_written_so as kana_written_so,
        kun_patterns as kun_patterns,
        shared_word as shared_word,
    )
    from inscribe.collation.align.sides.senses import meanings as meanings
    from inscribe.collation.align.sides.sounds import WORN as WORN, Sounds as Sounds
else:
    __getattr__ = late.door(
        __name__,
        {
            "lattice": "Side side",
            "okurigana": "may_be_inflected",
            "senses": "meanings",
            "sounds": "WORN Sounds",
            "readings": "ByLetter Reading by_letter governs kana_written_so kun_patterns"
            " shared_word",
        },
    )
