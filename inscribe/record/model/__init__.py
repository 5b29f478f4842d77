"""What a record holds: immutable types, measurements in mm.

``images`` (pictures), ``measured`` (object, plate, columns, signs), ``objects`` (the ``Record``,
its inscriptions, sources, readers, and what was settled).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.record.model.images import RecordImage as RecordImage
    from inscribe.record.model.measured import (
        TOLERANCE as TOLERANCE,
        ColumnMeasure as ColumnMeasure,
        Measurements as Measurements,
        Obstacle as Obstacle,
        Photograph as Photograph,
        Plate as Plate,
        SignBox as SignBox,
    )
    from inscribe.record.model.objects import (
        CopiedText as CopiedText,
        Decision as Decision,
        Imported as Imported,
        Inscription as Inscription,
        Maker as Maker,
        Override as Override,
        Reader as Reader,
        Record as Record,
        Register as Register,
        SettledPassage as SettledPassage,
        State as State,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "images": "RecordImage",
            "measured": "ColumnMeasure Measurements Obstacle Photograph Plate SignBox TOLERANCE",
            "objects": (
                "CopiedText Decision Imported Inscription Maker Override Reader Record "
                "Register SettledPassage State"
            ),
        },
    )
