"""The plate drawn to scale, with every sign at its place.

In reading order: ``surfaces`` (plates and guards, where each sign stands), ``ghosts`` (what is left
out), ``plate`` (the drawing), ``glyphs`` (a sign whatever its length), ``room_chart`` (a chart).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.drawing.metafile import as_metafile as as_metafile
    from inscribe.report.drawing.plate import plate_drawing as plate_drawing
    from inscribe.report.drawing.room_chart import space_chart as space_chart
    from inscribe.report.drawing.surfaces import on_guard as on_guard
else:
    __getattr__ = late.door(
        __name__,
        {
            "metafile": "as_metafile",
            "plate": "plate_drawing",
            "room_chart": "space_chart",
            "surfaces": "on_guard",
        },
    )
