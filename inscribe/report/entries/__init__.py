"""The catalogue entry in each format.

Prose formats (``markdown``, ``docx``, the pages next door) show the ``blocks`` of ``layout``, which
``facts``, ``collated``, ``strips`` (copy and source side by side) and ``glossed`` (word by word)
fill; data formats (``table``, ``annotation``) read the entry.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.entries.annotation import (
        CONTEXT as CONTEXT,
        PIXELS_PER_MM as PIXELS_PER_MM,
        entries_as_annotations as entries_as_annotations,
    )
    from inscribe.report.entries.as_json import entries_as_json as entries_as_json
    from inscribe.report.entries.blocks import (
        Block as Block,
        Bullets as Bullets,
        Caution as Caution,
        Chart as Chart,
        Columns as Columns,
        Drawing as Drawing,
        Facts as Facts,
        GlossedLine as GlossedLine,
        GlossedWord as GlossedWord,
        Grid as Grid,
        Heading as Heading,
        Inline as Inline,
        Interlinear as Interlinear,
        Lead as Lead,
        PictureBlock as PictureBlock,
        Run as Run,
        SourceSign as SourceSign,
        Strip as Strip,
        StripCell as StripCell,
        plain as plain,
    )
    from inscribe.report.entries.collated import (
        printed_sides as printed_sides,
        printed_spans as printed_spans,
    )
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
    from inscribe.report.entries.glossed import (
        passages_in_a_line as passages_in_a_line,
        words_in_a_line as words_in_a_line,
    )
    from inscribe.report.entries.layout import laid_out as laid_out
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
            "annotation": "CONTEXT PIXELS_PER_MM entries_as_annotations",
            "blocks": (
                "Block Bullets Caution Chart Columns Drawing Facts GlossedLine GlossedWord Grid "
                "Heading Inline Interlinear Lead PictureBlock Run SourceSign Strip StripCell plain"
            ),
            "as_json": "entries_as_json",
            "collated": "printed_sides printed_spans",
            "concordance_csv": "clusters_as_csv counts_as_csv hits_as_csv",
            "docx": "entries_as_docx",
            "facts": "COLUMN_END JAPANESE ROMANISED date_text source_lines",
            "glossed": "passages_in_a_line words_in_a_line",
            "layout": "laid_out",
            "markdown": "entry_as_markdown escaped",
            "table": "csv_table entries_as_csv",
            "troubles_csv": "troubles_as_csv",
        },
    )
