"""Keys of ``inscribe entry --format json``."""

from __future__ import annotations

from typing import Annotated, NotRequired, TypedDict

from inscribe.keys.base import Day, Mm
from inscribe.keys.collation import CollationKeys, TestimonyKeys
from inscribe.keys.reading import ReadingKeys


class SizesKeys(TypedDict):
    """The object's measurements, as far as the record has them."""

    length: NotRequired[Annotated[Mm, "its length"]]
    width: NotRequired[Annotated[Mm, "its width"]]
    height: NotRequired[Annotated[Mm, "its height"]]
    thickness: NotRequired[Annotated[Mm, "its thickness"]]
    diameter: NotRequired[Annotated[Mm, "its diameter"]]


class SourceNamedKeys(TypedDict):
    """The text that the record names as the source, as far as it says."""

    id: NotRequired[Annotated[str, "its id in the library"]]
    title: NotRequired[Annotated[str, "its title"]]
    author: NotRequired[Annotated[str, "who composed it"]]
    work: NotRequired[Annotated[str, "the work it stands in"]]
    number: NotRequired[Annotated[str, "its number there"]]


class ReaderKeys(TypedDict):
    """What a person read before."""

    by: Annotated[str, "who"]
    on: Annotated[Day | None, "when"]
    text: Annotated[str, "what he or she read"]
    romaji: Annotated[str, "the same in Latin letters, or empty"]
    remarks: Annotated[str, "what was said of it, or empty"]


class InscriptionEntryKeys(TypedDict):
    """One inscription of the object."""

    place: Annotated[str, "where on the object"]
    hand: Annotated[str, "regular, running, cursive ..., or empty"]
    execution: Annotated[str, "how it was cut, or empty"]
    as_carved: Annotated[str, "the transcription"]
    reading: Annotated[ReadingKeys, "what it says"]
    translation: Annotated[str, "the record's translation, or empty"]
    source: Annotated[SourceNamedKeys | None, "what it copies"]
    missing_source: Annotated[str, "why it was not held against a source that is named, or empty"]
    collation: Annotated[CollationKeys | None, "how it answers to its source"]
    testimony: Annotated[
        TestimonyKeys | None, "how it answers to all its sources, where the record names several"
    ]
    readers: Annotated[list[ReaderKeys], "who read it before, and how"]
    remarks: Annotated[str, "the record's remarks, or empty"]


class EntryKeys(TypedDict):
    """The catalogue entry of one object."""

    id: Annotated[str, "the object's id"]
    kind: Annotated[str, "what kind of fitting it is"]
    title: Annotated[str, "its title, or empty"]
    measurements_mm: Annotated[SizesKeys, "its measurements"]
    inscriptions: Annotated[list[InscriptionEntryKeys], "in the order of the record"]
    remarks: Annotated[str, "the record's remarks, or empty"]
    cautions: Annotated[list[str], "keys of cautions.tsv: what must be kept in mind"]
