"""Measuring from a photograph: where each sign of a known inscription stands, as a proposal.

The transcription says how many columns there are and how many signs each has. The plate is found in
the picture and seen from straight above (``outline``, ``view``); strokes are told from metal
(``strokes``); columns are parted (``columns``) and each is cut into its signs (``cutting``), whose
boxes are drawn tight (``boxes``). Pictures that cannot be measured are refused (``findings``).

Everything here needs the libraries of the extra ``photo``; nothing else of the program does.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.measuring.accepting import (
        accepted as accepted,
        photograph as photograph,
        repeated as repeated,
    )
    from inscribe.measuring.model import (
        Asked as Asked,
        Corners as Corners,
        Cut as Cut,
        Measured as Measured,
        MeasuredColumn as MeasuredColumn,
        MeasuredSign as MeasuredSign,
    )
    from inscribe.measuring.picture import Picture as Picture, read_picture as read_picture
    from inscribe.measuring.proposal import measure as measure
    from inscribe.measuring.shown import outlines as outlines, plate_as_jpeg as plate_as_jpeg
else:
    __getattr__ = late.door(
        __name__,
        {
            "accepting": "accepted photograph repeated",
            "model": "Asked Corners Cut Measured MeasuredColumn MeasuredSign",
            "picture": "Picture read_picture",
            "proposal": "measure",
            "shown": "outlines plate_as_jpeg",
        },
    )
