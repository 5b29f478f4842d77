"""The record: one object, its inscriptions, and who read them when. Measurements are in mm.

The types hold what the file says; ``inscribe.record.fields`` describes the file. Signs and columns
are counted from 1 in the file, as one counts them on the metal, and from 0 here.

Most are named tuples: every command that is given a record imports them, and a dataclass takes
five times as long to import.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Literal, NamedTuple

from inscribe import notation, notebook
from inscribe.record.model.images import RecordImage as RecordImage
from inscribe.record.model.measured import (
    ColumnMeasure,
    Measurements,
    Obstacle,
    Photograph,
    Plate,
    SignBox,
)
from inscribe.signs import Box, Transcription, boxed
from inscribe.terms import Kind, Role, SourceKind

Register = Literal["auto", "verse", "signature", "prose"]
Notation = Literal["japanese", "leiden"]
State = Literal["drafted", "read", "reviewed", "published"]


class Maker(NamedTuple):
    """Whom the signature names and when that person lived; not an attribution.

    The years narrow a sexagenary year that stands without an era.
    """

    name: str = ""
    born: int | None = None
    died: int | None = None
    active_from: int | None = None
    active_to: int | None = None
    remarks: str = ""


@dataclass(frozen=True)
class CopiedText:
    """The text an inscription copies: its words, a file beside the record, or a library entry.

    ``text`` is empty where only ``id`` is given: the library has the words.
    """

    text: str = ""
    id: str = ""
    file: str = ""
    notation: Notation = "japanese"
    title: str = ""
    author: str = ""
    work: str = ""
    number: str = ""
    siglum: str = ""  # what it is called in an apparatus
    kind: SourceKind | None = None
    remarks: str = ""
    images: tuple[RecordImage, ...] = ()
    by: str = ""  # who says that this is the source
    on: date | None = None
    reason: str = ""

    @cached_property
    def transcription(self) -> Transcription:
        """The source's words sign by sign; empty where only the library has them."""
        return notation.parse(self.text, self.notation, self.file or None)


class Reader(NamedTuple):
    """What one reader made of the inscription, and when."""

    by: str
    on: date | None = None
    text: str = ""  # that reader's own transcription, where it differs from the record's
    kana: str = ""
    romaji: str = ""
    remarks: str = ""


class Override(NamedTuple):
    """Signs ``first`` to ``last`` (from 0) are to be read ``kana``, whatever the engine proposes.

    ``of`` is the text the override was made for, so that one that no longer applies is noticed.
    """

    first: int
    last: int
    kana: str
    of: str = ""
    kind: Literal["word", "name"] = "word"
    by: str = ""
    reason: str = ""
    on: date | None = None


class SettledPassage(NamedTuple):
    """Signs ``first`` to ``last`` (from 0) are one passage, whatever the engine proposes.

    ``of`` is the text it was settled for, so that one that no longer applies is noticed.
    """

    first: int
    last: int
    kind: Kind
    role: Role | None = None
    of: str = ""
    by: str = ""
    reason: str = ""
    on: date | None = None


class Decision(NamedTuple):
    """What a person decided to have stand at signs ``first`` to ``last`` (from 0) of the text.

    ``chosen`` is what stands there since, in the notation of the text, empty where a sign was
    taken out after ``first``; ``instead_of`` is what else was read or stood there, and ``how``
    whether a worn sign was restored or two transcriptions merged.
    """

    first: int
    last: int
    chosen: str = ""
    instead_of: str = ""
    how: Literal["restored", "merged"] = "restored"
    by: str = ""
    reason: str = ""
    on: date | None = None


@dataclass(frozen=True)
class Inscription:
    """One inscription on the object.

    >>> from inscribe import load_record
    >>> load_record("examples/DEMO-003.toml").inscriptions[0].place
    'back plate'
    """

    place: str
    text: str
    notation: Notation = "japanese"
    hand: str = ""
    execution: str = ""
    register: Register = "auto"
    plate: Plate | None = None
    columns: tuple[ColumnMeasure, ...] = ()
    boxes: tuple[SignBox, ...] = ()
    photographs: tuple[Photograph, ...] = ()
    takes_room: tuple[Obstacle, ...] = ()
    source: CopiedText | None = None
    other_sources: tuple[CopiedText, ...] = ()  # further texts that it may copy
    readers: tuple[Reader, ...] = ()
    overrides: tuple[Override, ...] = ()
    passages: tuple[SettledPassage, ...] = ()
    decisions: tuple[Decision, ...] = ()
    translation: str = ""
    remarks: str = ""
    images: tuple[RecordImage, ...] = ()

    def __repr__(self) -> str:
        return f"<Inscription, {self.place}: {notebook.short(self.text)}>"

    @property
    def sources(self) -> tuple[CopiedText, ...]:
        """All sources that the record names, the first one first."""
        return (self.source, *self.other_sources) if self.source else ()

    @cached_property
    def transcription(self) -> Transcription:
        """The inscription sign by sign, with the boxes that were measured."""
        t = notation.parse(self.text, self.notation)
        places = {box.sign: Box(box.x, box.y, box.width, box.height) for box in self.boxes}
        return boxed(t, places) if places else t


class Imported(NamedTuple):
    """The row of an older list that a record was made from, and all that stood in it.

    ``row`` counts from 0; ``cells`` are pairs of a heading and a cell, as they stood in the list,
    so that nothing is lost and a later import can tell what changed in the list.
    """

    source_list: str
    row: int | None = None
    cells: tuple[tuple[str, str], ...] = ()


class Record(NamedTuple):
    """One object of a collection.

    ``state`` is how far the work is (empty where nobody has said), ``drawer`` and ``box`` where it
    lies, ``with_whom`` who has it at present.

    >>> from inscribe import load_record
    >>> load_record("examples/DEMO-003.toml")
    <Record DEMO-003, kozuka: 1 inscription>
    """

    id: str
    kind: str
    inscriptions: tuple[Inscription, ...]
    title: str = ""
    measurements: Measurements = Measurements()
    maker: Maker | None = None
    remarks: str = ""
    images: tuple[RecordImage, ...] = ()
    state: State | Literal[""] = ""
    drawer: str = ""
    box: str = ""
    with_whom: str = ""
    imported: Imported | None = None

    def __repr__(self) -> str:
        inscriptions = notebook.counted(len(self.inscriptions), "inscription")
        return f"<Record {self.id}, {self.kind}: {inscriptions}>"

    def _repr_html_(self) -> str:
        """Return what the record holds as a table, as notebooks show it."""
        said = {"id": self.id, "kind": self.kind, "title": self.title, "remarks": self.remarks}
        for number, inscription in enumerate(self.inscriptions, start=1):
            said[f"{number}. {inscription.place}"] = inscription.text
        return notebook.facts(said)

    @property
    def between(self) -> tuple[int, int] | None:
        """The first and last year in which the named maker may have worked, where known.

        >>> Record("X", "tsuba", (), maker=Maker(born=1800)).between
        (1810, 1890)
        """
        maker = self.maker
        if maker is None:
            return None
        first = maker.active_from
        if first is None and maker.born is not None:
            first = maker.born + 10
        last = maker.active_to if maker.active_to is not None else maker.died
        if last is None and maker.born is not None:
            last = maker.born + 90
        return (first, last) if first is not None and last is not None else None
