"""Entries as one HTML page: no scripts, nothing fetched, every word of the data escaped."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe.report.pages.sections import article
from inscribe.report.pages.templates import rendered

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style


def entries_as_html(entries: list[Entry], style: Style) -> str:
    """Return a page with an article for each entry."""
    title = entries[0].record.id if len(entries) == 1 else f"{len(entries)} objects"
    articles = [article(entry, style, f"o{nth}") for nth, entry in enumerate(entries, start=1)]
    return rendered("entry.html.j2", ("page.css",), style, title=title, articles=articles)
