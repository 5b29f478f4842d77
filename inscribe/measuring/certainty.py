"""How certain a proposed box is, and how exact a pitch."""

from __future__ import annotations

import math
from collections.abc import Sequence

from inscribe.measuring.cutting import SignExtent
from inscribe.measuring.view import View

UNSEEN = 0.35  # of the certainty stays where no strokes show
EDGE = 0.1  # mm: the error of a column's end where its cut is sure
PLATE = 0.15  # mm: the error of the plate's size and corners
WRONG = 0.35  # of a pitch: the error of an end that is cut wrong


def certainty(cell: SignExtent, *, shows: bool) -> float:
    """Return the chance that a box has about the right place (overlap of 0.7 with the truth)."""
    sure = cell.sure_top * cell.sure_bottom
    return sure if shows else sure * UNSEEN


def pitch_error(told: Sequence[SignExtent], pitch: float, view: View) -> float:
    """Return the standard error of a column's pitch in mm.

    It comes from the two ends, each either cut right or not, and from the plate's scale.
    """
    variance = 0.0
    for sure in (told[0].sure_top, told[-1].sure_bottom):
        variance += sure * EDGE**2 + (1 - sure) * (WRONG * pitch) ** 2
    ends = math.sqrt(variance) / len(told)
    return math.hypot(ends, pitch * PLATE / view.height)
