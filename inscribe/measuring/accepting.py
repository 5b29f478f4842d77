"""What a person accepts of a proposal, as a record holds it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from inscribe.errors import InputError
from inscribe.measuring.model import Asked, Cut, Measured
from inscribe.record import ColumnMeasure, Inscription, Photograph


def accepted(inscription: Inscription, found: Measured, *, replacing: bool) -> Inscription:
    """Return an inscription with the plate, columns and boxes of a proposal.

    Columns measured on the object stay unless ``replacing``; boxes of other faces always stay.

    Raises:
        InputError: the record has other measurements of the same, and they are not to be replaced.
    """
    own = {sign.sign for sign in found.signs}
    others = tuple(box for box in inscription.boxes if box.sign not in own)
    if not replacing:
        if len(others) < len(inscription.boxes):
            raise InputError("the record has boxes of these signs already", hint="see --replace")
        if inscription.plate not in (None, found.plate):
            raise InputError(
                "the record gives the plate another size", hint="measure with it, or see --replace"
            )
    boxes = tuple(sorted((*others, *(sign.box for sign in found.signs))))
    columns = inscription.columns
    if replacing or not columns:
        columns = _columns(inscription, found)
    return replace(inscription, plate=found.plate, columns=columns, boxes=boxes)


def _columns(inscription: Inscription, found: Measured) -> tuple[ColumnMeasure, ...]:
    """Return the measures of all columns, or none where this face is not all of them."""
    measured = {
        column.column: ColumnMeasure(column.top, column.bottom, column.x, column.width)
        for column in found.columns
    }
    for column, known in enumerate(inscription.columns):
        measured.setdefault(column, known)
    count = len(inscription.transcription.columns)
    return tuple(measured[n] for n in range(count)) if len(measured) == count else ()


def photograph(
    picture: str, found: Measured, asked: Asked, by: str, on: date, faces: int
) -> Photograph:
    """Return how a proposal came about, so that it can be repeated."""
    corners = tuple(value for corner in found.corners for value in corner)
    return Photograph(
        picture,
        by,
        on,
        face=asked.face if faces > 1 else None,
        corners=corners,
        scale=round(found.scale, 2),
        barrel=found.barrel,
        cuts=", ".join(said_cut(sign, cut) for sign, cut in sorted(asked.cuts.items())),
        drawn=", ".join(str(sign.sign + 1) for sign in found.signs if sign.is_given),
    )


def said_cut(sign: int, cut: Cut) -> str:
    """Return a cut as it is typed.

    >>> said_cut(11, Cut(34.5)), said_cut(14, Cut(40, 44.2))
    ('12=34.5', '15=40-44.2')
    """
    end = "" if cut.bottom is None else f"-{cut.bottom:g}"
    return f"{sign + 1}={cut.top:g}{end}"


def repeated(inscription: Inscription, picture: str, face: int) -> Photograph | None:
    """Return how this picture of this face was measured before, if it was."""
    for before in inscription.photographs:
        if before.picture == picture and (before.face or 0) == face:
            return before
    return None
