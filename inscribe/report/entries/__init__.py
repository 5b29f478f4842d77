"""The catalogue entry in each format.

Prose formats (``markdown``, ``html``, ``docx``) show the blocks of ``layout``, which ``facts``
and ``collated`` fill; data formats (``table``, ``tei``, ``lido``, ``annotation``) read the
entry; ``drawing`` is the plate to scale, ``style`` the house style, ``xml`` what all XML needs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.entries.annotation import (
        CONTEXT as CONTEXT,
        entries_as_annotations as entries_as_annotations,
    )
    from inscribe.report.entries.as_json import entries_as_json as entries_as_json
    from inscribe.report.entries.collated import printed_sides as printed_sides
    from inscribe.report.entries.concordance_csv import (
        clusters_as_csv as clusters_as_csv,
        counts_as_csv as counts_as_csv,
        hits_as_csv as hits_as_csv,
    )
    from inscribe.report.entries.docx import entries_as_docx as entries_as_docx
    from inscribe.report.entries.facts import (
        COLUMN_END as COLUMN_END,
        JAPANESE as JAPANESE,
        ROMANISED as ROMANISED,
        date_text as date_text,
        source_lines as source_lines,
    )
    from inscribe.report.entries.html import entries_as_html as entries_as_html
    from inscribe.report.entries.markdown import (
        entry_as_markdown as entry_as_markdown,
        escaped as escaped,
    )
    from inscribe.report.entries.table import (
        csv_table as csv_table,
        entries_as_csv as entries_as_csv,
    )
    from inscribe.report.entries.troubles_csv import troubles_as_csv as troubles_as_csv
else:
    __getattr__ = late.door(
        __name__,
        {
            "annotation": "CONTEXT entries_as_annotations",
            "as_json": "entries_as_json",
            "collated": "printed_sides",
            "concordance_csv": "clusters_as_csv counts_as_csv hits_as_csv",
            "docx": "entries_as_docx",
            "facts": "COLUMN_END JAPANESE ROMANISED date_text source_lines",
            "html": "entries_as_html",
            "markdown": "entry_as_markdown escaped",
            "table": "csv_table entries_as_csv",
            "troubles_csv": "troubles_as_csv",
        },
    )
