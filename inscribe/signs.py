"""What is carved, sign by sign: the immutable core types that every stage imports.

This module imports nothing of the program. A :class:`Transcription` is made once, from the
notation or a record, and never rewritten; every later stage (forms, reading, dates, collation,
space) keeps the ``index`` of the sign it speaks of, so that a word, a date or a difference can
always point back to the metal.

>>> t = transcription([[[Sign("花"), Sign("の")], [Sign("", certainty=Certainty.UNREADABLE)]]])
>>> [(s.index, s.column, s.text or "□") for s in t.signs]
[(0, 0, '花'), (1, 0, 'の'), (2, 1, '□')]
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import Enum
from functools import cached_property
from typing import NamedTuple


class Kind(Enum):
    """What sort of thing stands in the column."""

    CHARACTER = "character"  # one written sign
    GAP = "gap"  # a lost stretch of unknown length
    KAO = "kao"  # a carved monogram; it has no reading
    SEAL = "seal"  # a seal; its legend, where legible, is the sign's text

    __hash__ = object.__hash__  # a member is one object; a Sign hashes three


class Certainty(Enum):
    """How sure the transcriber is of the sign."""

    CLEAR = "clear"
    DAMAGED = "damaged"  # hurt, yet legible without doubt
    DOUBTFUL = "doubtful"  # "perhaps this character"
    RESTORED = "restored"  # lost, and supplied by the editor
    STRUCK = "struck out"  # struck out by the carver; text empty where no longer legible
    UNREADABLE = "unreadable"  # one sign is there and cannot be read; text is empty

    __hash__ = object.__hash__


# Members looked up once: a Sign is made for every sign of every text.
_CHARACTER, _SEAL, _GAP = Kind.CHARACTER, Kind.SEAL, Kind.GAP
_UNREADABLE = Certainty.UNREADABLE


class Intervention(Enum):
    """What the editor did to the text beyond reading it (Leiden conventions)."""

    NONE = "none"
    SUPPLIED = "supplied"  # omitted by the carver, added by the editor
    SUPERFLUOUS = "superfluous"  # carved, and held to be one too many
    EXPANDED = "expanded"  # not carved: an abbreviation written out by the editor

    __hash__ = object.__hash__


class Box(NamedTuple):
    """A sign's place on the plate in mm, from the plate's top left corner."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Sign:
    """One sign: what is carved, how sure that is, and where it stands.

    ``text`` is one user-perceived character as carved (with any combining or variation mark),
    the legend of a seal, or empty where nothing can be read. ``index`` counts all signs of the
    transcription from 0 in reading order; ``column`` counts its columns from 0, over all faces.
    ``noted`` is a kana with its parent kanji as the transcriber wrote it, に(尓), and empty where
    he wrote the sign itself: two ways to note one sign, so it does not count for equality.

    Raises:
        ValueError: the parts contradict each other, as an unreadable sign with a text, a legible
            one without, or a gap or kao with a text would; so every sign can be written down.

    >>> from inscribe import parse
    >>> sign = parse("花□").signs[1]
    >>> sign.text, sign.certainty.value, sign.index
    ('', 'unreadable', 1)
    """

    text: str
    kind: Kind = Kind.CHARACTER
    certainty: Certainty = Certainty.CLEAR
    intervention: Intervention = Intervention.NONE
    sic: bool = False
    box: Box | None = None
    index: int = 0
    column: int = 0
    noted: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        if self.text and self.kind is _CHARACTER and self.certainty is not _UNREADABLE:
            return  # all but a few signs
        if self.kind is _CHARACTER or self.kind is _SEAL:
            possible = (self.certainty is not _UNREADABLE) if self.text else self._may_lack_text()
        elif self.kind is _GAP:
            possible = not self.text and self.certainty in (Certainty.CLEAR, Certainty.STRUCK)
        else:
            possible = not self.text and self.certainty is not _UNREADABLE
        if not possible:
            raise ValueError(f"no {self.kind.value} is {self.certainty.value} as {self.text!r}")

    def _may_lack_text(self) -> bool:
        return self.certainty is _UNREADABLE or self.certainty is Certainty.STRUCK

    @property
    def is_carved(self) -> bool:
        """Whether the sign stands (or stood) in the metal, rather than being an editor's."""
        return self.intervention in (Intervention.NONE, Intervention.SUPERFLUOUS)

    @property
    def is_worn(self) -> bool:
        """Whether another look at the metal may tell more: it is lost, unread or doubtful."""
        return self.kind is _GAP or self.certainty in (_UNREADABLE, Certainty.DOUBTFUL)

    @property
    def is_legible(self) -> bool:
        """Whether there is a character to read."""
        return bool(self.text) and self.kind is Kind.CHARACTER


@dataclass(frozen=True, slots=True)
class Column:
    """One column of signs, top to bottom; ``index`` counts columns over all faces from 0."""

    signs: tuple[Sign, ...]
    index: int = 0


class Face(NamedTuple):
    """One face of the object (front, back), its columns in reading order (right to left)."""

    columns: tuple[Column, ...]


@dataclass(frozen=True)
class Transcription:
    """A whole inscription; build it with :func:`transcription`, which numbers the signs.

    >>> from inscribe import parse
    >>> parse("花の色／□")
    <Transcription '花の色／□'>
    """

    faces: tuple[Face, ...]

    def __repr__(self) -> str:
        columns = ("".join(sign.text or "□" for sign in column.signs) for column in self.columns)
        return f"<Transcription {'／'.join(columns)!r}>"

    @cached_property
    def columns(self) -> tuple[Column, ...]:
        """All columns, in reading order."""
        return tuple(column for face in self.faces for column in face.columns)

    @cached_property
    def signs(self) -> tuple[Sign, ...]:
        """All signs, in reading order; ``signs[i].index == i``."""
        return tuple(sign for column in self.columns for sign in column.signs)

    @property
    def text(self) -> str:
        """The legible characters as carved, without columns or any mark of the transcriber."""
        return "".join(sign.text for sign in self.signs if sign.is_legible)


def transcription(faces: Iterable[Iterable[Sequence[Sign]]]) -> Transcription:
    """Return the transcription of faces given as columns of signs, with signs and columns numbered.

    Any ``index`` and ``column`` the given signs carry is replaced. Columns and faces without a
    sign are left out: a column of which nothing is left is a gap.

    >>> text = transcription([[[Sign("應"), Sign("需")], [Sign("造")]]])
    >>> [(sign.text, sign.index, sign.column) for sign in text.signs]
    [('應', 0, 0), ('需', 1, 0), ('造', 2, 1)]
    """
    numbered_faces: list[Face] = []
    next_sign = next_column = 0
    for face in faces:
        columns: list[Column] = []
        for signs in face:
            if not signs:
                continue
            numbered = tuple(
                Sign(
                    s.text,
                    s.kind,
                    s.certainty,
                    s.intervention,
                    s.sic,
                    s.box,
                    index,
                    next_column,
                    s.noted,
                )
                for index, s in enumerate(signs, start=next_sign)
            )
            columns.append(Column(numbered, next_column))
            next_sign += len(numbered)
            next_column += 1
        if columns:
            numbered_faces.append(Face(tuple(columns)))
    return Transcription(tuple(numbered_faces))


def place_of(t: Transcription, first: int, last: int) -> str:
    """Return where signs stand, given by index, counted from 1 as one counts on the metal.

    >>> t = transcription([[[Sign("花"), Sign("の")], [Sign("色")]]])
    >>> place_of(t, 1, 1), place_of(t, 0, 1), place_of(t, 1, 2)
    ('column 1, sign 2', 'column 1, signs 1-2', 'column 1, sign 2 to column 2, sign 1')
    """
    (column, start), (last_column, end) = (counted(t, index) for index in (first, last))
    if column != last_column:
        return f"column {column}, sign {start} to column {last_column}, sign {end}"
    return f"column {column}, " + (f"sign {start}" if start == end else f"signs {start}-{end}")


def short_place_of(t: Transcription, start: int, end: int) -> str:
    """Return where signs ``start`` up to ``end`` stand, as tables have it; ``start`` may equal it.

    >>> t = transcription([[[Sign("花"), Sign("の")], [Sign("色")]]])
    >>> [short_place_of(t, *stretch) for stretch in ((0, 1), (0, 2), (1, 3), (1, 1), (3, 3))]
    ['col. 1, 1', 'col. 1, 1-2', 'col. 1, 2 to col. 2, 1', 'col. 1, before 2', 'col. 2, end']
    """
    if not t.signs:
        return ""
    if start >= len(t.signs):
        return f"col. {len(t.columns)}, end"
    column, first = counted(t, start)
    if start == end:
        return f"col. {column}, before {first}"
    last_column, last = counted(t, end - 1)
    if column != last_column:
        return f"col. {column}, {first} to col. {last_column}, {last}"
    return f"col. {column}, {first}" + (f"-{last}" if last != first else "")


def counted(t: Transcription, index: int) -> tuple[int, int]:
    """Return the column of a sign and its place in it, both counted from 1."""
    column = t.columns[t.signs[index].column]
    return column.index + 1, index - column.signs[0].index + 1


def boxed(t: Transcription, boxes: Mapping[int, Box]) -> Transcription:
    """Return ``t`` with the measured ``boxes`` of its signs, given by sign index."""
    return transcription(
        [
            [
                [replace(sign, box=boxes.get(sign.index, sign.box)) for sign in column.signs]
                for column in face.columns
            ]
            for face in t.faces
        ]
    )
