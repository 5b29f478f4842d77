"""The reasons for and against want of space, in words, each on the side it is weighed on."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median
from typing import TYPE_CHECKING

from inscribe.collation.space import evidence

if TYPE_CHECKING:
    from inscribe.collation.parts import Group
    from inscribe.collation.space.evidence import Case, Features

TELLING = 0.15  # what a feature adds to the logarithm of the weight, from which on it is told


def said(found: Features, group: Group, case: Case) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return what speaks for want of space and what against it, the weightiest first."""
    added = evidence.contributions(found)
    added["full"] += added["cut_off"]  # one circumstance, told once
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
    return ""


def _sentences(found: Features, group: Group, case: Case) -> Iterator[tuple[str, str]]:
    """Yield each feature that has something to say, and what it says."""
    yield "full", _below(found, case)
    yield "too_much", _missing(case)
    if found.other_savings:
        others = sum(other is not group for other in case.deliberate)
        places = "one other place" if others == 1 else f"{others} other places"
        yield "other_savings", f"he saves signs in {places} of the plate"
    if found.shorter_writing:
        yield "shorter_writing", "the word is there, in a shorter writing"
    if found.other_word:
        yield "other_word", "another word stands there, not a shorter writing of it"
    if found.eye_skip:
        yield "eye_skip", f"the gap begins and ends with the same words, {case.skipped(group)}"
    if found.words_lost:
        lost = len(group.source)
        yield (
            "words_lost",
            f"{_signs(lost)} {'is' if lost == 1 else 'are'} missing in the middle of the text",
        )
    if found.heading:
        yield "heading", "a whole first or last line is missing, such as a title or a name"
    yield from _along(found, case)


def _along(found: Features, case: Case) -> Iterator[tuple[str, str]]:
    """Yield what the last column tells."""
    last = case.measures.columns[-1]
    if found.late:
        yield "late", f"it falls in the last column, {found.late:.0%} of the way down"
    if last.pitch and last.crowding and found.crowding:
        by = f"{1 - 1 / last.crowding:.0%} closer than the widest"
        yield "crowding", f"the last column is written {by} (pitch {last.pitch:.1f} mm)"
    if found.trend:
        how = "draw together" if found.trend > 0 else "spread"
        yield "trend", f"the signs of the last column {how} by {abs(found.trend):.0%} on the way"


def _below(found: Features, case: Case) -> str:
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
    end = ", and the end of the text is what is missing" if found.cut_off else ""
    return f"{room}, {_fitting(measures.below / measures.last_pitch)}{more}{end}"


def _fitting(signs: float) -> str:
    """Return how many signs fit, in words.

    >>> _fitting(0.4), _fitting(1.7), _fitting(6.2)
    ('too little for a sign', 'enough for 1 sign', 'enough for 6 signs')
    """
    return f"enough for {_signs(int(signs))}" if signs >= 1 else "too little for a sign"


def _missing(case: Case) -> str:
    pitch = median(case.measures.pitches)
    length = case.missing * pitch
    what = f"{_signs(case.missing)} missing on the plate"
    left = f"{case.measures.below:.1f} mm are left"
    return f"the {what} would have taken {length:.0f} mm at {pitch:.1f} mm each, and {left}"


def _signs(count: int) -> str:
    return "1 sign" if count == 1 else f"{count} signs"
