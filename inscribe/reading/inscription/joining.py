"""Several passages as one interpretation: read in order, the readings one after the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from inscribe.reading.inscription.weighing import together
from inscribe.reading.words import (
    Doubt,
    InscribedText,
    Interpretation,
    Passage,
    Proposal,
    Register,
    SignaturePart,
    Weighing,
    carved_text,
)
from inscribe.terms import SignIndex

_MOST = 6  # proposals of the whole
_FIRST = ("verse", "prose", "chinese")  # kinds that give a text its register, the first before
_SAID = {"verse": "poem", "prose": "prose", "chinese": "Chinese"}
_REGISTERS: dict[str, Register] = {"verse": "verse", "prose": "prose", "chinese": "prose"}


def joined(
    text: InscribedText, passages: Sequence[Passage], read: Sequence[Interpretation]
) -> Interpretation:
    """Return the interpretation of a text of several passages, each with its own."""
    best = _whole([passage.proposals[0] for passage in passages], _reasons(passages))
    others = [
        _whole(_with(passages, at, proposal), proposal.reasons)
        for at, proposal in _others(passages)
    ]
    return Interpretation(
        carved_text(text),
        text.normal.text,
        "".join(each.modern for each in read),
        _register(passages),
        (best, *others[: _MOST - 1]),
        _parts(passages),
        (),
        text.normal.changes,
        tuple(dict.fromkeys(doubt for each in read for doubt in each.doubts)),
        passages=tuple(passages),
    )


def _whole(proposals: Sequence[Proposal], reasons: tuple[str, ...]) -> Proposal:
    tokens = tuple(token for proposal in proposals for token in proposal.tokens)
    phrases: list[tuple[int, int]] = []
    before = 0
    for proposal in proposals:
        phrases += [(count, first + before) for count, first in proposal.phrases]
        before += len(proposal.tokens)
    romaji = " ".join(filter(None, (proposal.romaji.strip() for proposal in proposals)))
    score = sum(proposal.score for proposal in proposals)
    weighing = Weighing(partial(together, proposals))
    return Proposal(tokens, romaji, score, reasons, tuple(phrases), weighing)


def _reasons(passages: Sequence[Passage]) -> tuple[str, ...]:
    """Return why the text is read so, then what stands beside it, then why that is read so."""
    main = next((p for kind in _FIRST for p in passages if p.kind == kind), passages[0])
    said = _SAID.get(main.kind, f"{main.kind} {main.text}")
    beside = [
        f"{each.text} stands {'before' if each.first < main.first else 'after'} the {said}: "
        f"{named(each)}"
        for each in passages
        if each is not main
    ]
    others = [why for each in passages if each is not main for why in each.proposals[0].reasons]
    return tuple(dict.fromkeys((*main.proposals[0].reasons, *beside, *others)))


def named(passage: Passage) -> str:
    """Return the kind of a passage with what its person did: "signature (carved)"."""
    return f"{passage.kind} ({passage.role})" if passage.role else passage.kind


def _others(passages: Sequence[Passage]) -> Iterator[tuple[int, Proposal]]:
    """Yield other readings of the whole, in each of which one passage is read otherwise.

    First comes the second reading of every passage, then the third of every passage.
    """
    longest = max(len(passage.proposals) for passage in passages)
    for rank in range(1, longest):
        for at, passage in enumerate(passages):
            if rank < len(passage.proposals):
                yield at, passage.proposals[rank]


def _with(passages: Sequence[Passage], at: int, proposal: Proposal) -> list[Proposal]:
    found = [passage.proposals[0] for passage in passages]
    found[at] = proposal
    return found


def _register(passages: Sequence[Passage]) -> Register:
    kinds = {passage.kind for passage in passages}
    for kind in _FIRST:
        if kind in kinds:
            return _REGISTERS[kind]
    return "prose" if kinds == {"heading"} else "signature"


def _parts(passages: Sequence[Passage]) -> dict[str, SignaturePart] | None:
    """Return the parts of the signature that is shown for the whole.

    It is the carver's, or the last one if none is the carver's; seals are added.
    """
    signed = [p for p in passages if p.kind == "signature" and p.signature]
    carved = [p for p in signed if p.role == "carved"] or signed
    parts = dict(carved[-1].signature or {}) if carved else {}
    for passage in passages:
        if passage.kind == "seal" and passage.signature:
            for part in passage.signature.values():
                count = sum(key.startswith("seal") for key in parts)
                parts["seal" if not count else f"seal_{count + 1}"] = part
    return parts or None


def divided_otherwise(
    passages: Sequence[Passage], other: Sequence[tuple[int, int, str]], chance: float
) -> tuple[Doubt, ...]:
    """Return the doubt that a text may be divided in another way, where that differs.

    ``other`` are the first and last signs and the kinds of the other division.
    """
    here = {(each.first, each.last, each.kind) for each in passages}
    differing = [each for each in other if each not in here]
    if not differing:
        return ()
    said = ", ".join(f"{kind} {first + 1}-{last + 1}" for first, last, kind in differing)
    first, last = min(each[0] for each in differing), max(each[1] for each in differing)
    return (
        Doubt(
            SignIndex(first), SignIndex(last), f"may be divided otherwise: {said} ({chance:.0%})"
        ),
    )
