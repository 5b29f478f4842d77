"""A proposal for a terminal: the columns, and the signs to be looked at."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from inscribe.report.terminal import fitted, in_columns, printable
from inscribe.signs import place_of

if TYPE_CHECKING:
    from inscribe.measuring import Measured
    from inscribe.record import Inscription

_NEXT = fitted(
    "A proposal: look at it with --format html, put it right with --cut or a table"
    " (--format csv, then --boxes), and write it into the record with --accept --by NAME.",
    0,
)
HEAD = ("column", "signs", "top", "bottom", "x", "width", "pitch", "error")


def measured_as_text(
    found: Measured,
    inscription: Inscription,
    picture: str,
    title: str,
    *,
    is_accepted: bool = False,
) -> str:
    """Return the columns in mm, which signs are doubtful, and what to do with what is proposed."""
    lines = list(_lines(found, inscription, picture, title))
    return "\n".join(lines if is_accepted else [*lines, _NEXT]) + "\n"


def _lines(found: Measured, inscription: Inscription, picture: str, title: str) -> Iterator[str]:
    plate = found.plate
    yield printable(f"{title}, measured in {picture}")
    yield (
        f"plate {plate.height:g} x {plate.width:g} mm, seen at {found.scale:.1f} pixels per mm;"
        f" {len(found.signs)} signs proposed, {len(found.doubtful)} doubtful"
    )
    yield ""
    rows: list[tuple[str, ...]] = [HEAD]
    for column in found.columns:
        sizes = (column.top, column.bottom, column.x, column.width, column.pitch, column.error)
        shown = tuple(f"{size:.2f}" for size in sizes)
        rows.append((str(column.column + 1), str(column.signs), *shown))
    yield from in_columns([tuple(cell.rjust(6) for cell in row) for row in rows])
    yield ""
    doubtful = list(_doubtful(found, inscription))
    if doubtful:
        yield "to be looked at:"
        yield from in_columns(doubtful)
        yield ""


def _doubtful(found: Measured, inscription: Inscription) -> Iterator[tuple[str, ...]]:
    t = inscription.transcription
    for sign in found.doubtful:
        where = place_of(t, sign.sign, sign.sign)
        extent = f"{sign.y:.2f} to {sign.y + sign.height:.2f} mm"
        shown = printable(t.signs[sign.sign].text or "□")
        sure = f"certainty {sign.certainty:.2f}"
        yield (f"  {sign.sign + 1}", shown, where, extent, sure)
