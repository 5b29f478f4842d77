"""Measuring from a photograph: where each sign of a known inscription stands, as a proposal.

The transcription says how many columns there are and how many signs each has. The plate is found in
the picture and seen from straight above (``outline``, ``view``); strokes are told from metal
(``strokes``); columns are parted (``columns``) and each is cut into its signs (``cutting``), whose
boxes are drawn tight (``boxes``). Pictures that cannot be measured are refused (``findings``).

Everything here needs the libraries of the extra ``photo``; nothing else of the program does.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe.late import names

if TYPE_CHECKING:
    from inscribe.measuring.model import Asked, Measured, MeasuredColumn, MeasuredSign
    from inscribe.measuring.picture import Picture, read_picture
    from inscribe.measuring.proposal import measure

__all__ = [
    "Asked",
    "Measured",
    "MeasuredColumn",
    "MeasuredSign",
    "Picture",
    "measure",
    "read_picture",
]

__getattr__ = names(
    __name__,
    {
        "Asked": "inscribe.measuring.model",
        "Measured": "inscribe.measuring.model",
        "MeasuredColumn": "inscribe.measuring.model",
        "MeasuredSign": "inscribe.measuring.model",
        "Picture": "inscribe.measuring.picture",
        "measure": "inscribe.measuring.proposal",
        "read_picture": "inscribe.measuring.picture",
    },
)
