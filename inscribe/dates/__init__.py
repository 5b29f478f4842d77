"""What a carved date says, which days it names, and whether it agrees with itself.

``finding`` (the way in) is asked about every text that is read, and most have no date; the
rooms ``calendar``, ``written`` and ``meaning`` are loaded with the first date found. ``model``
is what the stage hands on.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.dates.finding import find as find, resolve as resolve, resolve_all as resolve_all
    from inscribe.dates.meaning import (
        Comparison as Comparison,
        SpokenWord as SpokenWord,
        compared as compared,
        words as words,
    )
    from inscribe.dates.model import (
        SEASONS as SEASONS,
        Age as Age,
        Agreement as Agreement,
        CandidateYear as CandidateYear,
        DatePiece as DatePiece,
        DateReading as DateReading,
        Explanation as Explanation,
        Part as Part,
        Precision as Precision,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "finding": "find resolve resolve_all",
            "meaning": "Comparison SpokenWord compared words",
            "model": (
                "SEASONS Age Agreement CandidateYear DatePiece DateReading Explanation Part "
                "Precision"
            ),
        },
    )
