"""Division: which stretches of an inscription are passages, and of what kind each is.

In reading order: ``dividing`` (the way in: the best division and the next), ``at_once`` (texts
that are plainly one passage), ``stretches`` (what is weighed), ``cuts`` (where passages may meet),
then what speaks for each kind: ``language`` and ``poems`` (verse and prose), ``lines`` (Chinese),
``titles`` (headings), ``signings`` (signatures), ``days`` (dates, dedications), and ``order``
(which kind follows which), ``roles`` (what a person named did), ``known`` (what a person has
settled, and the extent of a source that is copied).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.passages.dividing import (
        Division as Division,
        divisions_of as divisions_of,
    )
    from inscribe.reading.passages.known import (
        SettledPassage as SettledPassage,
        source_extent as source_extent,
        spans_settled as spans_settled,
    )
    from inscribe.reading.passages.stretches import Known as Known, Stretch as Stretch
else:
    __getattr__ = late.door(
        __name__,
        {
            "dividing": "Division divisions_of",
            "known": "SettledPassage source_extent spans_settled",
            "stretches": "Known Stretch",
        },
    )
