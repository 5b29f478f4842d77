"""Entries as pages: one HTML page, a site, a volume for print, handouts and slides.

Pages run no scripts but the slides', fetch nothing, and hold every word of the data escaped. In
reading order: ``markup`` (signs and words as HTML), ``sections`` (blocks by inscription),
``templates`` (how a page is filled), ``entry`` (the page of an entry,
handout and volume), ``site_pages`` and ``timeline`` (a site of many), ``slides``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.pages.entry import (
        entries_as_handout as entries_as_handout,
        entries_as_html as entries_as_html,
        entries_as_volume as entries_as_volume,
    )
    from inscribe.report.pages.site_pages import site as site
    from inscribe.report.pages.slides import entries_as_slides as entries_as_slides
else:
    __getattr__ = late.door(
        __name__,
        {
            "entry": "entries_as_handout entries_as_html entries_as_volume",
            "site_pages": "site",
            "slides": "entries_as_slides",
        },
    )
