"""What is to be measured: the record's inscription, and what the command says of the picture."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from pathlib import Path

from inscribe import files, writing
from inscribe.errors import InputError, Place
from inscribe.measuring import Asked, Corners, Cut, Measured, accepted, photograph, repeated
from inscribe.record import (
    MAX_MM,
    Inscription,
    Plate,
    Record,
    loads,
    read_boxes,
    remarks,
    with_measurements,
)

_NUMBER = r"(\d{1,5}(?:\.\d{1,6})?)"
_POINT = re.compile(rf"{_NUMBER},{_NUMBER}", re.ASCII)
_PLATE = re.compile(rf"{_NUMBER}[x×]{_NUMBER}", re.ASCII)
_CUT = re.compile(rf"(\d{{1,6}})={_NUMBER}(?:-{_NUMBER})?", re.ASCII)


@dataclass(frozen=True)
class MeasuringTask:
    """One inscription to be measured, its file as it was read, and what was said of the picture."""

    path: Path
    text: str
    record: Record
    index: int
    asked: Asked
    is_repeated: bool = False
    remarks: tuple[str, ...] = ()  # on the boxes that were given

    @property
    def inscription(self) -> Inscription:
        """The inscription whose signs are looked for."""
        return self.record.inscriptions[self.index]

    @property
    def title(self) -> str:
        """What to call it."""
        return f"{self.record.id}, {self.inscription.place}"

    @property
    def name(self) -> str:
        """What ids of its annotations begin with."""
        return f"{self.record.id}:{self.index + 1}"


def measuring_task(
    photo: str,
    record_file: str,
    number: int | None,
    face: int | None,
    plate: str | None,
    corners: tuple[str, ...],
    scale: float | None,
    ruler: tuple[str, ...],
    cuts: tuple[str, ...],
    boxes: str | None,
) -> MeasuringTask:
    """Return what the command asks for.

    Raises:
        InputError: the record, or a value, does not do.
    """
    path = Path(record_file)
    text = files.read_text(path)
    record = loads(text, record_file, path.parent)
    index = _index(record, number)
    inscription = record.inscriptions[index]
    shown_face = _face(inscription, face)
    size = _plate(plate) if plate else inscription.plate
    before = repeated(inscription, Path(photo).name, shown_face)
    kept = _kept_corners(before.corners) if before and not corners else None
    given_cuts = _cuts(cuts or (before.cuts.split(", ") if before and before.cuts else ()))
    pixels_per_mm = _scale(scale, ruler)
    given_boxes = read_boxes(Path(boxes), pixels_per_mm, size) if boxes else None
    drawn = given_boxes.signs if given_boxes else ()
    _check_signs(inscription, shown_face, [*given_cuts, *(box.sign for box in drawn)])
    asked = Asked(
        size,
        _corners(corners) if corners else kept,
        pixels_per_mm,
        before.barrel if before and kept else None,
        shown_face,
        given_cuts,
        drawn,
    )
    said = remarks(given_boxes, inscription) if given_boxes else ()
    return MeasuringTask(path, text, record, index, asked, kept is not None, said)


def write_measured(
    task: MeasuringTask, found: Measured, picture: str, by: str, *, replacing: bool
) -> Path:
    """Write what was measured into the record, whole or not at all, and return its path.

    Raises:
        InputError: the record has other measurements, has changed meanwhile, or cannot be written.
    """
    from datetime import date

    measured = accepted(task.inscription, found, replacing=replacing)
    faces = len(task.inscription.transcription.faces)
    taken = photograph(picture, found, task.asked, by.strip(), date.today(), faces)
    amended = with_measurements(task.text, str(task.path), task.index, measured, taken)
    if files.read_text(task.path) != task.text:
        raise InputError("the record was changed meanwhile", Place(str(task.path)), "try again")
    writing.write_text(task.path, amended, force=True)
    return task.path


def _index(record: Record, number: int | None) -> int:
    count = len(record.inscriptions)
    if number is None and count > 1:
        raise InputError(
            f"the record has {count} inscriptions", hint="choose one with --inscription"
        )
    if number is not None and number > count:
        raise InputError(f"there is no inscription {number}", hint=f"the record has {count}")
    return (number or 1) - 1


def _face(inscription: Inscription, face: int | None) -> int:
    count = len(inscription.transcription.faces)
    if face is None and count > 1:
        raise InputError(f"the text has {count} faces", hint="choose the one shown with --face")
    if face is not None and face > count:
        raise InputError(f"there is no face {face}", hint=f"the text has {count}")
    return (face or 1) - 1


def _plate(given: str) -> Plate:
    match = _PLATE.fullmatch(given.strip())
    sides = (float(match[1]), float(match[2])) if match else (0.0, 0.0)
    if not (0 < sides[0] <= MAX_MM and 0 < sides[1] <= MAX_MM):
        raise InputError(f"--plate {given} is no size in mm", hint="as in: --plate 96x14.5")
    return Plate(sides[1], sides[0])


def _point(given: str, option: str) -> tuple[float, float]:
    match = _POINT.fullmatch(given.strip())
    if not match:
        raise InputError(f"{option}: {given} is no point", hint="as in: 120,85")
    return float(match[1]), float(match[2])


def _corners(given: tuple[str, ...]) -> Corners:
    return tuple(_point(corner, "--corners") for corner in given)


def _kept_corners(numbers: tuple[float, ...]) -> Corners | None:
    return tuple(zip(numbers[::2], numbers[1::2], strict=True)) or None


def _scale(scale: float | None, ruler: tuple[str, ...]) -> float | None:
    if scale is not None and ruler:
        raise InputError("--scale and --ruler do not go together", hint="leave one of them out")
    if ruler:
        (x, y), (u, v) = (_point(point, "--ruler") for point in ruler[:2])
        try:
            mm = float(ruler[2])
        except ValueError:
            mm = 0.0
        if not 0 < mm <= MAX_MM:
            raise InputError(f"--ruler: {ruler[2]} is no length in mm", hint="as in: 50")
        scale = math.hypot(u - x, v - y) / mm
    if scale is not None and not (math.isfinite(scale) and 0 < scale <= 1000):
        raise InputError("the scale is impossible", hint="give the pixels per mm, as in: 20")
    return scale


def _cuts(given: tuple[str, ...] | list[str]) -> dict[int, Cut]:
    found: dict[int, Cut] = {}
    for each in given:
        match = _CUT.fullmatch(each.strip())
        top = float(match[2]) if match else -1.0
        bottom = float(match[3]) if match and match[3] else None
        if match is None or int(match[1]) < 1 or (bottom is not None and bottom <= top):
            raise InputError(f"--cut {each} is no cut", hint="as in: --cut 12=34.5 or 12=34.5-38")
        sign = int(match[1]) - 1
        if sign in found:
            raise InputError(f"sign {sign + 1} is cut twice", hint="keep one --cut of it")
        found[sign] = Cut(top, bottom)
    return found


def _check_signs(inscription: Inscription, face: int, signs: list[int]) -> None:
    """Raise where a sign that was cut or drawn is none of the face in the picture."""
    shown = inscription.transcription.faces[face]
    own = {sign.index for column in shown.columns for sign in column.signs if sign.is_carved}
    for sign in signs:
        if sign not in own:
            raise InputError(
                f"there is no sign {sign + 1} on what the picture shows",
                hint=f"its signs are {min(own) + 1} to {max(own) + 1}" if own else "",
            )
