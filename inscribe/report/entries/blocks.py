"""The parts of a laid-out entry that every prose format knows how to show."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from inscribe.notation import written_out
from inscribe.record import RecordImage
from inscribe.signs import Sign

JAPANESE = "ja"
ROMANISED = "ja-Latn"


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text; ``lang`` is a BCP 47 tag where it is not English.

    Old kana are told with their parents, は(者): few fonts have the signs themselves.
    """

    text: str
    italic: bool = False
    lang: str = ""

    def __post_init__(self) -> None:
        object.__setattr__(self, "text", written_out(self.text))


Inline = tuple[Run, ...]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the object, 2 an inscription, 3 a part of it."""

    level: int
    text: str

    def __post_init__(self) -> None:
        object.__setattr__(self, "text", written_out(self.text))


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels and what stands against them."""

    rows: tuple[tuple[str, Inline], ...]


@dataclass(frozen=True, slots=True)
class Lead:
    """What is read first and set large: the reading in Latin letters, the translation."""

    label: str
    said: Inline


@dataclass(frozen=True, slots=True)
class SourceSign:
    """One sign of the source; ``ends_line`` where a line of the source ends with it."""

    sign: Sign
    ends_line: bool = False


@dataclass(frozen=True, slots=True)
class StripCell:
    """A stretch of a column of the copy and what answers it in the source, on one scale.

    ``number`` is that of the difference, from 1; ``wording`` whether it is one of the words.
    """

    copy: tuple[Sign, ...]
    source: tuple[SourceSign, ...]
    number: int | None = None
    wording: bool = False

    @property
    def room(self) -> int:
        """How many signs the longer side has."""
        return max(len(self.copy), len(self.source))


Strip = tuple[StripCell, ...]


@dataclass(frozen=True, slots=True)
class Columns:
    """The inscription as carved: faces of columns of signs, first column rightmost.

    ``strips`` has each column of the copy beside its source, where it is held against one.
    """

    faces: tuple[tuple[tuple[Sign, ...], ...], ...]
    text: str  # the same in the transcriber's notation, a column a line
    strips: tuple[Strip, ...] = ()
    labels: tuple[str, str] = ("", "")  # of the columns, and of the source
    key: str = ""  # what the marks say
    written_key: str = ""  # and those that are written, where nothing can be drawn


@dataclass(frozen=True, eq=False)
class Drawing:
    """The surface that bears the inscription, drawn to scale where a format shows it."""

    title: str
    draw: Callable[[], str]  # as SVG

    @cached_property
    def svg(self) -> str:
        """The drawing as SVG."""
        return self.draw()

    def __eq__(self, other: object) -> bool:
        """Whether both show the same under the same heading."""
        if not isinstance(other, Drawing):
            return NotImplemented
        return (self.title, self.svg) == (other.title, other.svg)

    def __hash__(self) -> int:
        """Return the hash of the heading."""
        return hash(self.title)


@dataclass(frozen=True, slots=True)
class PictureBlock:
    """A picture of the object, the inscription or its source; its file lies in ``folder``.

    ``shows`` is what it shows, in words; ``of`` is "object", "inscription" or "source".
    """

    title: str
    image: RecordImage
    folder: Path | None
    shows: str
    of: str


@dataclass(frozen=True, slots=True)
class GlossedWord:
    """One word as read: its signs, kana, Latin letters, and what it means.

    ``turn`` is its place in the order of reading, from 1, where that is not the order of the metal.
    """

    signs: str
    kana: str
    romaji: str
    gloss: str = ""
    turn: int | None = None


@dataclass(frozen=True, slots=True)
class GlossedLine:
    """The words of one passage in the order of the metal; ``name`` says what it is."""

    name: str
    words: tuple[GlossedWord, ...]


@dataclass(frozen=True, slots=True)
class Interlinear:
    """The inscription word by word."""

    title: str
    lines: tuple[GlossedLine, ...]
    italics: bool = True  # of the Latin letters


@dataclass(frozen=True, slots=True)
class Grid:
    """A table with a heading; one that is ``folded`` is told by its ``summary`` first.

    ``numbers`` are those of the differences in its rows.
    """

    title: str
    header: tuple[str, ...]
    rows: tuple[tuple[Inline, ...], ...]
    summary: Inline = ()
    folded: bool = False
    numbers: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list under a heading; one that is ``folded`` opens when asked."""

    title: str
    items: tuple[Inline, ...]
    folded: bool = False


@dataclass(frozen=True, slots=True)
class Chart:
    """A small drawing of figures, and the sentences that say the same."""

    title: str
    svg: str
    sentences: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution, set apart."""

    text: str


Block = (
    Heading
    | Facts
    | Lead
    | Columns
    | Drawing
    | PictureBlock
    | Interlinear
    | Grid
    | Bullets
    | Chart
    | Caution
)


def plain(text: str, lang: str = "") -> Inline:
    """Return one stretch of upright text."""
    return (Run(text, lang=lang),)
