"""A copy against several sources: which one it follows, and a critical apparatus.

A copy follows a source where it shares readings with it that the other sources do not have: each
place where the copy differs in wording from one source and not from another speaks for the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from inscribe.collate.model import Collation, Group


@dataclass(frozen=True, slots=True)
class Witness:
    """One source, how far the copy departs from it, and what only the two of them share."""

    siglum: str
    title: str
    collation: Collation
    differences: int  # in wording
    shared: tuple[str, ...]  # readings of the copy that this source has and another has not


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of the apparatus: the copy's words, and what the witnesses have instead."""

    start: int
    end: int
    lemma: str
    readings: tuple[tuple[str, str], ...]  # (reading, sigla); an empty reading is an omission

    def __str__(self) -> str:
        variants = ", ".join(f"{text or 'om.'} {sigla}" for text, sigla in self.readings)
        return f"{self.lemma or 'om.'} ] {variants}"


@dataclass(frozen=True, slots=True)
class Testimony:
    """All witnesses, the nearest first, and the apparatus in the order of the copy."""

    witnesses: tuple[Witness, ...]
    apparatus: tuple[Entry, ...]

    @property
    def followed(self) -> Witness | None:
        """The source the copy follows, where one departs less than all others."""
        first, *rest = self.witnesses
        return first if not rest or first.differences < rest[0].differences else None


def testimony(collations: Sequence[Collation], titles: Sequence[str]) -> Testimony:
    """Return what several sources say of one copy; ``collations`` all have the same copy."""
    sigla = [_siglum(number) for number in range(len(collations))]
    wording = [[group for group in c.groups if group.is_substantive] for c in collations]
    found = [
        Witness(sigla[n], titles[n], collation, len(wording[n]), _shared(n, wording))
        for n, collation in enumerate(collations)
    ]
    found.sort(key=lambda witness: (witness.differences, witness.collation.cost))
    return Testimony(tuple(found), _apparatus(collations, wording, sigla))


def _siglum(number: int) -> str:
    letter = ascii_uppercase[number % 26]
    return letter if number < 26 else f"{letter}{number // 26}"


def _shared(own: int, wording: Sequence[Sequence[Group]]) -> tuple[str, ...]:
    mine = wording[own]
    shared = {
        (group.copy.start, group.copy.text)
        for other, groups in enumerate(wording)
        if other != own
        for group in groups
        if len(group.copy) and not any(_touch(group, difference) for difference in mine)
    }
    return tuple(text for _, text in sorted(shared))


def _touch(one: Group, other: Group) -> bool:
    return (
        one.copy.start < other.copy.end and other.copy.start < one.copy.end
    ) or one.copy == other.copy


def _apparatus(
    collations: Sequence[Collation], wording: Sequence[Sequence[Group]], sigla: Sequence[str]
) -> tuple[Entry, ...]:
    places: dict[tuple[int, int], dict[str, list[str]]] = {}
    lemmas: dict[tuple[int, int], str] = {}
    for groups, siglum in zip(wording, sigla, strict=True):
        for group in groups:
            place = (group.copy.start, group.copy.end)
            lemmas[place] = group.copy.text
            places.setdefault(place, {}).setdefault(group.source.text, []).append(siglum)
    return tuple(
        Entry(*place, lemmas[place], tuple((text, " ".join(s)) for text, s in readings.items()))
        for place, readings in sorted(places.items())
    )
