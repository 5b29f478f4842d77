"""The parts of a laid-out entry that every prose format knows how to show."""

from __future__ import annotations

from dataclasses import dataclass

from inscribe.signs import Sign


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text; ``lang`` is a BCP 47 tag where it is not English."""

    text: str
    italic: bool = False
    lang: str = ""


Inline = tuple[Run, ...]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the object, 2 an inscription, 3 a part of it."""

    level: int
    text: str


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels and what stands against them."""

    rows: tuple[tuple[str, Inline], ...]


@dataclass(frozen=True, slots=True)
class Columns:
    """The inscription as carved: faces of columns of signs, first column rightmost."""

    faces: tuple[tuple[tuple[Sign, ...], ...], ...]
    text: str  # the same in the transcriber's notation, a column a line
    source: tuple[str, ...] = ()  # the source's lines, where it is known
    words: tuple[tuple[str, str], ...] = ()  # (current forms, kana) of each word as read
    drawing: str = ""  # the plate to scale as SVG, where it was measured
    labels: tuple[str, str, str] = ("", "", "")  # of the columns, the source and the drawing
    key: str = ""  # what the marks of doubt say, where there are any


@dataclass(frozen=True, slots=True)
class Grid:
    """A table with a heading."""

    title: str
    header: tuple[str, ...]
    rows: tuple[tuple[Inline, ...], ...]


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list under a heading."""

    title: str
    items: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution, set apart."""

    text: str


Block = Heading | Facts | Columns | Grid | Bullets | Caution


def plain(text: str, lang: str = "") -> Inline:
    """Return one stretch of upright text."""
    return (Run(text, lang=lang),)
