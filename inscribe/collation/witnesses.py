"""A copy against several sources: which one it follows, and a critical apparatus.

A copy follows a source where it shares readings with it that the other sources do not have: each
place where the copy differs in wording from one source and not from another speaks for the other.
A source that does not contain the text at all says nothing about it, and is kept out of both.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from inscribe.collation.model import Collation, Group


@dataclass(frozen=True, slots=True)
class Witness:
    """One source, how far the copy departs from it, and what only the two of them share."""

    siglum: str
    title: str
    collation: Collation
    differences: int  # in wording
    shared: tuple[str, ...]  # readings of the copy that this source has and another has not

    @property
    def has_text(self) -> bool:
        """Whether the source contains the copy's text at all."""
        return self.collation.is_of_same_text


@dataclass(frozen=True, slots=True)
class ApparatusEntry:
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
    apparatus: tuple[ApparatusEntry, ...]

    @property
    def followed(self) -> Witness | None:
        """The source the copy follows, where one departs less than all others."""
        with_text = [witness for witness in self.witnesses if witness.has_text]
        if not with_text:
            return None
        first, *rest = with_text
        return first if not rest or first.differences < rest[0].differences else None


def testimony(collations: Sequence[Collation], titles: Sequence[str]) -> Testimony:
    """Return what several sources say of one copy; ``collations`` all have the same copy."""
    sigla = [_siglum(number) for number in range(len(collations))]
    wording = {
        sigla[n]: [group for group in collation.groups if group.is_substantive]
        for n, collation in enumerate(collations)
        if collation.is_of_same_text
    }
    found = [
        _witness(siglum, title, collation, wording)
        for siglum, title, collation in zip(sigla, titles, collations, strict=True)
    ]
    found.sort(key=lambda w: (not w.has_text, w.differences, w.collation.cost))
    return Testimony(tuple(found), _apparatus(wording))


def _witness(
    siglum: str, title: str, collation: Collation, wording: Mapping[str, Sequence[Group]]
) -> Witness:
    differences = sum(group.is_substantive for group in collation.groups)
    shared = _shared(siglum, wording) if siglum in wording else ()
    return Witness(siglum, title, collation, differences, shared)


def _siglum(number: int) -> str:
    letter = ascii_uppercase[number % 26]
    return letter if number < 26 else f"{letter}{number // 26}"


def _shared(own: str, wording: Mapping[str, Sequence[Group]]) -> tuple[str, ...]:
    mine = wording[own]
    shared = {
        (group.copy.start, group.copy.text)
        for other, groups in wording.items()
        if other != own
        for group in groups
        if len(group.copy) and not any(_touch(group, difference) for difference in mine)
    }
    return tuple(text for _, text in sorted(shared))


def _touch(one: Group, other: Group) -> bool:
    return (
        one.copy.start < other.copy.end and other.copy.start < one.copy.end
    ) or one.copy == other.copy


def _apparatus(wording: Mapping[str, Sequence[Group]]) -> tuple[ApparatusEntry, ...]:
    places: dict[tuple[int, int], dict[str, list[str]]] = {}
    lemmas: dict[tuple[int, int], str] = {}
    for siglum, groups in wording.items():
        for group in groups:
            place = (group.copy.start, group.copy.end)
            lemmas[place] = group.copy.text
            places.setdefault(place, {}).setdefault(group.source.text, []).append(siglum)
    return tuple(
        ApparatusEntry(
            *place, lemmas[place], tuple((text, " ".join(s)) for text, s in readings.items())
        )
        for place, readings in sorted(places.items())
    )
