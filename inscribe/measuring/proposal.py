"""Measuring one picture of one face of an inscription, from the picture to a proposal."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from inscribe.errors import InputError, Place
from inscribe.measuring import boxes, findings, rhythm, strokes
from inscribe.measuring.certainty import certainty, pitch_error
from inscribe.measuring.columns import bands, column_cuts
from inscribe.measuring.cutting import ColumnInk, SignExtent, cells
from inscribe.measuring.model import Asked, Cut, Measured, MeasuredColumn, MeasuredSign
from inscribe.measuring.outline import Outline, found_outline, given_outline
from inscribe.measuring.picture import Picture
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array, View
from inscribe.record import Inscription, Plate
from inscribe.signs import Column

FAR = 0.6  # of a pitch: a cut as far from where the strokes say is looked at twice
OTHER_SCALE = 0.1  # share by which a scale that was given beside the plate's size may differ
PLACES = 2  # decimals of a mm that are kept
CORNERS, BARREL = 3, 4  # decimals of a view that are kept: what the record says repeats it exactly


def measure(picture: Picture, inscription: Inscription, asked: Asked) -> Measured:
    """Return where the signs of an inscription stand, as seen in a picture.

    Raises:
        InputError: the picture or what was said of it does not do; the message says why.
    """
    columns = _columns(inscription, asked.face)
    view, outline = seen(picture, asked)
    if problem := findings.view_problem(picture, view):
        raise problem
    pixels = view.rectified(picture.pixels, PER_MM)
    energy = strokes.energy(pixels)
    ink = strokes.ink(energy)
    face = findings.PlateView(pixels, energy, ink, view.scale)
    counts = [len(column.signs) for column in columns]
    if problem := findings.face_problem(picture, outline, face, counts):
        raise problem
    sides = bands(ink, column_cuts(ink, len(columns))[0])
    inks = boxes.column_inks(ink, strokes.level(pixels), sides)
    told, odd = _told(inks, columns, asked)
    signs = _signs(ink, sides, columns, told, asked)
    if problem := findings.unsure_problem(picture, [sign.certainty for sign in signs]):
        raise problem
    plate = Plate(round(view.width, PLACES), round(view.height, PLACES))
    if asked.scale and abs(view.scale / asked.scale - 1) > OTHER_SCALE:
        said = f"by the plate's size it is seen at {view.scale:.1f} pixels per mm"
        odd = (*odd, f"{said}, not at {asked.scale:g}: one of them is wrong")
    measured = tuple(_column(column, signs, told[n], view) for n, column in enumerate(columns))
    return Measured(plate, view.corners, view.scale, view.barrel, signs, measured, odd)


def _columns(inscription: Inscription, face: int) -> tuple[Column, ...]:
    """Return the columns of the face that the picture shows, without what is not carved."""
    faces = inscription.transcription.faces
    if face >= len(faces):
        raise InputError(f"there is no face {face + 1}", hint=f"the text has {len(faces)}")
    columns = []
    for column in faces[face].columns:
        carved = tuple(sign for sign in column.signs if sign.is_carved)
        if carved:
            columns.append(Column(carved, column.index))
    if not columns:
        raise InputError("no sign of the text is carved", hint="correct the text")
    return tuple(columns)


def seen(picture: Picture, asked: Asked) -> tuple[View, Outline]:
    """Return how the plate is seen, and its outline.

    Raises:
        InputError: the scale is missing, or the plate cannot be found.
    """
    if asked.plate is None and (asked.scale is None or asked.corners is None):
        raise InputError(
            "the scale is missing: neither record nor command gives the plate's size",
            Place(picture.name),
            "give it with --plate 96x14.5, or --corners with --scale or --ruler",
        )
    if asked.corners is None:
        assert asked.plate is not None
        outline = found_outline(picture.pixels, asked.plate.width / asked.plate.height)
        if problem := findings.outline_problem(picture, asked.plate, outline):
            raise problem
        assert outline is not None
        return _view(picture, outline, asked), outline
    if not findings.is_convex(np.array(asked.corners)):
        raise InputError(
            "the corners do not go round a plate",
            Place(picture.name),
            "give top left, top right, bottom right, bottom left, as the writing is read",
        )
    outline = given_outline(picture.pixels, asked.corners)
    view = _view(picture, outline, asked)
    if problem := findings.given_problem(picture, view, outline):
        raise problem
    return view, outline


def _view(picture: Picture, outline: Outline, asked: Asked) -> View:
    """Return the view of an outline as a record keeps it."""
    plate = asked.plate
    if plate is None:
        assert asked.scale is not None
        a, b, c, d = (np.array(corner) for corner in outline.corners)
        across = (np.hypot(*(b - a)) + np.hypot(*(c - d))) / 2
        down = (np.hypot(*(d - a)) + np.hypot(*(c - b))) / 2
        plate = Plate(float(across / asked.scale), float(down / asked.scale))
    barrel = outline.barrel if asked.barrel is None else asked.barrel
    corners = tuple((round(x, CORNERS), round(y, CORNERS)) for x, y in outline.corners)
    return View(corners, plate.width, plate.height, picture.size, round(barrel, BARREL))


def _told(
    inks: list[ColumnInk], columns: tuple[Column, ...], asked: Asked
) -> tuple[list[list[SignExtent]], tuple[str, ...]]:
    """Return the cells of every column, cut where a person wants it, and what is odd about that."""
    expected = [[rhythm.expected(sign) for sign in column.signs] for column in columns]
    seen = list(zip(inks, expected, strict=True))
    wanted = dict(asked.cuts)
    for box in asked.boxes:
        wanted.setdefault(box.sign, Cut(box.y, box.y + box.height))
    fixed = [
        {n: wanted[sign.index] for n, sign in enumerate(column.signs) if sign.index in wanted}
        for column in columns
    ]
    told = cells(seen, fixed)
    if not asked.cuts:
        return told, ()
    free = cells(seen)
    odd = (
        _oddness(sign.index, asked.cuts[sign.index], own[n], own)
        for column, own in zip(columns, free, strict=True)
        for n, sign in enumerate(column.signs)
        if sign.index in asked.cuts
    )
    return told, tuple(remark for remark in odd if remark)


def _oddness(sign: int, cut: Cut, free: SignExtent, own: list[SignExtent]) -> str:
    """Return a remark on a cut that stands far from where the strokes would have it."""
    pitch = (own[-1].bottom - own[0].top) / len(own)
    if abs(cut.top - free.top) < FAR * pitch:
        return ""
    return (
        f"sign {sign + 1} is cut at {cut.top:g} mm as given, and its strokes seem to begin at"
        f" {free.top:.1f} mm: check it"
    )


def _signs(
    ink: Array,
    sides: list[tuple[float, float]],
    columns: tuple[Column, ...],
    told: list[list[SignExtent]],
    asked: Asked,
) -> tuple[MeasuredSign, ...]:
    """Return the boxes in reading order; those that a person gave are taken as they are."""
    given = {box.sign: box for box in asked.boxes}
    found = []
    for side, column, column_cells in zip(sides, columns, told, strict=True):
        expected = [rhythm.expected(sign) for sign in column.signs]
        drawn = boxes.drawn(ink, side, column_cells, expected)
        for sign, cell, hope, box in zip(column.signs, column_cells, expected, drawn, strict=True):
            if sign.index in given:
                found.append(MeasuredSign(*given[sign.index], certainty=1.0, is_given=True))
                continue
            x, y, width, height = (round(value, PLACES) for value in box.sides)
            is_cut = sign.index in asked.cuts and asked.cuts[sign.index].bottom is not None
            sure = round(certainty(cell, shows=is_cut or (hope.shows and box.shows)), 2)
            found.append(MeasuredSign(sign.index, x, y, width, height, sure))
    return tuple(found)


def _column(
    column: Column, signs: Sequence[MeasuredSign], told: list[SignExtent], view: View
) -> MeasuredColumn:
    own = {sign.index for sign in column.signs}
    held = [sign for sign in signs if sign.sign in own]
    top = min(sign.y for sign in held)
    bottom = max(sign.y + sign.height for sign in held)
    left = min(sign.x for sign in held)
    right = max(sign.x + sign.width for sign in held)
    pitch = (bottom - top) / len(held)
    return MeasuredColumn(
        column.index,
        len(held),
        round(top, PLACES),
        round(bottom, PLACES),
        round(left, PLACES),
        round(right - left, PLACES),
        round(pitch, 3),
        round(pitch_error(told, pitch, view), 3),
    )
