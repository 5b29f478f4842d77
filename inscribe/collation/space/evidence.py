"""How strongly the measurements speak for "given up for space" against "slip", for one difference.

The weight is a likelihood ratio. Its logarithm is a sum: an intercept and, for each feature, the
feature's value times its coefficient in ``space_weights.tsv``. The coefficients were
fitted by logistic regression on plates carved by the simulator of ``tests/benchmarks/space.py``
with as many sacrifices as slips, so that a weight of 1 says nothing either way.

Features of a difference by which the copy saves ``saved`` signs:

``pressure``  log of (signs still to carve there, at the uncrowded pitch) / (length left on the
              plate), held between -1 and 1: above 0, the rest could not fit uncrowded
``left over`` signs that would still have fitted at the end, per sign saved, at most 4
``crowding``  how much closer the carver wrote in the last column than in his widest, at most 0.5
``lateness``  share of the source that lies before the difference
``at the end`` 1 if nothing of the source follows the difference, else 0
``omission``  1 if words are missing, 0 if they are only written shorter
"""

from __future__ import annotations

import math
from dataclasses import astuple, dataclass, fields
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.collation.space.measures import Measures

if TYPE_CHECKING:
    from inscribe.collation.model import Group
    from inscribe.signs import Transcription


@dataclass(frozen=True, slots=True)
class Features:
    """The evidence about one difference as numbers; see the module's text."""

    pressure: float
    left_over: float
    crowding: float
    lateness: float
    at_the_end: float
    omission: float


def features(group: Group, copy: Transcription, need: int, measures: Measures) -> Features:
    """Return the features of a difference by which the copy saves signs."""
    saved = len(group.source) - len(group.copy)
    column, sign = place(group, copy)
    widest = max(measures.pitches)
    to_carve = (need - group.source.start) * widest
    room = max(measures.room_after(column, sign), 0.5)
    last = measures.columns[-1]
    spare = max(last.free or 0.0, 0.0) + measures.more_columns * measures.column_length
    return Features(
        max(-1.0, min(1.0, math.log(max(to_carve, 0.1) / room))),
        min(4.0, spare / (last.pitch or widest) / max(saved, 1)),
        min(0.5, (last.crowding or 1.0) - 1),
        group.source.start / max(need, 1),
        float(group.source.end >= need),
        float(group.kind == "omitted"),
    )


def weight(found: Features) -> float:
    """Return the likelihood ratio of "given up for space" against "slip"."""
    known = _weights()
    total = known["intercept"]
    for field, value in zip(fields(found), astuple(found), strict=True):
        total += known[field.name] * value
    return math.exp(max(-7.0, min(7.0, total)))


def place(group: Group, copy: Transcription) -> tuple[int, int]:
    """Return column and place in the column, from 0, where the copy comes to the difference."""
    for column in copy.columns:
        if column.signs and group.copy.start <= column.signs[-1].index:
            return column.index, max(0, group.copy.start - column.signs[0].index)
    last = copy.columns[-1]
    return last.index, len(last.signs)


@tables.cached()
def _weights() -> dict[str, float]:
    found: dict[str, float] = {}
    for row in tables.rows("space_weights"):
        found.setdefault(row["key"], float(row["weight"]))
    return found
