"""Whom the inscriptions of one object may name: always as "may name", never as an attribution."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe.persons.listing import people
from inscribe.persons.naming import namings, signs_of_passage
from inscribe.persons.telling import told_apart
from inscribe.persons.weighing import Weighed, weighed
from inscribe.reading.words import Interpretation, MayName, Passage

if TYPE_CHECKING:
    from inscribe.dates import DateReading

MOST = 5  # persons told of one stretch
_SOMEBODY_ELSE = 1.0  # the odds of somebody who is in no list


def with_persons(found: Sequence[Interpretation]) -> list[Interpretation]:
    """Return the inscriptions of one object with the persons of the user's list they may name.

    A date on one inscription counts for all of them.

    Raises:
        InputError: the list of persons contradicts itself.
    """
    if not people():
        return list(found)
    dates = [date for each in found for date in each.dates]
    named = [replace(each, persons=tuple(_persons(each.passages, dates))) for each in found]
    return [told_apart(each) for each in named]


def _persons(passages: Sequence[Passage], dates: Sequence[DateReading]) -> Iterator[MayName]:
    stretch = 0
    for passage in passages:
        signs = signs_of_passage(passage)
        found = namings(passage, signs)
        every = [weighed(n, signs, dates, [o for o in found if o is not n]) for n in found]
        for rivals in _stretches(every):
            for named in _ranked(rivals):
                yield named._replace(stretch=stretch)
            stretch += 1


def _stretches(found: Sequence[Weighed]) -> list[list[Weighed]]:
    """Return what may be named by the same signs together, in the order of the signs."""
    groups: list[list[Weighed]] = []
    end = -1
    for each in sorted(found, key=lambda w: (w.named.first, -w.named.last)):
        if not groups or each.named.first > end:
            groups.append([])
        groups[-1].append(each)
        end = max(end, each.named.last)
    return groups


def _ranked(rivals: Sequence[Weighed]) -> Iterator[MayName]:
    total = _SOMEBODY_ELSE + sum(each.odds for each in rivals)
    best = sorted(rivals, key=lambda each: (-each.odds, each.named.id))
    for each in best[:MOST]:
        yield each.named._replace(chance=each.odds / total)
