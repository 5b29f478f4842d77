"""The entry in LIDO 1.1.

In reading order: ``entry`` (the way in), ``making`` (date, signer and place as inscribed),
``parts``, ``sources``, ``resources`` (pictures).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.lido.entry import entries_as_lido as entries_as_lido
else:
    __getattr__ = late.door(
        __name__,
        {
            "entry": "entries_as_lido",
        },
    )
