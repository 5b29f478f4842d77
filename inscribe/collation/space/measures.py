"""What the measurements of a plate say: pitch, crowding, free lengths, and how much it could hold.

A column's pitch is its length divided by its signs. Where signs were measured one by one, their
boxes give the column's extent (those of its first and last sign) and the trend of the pitch. The
carver's margin is the distance he kept above his columns; he is taken to have kept the same below,
unless he went lower.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from statistics import fmean, median
from typing import TYPE_CHECKING

from inscribe.collation.model import ColumnSpace
from inscribe.record import measured_column

if TYPE_CHECKING:
    from inscribe.record import Inscription
    from inscribe.signs import Column, Transcription

FEW_SIGNS = 4  # a column of fewer signs says little about the pitch


@dataclass(frozen=True)
class Measures:
    """The plate as measured, in mm; ``columns`` in reading order, all with length and pitch."""

    columns: tuple[ColumnSpace, ...]
    top: float  # where the highest column begins
    bottom: float  # how far down the carver went, or could have gone keeping his upper margin
    more_columns: int  # columns for which the plate has room beside those carved
    after: int = 0  # signs below the copied text that were not copied, and take room too

    @cached_property
    def pitches(self) -> tuple[float, ...]:
        """The pitch of every column that has enough signs to tell, or of all."""
        telling = [c.pitch for c in self.columns if c.pitch and c.signs >= FEW_SIGNS]
        return tuple(telling or [c.pitch for c in self.columns if c.pitch])

    @property
    def column_length(self) -> float:
        """The length a column could have."""
        return self.bottom - self.top

    def capacity(self, pitch: float) -> int:
        """Return how many signs the plate holds at ``pitch``, in columns carved and to carve."""
        return (len(self.columns) + self.more_columns) * int(self.column_length / pitch + 0.5)

    def room_after(self, column: int, sign: int) -> float:
        """Return the length left from ``sign`` (from 0) of a column to the end of the plate."""
        here = self.columns[column]
        used = sign * (here.pitch or 0.0)
        later = len(self.columns) - column - 1 + self.more_columns
        room = max(0.0, self.column_length - used) + later * self.column_length
        return max(0.0, room - self.after * median(self.pitches)) if self.after else room


def measures_of(copy: Transcription, measured: Inscription, after: int = 0) -> Measures | None:
    """Return what was measured, or None unless the plate and every column's ends are known.

    ``after`` counts the signs below the copied text that were not copied.
    """
    extents = [_extent(column, measured) for column in copy.columns]
    if measured.plate is None or not extents or any(e is None for e in extents):
        return None
    known = [e for e in extents if e is not None]
    top = min(first for first, _ in known)
    bottom = max(max(last for _, last in known), measured.plate.height - top)
    columns = _columns(copy, known, bottom)
    return Measures(columns, top, bottom, _more_columns(copy, measured), after)


def missing(copy: Transcription, measured: Inscription) -> tuple[str, ...]:
    """Return what to measure with callipers on the object before space can be judged."""
    wanted = []
    if measured.plate is None:
        wanted.append("width and height of the plate (mm)")
    unknown = [c.index + 1 for c in copy.columns if _extent(c, measured) is None]
    if unknown:
        which = ", ".join(map(str, unknown))
        wanted.append(f"top and bottom of column {which}, from the plate's upper edge (mm)")
    return tuple(wanted)


def column_account(copy: Transcription, measured: Inscription) -> tuple[ColumnSpace, ...]:
    """Return each column's account, as far as it was measured."""
    found = measures_of(copy, measured)
    if found is not None:
        return found.columns
    return tuple(
        ColumnSpace(column.index, _carved(column), None, None, None) for column in copy.columns
    )


def _columns(
    copy: Transcription, extents: list[tuple[float, float]], bottom: float
) -> tuple[ColumnSpace, ...]:
    found = []
    for column, (first, last) in zip(copy.columns, extents, strict=True):
        signs = _carved(column)
        pitch = (last - first) / signs if signs else None
        trend = _trend(column)
        found.append(
            ColumnSpace(column.index, signs, last - first, pitch, None, trend, bottom - last)
        )
    widest = max((c.pitch for c in found if c.pitch and c.signs >= FEW_SIGNS), default=None)
    return tuple(
        ColumnSpace(c.index, c.signs, c.length, c.pitch, _ratio(widest, c.pitch), c.trend, c.free)
        for c in found
    )


def _ratio(widest: float | None, pitch: float | None) -> float | None:
    return round(widest / pitch, 3) if widest and pitch else None


def _carved(column: Column) -> int:
    return sum(sign.is_carved for sign in column.signs)


def _extent(column: Column, measured: Inscription) -> tuple[float, float] | None:
    known = measured_column(measured, column)
    return (known.top, known.bottom) if known else None


def _trend(column: Column) -> float | None:
    """Return by what share the distance between signs shrinks along a column measured sign by sign.

    Positive means that the signs crowd towards the end.
    """
    middles = [
        (number, sign.box.y + sign.box.height / 2)
        for number, sign in enumerate(sign for sign in column.signs if sign.is_carved)
        if sign.box is not None
    ]
    steps = [
        (middle - before) / (number - earlier)
        for (earlier, before), (number, middle) in pairwise(middles)
    ]
    if len(steps) < 2 * FEW_SIGNS:
        return None
    half = len(steps) // 2
    first, second = fmean(steps[:half]), fmean(steps[-half:])
    return round(1 - second / first, 3) if first > 0 else None


def _more_columns(copy: Transcription, measured: Inscription) -> int:
    """Return how many more columns the plate has room for to the left of those carved."""
    known = [measured_column(measured, column) for column in copy.columns]
    places = [(c.x, c.width) for c in known if c and c.x is not None and c.width is not None]
    count = len(copy.columns)
    if measured.plate is None or len(places) < count or count < 2:
        return 0
    starts = sorted((x for x, _ in places), reverse=True)
    spacing = median(a - b for a, b in pairwise(starts))
    right_margin = measured.plate.width - max(x + width for x, width in places)
    free = starts[-1] - max(right_margin, 0.0)
    return max(0, int(free / spacing)) if spacing > 0 else 0
