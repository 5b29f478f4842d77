"""The measured places of signs.

``annotated`` (annotations of a picture, in a page or a manifest of IIIF), ``askew`` (from the
pixels of a plate seen askew to mm), ``columns`` (where a column of measured signs ends), ``tables``
(boxes from a table, or from annotations of a photograph).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.boxes.annotated import (
        iiif_problem as iiif_problem,
        place_of_annotation as place_of_annotation,
    )
    from inscribe.record.boxes.columns import (
        measured_column as measured_column,
        partly_boxed as partly_boxed,
        reckoned_column as reckoned_column,
    )
    from inscribe.record.boxes.tables import (
        read_boxes as read_boxes,
        remarks as remarks,
        with_boxes as with_boxes,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "annotated": "iiif_problem place_of_annotation",
            "columns": "measured_column partly_boxed reckoned_column",
            "tables": "read_boxes remarks with_boxes",
        },
    )
