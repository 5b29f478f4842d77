"""The catalogue entry in each format.

Prose formats (``markdown``, ``html``, ``docx``) show the blocks of ``layout``, which ``facts``
and ``collated`` fill; data formats (``table``, ``tei``, ``lido``, ``annotation``) read the
entry; ``drawing`` is the plate to scale, ``style`` the house style, ``xml`` what all XML needs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.entries.annotation import entries_as_annotations as entries_as_annotations
    from inscribe.report.entries.docx import entries_as_docx as entries_as_docx
    from inscribe.report.entries.drawing import plate_drawing as plate_drawing
    from inscribe.report.entries.html import entries_as_html as entries_as_html
    from inscribe.report.entries.lido import entries_as_lido as entries_as_lido
    from inscribe.report.entries.markdown import (
        entry_as_markdown as entry_as_markdown,
        escaped as escaped,
    )
    from inscribe.report.entries.style import Style as Style, load as load
    from inscribe.report.entries.table import (
        csv_table as csv_table,
        entries_as_csv as entries_as_csv,
    )
    from inscribe.report.entries.tei import entries_as_tei as entries_as_tei
else:
    __getattr__ = late.door(
        __name__,
        {
            "annotation": "entries_as_annotations",
            "docx": "entries_as_docx",
            "drawing": "plate_drawing",
            "html": "entries_as_html",
            "lido": "entries_as_lido",
            "markdown": "entry_as_markdown escaped",
            "style": "Style load",
            "table": "csv_table entries_as_csv",
            "tei": "entries_as_tei",
        },
    )
