"""What the plate could hold, what the source needs, and where the signs crowd.

A first account: the pitch (mm from sign to sign) of each measured column, the carver's median
pitch, how many signs the plate holds at that pitch in the columns as carved, and what the source
needs in its own spelling. An omission is called forced where the source cannot fit, eased where
it could fit but the column is crowded, unexplained where there was room.

Rule of thumb, common practice, no published source: a column is crowded when its signs stand at
least a tenth closer than the carver's median.
"""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median

from inscribe.collate.model import ColumnSpace, Group, Judgement, SpaceAccount, Verdict
from inscribe.record import Inscription
from inscribe.signs import Column, Transcription

CROWDED = 1.1


def space_account(
    copy: Transcription,
    source: Transcription,
    differences: Sequence[Group],
    measurements: Inscription | None,
) -> SpaceAccount | None:
    """Return the space account of a measured copy, or None where there is nothing to say.

    Nothing is said of a text that was given without measurements: it may be no inscription.
    """
    if measurements is None:
        return None
    columns = _columns(copy, measurements)
    pitches = [c.pitch for c in columns if c.pitch]
    pitch = median(pitches) if pitches else None
    capacity = _capacity(measurements, pitch, len(columns))
    need = sum(sign.is_carved for sign in source.signs)
    judgements = tuple(
        _judged(number, group, copy, columns, capacity, need)
        for number, group in enumerate(differences)
        if saves_space(group)
    )
    return SpaceAccount(capacity, need, pitch, columns, judgements, _wanted(measurements))


def saves_space(group: Group) -> bool:
    """Whether the copy has fewer signs than the source there."""
    return group.kind != "unread" and len(group.copy) < len(group.source)


def _columns(copy: Transcription, measurements: Inscription) -> tuple[ColumnSpace, ...]:
    lengths = [_length(column, measurements) for column in copy.columns]
    counts = [sum(sign.is_carved for sign in column.signs) for column in copy.columns]
    pitches = [n and length / n if length else None for n, length in zip(counts, lengths, strict=True)]
    known = [pitch for pitch in pitches if pitch]
    middle = median(known) if known else None
    return tuple(
        ColumnSpace(i, n, length, pitch, round(middle / pitch, 3) if middle and pitch else None)
        for i, (n, length, pitch) in enumerate(zip(counts, lengths, pitches, strict=True))
    )


def _length(column: Column, measurements: Inscription) -> float | None:
    if column.index < len(measurements.columns):
        return measurements.columns[column.index].length
    boxes = [sign.box for sign in column.signs if sign.box is not None]
    if len(boxes) < 2:
        return None
    return max(box.y + box.height for box in boxes) - min(box.y for box in boxes)


def _capacity(measurements: Inscription, pitch: float | None, columns: int) -> int | None:
    """Return how many signs fit at ``pitch`` between the carver's own margins, in his columns."""
    if measurements.plate is None or not measurements.columns or not pitch:
        return None
    top = min(column.top for column in measurements.columns)
    bottom = max(column.bottom for column in measurements.columns)
    return columns * int((bottom - top) / pitch + 0.5)


def _judged(
    number: int,
    group: Group,
    copy: Transcription,
    columns: Sequence[ColumnSpace],
    capacity: int | None,
    need: int,
) -> Judgement:
    column = columns[_column_of(group, copy)]
    if capacity is None or column.crowding is None:
        return Judgement(number, "unmeasured", None, ("the plate or its columns are not measured",))
    evidence = (
        f"the source needs {need} signs; the plate holds {capacity} at the carver's own pitch",
        f"column {column.index + 1} is written {column.crowding:.2f} times as close as his median",
    )
    verdict: Verdict = "unexplained"
    if need > capacity:
        verdict = "forced"
    elif column.crowding >= CROWDED:
        verdict = "eased"
    return Judgement(number, verdict, None, evidence)


def _column_of(group: Group, copy: Transcription) -> int:
    if not copy.signs:
        return 0
    return copy.signs[min(group.copy.start, len(copy.signs) - 1)].column


def _wanted(measurements: Inscription) -> tuple[str, ...]:
    wanted = []
    if measurements.plate is None:
        wanted.append("width and height of the plate (mm)")
    if not measurements.columns:
        wanted.append("top and bottom of each column (mm from the plate's upper edge)")
    return tuple(wanted)
