"""Results laid out: on the terminal, as JSON, as entries and collations. No logic of the trade.

Rooms: ``terminal``, ``json``, ``entries``, ``collations``; here only what several share:
``cautions`` and ``phrases`` (a line of Latin letters by phrases).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.cautions import caution as caution
    from inscribe.report.phrases import phrased as phrased
else:
    __getattr__ = late.door(
        __name__,
        {
            "cautions": "caution",
            "phrases": "phrased",
        },
    )
