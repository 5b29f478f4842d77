"""A proposal as a table that is corrected by hand and read again (``--boxes``)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe.report.entries import csv_table
from inscribe.signs import counted

if TYPE_CHECKING:
    from inscribe.measuring import Measured
    from inscribe.record import Inscription

COLUMNS = ["sign", "x", "y", "width", "height", "column", "place", "text", "certainty"]


def measured_as_csv(found: Measured, inscription: Inscription) -> str:
    """Return a row for each sign, in mm from the plate's top left corner."""
    t = inscription.transcription
    rows = []
    for sign in found.signs:
        column, place = counted(t, sign.sign)
        sizes = {key: f"{getattr(sign, key):g}" for key in ("x", "y", "width", "height")}
        rows.append(
            {
                "sign": str(sign.sign + 1),
                **sizes,
                "column": str(column),
                "place": str(place),
                "text": t.signs[sign.sign].text or "□",
                "certainty": f"{sign.certainty:.2f}",
            }
        )
    return csv_table(rows, COLUMNS)
