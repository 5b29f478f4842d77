"""A proposal as plain data; signs and columns count from 0, as everywhere in JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inscribe.measuring import Measured
    from inscribe.record import Inscription


def measured_as_json(found: Measured, inscription: Inscription, picture: str) -> dict[str, Any]:
    """Return plate, scale, columns and signs in mm, corners in pixels of the picture."""
    t = inscription.transcription
    return {
        "picture": picture,
        "plate": {"width": found.plate.width, "height": found.plate.height},
        "scale": round(found.scale, 3),
        "barrel": found.barrel,
        "corners": [[round(x, 1), round(y, 1)] for x, y in found.corners],
        "columns": [column._asdict() for column in found.columns],
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
