"""Records written and changed, so that comments and layout of a file stay.

``writer`` (a new file), ``revising`` (a file made to say what a ``Record`` says), ``amending``
(measurements put in), ``moving`` (signs put into a text, and what counts signs moved with them).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.writing.amending import with_measurements as with_measurements
    from inscribe.record.writing.moving import mended as mended, with_signs as with_signs
    from inscribe.record.writing.revising import revised as revised
    from inscribe.record.writing.writer import basic_string as basic_string, dump as dump
else:
    __getattr__ = late.door(
        __name__,
        {
            "amending": "with_measurements",
            "moving": "mended with_signs",
            "revising": "revised",
            "writer": "basic_string dump",
        },
    )
