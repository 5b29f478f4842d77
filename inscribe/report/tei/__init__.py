"""The entry in TEI P5 as EpiDoc asks for it, and the apparatus at the signs.

In reading order: ``entry`` (the way in), ``header``, ``edition`` with ``stretches``, ``apparatus``,
``facsimile``, ``legend`` (the marks of the notation).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.tei.entry import entries_as_tei as entries_as_tei
else:
    __getattr__ = late.door(
        __name__,
        {
            "entry": "entries_as_tei",
        },
    )
