"""A copy against several sources: an apparatus of one entry a place, and which source it follows.

Each source is held against the copy alone; their differences are laid over one another
(``apparatus``). A source that does not contain the text at all says nothing, and is kept out.

What the copy follows is told with its chance. A copyist keeps the wording of what lies before him
save for a slip now and then; so at the places where the sources are divided, his source should
agree with him nearly always. A text that is none of these would agree with each of them as often as
not.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_uppercase
from typing import TYPE_CHECKING, NamedTuple

from inscribe import notebook
from inscribe.collation.apparatus import ApparatusPlace, apparatus_places
from inscribe.collation.model import Collation

if TYPE_CHECKING:
    from inscribe.keys import TestimonyKeys, WitnessKeys
    from inscribe.terms import SourceKind

# From memory, no source: how often a copyist departs from his source at a place where the sources
# are divided, and how likely it is beforehand that he had none of them before him.
SLIP = 0.1
NONE_OF_THEM = 0.1
SURE = 0.9  # the chance from which on a source is said to be followed


class WitnessSource(NamedTuple):
    """What is known of one source: its siglum (may be empty), its title, and what it is.

    >>> from inscribe import WitnessSource, collate_texts, testimony
    >>> print_of_it = WitnessSource(siglum="P", title="a print")
    >>> found = testimony([collate_texts("花の色", "はなの色")], [print_of_it])
    """

    siglum: str = ""
    title: str = ""
    kind: SourceKind | None = None


@dataclass(frozen=True, slots=True)
class Witness:
    """One source, and what the copy shares with it."""

    siglum: str
    title: str
    kind: SourceKind | None
    collation: Collation
    differences: int  # places where its wording is not the copy's
    shared_alone: tuple[int, ...]  # places where it alone of all has the copy's wording
    chance: float | None  # that the copy follows it, None where it does not contain the text

    @property
    def has_text(self) -> bool:
        """Whether the source contains the copy's text at all."""
        return self.collation.is_of_same_text

    def to_dict(self) -> WitnessKeys:
        """Return it as printed in JSON."""
        return {
            "siglum": self.siglum,
            "title": self.title,
            "kind": self.kind,
            "has_text": self.has_text,
            "differences": self.differences,
            "shared_alone": list(self.shared_alone),
            "chance": None if self.chance is None else round(self.chance, 3),
        }


@dataclass(frozen=True, slots=True)
class Testimony:
    """All sources, those with the text first, and the apparatus in the order of the copy.

    >>> from inscribe import WitnessSource, collate_texts, testimony
    >>> collation = collate_texts("風の音におどろく", "風の色におどろく")
    >>> [str(place) for place in testimony([collation], [WitnessSource(siglum="A")]).places]
    ['音に ] 色に A']
    """

    witnesses: tuple[Witness, ...]
    places: tuple[ApparatusPlace, ...]
    as_given: tuple[Witness, ...] = ()  # the same in the order in which they were given

    def __repr__(self) -> str:
        sources = notebook.counted(len(self.witnesses), "source")
        places = notebook.counted(len(self.places), "place")
        return f"<Testimony of {sources}: {places}>"

    @property
    def nearest(self) -> Witness | None:
        """The source that the copy follows likeliest, None where none contains the text."""
        known = [each for each in self.witnesses if each.chance is not None]
        return max(known, key=lambda each: each.chance or 0.0, default=None)

    @property
    def followed(self) -> Witness | None:
        """The source that the copy follows, None where that is undecided."""
        nearest = self.nearest
        return nearest if nearest and (nearest.chance or 0.0) >= SURE else None

    def to_dict(self) -> TestimonyKeys:
        """Return it as printed in JSON, without the collations."""
        return {
            "witnesses": [each.to_dict() for each in self.witnesses],
            "places": [each.to_dict() for each in self.places],
            "follows": self.followed.siglum if self.followed else None,
        }


def testimony(collations: Sequence[Collation], sources: Sequence[WitnessSource]) -> Testimony:
    """Return what several sources say of one copy; ``collations`` all have the same copy.

    >>> from inscribe.collation import collate_texts
    >>> copy, first, other = "風の音におどろく", "風の音にぞおどろく", "風の色におどろく"
    >>> collations = [collate_texts(copy, each) for each in (first, other)]
    >>> found = testimony(collations, [WitnessSource()] * 2)
    >>> [str(place) for place in found.places]
    ['音に ] 音にぞ A, 色に B']
    """
    sigla = _sigla(sources)
    with_text = {
        siglum: each for siglum, each in zip(sigla, collations, strict=True) if each.is_of_same_text
    }
    places = tuple(apparatus_places(with_text))
    chances = _chances(places, tuple(with_text))
    found = [
        Witness(
            siglum,
            source.title,
            source.kind,
            collation,
            sum(siglum in place.differing for place in places),
            tuple(at for at, place in enumerate(places) if _has_alone(place, siglum)),
            chances.get(siglum),
        )
        for siglum, source, collation in zip(sigla, sources, collations, strict=True)
    ]
    ranked = sorted(found, key=lambda each: (not each.has_text, -(each.chance or 0.0)))
    return Testimony(tuple(ranked), places, tuple(found))


def _sigla(sources: Sequence[WitnessSource]) -> list[str]:
    """Return the siglum of each source: its own, else the next letter that none has."""
    own = {source.siglum for source in sources}
    letters = (
        f"{letter}{round_ or ''}"
        for round_ in range(len(sources) + 1)
        for letter in ascii_uppercase
        if f"{letter}{round_ or ''}" not in own
    )
    return [source.siglum or next(letters) for source in sources]


def _has_alone(place: ApparatusPlace, siglum: str) -> bool:
    agreeing = [each.siglum for each in place.readings if each.agrees]
    return len(place.readings) > 1 and agreeing == [siglum]


def _chances(places: Sequence[ApparatusPlace], sigla: Sequence[str]) -> dict[str, float]:
    """Return the chance of each source to be the one that was copied; see the module's text."""
    divided = [
        {each.siglum for each in place.readings if each.agrees}
        for place in places
        if len({each.agrees for each in place.readings}) > 1
    ]
    if not sigla:
        return {}
    likelihoods = {}
    for siglum in sigla:
        agreeing = sum(siglum in agree for agree in divided)
        likelihoods[siglum] = (1 - SLIP) ** agreeing * SLIP ** (len(divided) - agreeing)
    prior = (1 - NONE_OF_THEM) / len(sigla)
    total = sum(likelihoods.values()) * prior + NONE_OF_THEM * 0.5 ** len(divided)
    return {siglum: likelihood * prior / total for siglum, likelihood in likelihoods.items()}
