"""The plate drawn to scale, with every sign at its place.

In reading order: ``plate``, ``glyphs`` (a sign whatever its length in code points).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.drawing.plate import plate_drawing as plate_drawing
else:
    __getattr__ = late.door(
        __name__,
        {
            "plate": "plate_drawing",
        },
    )
