"""What the measurements of a plate say: pitch, crowding, free lengths, and how much it could hold.

A column's pitch is the length of its writing divided by its signs. Where signs were measured one by
one, their boxes give the column's extent and the trend of the pitch. The carver's foot line is
where the fullest column before the last ends; where that is short, or the only one, he is taken to
have kept below what he kept above. What takes room (a seal, a picture, damage) is taken off.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from statistics import fmean, median
from typing import TYPE_CHECKING

from inscribe.collation.accounts import ColumnSpace
from inscribe.record import measured_column, reckoned_column

if TYPE_CHECKING:
    from inscribe.record import Inscription, Obstacle
    from inscribe.signs import Column, Transcription

FEW_SIGNS = 4  # a column of fewer signs says little about the pitch
SHORT_BY = 2.0  # signs that are missing to the foot in a column that ends with its line
RIM = 0.5  # mm along the edge where nobody cuts; common practice, no source
NEXT_TO = 1.5  # mm between the last sign and what stands below it in its column, at most
CLOSEST = 1.0  # mm from sign to sign; nobody cuts closer (common practice, no source)


@dataclass(frozen=True)
class Measures:
    """The plate as measured, in mm; ``columns`` in reading order, all with length and pitch."""

    columns: tuple[ColumnSpace, ...]
    top: float  # where the highest column begins
    foot: float  # how far down the carver's columns go
    below: float  # mm from the last sign to the plate's edge, or to what takes room there
    below_to: str  # what ends that length: the plate's edge, the seal
    more_columns: int  # columns for which the plate has room beside those carved
    slack: float  # by how much lengths may err
    obstacles: tuple[Obstacle, ...] = ()  # what takes room
    after: int = 0  # signs below the copied text that were not copied, and take room too

    @cached_property
    def pitches(self) -> tuple[float, ...]:
        """The pitch of every column that has enough signs to tell, or of all."""
        telling = [c.pitch for c in self.columns if c.pitch and c.signs >= FEW_SIGNS]
        return tuple(telling or [c.pitch for c in self.columns if c.pitch])

    @property
    def last_pitch(self) -> float:
        """The pitch he had come to at the end."""
        last = self.columns[-1]
        return last.pitch if last.pitch and last.signs >= FEW_SIGNS else median(self.pitches)

    @property
    def signs_below(self) -> float:
        """How many more signs had fitted at the end, at the pitch he had come to."""
        return self.below / self.last_pitch + self._signs_beside

    @property
    def signs_free(self) -> float:
        """How many more signs had fitted below all his columns, down to his foot line."""
        return self.free / self.last_pitch + self._signs_beside

    @property
    def free(self) -> float:
        """The length that is left in his columns down to his foot line, mm."""
        return sum(column.free or 0.0 for column in self.columns)

    @property
    def _signs_beside(self) -> float:
        return self.more_columns * self.column_length / min(self.pitches)

    @property
    def room(self) -> float:
        """The length his columns give, from head to foot line, less what takes room."""
        return self.room_after(0, 0) - self.more_columns * self.column_length

    @property
    def column_length(self) -> float:
        """The length a column could have."""
        return self.foot - self.top

    def capacity(self, pitch: float) -> int:
        """Return how many signs the plate holds at ``pitch``, in columns carved and to carve."""
        return int(self.room_after(0, 0) / pitch + 0.5)

    def room_after(self, column: int, sign: int) -> float:
        """Return the length left from ``sign`` (from 0) of a column to the end of the plate."""
        start = min(self.foot, self.top + sign * (self.columns[column].pitch or 0.0))
        starts = {column: start, **dict.fromkeys(range(column + 1, len(self.columns)), self.top)}
        free = sum(
            self.foot - at - _taken(number, at, self.foot, self.obstacles)
            for number, at in starts.items()
        )
        free += self.more_columns * self.column_length
        return max(0.0, free - self.after * median(self.pitches)) if self.after else free


def measures_of(copy: Transcription, measured: Inscription, after: int = 0) -> Measures | None:
    """Return what was measured, or None unless the plate and every column's ends are known.

    ``after`` counts the signs below the copied text that were not copied.
    """
    extents = [_extent(column, measured) for column in copy.columns]
    plate = measured.plate
    if plate is None or not extents or any(e is None for e in extents):
        return None
    known = [e for e in extents if e is not None]
    top = min(first for first, _ in known)
    foot = max(_foot_shown(copy, known, plate.height - top), known[-1][1])
    columns = tuple(
        _column(column, extent, foot, measured.takes_room)
        for column, extent in zip(copy.columns, known, strict=True)
    )
    end, what = _end_below(known[-1][1], len(known) - 1, plate.height, measured.takes_room)
    return Measures(
        _crowded(columns),
        top,
        foot,
        max(0.0, end - known[-1][1]),
        what,
        _more_columns(copy, measured),
        plate.slack,
        measured.takes_room,
        after,
    )


def _foot_shown(copy: Transcription, ends: list[tuple[float, float]], mirrored: float) -> float:
    """Return how far down the columns before the last go.

    Where they all end more than ``SHORT_BY`` signs above ``mirrored``, the upper margin kept below,
    they end with their line of the text, and show no foot line.
    """
    before = list(zip(copy.columns, ends, strict=True))[:-1]
    if not before:
        return mirrored
    column, (first, last) = max(before, key=lambda each: each[1][1])
    pitch = (last - first) / max(_carved(column), 1)
    return last if last > mirrored - SHORT_BY * pitch else mirrored


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


def unmeasured_columns(copy: Transcription) -> tuple[ColumnSpace, ...]:
    """Return each column's account where nothing was measured: how many signs it has."""
    return tuple(
        ColumnSpace(column.index, _carved(column), None, None, None) for column in copy.columns
    )


def _column(
    column: Column, extent: tuple[float, float], foot: float, obstacles: tuple[Obstacle, ...]
) -> ColumnSpace:
    first, last = extent
    signs = _carved(column)
    length = last - first - _taken(column.index, first, last, obstacles)
    if length < signs * CLOSEST:  # it stands beside the writing
        length = max(0.1, last - first)
    free = foot - last - _taken(column.index, last, foot, obstacles)
    pitch = length / signs if signs else None
    return ColumnSpace(
        column.index, signs, last - first, pitch, None, _trend(column), max(0.0, free)
    )


def _crowded(columns: tuple[ColumnSpace, ...]) -> tuple[ColumnSpace, ...]:
    """Return the columns with how much closer each is written than the widest."""
    widest = max((c.pitch for c in columns if c.pitch and c.signs >= FEW_SIGNS), default=None)
    return tuple(
        replace(c, crowding=round(widest / c.pitch, 3)) if widest and c.pitch else c
        for c in columns
    )


def _taken(column: int, start: float, end: float, obstacles: tuple[Obstacle, ...]) -> float:
    """Return how many mm between ``start`` and ``end`` of a column are taken."""
    return sum(
        max(0.0, min(end, obstacle.end) - max(start, obstacle.start))
        for obstacle in obstacles
        if obstacle.column == column
    )


def _end_below(
    last: float, column: int, height: float, obstacles: tuple[Obstacle, ...]
) -> tuple[float, str]:
    """Return how far down the last column could have gone, and what stands there."""
    standing = [
        (o.start, f"the {o.what}" if o.what else "what takes room")
        for o in obstacles
        if o.column == column and o.start >= last - NEXT_TO
    ]
    return min([(height - RIM, "the plate's edge"), *standing])


def _carved(column: Column) -> int:
    return sum(sign.is_carved for sign in column.signs)


def _extent(column: Column, measured: Inscription) -> tuple[float, float] | None:
    known = measured_column(measured, column) or reckoned_column(column)
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
    if len(steps) < FEW_SIGNS:
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
