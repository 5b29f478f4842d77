"""Columns whose signs were measured one by one: where they end, and which signs have no box."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from inscribe.record.model import ColumnMeasure, Inscription
from inscribe.signs import Column, place_of

ENOUGH = 3  # boxes from which the ends of a column are reckoned


def column_of_boxes(column: Column) -> ColumnMeasure | None:
    """Return where a column stands by the boxes of its first and last carved sign, if it has them.

    Its width is that of all its boxes together.
    """
    carved = [sign for sign in column.signs if sign.is_carved]
    if not carved or carved[0].box is None or carved[-1].box is None:
        return None
    boxes = [sign.box for sign in column.signs if sign.box is not None]
    top, bottom = min(box.y for box in boxes), max(box.y + box.height for box in boxes)
    x, right = min(box.x for box in boxes), max(box.x + box.width for box in boxes)
    return ColumnMeasure(top, bottom, x, right - x)


def measured_column(inscription: Inscription, column: Column) -> ColumnMeasure | None:
    """Return where a column stands: as the record measures it, or else by its boxes."""
    if column.index < len(inscription.columns):
        return inscription.columns[column.index]
    return column_of_boxes(column)


def reckoned_column(column: Column) -> ColumnMeasure | None:
    """Return where a column ends as reckoned from the boxes of some of its signs.

    The signs between are taken to stand at equal distances; from fewer than ``ENOUGH`` boxes
    nothing is reckoned.
    """
    carved = [sign for sign in column.signs if sign.is_carved]
    boxed = [(n, sign.box) for n, sign in enumerate(carved) if sign.box is not None]
    if len(boxed) < ENOUGH:
        return None
    (first, upper), (last, lower) = boxed[0], boxed[-1]
    pitch = (lower.y + lower.height / 2 - upper.y - upper.height / 2) / (last - first)
    top = max(0.0, upper.y - first * pitch)
    bottom = lower.y + lower.height + (len(carved) - 1 - last) * pitch
    return ColumnMeasure(top, bottom) if bottom > top else None


def partly_boxed(inscription: Inscription) -> Iterator[str]:
    """Yield each column of which some signs have a box and others have none, and how it ends.

    Signs that the editor supplied stand nowhere on the metal and need none.
    """
    t = inscription.transcription
    for column in t.columns:
        carved = [sign for sign in column.signs if sign.is_carved]
        bare = [sign.index for sign in carved if sign.box is None]
        if not bare or len(bare) == len(carved):
            continue
        places = "; ".join(place_of(t, first, last) for first, last in _runs(bare))
        by = _end_of(column, inscription)
        have = "has" if len(bare) == 1 else "have"
        yield f"{len(bare)} of {len(carved)} signs {have} no box ({places}); {by}"


def _end_of(column: Column, inscription: Inscription) -> str:
    """Return what says where a partly boxed column ends."""
    own, known = column_of_boxes(column), inscription.columns[column.index : column.index + 1]
    ends = "where the column begins and ends"
    if known and known[0] != own:
        return f"the record says {ends}"
    if own:
        return f"its first and last box say {ends}"
    is_reckoned = reckoned_column(column) is not None
    return f"{ends} is " + ("reckoned from the others" if is_reckoned else "not known")


def _runs(numbers: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Yield the first and last of each run of following numbers.

    >>> list(_runs([1, 2, 3, 7]))
    [(1, 3), (7, 7)]
    """
    first = 0
    for at in range(1, len(numbers) + 1):
        if at == len(numbers) or numbers[at] != numbers[at - 1] + 1:
            yield numbers[first], numbers[at - 1]
            first = at
