"""What the commands print for programs: JSON, its schemas, and the concordance as CSV."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.json.check import (
        check_as_json as check_as_json,
        finding_row as finding_row,
        task_row as task_row,
    )
    from inscribe.report.json.collation import collation_as_json as collation_as_json
    from inscribe.report.json.concord import (
        clusters_as_json as clusters_as_json,
        concordance_as_json as concordance_as_json,
        hit_row as hit_row,
    )
    from inscribe.report.json.concordance_csv import (
        clusters_as_csv as clusters_as_csv,
        counts_as_csv as counts_as_csv,
        hits_as_csv as hits_as_csv,
    )
    from inscribe.report.json.date import (
        comparison_as_json as comparison_as_json,
        date_as_json as date_as_json,
    )
    from inscribe.report.json.entry import entries_as_json as entries_as_json
    from inscribe.report.json.imports import (
        import_as_json as import_as_json,
        troubles_as_csv as troubles_as_csv,
    )
    from inscribe.report.json.name import Found as Found, names_as_json as names_as_json
    from inscribe.report.json.reading import reading_as_json as reading_as_json
    from inscribe.report.json.restore import (
        CAUTIONS as CAUTIONS,
        restoration_as_json as restoration_as_json,
    )
    from inscribe.report.json.schemas import schema_of as schema_of
    from inscribe.report.json.sign import sign_as_json as sign_as_json
    from inscribe.report.json.source import (
        error_as_json as error_as_json,
        hits_as_json as hits_as_json,
        text_as_json as text_as_json,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "check": "check_as_json finding_row task_row",
            "collation": "collation_as_json",
            "concord": "clusters_as_json concordance_as_json hit_row",
            "concordance_csv": "clusters_as_csv counts_as_csv hits_as_csv",
            "date": "comparison_as_json date_as_json",
            "entry": "entries_as_json",
            "imports": "import_as_json troubles_as_csv",
            "name": "Found names_as_json",
            "reading": "reading_as_json",
            "restore": "CAUTIONS restoration_as_json",
            "schemas": "schema_of",
            "sign": "sign_as_json",
            "source": "error_as_json hits_as_json text_as_json",
        },
    )
