"""An entry's blocks gathered by inscription: what stands at the side, and what runs beside it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from inscribe.report import identifier
from inscribe.report.entries import Block, Caution, Drawing, Heading, PictureBlock, laid_out

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style


@dataclass(frozen=True, slots=True)
class Section:
    """One inscription of an entry; ``side`` are the tall things that text runs beside."""

    name: str  # of its place in the page, for links
    heading: str
    side: list[Block] = field(default_factory=list)
    flow: list[Block] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Article:
    """The page of one object: its title and facts, its inscriptions, and what closes it."""

    name: str
    title: str
    record: str = ""  # the object's id
    facts: list[Block] = field(default_factory=list)
    sections: list[Section] = field(default_factory=list)
    closing: list[Block] = field(default_factory=list)
    fit: float = 1.0  # how small a handout is set, so that it takes one sheet of paper


def article(entry: Entry, style: Style) -> Article:
    """Return an entry as an article; its name, for links, is made from the object's id."""
    name = identifier(entry.record.id)
    blocks = laid_out(entry, style)
    assert isinstance(blocks[0], Heading)
    made = Article(name, blocks[0].text, entry.record.id)
    closing = _closing(blocks)
    for block in blocks[1 : len(blocks) - closing]:
        if isinstance(block, Heading):
            made.sections.append(Section(f"{name}i{len(made.sections) + 1}", block.text))
        elif not made.sections:
            made.facts.append(block)
        elif isinstance(block, Drawing) or _is_beside(block):
            made.sections[-1].side.append(block)
        else:
            made.sections[-1].flow.append(block)
    made.closing.extend(blocks[len(blocks) - closing :])
    return made


def _is_beside(block: Block) -> bool:
    """Whether a picture is of the inscription or of what it copies, not of the whole object."""
    return isinstance(block, PictureBlock) and block.of != "object"


def _closing(blocks: tuple[Block, ...]) -> int:
    """Return how many blocks at the end are of the object, not of its last inscription."""
    count = 0
    while count < len(blocks) and isinstance(blocks[-1 - count], Caution):
        count += 1
    return count
