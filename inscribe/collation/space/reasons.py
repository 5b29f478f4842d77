"""The reasons for and against want of space, in words, each on the side it is weighed on."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median
from typing import TYPE_CHECKING

from inscribe.collation.space import evidence

if TYPE_CHECKING:
    from inscribe.collation.accounts import ColumnSpace
    from inscribe.collation.parts import Group
    from inscribe.collation.space.evidence import Case, Features

NOTHING = 0.5  # mm; less cannot be measured
AT_END = 0.95  # share of a column from which on a place is at its end
TELLING = 0.15  # what a feature adds to the logarithm of the weight, from which on it is told


def said(found: Features, group: Group, case: Case) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return what speaks for want of space and what against it, the weightiest first."""
    added = evidence.contributions(found)
    told = [(added[feature], sentence) for feature, sentence in _sentences(found, group, case)]
    told.sort(key=lambda each: -abs(each[0]))
    return (
        tuple(sentence for value, sentence in told if value >= TELLING),
        tuple(sentence for value, sentence in told if value <= -TELLING),
    )


def rival(group: Group, case: Case) -> str:
    """Return another explanation that the texts themselves suggest, or nothing."""
    if words := case.skipped(group):
        return f"eye-skip: the carver's eye may have gone from one {words} to the next"
    if group.kind == "replaced":
        return f"other wording: the text he copied may have had {group.copy.text}"
    if evidence.is_rewritten(group):
        return "habit, which the chance leaves aside: he may write the word so everywhere"
    return ""


def _sentences(found: Features, group: Group, case: Case) -> Iterator[tuple[str, str]]:
    """Yield each feature that has something to say, and what it says."""
    yield "full", _below(case)
    if found.cut_off:
        yield "cut_off", "it is the end of the text that is missing"
    yield "too_much", _missing(case)
    if others := case.concessions(group):
        places = "one other place" if others == 1 else f"{others} other places"
        yield "concessions", f"he saves signs in {places} of the plate"
    if found.shorter_writing:
        yield "shorter_writing", "the word is there, in a shorter writing"
    if found.other_word:
        yield "other_word", "another word stands there, not a shorter writing of it"
    if found.eye_skip:
        yield "eye_skip", f"the gap begins and ends with the same words, {case.skipped(group)}"
    if found.words_lost:
        yield "words_lost", f"{_signs_are(len(group.source))} missing in the middle of the text"
    if found.heading:
        yield "heading", "a whole line like a title or a name is missing"
    yield from _along(found, group, case)


def _along(found: Features, group: Group, case: Case) -> Iterator[tuple[str, str]]:
    """Yield what the columns tell."""
    last = case.measures.columns[-1]
    if found.late:
        down = case.place(group)[1] / max(last.signs, 1)
        yield "late", f"it falls {_down(down)} the last column"
    if found.drawn_together:
        yield "drawn_together", f"the last column is written {_closer(last)}"


def _down(share: float) -> str:
    """Return how far down a place is.

    >>> _down(0.4), _down(1.0)
    ('40% down', 'at the end of')
    """
    return "at the end of" if share > AT_END else f"{share:.0%} down"


def _closer(last: ColumnSpace) -> str:
    """Return how the signs of the last column are drawn together."""
    said = []
    if last.pitch and last.crowding and last.crowding > 1:
        said.append(f"{1 - 1 / last.crowding:.0%} closer than the widest")
    if last.trend and last.trend > 0:
        said.append(f"{last.trend:.0%} closer towards its end")
    return f"{' and '.join(said)} (pitch {last.pitch or 0.0:.1f} mm)"


def _below(case: Case) -> str:
    measures = case.measures
    room = f"below the last sign {measures.below:.1f} mm are left to {measures.below_to}"
    more = ""
    if measures.more_columns:
        columns = (
            "1 more column"
            if measures.more_columns == 1
            else f"{measures.more_columns} more columns"
        )
        more = f", and the plate has room for {columns}"
    return f"{room}, {_fitting(measures.below / measures.last_pitch)}{more}"


def _fitting(signs: float) -> str:
    """Return how many signs fit, in words.

    >>> _fitting(0.4), _fitting(1.7), _fitting(6.2)
    ('too little for a sign', 'enough for 1 sign', 'enough for 6 signs')
    """
    return f"enough for {_signs(int(signs))}" if signs >= 1 else "too little for a sign"


def _missing(case: Case) -> str:
    pitch = median(case.measures.pitches)
    length = case.missing * pitch
    free = case.measures.free
    left = f"{free:.1f} mm" if free >= NOTHING else "nothing"
    have = "his column has" if len(case.measures.columns) == 1 else "his columns have"
    return (
        f"the {_signs(case.missing)} missing on the plate would have taken {length:.0f} mm at"
        f" {pitch:.1f} mm each, and {have} {left} left"
    )


def _signs_are(count: int) -> str:
    return f"{_signs(count)} {'is' if count == 1 else 'are'}"


def _signs(count: int) -> str:
    return "1 sign" if count == 1 else f"{count} signs"
