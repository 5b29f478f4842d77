"""The space account: what the plate could hold, and what the metal has to do with each difference.

A difference by which the copy saves signs is *forced* where the evidence weighs for space and the
rest of the text had not fitted from there on even at his tightest pitch, *eased* where it weighs
for space though a tighter hand had found room, *unexplained* where the evidence weighs against
space, *undecided* between, and *unmeasured* where the plate or a column was not measured. On a
plate written to its foot space is never ruled out, unless another explanation shows. Verdicts are
judgements on evidence.
"""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median
from typing import TYPE_CHECKING

from inscribe.collation.accounts import Judgement, SpaceAccount, Verdict
from inscribe.collation.parts import Group
from inscribe.collation.space import evidence, reasons
from inscribe.collation.space.evidence import Case, saves_space
from inscribe.collation.space.measures import measures_of, missing, unmeasured_columns

if TYPE_CHECKING:
    from inscribe.record import Inscription
    from inscribe.signs import Transcription
    from inscribe.terms import Verdict

SPEAKS_FOR_SPACE = 2.0  # odds from which on space explains a difference
SPEAKS_AGAINST = 0.5  # odds below which it does not
A_WORD = 2  # signs from which on a word that comes twice is no chance
ROOM_FOR_MORE = 1.0  # signs below the last one from which on a plate is not written to its foot


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
        columns = measures.columns if measures else unmeasured_columns(copy)
        unknown = tuple(Judgement(n, "unmeasured", None, wanted=wanted) for n, _ in saving)
        return SpaceAccount(None, need, None, columns, unknown, wanted)
    pitch = median(measures.pitches)
    case = Case(copy, source, differences, (first, last), measures)
    return SpaceAccount(
        measures.capacity(pitch),
        need,
        pitch,
        measures.columns,
        tuple(_judged(n, group, case) for n, group in saving),
        (),
        measures.capacity(max(measures.pitches)),
        measures.capacity(min(measures.pitches)),
        measures.room,
        case.missing,
    )


def _judged(number: int, group: Group, case: Case) -> Judgement:
    found = evidence.features(group, case)
    weight = round(evidence.weight(found), 3)
    rival = reasons.rival(group, case)
    speaks_for, speaks_against = reasons.said(found, group, case)
    return Judgement(
        number, _verdict(weight, group, case), weight, speaks_for, speaks_against, rival
    )


def _verdict(weight: float, group: Group, case: Case) -> Verdict:
    measures = case.measures
    if weight >= SPEAKS_FOR_SPACE:
        rest = (case.window[1] - group.source.start) * min(measures.pitches)
        room = measures.room_after(*case.place(group)) + measures.slack
        return "eased" if rest <= room else "forced"
    has_rival = group.kind == "replaced" or len(case.skipped(group)) >= A_WORD
    is_full = measures.signs_below < ROOM_FOR_MORE and not has_rival
    return "unexplained" if weight < SPEAKS_AGAINST and not is_full else "undecided"
