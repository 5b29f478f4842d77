"""The space account: what the plate could hold, and what the metal has to do with each difference.

A difference by which the copy saves signs is *forced* where the evidence weighs for space and the
rest could not have fitted even at the carver's tightest pitch, *eased* where it weighs for space
though a tighter hand would have found room, *unexplained* where it does not weigh for space, and
*unmeasured* where the plate or a column was not measured. Verdicts are judgements on evidence.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import median
from typing import TYPE_CHECKING

from inscribe.collation.model import Group, Judgement, SpaceAccount, Verdict
from inscribe.collation.space import evidence
from inscribe.collation.space.measures import Measures, column_account, measures_of, missing

if TYPE_CHECKING:
    from inscribe.record import Inscription
    from inscribe.signs import Transcription

SPEAKS_FOR_SPACE = 2.0  # a weight from which on space explains a difference
CONTRACTING = frozenset({"omitted", "spelling", "kana", "replaced"})


def space_account(
    copy: Transcription,
    source: Transcription,
    differences: Sequence[Group],
    measured: Inscription | None,
    window: tuple[int, int] | None = None,
    after: int = 0,
) -> SpaceAccount | None:
    """Return the space account of a copy, or None for texts that are no measured inscription.

    ``window`` is the part of the source that is meant (signs from, to), where it is not all of it.
    ``after`` counts the signs below the copied text that were not copied (who wrote, who carved).
    """
    if measured is None or not copy.columns:
        return None
    first, last = window or (0, len(source.signs))
    need = sum(sign.is_carved for sign in source.signs[first:last])
    measures = measures_of(copy, measured, after)
    saving = [(n, group) for n, group in enumerate(differences) if saves_space(group)]
    if measures is None or not measures.pitches:
        wanted = missing(copy, measured)
        unknown = tuple(Judgement(n, "unmeasured", None, wanted) for n, _ in saving)
        return SpaceAccount(None, need, None, column_account(copy, measured), unknown, wanted)
    pitch = median(measures.pitches)
    return SpaceAccount(
        measures.capacity(pitch),
        need,
        pitch,
        measures.columns,
        tuple(_judged(n, group, copy, first + need, measures) for n, group in saving),
        (),
        measures.capacity(max(measures.pitches)),
        measures.capacity(min(measures.pitches)),
    )


def saves_space(group: Group) -> bool:
    """Whether the copy has fewer signs than the source there."""
    return group.kind in CONTRACTING and len(group.copy) < len(group.source)


def _judged(
    number: int, group: Group, copy: Transcription, need: int, measures: Measures
) -> Judgement:
    found = evidence.features(group, copy, need, measures)
    weight = round(evidence.weight(found), 2)
    return Judgement(
        number,
        _verdict(weight, group, copy, need, measures),
        weight,
        tuple(_said(found, group, copy, need, measures)),
    )


def _verdict(
    weight: float, group: Group, copy: Transcription, need: int, measures: Measures
) -> Verdict:
    if weight < SPEAKS_FOR_SPACE:
        return "unexplained"
    column, sign = evidence.place(group, copy)
    fits = (need - group.source.start) * min(measures.pitches) <= measures.room_after(column, sign)
    return "eased" if fits else "forced"


def _said(
    found: evidence.Features, group: Group, copy: Transcription, need: int, measures: Measures
) -> Iterator[str]:
    """Yield the measurements behind a verdict, in words."""
    column, sign = evidence.place(group, copy)
    widest, last = max(measures.pitches), measures.columns[-1]
    room = measures.room_after(column, sign)
    left = need - group.source.start
    yield (
        f"from column {column + 1}, sign {sign + 1}, {left} signs of the source were still to come:"
        f" {left * widest:.1f} mm at his widest pitch of {widest:.2f} mm, with {room:.1f} mm left"
    )
    yield (
        f"below the last column {max(last.free or 0.0, 0.0):.1f} mm stand empty,"
        f" room for {max(last.free or 0.0, 0.0) / (last.pitch or widest):.1f} more signs"
    )
    if found.crowding >= 0.05 and last.pitch:
        closer = (last.crowding or 1.0) - 1
        yield f"the last column is written {closer:.0%} closer (pitch {last.pitch:.2f} mm)"
    if measures.more_columns:
        yield f"the plate has room for {measures.more_columns} more columns"
    trends = [c for c in measures.columns if c.trend is not None and c.trend > 0.05]
    if trends:
        which = ", ".join(str(c.index + 1) for c in trends)
        yield f"the signs crowd towards the end of column {which}"
