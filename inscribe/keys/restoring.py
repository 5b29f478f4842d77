"""Keys of ``inscribe restore``."""

from __future__ import annotations

from typing import Annotated, Literal, TypedDict

from inscribe.keys.base import Column, Count, Rank, Share, Sign
from inscribe.terms import EvidenceKind, Register


class EvidenceKeys(TypedDict):
    """One reason for or against a candidate."""

    kind: Annotated[EvidenceKind, "what kind of thing speaks"]
    text: Annotated[str, "what it says"]


class CandidateKeys(TypedDict):
    """What may have stood in a worn place."""

    rank: Rank
    text: Annotated[str, "in current forms, unless a source has another form"]
    probability: Annotated[Share, "of all candidates weighed, not only of those shown"]
    forms: Annotated[list[str], "other forms of the character that a carver may have used"]
    evidence: Annotated[list[EvidenceKeys], "for and against it"]


class LacunaKeys(TypedDict):
    """One worn place."""

    sign: Annotated[Sign, "the worn one, of the inscription"]
    column: Annotated[Column, "the one it stands in"]
    sign_in_column: Annotated[Sign, "the same, of its column"]
    kind: Annotated[Literal["sign", "gap"], "one sign, or a stretch of unknown length"]
    before: Annotated[str, "what stands before it"]
    after: Annotated[str, "what stands after it"]
    missing_morae: Annotated[Count | None, "morae that the metre wants there"]
    remark: Annotated[str, "what else must be said, or empty"]
    candidates: Annotated[list[CandidateKeys], "the likeliest first"]


class SourceLikelyKeys(TypedDict):
    """A text of the library that the inscription may be from."""

    id: Annotated[str, "the text's id in the library"]
    title: Annotated[str, "its title, or empty"]
    score: Annotated[Share, "how probable it is the source"]


class RestorationKeys(TypedDict):
    """The worn places of one inscription."""

    text: Annotated[str, "in current forms"]
    register: Annotated[Register, "what it is read as"]
    worn_places: Annotated[Count, "how many there are; one run looks at some of them"]
    lacunae: Annotated[list[LacunaKeys], "those looked at, in order"]
    sources: Annotated[list[SourceLikelyKeys], "texts it may be from"]
    cautions: Annotated[list[str], "what must be kept in mind, in sentences"]
