"""A site from a folder of records: an index, a page an object, a volume for print.

It works from a disk, without a server. Pages of objects stand alone; the index shows small pictures
from files beside it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from typing import TYPE_CHECKING, NamedTuple

from inscribe.notation import written_out
from inscribe.report import dates_of, shown_picture
from inscribe.report.pages.entry import entries_as_volume
from inscribe.report.pages.pictures import services_of
from inscribe.report.pages.sections import article
from inscribe.report.pages.templates import rendered
from inscribe.report.pages.timeline import DatedPage, timeline

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.indexing import IndexHeading, IndexKind
    from inscribe.report import Style

LISTS: tuple[IndexKind, ...] = ("persons", "places", "works", "formulas", "lines", "hands")
SHARED: tuple[IndexKind, ...] = ("works", "persons", "formulas")
THUMBNAIL = 360  # pixels
FIRST = 16  # signs shown where there is no picture
SHEETS = ("page.css", "site.css")
Headings = Mapping["IndexKind", Sequence["IndexHeading"]]


class PageCard(NamedTuple):
    """An object as the index shows it."""

    id: str
    title: str
    kind: str
    page: str
    first: str  # the first signs as carved
    said: str  # how they are read
    thumbnail: str


class SiteHeading(NamedTuple):
    """A heading of an index with the pages that bear it (address, name)."""

    text: str
    romaji: str
    note: str
    pages: tuple[tuple[str, str], ...]


def site(
    entries: Sequence[Entry], pages: Sequence[str], headings: Headings, style: Style
) -> Iterator[tuple[str, bytes]]:
    """Yield the files of a site: where each belongs, and what it holds.

    Args:
        entries: the objects.
        pages: the address of each one's page, relative to the site's folder.
        headings: the indexes of the objects.
        style: the house style.
    """
    addresses = {entry.record.id: page for entry, page in zip(entries, pages, strict=True)}
    told: dict[IndexKind, list[SiteHeading]] = {
        kind: _told(kind, headings.get(kind, ()), addresses, style) for kind in (*LISTS, "dates")
    }
    thumbnails: dict[str, str] = {}
    for nth, entry in enumerate(entries, start=1):
        images = [*entry.record.images]
        images += [image for each in entry.inscriptions for image in each.inscription.images]
        found = (shown_picture(image, entry.folder, THUMBNAIL) for image in images if image.file)
        if shown := next(filter(None, found), None):
            name = f"pictures/{nth}.{shown.ending}"
            thumbnails[entry.record.id] = name
            yield name, shown.data
    cards = [
        _card(entry, addresses[entry.record.id], thumbnails.get(entry.record.id, ""), style)
        for entry in entries
    ]
    yield "index.html", _index(entries, cards, told, style).encode()
    for entry, page in zip(entries, pages, strict=True):
        yield page, _page(entry, page, told, style).encode()
    yield "volume.html", entries_as_volume(list(entries), style).encode()


_SLOT = re.compile(r"〔(\w+)〕")  # of a formula: where a name or a date stands


def _told(
    kind: IndexKind, found: Sequence[IndexHeading], addresses: Mapping[str, str], style: Style
) -> list[SiteHeading]:
    made = []
    for heading in found:
        text = style.word("hand", heading.text) if kind == "hands" else heading.text
        text = written_out(_SLOT.sub(lambda slot: f"〔{style.part_label(slot[1])}〕", text))
        ids = dict.fromkeys(where.object for form in heading.forms for where in form.where)
        pages = tuple((addresses[each], each) for each in ids if each in addresses)
        note = style.explained(heading.note)
        made.append(SiteHeading(text, heading.romaji, note, pages))
    return made


def _card(entry: Entry, page: str, thumbnail: str, style: Style) -> PageCard:
    record, first = entry.record, entry.inscriptions[0]
    kind = style.word("kind", record.kind)
    text = first.interpretation.normalised[:FIRST]  # in forms that fonts have
    said = first.reading.romaji
    said = said if len(said) <= 60 else f"{said[:57].rsplit(' ', 1)[0]} …"
    return PageCard(record.id, record.title, kind, page, text, said, thumbnail)


def _index(
    entries: Sequence[Entry],
    cards: list[PageCard],
    told: Mapping[IndexKind, list[SiteHeading]],
    style: Style,
) -> str:
    by_kind = sorted(cards, key=lambda card: card.kind)
    dated = [
        DatedPage(date.year, card.id, card.page)
        for entry, card in zip(entries, cards, strict=True)
        for date in list(dates_of(entry))[:1]
        if date.year is not None
    ]
    doubts = [(card, _doubts(entry, style)) for entry, card in zip(entries, cards, strict=True)]
    return rendered(
        "site.html.j2",
        SHEETS,
        style,
        title=style.institution or style.label("site:title"),
        kinds=[(kind, list(some)) for kind, some in groupby(by_kind, key=lambda card: card.kind)],
        timeline=timeline(dated),
        dates=told["dates"],
        lists=[(kind, told[kind]) for kind in LISTS if told[kind]],
        doubts=[(card, style.joined(*items)) for card, items in doubts if items],
        attribution=style.caution("attribution"),
    )


def _doubts(entry: Entry, style: Style) -> list[str]:
    """Return what is doubtful about an object, each reason once."""
    doubts = [doubt for each in entry.inscriptions for doubt in each.interpretation.doubts]
    return list(dict.fromkeys(style.explained(doubt.why) for doubt in doubts))


def _page(
    entry: Entry, page: str, told: Mapping[IndexKind, list[SiteHeading]], style: Style
) -> str:
    up = "../" * page.count("/")
    related = []
    for kind in SHARED:
        for heading in told[kind]:
            others = [(up + there, name) for there, name in heading.pages if there != page]
            if others and len(others) < len(heading.pages):
                related.append((kind, heading.romaji or heading.text, others))
    made = article(entry, style)
    return rendered(
        "entry.html.j2",
        SHEETS,
        style,
        title=entry.record.id,
        articles=[made],
        services=services_of([made]),
        related=related,
        index=f"{up}index.html",
    )
