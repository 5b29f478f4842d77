"""Doubts that come with the carving itself: signs of which one is not sure, dates at odds.

>>> from inscribe.notation import parse
>>> [(d.first, d.last, d.why) for d in doubts_of_signs(parse("花(カ)の［色は］").signs)]
[(0, 0, 'the sign is doubtful'), (2, 3, 'lost, and restored by an editor')]
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import groupby
from typing import TYPE_CHECKING

from inscribe.reading.words import CANNOT_BE_READ, Doubt, Interpretation, in_order
from inscribe.signs import Certainty, Sign
from inscribe.terms import SignIndex

if TYPE_CHECKING:
    from inscribe.dates import DateReading

_LAST_LATIN = "\u2fff"  # what is after it in a reading was not put into Latin letters
_WHY = {
    Certainty.DOUBTFUL: "the sign is doubtful",
    Certainty.RESTORED: "lost, and restored by an editor",
    Certainty.UNREADABLE: CANNOT_BE_READ,
}


def doubts_of_signs(signs: Sequence[Sign]) -> tuple[Doubt, ...]:
    """Return what is marked as doubtful, restored or not to be read, a run of signs at a time."""
    found = []
    for why, run in groupby(signs, key=lambda sign: _WHY.get(sign.certainty, "")):
        places = [SignIndex(sign.index) for sign in run]
        if why:
            found.append(Doubt(places[0], places[-1], why))
    return tuple(found)


def doubts_of_suspicions(signs: Sequence[Sign]) -> tuple[Doubt, ...]:
    """Return what is suspicious in signs as typed: marks outside the conventions, likely slips."""
    from inscribe.reading.suspicious import suspicions

    return tuple(
        Doubt(SignIndex(each.sign), SignIndex(each.end), f"{each.text}: {each.said}")
        for each in suspicions(signs)
    )


def with_doubts_of_signs(found: Interpretation, signs: Sequence[Sign]) -> Interpretation:
    """Return an interpretation with the doubts of its signs, each told once."""
    told = {(place, d.why) for d in found.doubts for place in range(d.first, d.last + 1)}
    new = [doubt for doubt in doubts_of_signs(signs) if (doubt.first, doubt.why) not in told]
    suspicious = doubts_of_suspicions(signs)
    if not new and not suspicious:
        return found
    return replace(found, doubts=in_order((*found.doubts, *new, *suspicious)))


def doubts_of_dates(dates: Iterable[DateReading]) -> tuple[Doubt, ...]:
    """Return the dates whose parts contradict one another, with the likeliest way out."""
    found = []
    for date in dates:
        if date.agreement == "conflict":
            way_out = f"; perhaps {date.suggestions[0]}" if date.suggestions else ""
            found.append(
                Doubt(
                    SignIndex(date.first),
                    SignIndex(date.last),
                    f"the date contradicts itself{way_out}",
                )
            )
    return tuple(found)


def with_doubts_of_unread(found: Interpretation) -> Interpretation:
    """Return an interpretation with a doubt for each word that stays as it is carved."""
    doubts = [
        Doubt(token.first, token.last, f"no reading of {left} is known; it stands as carved")
        for token in found.proposals[0].tokens
        if (left := "".join(sign for sign in token.romaji if sign > _LAST_LATIN))
    ]
    return replace(found, doubts=in_order((*found.doubts, *doubts)))
