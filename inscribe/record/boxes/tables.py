r"""The measured places of an inscription's signs, from a table or from annotations of a photograph.

A CSV table has the columns sign, x, y, width, height: signs counted from 1, mm from the plate's
top left corner; cells parted by commas, or by semicolons or tabs, as where mm have a decimal
comma. A W3C Web Annotation page (also as IIIF viewers export it) has a box ``#xywh=`` in pixels
for each sign, in the order of the inscription unless ids end in ``:sign:N`` as this program writes
them. Where the picture shows more than the plate, an annotation whose text is ``plate`` gives the
plate's own box; without one, nobody knows how far from the plate's edge a sign stands, and
:func:`remarks` says so. Where that annotation has the plate's outline too (an SVG polygon of four
corners, from the top left clockwise) and the record its size, the picture may show it askew, and
no scale is needed.

>>> table = "sign,x,y,width,height\n1,2.0,5.0,4.2,4.0\n"
>>> boxes_of(table, "boxes.csv").signs
(SignBox(sign=0, x=2.0, y=5.0, width=4.2, height=4.0),)
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

from inscribe import files, strict
from inscribe.errors import InputError, Place
from inscribe.record.boxes.annotated import (
    OWN_ID,
    PLATE,
    Sides,
    boxed,
    is_of_one_sign,
    outline_of_annotation,
    said_by,
)
from inscribe.record.boxes.askew import Way, place_in_mm, size_in_pixels, way_to_mm
from inscribe.record.boxes.columns import column_of_boxes
from inscribe.record.fields import MAX_MM
from inscribe.record.model import Inscription, Plate, SignBox

COLUMNS = ("sign", "x", "y", "width", "height")

_ROUNDED = 0.05  # mm: two figures rounded to a tenth may differ by so much
_LIKE = 0.05  # the share by which the plate's box may differ from the plate as measured,
_ASKEW = 0.12  # and by which the sides of one seen askew may


class Boxes(NamedTuple):
    """Boxes of signs, in the order of the signs.

    ``plate`` is the plate's own size where an annotation gives it; ``is_placed`` says whether it
    is known how the boxes stand to the plate; ``left_out`` counts boxes of more than one sign.
    """

    signs: tuple[SignBox, ...]
    plate: Plate | None = None
    is_placed: bool = True
    left_out: int = 0


def read_boxes(path: Path, scale: float | None = None, plate: Plate | None = None) -> Boxes:
    """Return the boxes in a file.

    Args:
        path: a table or annotations.
        scale: in pixels per mm, for annotations.
        plate: its size, for annotations that have its outline.

    Raises:
        InputError: the file cannot be read, or is neither of the two kinds.
    """
    return boxes_of(files.read_text(path), str(path), scale, plate)


def boxes_of(text: str, name: str, scale: float | None = None, plate: Plate | None = None) -> Boxes:
    """Return the boxes written in ``text``, as :func:`read_boxes` does."""
    try:
        if text.lstrip()[:1] in ("{", "["):
            found = _annotated(text, name, scale, plate)
        else:
            found = Boxes(tuple(_tabled(text, name)))
    except RecursionError as error:
        raise InputError("the annotations are nested too deeply", Place(name)) from error
    if not found.signs:
        message = "there is no box of a sign"
        if found.left_out:
            message += ": each annotation is of several, as a column"
        raise InputError(message, Place(name), "see the formats in: inscribe guide imports")
    boxes = sorted(found.signs, key=lambda box: box.sign)
    for box, following in pairwise(boxes):
        if box.sign == following.sign:
            raise InputError(f"sign {box.sign + 1} has two boxes", Place(name), "keep one of them")
    return found._replace(signs=tuple(boxes))


def with_boxes(inscription: Inscription, boxes: Sequence[SignBox], name: str) -> Inscription:
    """Return ``inscription`` with its signs measured by ``boxes`` (from the file ``name``).

    A column whose first and last sign have a box ends where the boxes say, not the record.

    Raises:
        InputError: a box is of a sign that the inscription does not have, or reaches past the
            plate.
    """
    count = len(inscription.transcription.signs)
    for box in boxes:
        if box.sign >= count:
            raise InputError(
                f"there is a box for sign {box.sign + 1}, and the inscription has {count} signs",
                Place(name),
                "give a box a sign, in the order of the columns",
            )
        _require_on_plate(box, inscription.plate, name)
    measured = replace(inscription, boxes=tuple(boxes))
    known = inscription.columns
    columns = [
        column_of_boxes(column) or (known[column.index] if column.index < len(known) else None)
        for column in measured.transcription.columns
    ]
    complete = tuple(column for column in columns if column)
    return replace(measured, columns=complete if len(complete) == len(columns) else ())


def remarks(boxes: Boxes, inscription: Inscription) -> tuple[str, ...]:
    """Return what a reader must know of ``boxes`` of an inscription that was not measured so."""
    return tuple(_remarks(boxes, inscription))


def _remarks(boxes: Boxes, inscription: Inscription) -> Iterator[str]:
    if boxes.left_out:
        annotations = "annotation is" if boxes.left_out == 1 else "annotations are"
        yield f"{boxes.left_out} {annotations} of more than one sign, as a column, and left out"
    if not boxes.is_placed:
        yield (
            "no annotation says where the plate is: the picture's top left corner is taken for"
            " the plate's, and the margins, the free room and the capacity hang on it; give the"
            f' plate a box with the text "{PLATE}"'
        )
    boxed = {box.sign for box in boxes.signs}
    columns = inscription.transcription.columns
    without = [c for c in columns if not any(sign.index in boxed for sign in c.signs)]
    if without and inscription.columns:
        which = ", ".join(str(column.index + 1) for column in without)
        yield f"no sign of column {which} has a box: its ends are those of the record"


def _alike(one: float, other: float, share: float) -> bool:
    return abs(one - other) <= max(1.0, share * other)


def _require_on_plate(box: SignBox, plate: Plate | None, name: str) -> None:
    if plate is None:
        return
    right, bottom = box.x + box.width, box.y + box.height
    slack = plate.slack + _ROUNDED
    if right > plate.width + slack or bottom > plate.height + slack:
        raise InputError(
            f"the box of sign {box.sign + 1} reaches to {right:g}, {bottom:g} mm, past the plate"
            f" of {plate.width:g} x {plate.height:g} mm",
            Place(name),
            f'check the scale, or give the plate a box with the text "{PLATE}"',
        )


def _tabled(text: str, name: str) -> Iterator[SignBox]:
    delimiter = _delimiter(text)
    columns = strict.columns_of(text, name, delimiter, COLUMNS)
    missing = [column for column in COLUMNS if column not in columns]
    if missing:
        raise InputError(
            f"the table has no column {missing[0]}",
            Place(name, 1),
            f"its first line should be {','.join(COLUMNS)}",
        )
    for number, row in strict.table_rows(text, name, delimiter, COLUMNS):
        place = Place(name, number)
        try:
            sign = int(row["sign"])
            sides = tuple(_mm(row[column]) for column in COLUMNS[1:])
        except ValueError as error:
            hint = "write mm as 4.2, or as 4,2 in a table whose cells are parted by ;"
            raise InputError("a cell is no number", place, hint) from error
        yield _box(sign, (sides[0], sides[1], sides[2], sides[3]), place)


def _delimiter(table: str) -> str:
    """Return what parts the cells of a table's head: a comma, a semicolon or a tab."""
    head = next((line for line in table.split("\n") if line.strip() and line[:1] != "#"), "")
    return max(",;\t", key=head.count)


def _mm(cell: str) -> float:
    """Return a figure with a decimal point or a decimal comma.

    Raises:
        ValueError: it is no number.
    """
    return float(cell.replace(",", "."))


def _annotated(text: str, name: str, scale: float | None, known: Plate | None) -> Boxes:
    items = list(boxed(text, name))
    plate = next((each for each in items if said_by(each[0]).lower() == PLATE), None)
    others = [(item, sides) for item, sides in items if said_by(item).lower() != PLATE]
    signs = [(item, sides) for item, sides in others if is_of_one_sign(item)]
    own = [OWN_ID.search(str(item.get("id", ""))) for item, _ in signs]
    outline = outline_of_annotation(plate[0]) if plate else ()
    has_scale = scale is not None and math.isfinite(scale) and scale > 0
    if not has_scale and not (known and len(outline) == 4):
        raise InputError(
            "annotations are in pixels", Place(name), "give the pixels per mm with --scale"
        )
    size, way = _seen(plate[1] if plate else None, outline, scale or 0.0, known, name)
    boxes = []
    for number, ((item, sides), match) in enumerate(zip(signs, own, strict=True), start=1):
        sign = int(match[1]) if match and all(own) else number
        drawn = outline_of_annotation(item) if len(outline) == 4 else ()
        x, y, width, height = place_in_mm(drawn or _middles(sides), way)
        in_mm = (round(x, 3), round(y, 3), round(width, 3), round(height, 3))
        boxes.append(_box(sign, in_mm, Place(name)))
    placed = plate is not None or all(own)
    return Boxes(tuple(boxes), size, placed, len(others) - len(signs))


def _seen(
    plate: Sides | None,
    outline: Sequence[tuple[float, float]],
    scale: float,
    known: Plate | None,
    name: str,
) -> tuple[Plate | None, Way]:
    """Return the plate's size where annotations give it, and the way from pixels to mm on it."""
    if plate is None:
        return None, lambda point: (point[0] / scale, point[1] / scale)
    x, y, width, height = plate
    if len(outline) == 4:
        width, height = size_in_pixels(outline)
    size = Plate(round(width / scale, 3), round(height / scale, 3)) if scale else known
    assert size is not None
    share = _ASKEW if len(outline) == 4 else _LIKE
    if known and not (
        _alike(size.width, known.width, share) and _alike(size.height, known.height, share)
    ):
        raise InputError(
            f"the plate's box is {size.width:g} x {size.height:g} mm at this scale, and the plate"
            f" {known.width:g} x {known.height:g} mm: one of them, or the scale, is wrong",
            Place(name),
            "correct it; where the picture shows the plate askew, give its annotation the outline,"
            " an SVG polygon of four corners",
        )
    if len(outline) != 4:
        return size, lambda point: ((point[0] - x) / scale, (point[1] - y) / scale)
    full = known or size
    try:
        return size, way_to_mm(outline, full.width, full.height)
    except ValueError as error:
        raise InputError(
            "the plate's outline goes round no plate", Place(name), "give its four corners"
        ) from error


def _middles(sides: Sides) -> tuple[tuple[float, float], ...]:
    """Return the middles of a box's sides, which also where it is seen askew lie on the sign's."""
    x, y, width, height = sides
    across, down = x + width / 2, y + height / 2
    return (across, y), (x + width, down), (across, y + height), (x, down)


def _box(sign: int, sides: Sides, place: Place) -> SignBox:
    x, y, width, height = sides
    possible = all(math.isfinite(side) for side in sides) and max(sides) <= MAX_MM
    if sign < 1 or not possible or x < 0 or y < 0 or width <= 0 or height <= 0:
        raise InputError(
            f"the box of sign {sign} is impossible: {x:g}, {y:g}, {width:g} x {height:g} mm",
            place,
            "signs count from 1, mm from the plate's top left corner; check the scale",
        )
    return SignBox(sign - 1, x, y, width, height)
