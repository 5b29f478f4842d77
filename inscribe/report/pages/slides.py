"""Entries as slides: one self-contained page, an object or a difference a slide.

The arrow keys go from slide to slide, and what is taller than the screen is set smaller; without
scripts one scrolls, and in print each slide is a sheet.
"""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files
from typing import TYPE_CHECKING

from markupsafe import Markup

from inscribe.report.entries import Block, Columns, Drawing, Grid, Lead, PictureBlock, Strip
from inscribe.report.pages.sections import article
from inscribe.report.pages.templates import rendered

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style
    from inscribe.report.pages.sections import Section

AROUND = 4  # signs shown before and after a difference


@dataclass(frozen=True, slots=True)
class Slide:
    """One slide: its title, what stands at its side and what is said."""

    title: str
    heading: str
    side: list[Block]
    flow: list[Block]
    strip: Strip = ()
    row: tuple[tuple[str, str], ...] = ()  # of a difference: label and what stands against it


def entries_as_slides(entries: list[Entry], style: Style) -> str:
    """Return the slides of all entries as one page."""
    articles = [article(entry, style) for entry in entries]
    slides = [
        slide
        for each in articles
        for section in each.sections
        for slide in _slides(each.title, section)
    ]
    room = files("inscribe.report.pages")
    script = (room / "slides.js").read_text("utf-8")
    digest = base64.b64encode(hashlib.sha256(f"\n{script}".encode()).digest()).decode()
    return rendered(
        "slides.html.j2",
        ("page.css", "slides.css"),
        style,
        title=articles[0].title if len(articles) == 1 else f"{len(articles)} objects",
        slides=slides,
        script=Markup("\n" + script),
        digest=digest,
    )


def _slides(title: str, section: Section) -> Iterator[Slide]:
    pictures = [block for block in section.side if isinstance(block, PictureBlock)]
    drawings = [block for block in section.side if isinstance(block, Drawing)]
    leads: list[Block] = [block for block in section.flow if isinstance(block, Lead)]
    columns = [block for block in section.flow if isinstance(block, Columns)]
    if pictures or drawings or leads:
        yield Slide(title, section.heading, [*pictures, *drawings], leads)
    yield Slide(title, section.heading, [], [*columns])
    strips = columns[0].strips if columns else ()
    for block in section.flow:
        if isinstance(block, Grid) and block.numbers and not block.folded:
            for number, row in zip(block.numbers, block.rows, strict=True):
                cells = ("".join(run.text for run in cell) for cell in row)
                told = tuple(zip(block.header, cells, strict=True))
                yield Slide(title, block.title, [], [], _around(number, strips), told)


def _around(number: int, strips: tuple[Strip, ...]) -> Strip:
    """Return the difference of a number with a few signs before and after it."""
    for strip in strips:
        for place, cell in enumerate(strip):
            if cell.number == number:
                return strip[max(0, place - AROUND) : place + AROUND + 1]
    return ()
