"""A proposal as plain data; signs and columns count from 0, as everywhere in JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inscribe.keys import MeasuredKeys
    from inscribe.measuring import Measured
    from inscribe.record import Inscription


def measured_as_json(found: Measured, inscription: Inscription, picture: str) -> MeasuredKeys:
    """Return plate, scale, columns and signs in mm, corners in pixels of the picture."""
    t = inscription.transcription
    return {
        "picture": picture,
        "plate": {"width": found.plate.width, "height": found.plate.height},
        "scale": round(found.scale, 3),
        "barrel": found.barrel,
        "corners": [[round(x, 1), round(y, 1)] for x, y in found.corners],
        "columns": [
            {
                "column": column.column,
                "signs": column.signs,
                "top": column.top,
                "bottom": column.bottom,
                "x": column.x,
                "width": column.width,
                "pitch": column.pitch,
                "error": column.error,
            }
            for column in found.columns
        ],
        "signs": [
            {
                "sign": sign.sign,
                "text": t.signs[sign.sign].text,
                "x": sign.x,
                "y": sign.y,
                "width": sign.width,
                "height": sign.height,
                "certainty": sign.certainty,
                "given": sign.is_given,
                "doubtful": sign.is_doubtful,
            }
            for sign in found.signs
        ],
    }
