"""What was measured in a photograph: a table, a correctable list, an overlay, annotations."""

from inscribe.report.measured.annotations import measured_as_annotations
from inscribe.report.measured.as_json import measured_as_json
from inscribe.report.measured.overlay import overlay
from inscribe.report.measured.page import measured_as_html
from inscribe.report.measured.table import measured_as_csv
from inscribe.report.measured.text import measured_as_text

__all__ = [
    "measured_as_annotations",
    "measured_as_csv",
    "measured_as_html",
    "measured_as_json",
    "measured_as_text",
    "overlay",
]
