"""What was measured in a photograph: a table, a correctable list, an overlay, annotations."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.measured.annotations import (
        measured_as_annotations as measured_as_annotations,
    )
    from inscribe.report.measured.as_json import measured_as_json as measured_as_json
    from inscribe.report.measured.over_picture import drawn as drawn, overlay as overlay
    from inscribe.report.measured.page import measured_as_html as measured_as_html
    from inscribe.report.measured.table import measured_as_csv as measured_as_csv
    from inscribe.report.measured.text import measured_as_text as measured_as_text
else:
    __getattr__ = late.door(
        __name__,
        {
            "annotations": "measured_as_annotations",
            "as_json": "measured_as_json",
            "over_picture": "drawn overlay",
            "page": "measured_as_html",
            "table": "measured_as_csv",
            "text": "measured_as_text",
        },
    )
