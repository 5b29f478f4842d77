"""What is to be expected of each sign: how long it is, and where along it its strokes are.

Sizes differ from hand to hand, and cursive forms from regular ones; so these are wide expectations,
which say most where strokes of neighbours touch, or where a sign falls apart into two.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from inscribe import tables
from inscribe.signs import Certainty, Kind, Sign

EIGHTHS = 8  # rows of the table's grids
FULL = 84  # percent of its square that a full Chinese character fills (median of the table)
UNEVEN = 0.22  # of a full character: how far hands differ in length; of flat signs that is more
LEAST_SPREAD, MOST_SPREAD = 0.2, 0.6
LONG_MARKS = "〱〲〳〵"


class Expected(NamedTuple):
    """What is to be expected of a sign.

    ``length`` and ``width`` are shares of a full character, ``spread`` is how far the length may
    be off (log), ``form`` is the length of level strokes in each part (eighths from top to bottom,
    in each four quarters from left to right) and then that of upright ones (all their squares add
    up to 1), empty where nothing is known, ``shows`` whether it must show strokes at all.
    """

    length: float
    spread: float
    width: float = 0.9
    form: tuple[float, ...] = ()
    shows: bool = True

    @property
    def rows(self) -> tuple[float, ...]:
        """The strokes of each eighth from top to bottom; their squares add up to 1."""
        grid = np.reshape(self.form, (2, EIGHTHS, -1) if self.form else (1, 0, 1))
        return _even(grid.sum((0, 2)).tolist())


def expected(sign: Sign) -> Expected:
    """Return what is to be expected of a sign.

    >>> round(expected(Sign("花")).length, 2), round(expected(Sign("へ")).length, 2)
    (0.98, 0.5)
    """
    if sign.kind is Kind.GAP:
        return Expected(3.0, 0.7, shows=False)
    if sign.kind is not Kind.CHARACTER:
        return Expected(1.3, 0.5)
    if sign.certainty is Certainty.UNREADABLE or not sign.text:
        return Expected(1.0, 0.35, shows=False)
    first = sign.text[0]
    if first in LONG_MARKS:
        return Expected(2.0, 0.4, 0.5)
    row = _shapes().first_about(first)
    if row is None:
        return Expected(0.85, 0.35)
    width, height, strokes = row["width"], row["height"], row["level"] + row["upright"]
    length = int(height) / FULL
    spread = min(max(UNEVEN / length, LEAST_SPREAD), MOST_SPREAD)
    return Expected(length, spread, int(width) / FULL, _even(list(map(int, strokes))))


def _even(values: Sequence[float]) -> tuple[float, ...]:
    norm = sum(value**2 for value in values) ** 0.5 or 1.0
    return tuple(value / norm for value in values)


@tables.cached()
def _shapes() -> tables.Search:
    return tables.Search("sign_shapes")
