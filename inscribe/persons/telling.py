"""Two persons of the list who write a name alike and read it otherwise: both readings, ranked.

The list gives 露岳 as Rogaku of one person and as Tsuyuoka of another. Both are proposed; which
comes first is said by what agrees with the one or the other (``weighing``), and a doubt says so.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import TypeVar

from inscribe.persons.listing import people
from inscribe.reading.spelling import hepburn
from inscribe.reading.words import (
    Chances,
    Doubt,
    Interpretation,
    MayName,
    Passage,
    Proposal,
    SignaturePart,
    Token,
    in_order,
)
from inscribe.terms import SignIndex

Read = TypeVar("Read", Interpretation, Passage)

_READINGS = 2  # from how many readings on a name must be told apart
_LEAST = 1e-6  # of a reading that no person of the list has


def told_apart(found: Interpretation) -> Interpretation:
    """Return an interpretation with the readings first that agree with whom it may name."""
    doubts: list[Doubt] = []
    for stretch in _stretches(found.persons):
        for written, by_kana in _ways(stretch).items():
            passages = tuple(_reread(each, written, by_kana) for each in found.passages)
            found = replace(_reread(found, written, by_kana), passages=passages)
            doubts.append(_doubt(stretch, written, by_kana))
    return replace(found, doubts=in_order((*found.doubts, *doubts))) if doubts else found


def _reread(found: Read, written: str, by_kana: dict[str, float]) -> Read:
    """Return a reading with its proposals ranked anew, its parts read as the best of them is."""
    proposals = _ranked(found.proposals, written, by_kana)
    if not proposals or proposals[0] is found.proposals[0] or not found.signature:
        return replace(found, proposals=proposals)
    pairs = list(zip(found.proposals[0].tokens, proposals[0].tokens, strict=False))
    parts = {key: _said_otherwise(part, pairs) for key, part in found.signature.items()}
    return replace(found, proposals=proposals, signature=parts)


def _said_otherwise(part: SignaturePart, pairs: Iterable[tuple[Token, Token]]) -> SignaturePart:
    """Return a part of a signature with the words that another proposal reads otherwise."""
    for old, new in pairs:
        inside = part.first <= old.first and old.last <= part.last and old.first == new.first
        if inside and old.last == new.last and old.romaji != new.romaji:
            others = (part.romaji, *(each for each in part.alternatives if each != new.romaji))
            part = part._replace(
                kana=part.kana.replace(old.kana, new.kana, 1),
                romaji=part.romaji.replace(old.romaji, new.romaji, 1),
                alternatives=others if part.alternatives else (),
            )
    return part


def _stretches(persons: Sequence[MayName]) -> Iterator[list[MayName]]:
    """Yield the persons whom the same signs may name, where there are several."""
    for number in dict.fromkeys(person.stretch for person in persons):
        rivals = [person for person in persons if person.stretch == number]
        if len(rivals) >= _READINGS:
            yield rivals


def _ways(rivals: Sequence[MayName]) -> dict[str, dict[str, float]]:
    """Return each name that is read in several ways: its readings in kana with their weights."""
    found: dict[str, dict[str, float]] = {}
    for rival in rivals:
        for form in people()[rival.id].forms:
            if form.kana and form.written in rival.text:
                by_kana = found.setdefault(form.written, {})
                kana = form.kana.replace("|", "")
                by_kana[kana] = by_kana.get(kana, 0.0) + rival.chance
    return {written: by_kana for written, by_kana in found.items() if len(by_kana) >= _READINGS}


def _ranked(
    proposals: Sequence[Proposal], written: str, by_kana: dict[str, float]
) -> tuple[Proposal, ...]:
    """Return proposals, those first that read a name as the likelier person of the list does.

    What chance they have together is shared out among them by the persons' weights.
    """
    said = [_said(each.tokens, written) for each in proposals]
    weights = [
        max(by_kana.get(kana, 0.0), _LEAST) * each.score if kana else 0.0
        for kana, each in zip(said, proposals, strict=True)
    ]
    total = sum(weights)
    if not total:
        return tuple(proposals)
    pool = min(1.0, sum(p.chance for p, kana in zip(proposals, said, strict=True) if kana))
    firsts = {said.index(kana) for kana in by_kana if kana in said}  # the best of each reading
    order = sorted(range(len(proposals)), key=lambda at: (at not in firsts, -weights[at]))
    return tuple(
        _weighed(proposals[at], pool * weights[at] / total) if weights[at] else proposals[at]
        for at in order
    )


def _said(tokens: Sequence[Token], written: str) -> str:
    """Return the kana with which a name is read; nothing if it is not there."""
    return next((token.kana for token in tokens if token.normalised == written), "")


def _weighed(proposal: Proposal, chance: float) -> Proposal:
    words = proposal.chances.words
    return proposal.weighed(Chances(chance, words))


def _doubt(rivals: Sequence[MayName], written: str, by_kana: dict[str, float]) -> Doubt:
    """Return the doubt that says how each person reads the name, the likelier first."""
    first = SignIndex(min(rival.first for rival in rivals))
    last = SignIndex(max(rival.last for rival in rivals))
    best = sorted(by_kana, key=lambda kana: -by_kana[kana])
    said = [
        f"{hepburn(kana).capitalize()} as {' or '.join(_called(rivals, written, kana))}"
        f" (chance {by_kana[kana]:.2f})"
        for kana in best
    ]
    return Doubt(first, last, f"your list of persons reads {written} {', '.join(said)}")


def _called(rivals: Sequence[MayName], written: str, kana: str) -> list[str]:
    """Return what the list calls those who read a name so."""
    return [
        rival.name or rival.id
        for rival in rivals
        for form in people()[rival.id].forms
        if form.written == written and form.kana.replace("|", "") == kana
    ]
