"""What an inscription says with its worn signs filled by what most probably stood there.

The filled text is read as any other. What can be read alone keeps the words of that reading, for a
gap tells nothing about its neighbours, and is ranked first; after it stand the readings of the
filled text, in brackets what was restored, with their chance. The transcription is not changed.

>>> from inscribe.notation import parse
>>> from inscribe.reading import read
>>> t = parse("行□五十八歳作之")
>>> found = with_restored(read(t), t, read)
>>> [proposal.romaji for proposal in found.proposals[:2]]
['gyō… gojūhassai kore o tsukuru', 'gyō[nen] gojūhassai kore o tsukuru']
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace
from math import prod
from typing import TYPE_CHECKING, NamedTuple

from inscribe.reading.words import Chances, Interpretation, Passage, Proposal, shown
from inscribe.restoring.bracketed import (
    in_brackets,
    left_open,
    left_unread,
    marked_part,
    marked_proposal,
)
from inscribe.restoring.name_chances import NO_NAMES, Names
from inscribe.restoring.seen import is_unread
from inscribe.restoring.worn import MOST_PLACES, likeliest
from inscribe.signs import Certainty, Transcription, transcription

if TYPE_CHECKING:
    from inscribe.reading.words import Doubt
    from inscribe.restoring.model import Candidate
    from inscribe.sources import Library

LEAST = 0.5  # chance of a candidate from which on the text is read with it
_SHOWN = 3  # readings of the filled text

Read = Callable[[Transcription], Interpretation]


class _Filling(NamedTuple):
    """The signs filled in, by index, and the chance that all of them are right."""

    signs: Mapping[int, Candidate]
    chance: float


def with_restored(
    found: Interpretation,
    text: Transcription,
    read: Read,
    library: Library | None = None,
    names: Names = NO_NAMES,
    copied: str = "",
) -> Interpretation:
    """Return what an inscription says, with readings of its worn signs where these are likely.

    Args:
        found: what it says as it stands.
        text: the inscription; it is never changed.
        read: how ``found`` was read, to read the filled text in the same way.
        library: source texts to look in.
        names: carvers' names read in the same collection, with how often.
        copied: the words of the source that a record names, where it names one.
    """
    worn = sum(map(is_unread, text.signs))
    if not 0 < worn <= MOST_PLACES:
        return found
    filling = _filling(likeliest(text, found, library, names, copied))
    if not filling.signs:
        return found
    filled = read(_filled(text, filling.signs))
    carved = [shown(sign) for sign in text.signs]
    return _together(found, filled, filling, carved)


def _filling(likely: Mapping[int, Candidate]) -> _Filling:
    """Return of the likeliest candidates those to read with."""
    signs = {
        sign: best
        for sign, best in likely.items()
        if best.probability >= LEAST and len(best.text) == 1 and not best.text.isspace()
    }
    return _Filling(signs, prod(best.probability for best in signs.values()))


def _filled(text: Transcription, signs: Mapping[int, Candidate]) -> Transcription:
    return transcription(
        [
            [
                [
                    replace(sign, text=signs[sign.index].text, certainty=Certainty.CLEAR)
                    if sign.index in signs
                    else sign
                    for sign in column.signs
                ]
                for column in face.columns
            ]
            for face in text.faces
        ]
    )


def _together(
    found: Interpretation, filled: Interpretation, filling: _Filling, carved: Sequence[str]
) -> Interpretation:
    worn = filling.signs.keys()
    why = _why(filling)

    def bracketed(proposal: Proposal) -> Proposal:
        new = marked_proposal(proposal, worn, carved, in_brackets)
        chances = Chances(proposal.chance * filling.chance, proposal.chances.words)
        return replace(new.weighed(chances), reasons=(why, *proposal.reasons))

    def bare(proposal: Proposal) -> Proposal:
        return marked_proposal(proposal, worn, carved, left_open)

    best = bare(filled.proposals[0])
    passages = tuple(_open_passage(each, worn, carved, bare) for each in filled.passages)
    signature = filled.signature and {
        key: marked_part(part, worn, carved, left_open) for key, part in filled.signature.items()
    }
    return replace(
        found,
        register=filled.register,
        proposals=(best, *map(bracketed, filled.proposals[:_SHOWN])),
        signature=signature,
        doubts=_doubts(found, filled, worn),
        passages=passages,
    )


def _open_passage(
    passage: Passage,
    worn: Collection[int],
    carved: Sequence[str],
    bare: Callable[[Proposal], Proposal],
) -> Passage:
    if not any(passage.first <= sign <= passage.last for sign in worn):
        return passage
    signature = passage.signature and {
        key: marked_part(part, worn, carved, left_open) for key, part in passage.signature.items()
    }
    text = "".join(carved[passage.first : passage.last + 1])
    return replace(
        passage,
        text=text,
        normalised=left_unread(passage.normalised, text, passage.first, worn),
        proposals=tuple(map(bare, passage.proposals)),
        signature=signature,
    )


def _why(filling: _Filling) -> str:
    said = []
    for sign, candidate in sorted(filling.signs.items()):
        evidence = f", {candidate.evidence[0].text}" if candidate.evidence else ""
        said.append(
            f"sign {sign + 1} restored as {candidate.text} ({candidate.probability:.0%}{evidence})"
        )
    return "; ".join(said)


def _doubts(
    found: Interpretation, filled: Interpretation, worn: Collection[int]
) -> tuple[Doubt, ...]:
    """Return the doubts of both readings, but for words that only the gap made doubtful."""
    of_signs = [doubt for doubt in found.doubts if doubt.first in worn]
    of_words = [doubt for doubt in filled.doubts if doubt not in of_signs]
    both = dict.fromkeys((*of_signs, *of_words))
    return tuple(sorted(both, key=lambda doubt: (doubt.first, doubt.last)))
