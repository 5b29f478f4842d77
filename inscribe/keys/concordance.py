"""Keys of ``inscribe concord`` and ``inscribe concord --clusters``."""

from __future__ import annotations

from typing import Annotated, Literal, TypedDict

from inscribe.keys.base import Count, Inscription, Signs
from inscribe.terms import How


class PersonNamedKeys(TypedDict):
    """A person who signed."""

    name: Annotated[str, "in current forms"]
    romaji: Annotated[str, "in Latin letters"]


class MayNameShortKeys(TypedDict):
    """A person of the user's list whom the inscription may name."""

    text: Annotated[str, "the name in current forms"]
    name: Annotated[str, "how the list calls the person"]
    why: Annotated[str, "what agrees and what does not"]


class DocumentKeys(TypedDict):
    """One inscription of the folder."""

    object: Annotated[str, "the id of the object"]
    kind: Annotated[str, "what kind of fitting it is"]
    file: Annotated[str, "the record's file"]
    inscription: Inscription
    place: Annotated[str, "where on the object"]
    year: Annotated[int | None, "the western year of its first date"]
    carver: Annotated[str, "the name that the signature gives: as read, no attribution"]
    carver_romaji: Annotated[str, "the same in Latin letters"]
    persons: Annotated[list[MayNameShortKeys], "of the user's list, whom it may name"]
    others: Annotated[list[PersonNamedKeys], "others who signed: who wrote, who composed"]
    text: Annotated[str, "as carved"]


class OccurrenceKeys(DocumentKeys):
    """One place where the word stands."""

    signs: Annotated[Signs, "where it stands"]
    before: Annotated[str, "what stands before it, as carved"]
    match: Annotated[str, "the word as carved"]
    after: Annotated[str, "what stands after it, as carved"]
    how: Annotated[How, "in what way it is the word asked for"]


class CountsKeys(TypedDict):
    """Places counted."""

    object: Annotated[dict[str, Count], "by object"]
    date: Annotated[dict[str, Count], "by date"]
    carver: Annotated[dict[str, Count], "by the name that signed"]


class ConcordanceKeys(TypedDict):
    """Every place of a word in a folder of records."""

    query: Annotated[str, "what was asked for"]
    records: Annotated[Count, "records looked at"]
    unread: Annotated[list[str], "files that could not be read, and why"]
    hits: Annotated[list[OccurrenceKeys], "in the order asked for"]
    counts: Annotated[CountsKeys, "how many there are"]
    cautions: Annotated[list[str], "what must be kept in mind, in sentences"]


class ClusterKeys(TypedDict):
    """Inscriptions that share a text, or a name in their signatures."""

    kind: Annotated[Literal["text", "signature"], "what they share"]
    title: Annotated[str, "the first one's text, or the name"]
    members: Annotated[list[DocumentKeys], "the inscriptions"]


class ClustersKeys(TypedDict):
    """What the records of a folder share."""

    records: Annotated[Count, "records looked at"]
    unread: Annotated[list[str], "files that could not be read, and why"]
    clusters: Annotated[list[ClusterKeys], "the largest first"]
    cautions: Annotated[list[str], "what must be kept in mind, in sentences"]
