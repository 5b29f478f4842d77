"""Entries as one HTML page: no scripts, every word of the data escaped.

Nothing is fetched but images of the services that records name (``pictures``); of a page that is to
stand ``alone`` not even those.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe.report.pages.fitting import fit
from inscribe.report.pages.pictures import services_of
from inscribe.report.pages.sections import Article, article
from inscribe.report.pages.templates import rendered

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style

# What a handout shows, in this order.
HANDOUT = (
    "images",
    "carved",
    "compared",
    "drawing",
    "romaji",
    "words",
    "translation",
    "date",
    "source",
    "source_image",
)


def entries_as_html(entries: list[Entry], style: Style, *, alone: bool = False) -> str:
    """Return a page with an article for each entry.

    >>> from inscribe import Style, entry_of, load_record
    >>> page = entries_as_html([entry_of(load_record("examples/DEMO-003.toml"))], Style())
    >>> page.count("<article")
    1
    """
    articles = [article(entry, style) for entry in entries]
    return _page("entry.html.j2", ("page.css",), articles, style, alone=alone)


def entries_as_handout(entries: list[Entry], style: Style) -> str:
    """Return a page to hand out: a sheet an object, its signs large, and no apparatus."""
    order = tuple(part for part in HANDOUT if part in style.order)
    brief = replace(style, order=order, law_note=False)
    articles = [article(entry, brief) for entry in entries]
    fitted = [replace(each, fit=fit(each)) for each in articles]
    return _page("entry.html.j2", ("page.css", "handout.css"), fitted, brief)


def entries_as_volume(entries: list[Entry], style: Style, *, alone: bool = False) -> str:
    """Return a page for print: contents, and the entries each on a sheet of its own."""
    articles = [article(entry, style) for entry in entries]
    return _page("volume.html.j2", ("page.css", "site.css"), articles, style, alone=alone)


def _page(
    template: str,
    sheets: tuple[str, ...],
    articles: list[Article],
    style: Style,
    *,
    alone: bool = False,
) -> str:
    title = articles[0].record if len(articles) == 1 else f"{len(articles)} objects"
    if template == "volume.html.j2":
        title = style.institution or style.label("site:title")
    services = "" if alone else services_of(articles)
    return rendered(template, sheets, style, title=title, articles=articles, services=services)
