"""Keys of ``inscribe merge``."""

from __future__ import annotations

from typing import Annotated, Literal, NotRequired, TypedDict

from inscribe.keys.base import Signs
from inscribe.terms import ComparedKind


class MergeSideKeys(TypedDict):
    """What one transcription has in a place."""

    signs: NotRequired[Annotated[Signs, "its signs, where it has any"]]
    text: Annotated[str, "as it is written there"]


class MergePlaceKeys(TypedDict):
    """Signs of both transcriptions that answer each other."""

    kind: Annotated[ComparedKind, "one legible, one sure: the other cannot read it, or doubts it"]
    a: Annotated[MergeSideKeys, "the first transcription"]
    b: Annotated[MergeSideKeys, "the second"]
    surer: Annotated[Literal["a", "b"], "which reads more, or is surer; a where both are alike"]


class MergeInscriptionKeys(TypedDict):
    """One inscription that both records have."""

    place: Annotated[str, "where it is on the object"]
    places: Annotated[list[MergePlaceKeys], "in order; together all signs of both"]


class MergeKeys(TypedDict):
    """Two transcriptions of one object held against each other."""

    a: Annotated[str, "the file of the first"]
    b: Annotated[str, "the file of the second"]
    inscriptions: Annotated[list[MergeInscriptionKeys], "in the order of the first record"]
    also_different: Annotated[list[str], "what else differs, and stays as the first has it"]
