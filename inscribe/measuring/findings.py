"""Pictures that cannot be measured, told apart: one sentence each, and what to do.

Whoever asks raises before anything is written. The bounds were set on the first look of the
benchmark, between what it calls good and what it calls flawed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from inscribe.errors import InputError, Place
from inscribe.measuring import glare
from inscribe.measuring.columns import bands, column_cuts
from inscribe.measuring.outline import CLEAR, Outline, runs_bent, runs_out
from inscribe.measuring.picture import Picture
from inscribe.measuring.strokes import contrast
from inscribe.measuring.view import Array, View
from inscribe.record import Plate

UNCLEAR = 0.25  # an outline less clear than this is none
LEAST_SPAN = 0.5  # of the picture's longer side: a plate that is shorter may be something else
COARSE = 6.0  # pixels per mm: with less, neighbouring strokes run together
BOWED = 0.012  # share of its length by which a long side may bow
SOFT = 0.65  # mm over which even the sharpest edge of a blurred picture changes
BURNT = 0.40  # share of a picture without an outline that may be burnt out
BURNT_MIDDLE = 0.25  # the same of its middle, where the plate is and not the ground
FAINT = 2.8  # strokes stand out from bare metal at least so many times
UNSURE = 0.4  # usual certainty of the boxes: below it they are guesses
TOO_MANY = 1.9  # price of columns that are not there
ENOUGH = 0.9  # price below which more columns than asked are there
BROAD = 1.5  # columns as wide as so many lengths of their signs may be several columns
MOST_COLUMNS = 8


class PlateView(NamedTuple):
    """A plate seen from straight above: its pixels, energy and ink, the photograph's scale."""

    pixels: Array
    energy: Array
    ink: Array
    scale: float  # pixels of the photograph per mm


def outline_problem(picture: Picture, plate: Plate, outline: Outline | None) -> InputError | None:
    """Return what is wrong with a picture in which the plate was looked for."""
    span = _span(picture, outline)
    if outline is not None and outline.clear >= CLEAR and span > LEAST_SPAN:
        return _bent(picture) if outline.bow > BOWED else None
    width = picture.size[0]
    middle = glare.burnt(picture.pixels[:, width * 3 // 8 : width * 5 // 8])
    if middle > BURNT_MIDDLE:
        return _glare(picture, middle, "picture's middle")
    if runs_bent(picture.pixels):
        return _bent(picture)
    if side := runs_out(picture.pixels):
        return _refused(
            picture,
            f"the plate is not whole: it runs out of the picture at the {side}",
            "take it again with ground on every side, or give its corners with --corners",
        )
    is_found = outline is not None and outline.clear >= UNCLEAR and outline.bow < BOWED / 2
    if is_found and span > LEAST_SPAN / 2:
        return None
    if (share := glare.burnt(picture.pixels)) > BURNT:
        return _glare(picture, share, "picture")
    shown = f"{plate.height:g} x {plate.width:g} mm"
    return _refused(
        picture,
        f"no outline of a plate of {shown} is clear in it",
        "give the plate's corners with --corners, or its size with --plate if that is wrong",
    )


def _span(picture: Picture, outline: Outline | None) -> float:
    """Return the outline's length as a share of the picture's longer side."""
    if outline is None:
        return 0.0
    corners = np.array(outline.corners)
    return float(np.ptp(corners, axis=0).max() / max(picture.size))


def given_problem(picture: Picture, view: View, outline: Outline) -> InputError | None:
    """Return what is wrong with a picture whose corners a person gave."""
    for x, y in view.corners:
        if not (0 <= x <= picture.size[0] and 0 <= y <= picture.size[1]):
            return _refused(
                picture,
                f"the plate is not whole: the corner {x:g},{y:g} lies outside the picture",
                f"the picture has {picture.size[0]} x {picture.size[1]} pixels",
            )
    return _bent(picture) if outline.bow > BOWED else None


def view_problem(picture: Picture, view: View) -> InputError | None:
    """Return what is wrong with a picture as its plate is seen."""
    if view.scale < COARSE:
        return _refused(
            picture,
            f"the plate is seen at {view.scale:.1f} pixels per mm, and {COARSE:g} are the least",
            "take it from nearer, or scan it finer",
        )
    return None


def face_problem(
    picture: Picture, outline: Outline, face: PlateView, counts: list[int]
) -> InputError | None:
    """Return what is wrong with the rectified plate, and with the number of columns.

    ``counts`` are the signs of each column, in reading order.
    """
    if hidden := glare.hidden(face.pixels, face.ink, counts):
        return _glare(picture, hidden, "writing")
    told = contrast(face.energy, face.ink)
    spread = outline.spread / face.scale
    if outline.clear >= UNCLEAR and spread > SOFT and told < 2 * FAINT:
        return _refused(
            picture,
            f"it is blurred: even edges are {spread:.1f} mm wide",
            "take it again, sharp and without shake",
        )
    if told < FAINT:
        return _refused(
            picture,
            "no strokes stand out from the metal",
            "take it again, sharper or with light from the side, and never treat the object",
        )
    return _column_problem(picture, face.ink, counts)


def unsure_problem(picture: Picture, certainties: Sequence[float]) -> InputError | None:
    """Return what is wrong when the boxes are, by their own certainties, no more than guesses."""
    if sum(certainties) >= UNSURE * len(certainties):
        return None
    return _refused(
        picture,
        "the strokes can hardly be told from the metal: the signs cannot be parted",
        "take it again with light from the side, or give some --cut or boxes yourself",
    )


def _column_problem(picture: Picture, ink: Array, counts: list[int]) -> InputError | None:
    count = len(counts)
    hint = "correct the columns of the text, or choose the --face that the picture shows"
    cuts, price = column_cuts(ink, count)
    if price > TOO_MANY:
        said = f"the text has {count} columns, and the picture shows fewer"
        return _refused(picture, said, hint)
    more = range(count + 1, min(count + 3, MOST_COLUMNS + 1))
    is_wide = _broadness(ink, cuts, counts) > BROAD
    if is_wide and any(column_cuts(ink, other)[1] < ENOUGH for other in more):
        columns = "1 column" if count == 1 else f"{count} columns"
        return _refused(picture, f"the text has {columns}, and the picture shows more", hint)
    return None


def _broadness(ink: Array, cuts: list[float], counts: list[int]) -> float:
    """Return how many times the length of a sign the columns are wide, in the usual column."""
    found = []
    for (left, right), count in zip(bands(ink, cuts), counts, strict=True):
        held = np.cumsum(ink[:, round(left) : round(right) + 1].sum(1))
        first, last = np.searchsorted(held, [0.02 * held[-1], 0.98 * held[-1]])
        found.append((right - left) * count / max(1, int(last - first)))
    return float(np.median(found))


def _bent(picture: Picture) -> InputError:
    return _refused(
        picture,
        "the plate is not flat: its long sides are bent in the picture",
        "take it again from straight above; a curved plate cannot be measured so",
    )


def _glare(picture: Picture, share: float, where: str) -> InputError:
    return _refused(
        picture,
        f"glare: {share:.0%} of the {where} is burnt out",
        "take it again with softer light, or light from another side",
    )


def _refused(picture: Picture, message: str, hint: str) -> InputError:
    return InputError(message, Place(picture.name), hint)


def is_convex(corners: Array) -> bool:
    """Whether four corners run clockwise around a plate, as they are seen."""
    ways = np.roll(corners, -1, 0) - corners
    turns = ways[:, 0] * np.roll(ways, -1, 0)[:, 1] - ways[:, 1] * np.roll(ways, -1, 0)[:, 0]
    return bool((turns > 0).all())
