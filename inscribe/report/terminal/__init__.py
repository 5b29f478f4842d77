"""What the commands print for people."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.terminal.check import (
        check_as_text as check_as_text,
        tasks_as_text as tasks_as_text,
    )
    from inscribe.report.terminal.collation import (
        collation_as_text as collation_as_text,
        witnesses_as_text as witnesses_as_text,
    )
    from inscribe.report.terminal.concord import (
        clusters_as_text as clusters_as_text,
        concordance_as_text as concordance_as_text,
        counts_as_text as counts_as_text,
    )
    from inscribe.report.terminal.conventions import conventions_as_text as conventions_as_text
    from inscribe.report.terminal.date import (
        comparison_as_text as comparison_as_text,
        date_as_text as date_as_text,
    )
    from inscribe.report.terminal.glossary import (
        problems_as_text as problems_as_text,
        table_as_text as table_as_text,
        tables_as_text as tables_as_text,
    )
    from inscribe.report.terminal.imports import import_as_text as import_as_text
    from inscribe.report.terminal.merging import (
        merged_place_as_text as merged_place_as_text,
        merging_as_text as merging_as_text,
    )
    from inscribe.report.terminal.name import names_as_text as names_as_text
    from inscribe.report.terminal.people import people_as_text as people_as_text
    from inscribe.report.terminal.reading import (
        cautions_as_text as cautions_as_text,
        printable as printable,
        reading_as_text as reading_as_text,
    )
    from inscribe.report.terminal.restore import restorations_as_text as restorations_as_text
    from inscribe.report.terminal.settling import (
        diffs_as_text as diffs_as_text,
        revisions_as_text as revisions_as_text,
    )
    from inscribe.report.terminal.sign import (
        list_as_text as list_as_text,
        signs_as_text as signs_as_text,
    )
    from inscribe.report.terminal.source import hits_as_text as hits_as_text, listing as listing
    from inscribe.report.terminal.wrapping import (
        fitted as fitted,
        in_columns as in_columns,
        room as room,
        wrapped as wrapped,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "check": "check_as_text tasks_as_text",
            "collation": "collation_as_text witnesses_as_text",
            "concord": "clusters_as_text concordance_as_text counts_as_text",
            "conventions": "conventions_as_text",
            "date": "comparison_as_text date_as_text",
            "glossary": "problems_as_text table_as_text tables_as_text",
            "imports": "import_as_text",
            "merging": "merged_place_as_text merging_as_text",
            "name": "names_as_text",
            "people": "people_as_text",
            "reading": "cautions_as_text printable reading_as_text",
            "restore": "restorations_as_text",
            "settling": "diffs_as_text revisions_as_text",
            "sign": "list_as_text signs_as_text",
            "source": "hits_as_text listing",
            "wrapping": "fitted in_columns room wrapped",
        },
    )
