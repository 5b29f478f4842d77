"""What the values of a record must say together: measurements, signs, sources."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from inscribe.errors import NotationError
from inscribe.record.model import (
    TOLERANCE,
    CopiedText,
    Inscription,
    Maker,
    Measurements,
    Override,
    Plate,
    RecordImage,
    SettledPassage,
)
from inscribe.record.reading.problems import Problems

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inscribe.record.reading.locate import KeyPath

Settled = Override | SettledPassage

_ROUNDED = 0.05  # mm: two figures rounded to a tenth may differ by so much


def inscription(found: Inscription, path: KeyPath, problems: Problems) -> None:
    """Note what is impossible in one inscription."""
    _columns_on_plate(found, path, problems)
    _boxes_on_plate(found, path, problems)
    try:
        t = found.transcription
    except NotationError as error:
        problems.add_notation((*path, "text"), error)
        return
    if not t.signs:
        problems.add(
            (*path, "text"), "the text has no sign", "write □ or ［　　］ for what is lost"
        )
    _column_count(found, len(t.columns), path, problems)
    _obstacles(found, len(t.columns), path, problems)
    _sign_numbers(found, path, problems)
    _spans(found, path, problems)
    for index, decision in enumerate(found.decisions):
        if decision.last >= len(t.signs):
            here = (*path, "decision", index, "signs")
            hint = f"the text has {len(t.signs)}"
            problems.add(here, f"there is no sign {decision.last + 1}", hint)


def _column_count(found: Inscription, columns: int, path: KeyPath, problems: Problems) -> None:
    measured = len(found.columns)
    if measured and columns and measured != columns:
        said = "1 column is" if measured == 1 else f"{measured} columns are"
        problems.add(
            (*path, "column"),
            f"{said} measured, and the text has {columns}",
            "give each column of the text its measurement, or none",
        )


def _columns_on_plate(found: Inscription, path: KeyPath, problems: Problems) -> None:
    plate = found.plate
    slack = _slack(plate)
    for index, column in enumerate(found.columns):
        here = (*path, "column", index)
        if column.bottom <= column.top:
            problems.add(here, "the column ends above its beginning", "bottom must exceed top")
        if plate is None:
            continue
        if column.bottom > plate.height + slack:
            message = f"the column ends at {column.bottom:g} mm, below the plate's {plate.height:g}"
            problems.add((*here, "bottom"), message, "correct the one or the other")
        right = (column.x or 0.0) + (column.width or 0.0)
        if right > plate.width + slack:
            message = f"the column reaches {right:g} mm, past the plate's width of {plate.width:g}"
            problems.add(here, message, "correct x, width or the plate")


def _obstacles(found: Inscription, columns: int, path: KeyPath, problems: Problems) -> None:
    for index, obstacle in enumerate(found.takes_room):
        here = (*path, "takes_room", index)
        if obstacle.column >= columns:
            message = f"there is no column {obstacle.column + 1}"
            problems.add((*here, "column"), message, f"the text has {columns}")
        if obstacle.end <= obstacle.start:
            problems.add(here, "what takes room ends above its beginning", "to must exceed from")
        if found.plate and obstacle.end > found.plate.height + _slack(found.plate):
            message = f"what takes room ends below the plate's {found.plate.height:g} mm"
            problems.add((*here, "to"), message, "correct the one or the other")
        for column in found.columns[obstacle.column : obstacle.column + 1]:
            if obstacle.start <= column.top and obstacle.end >= column.bottom > column.top:
                message = f"what takes room covers all the writing of column {obstacle.column + 1}"
                where = f"it stands from {column.top:g} to {column.bottom:g} mm"
                problems.add(here, message, where)


def _slack(plate: Plate | None) -> float:
    """Return by how many mm two measured lengths may contradict each other."""
    return _ROUNDED + (plate.slack if plate else TOLERANCE)


def _boxes_on_plate(found: Inscription, path: KeyPath, problems: Problems) -> None:
    plate = found.plate
    slack = _slack(plate)
    for index, box in enumerate(found.boxes):
        if plate is None:
            return
        right, bottom = box.x + box.width, box.y + box.height
        if right > plate.width + slack or bottom > plate.height + slack:
            message = f"the box of sign {box.sign + 1} reaches past the plate"
            problems.add((*path, "box", index), message, "correct the box or the plate")


def _sign_numbers(found: Inscription, path: KeyPath, problems: Problems) -> None:
    count = len(found.transcription.signs)
    boxed: set[int] = set()
    for index, box in enumerate(found.boxes):
        here = (*path, "box", index, "sign")
        if box.sign >= count:
            message = f"there is no sign {box.sign + 1}"
            problems.add(here, message, f"the text has {count}")
        if box.sign in boxed:
            problems.add(here, f"sign {box.sign + 1} has two boxes", "keep one")
        boxed.add(box.sign)


def _spans(found: Inscription, path: KeyPath, problems: Problems) -> None:
    """Note overrides, and passages, of signs that are not there, or of the same sign twice."""
    settled: dict[str, Sequence[Settled]] = {
        "override": found.overrides,
        "passage": found.passages,
    }
    count = len(found.transcription.signs)
    for key, spans in settled.items():
        end = -1
        for index, span in sorted(enumerate(spans), key=lambda pair: pair[1].first):
            here = (*path, key, index)
            if span.last >= count:
                message = f"there is no sign {span.last + 1}"
                problems.add((*here, "signs"), message, f"the text has {count}")
            elif span.first <= end:
                problems.add((*here, "signs"), f"two {key}s cover the same sign", "keep one")
            elif span.of:
                _text_of_span(found, key, span, here, problems)
            end = max(end, span.last)


def _text_of_span(
    found: Inscription, key: str, span: Settled, path: KeyPath, problems: Problems
) -> None:
    signs = found.transcription.signs[span.first : span.last + 1]
    text = "".join(sign.text for sign in signs if sign.is_legible)
    if span.of != text:
        numbers = f"{span.first + 1} to {span.last + 1}"
        shown = text if len(text) <= 20 else text[:20] + "…"
        message = f"the {key} was made for {span.of}, and signs {numbers} are {shown or '□'}"
        problems.add((*path, "of"), message, "it no longer applies: correct its signs or remove it")


def source(found: CopiedText, path: KeyPath, problems: Problems) -> None:
    """Note a source that is given twice, not at all, or cannot be parsed."""
    given = [key for key in ("text", "file", "id") if getattr(found, key)]
    if found.file and "text" in given:
        given.remove("text")  # the file's words
    if not given:
        problems.add(path, "the source has no words", "expected text, or file, or id")
    try:
        words = found.transcription
    except NotationError as error:
        if found.file:
            problems.add((*path, "file"), f"{error.message} in {error.place}", error.hint)
        else:
            problems.add_notation((*path, "text"), error)
        return
    if given and given != ["id"] and not words.signs:
        problems.add(path, "the source's text has no sign", "write its words")


def reader_text(text: str, notation: str, path: KeyPath, problems: Problems) -> None:
    """Note a reader's own transcription that cannot be parsed."""
    from inscribe.notation import parse

    try:
        parse(text, notation)
    except NotationError as error:
        problems.add_notation((*path, "text"), error)


def maker(found: Maker, path: KeyPath, problems: Problems) -> None:
    """Note a life that ends before it begins."""
    for first, last in (("born", "died"), ("active_from", "active_to"), ("born", "active_to")):
        start, end = getattr(found, first), getattr(found, last)
        if start is not None and end is not None and end < start:
            problems.add((*path, last), f"{last} is before {first}", "correct the one or the other")


def plate_on_object(
    found: Inscription, sizes: Measurements, path: KeyPath, problems: Problems
) -> None:
    """Note a plate that is larger than the object that bears it."""
    largest = sizes.largest
    if found.plate is None or largest is None:
        return
    for key in ("width", "height"):
        size = getattr(found.plate, key)
        if size > largest + _slack(found.plate):
            message = f"the plate's {key} is {size:g} mm, and the object's largest is {largest:g}"
            problems.add((*path, "plate", key), message, "correct the one or the other")


def image(found: RecordImage, path: KeyPath, problems: Problems) -> None:
    """Note what is impossible in a picture; whether its file is there, ``check`` tells."""
    if not (found.file or found.iiif):
        hint = "give file, or iiif, or both where file is a local copy"
        problems.add(path, "the image has neither file nor iiif", hint)
    if found.iiif and not re.fullmatch(r"https?://[^\s\"<>]+", found.iiif):
        problems.add((*path, "iiif"), "iiif is no web address", "give https://.../identifier")
    if (found.service or found.size) and not found.iiif:
        problems.add(path, "service and size are of a IIIF image", "give iiif, or leave them out")
    if found.size and min(found.size) < 1:
        problems.add((*path, "size"), "no picture has that size", "expected width and height")
    if found.crop and (min(found.crop) < 0 or not all(found.crop[2:])):
        problems.add(
            (*path, "crop"), "the crop is no part of a picture", "expected x, y, width, height"
        )
