"""What kind of text an inscription is, and who reads it.

In reading order: ``reader`` (the way in), ``interpretation`` (from a text to what it says),
``register`` and ``signed`` (verse, signature or prose), ``mixed`` (a poem with something beside
it), ``doubts`` (of the carving itself), ``second_opinion``, ``iso`` (ISO 3602 in the place of
Hepburn).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.inscription.doubts import (
        doubts_of_dates as doubts_of_dates,
        doubts_of_signs as doubts_of_signs,
        doubts_of_suspicions as doubts_of_suspicions,
    )
    from inscribe.reading.inscription.iso import iso_reading as iso_reading
    from inscribe.reading.inscription.reader import (
        Choice as Choice,
        read as read,
        read_text as read_text,
    )
    from inscribe.reading.inscription.second_opinion import (
        with_second_opinion as with_second_opinion,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "doubts": "doubts_of_dates doubts_of_signs doubts_of_suspicions",
            "iso": "iso_reading",
            "reader": "Choice read read_text",
            "second_opinion": "with_second_opinion",
        },
    )
