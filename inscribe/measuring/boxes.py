"""From ink, columns and cuts to boxes: each drawn tight around the ink between its cuts."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import cv2
import numpy as np

from inscribe.measuring.cutting import ROWS, ColumnInk, SignExtent
from inscribe.measuring.rhythm import Expected
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array

Box = tuple[float, float, float, float]
CLEAR = 0.25  # how much stroke must show somewhere along a piece
FAINT = 0.2  # where less shows, a stroke has ended
OF_STROKE = 0.25  # a stroke is as wide as so much of its own strength shows
STROKE = 0.3  # mm: over which its strength is seen
WHOLE = 0.9  # of a piece in one sign's cell: all of it is that sign's
BARE = 10  # percent of a column's rows show no strokes, but at most grain
AROUND = 3.0  # mm along a column over which the bare metal beside it is seen
BLUR = 0.09  # mm by which ink spreads beyond its stroke
STEP = PER_MM // ROWS  # rows of pixels in one of ``ROWS``
BROAD = 0.75  # of a full sign: broader signs that look
NARROW = 0.75  # times as broad as is usual, or less, show but a part of their strokes
CRUMB = 0.45  # of a cell: ink that is shorter is not the whole sign
LOST = 20.0  # price of leaving out all strokes of a sign
EMPTY = 1.5  # price of bare metal at a sign's ends, as long as the sign
SPACE = 0.1  # of a full sign: the space between signs where none is seen
LEFT = 0.3  # of its cell: neighbours that leave a sign less are cut wrong
LEAST = 0.08  # mm of ink that a side must show
NEAR = 0.2  # mm: strokes nearer to each other are one piece
PIECE = 0.05  # share of a sign's ink: a smaller piece that stands apart is grain or a neighbour's


def column_inks(ink: Array, level: Array, sides: list[tuple[float, float]]) -> list[ColumnInk]:
    """Return the ink of each column, its rows and its pixels.

    ``level`` is how level the stroke of each pixel is, 0 to 1.

    From the rows, what the bare metal around shows of the same - grain that was taken for
    strokes - is taken away.
    """
    around = _around(ink, sides)
    found = []
    for left, right in sides:
        own = np.s_[: len(ink) // STEP * STEP, round(left) : max(round(left) + 1, round(right))]
        strip, ways = ink[own], np.stack([level[own], 1 - level[own]], -1)
        pixels = _stepped(strip[..., None] * ways)
        found.append(ColumnInk(_rows(strip, around[: len(strip)]), pixels))
    return found


def _stepped(values: Array) -> Array:
    """Return the mean of each ``STEP`` rows of pixels."""
    return np.asarray(values.reshape(-1, STEP, *values.shape[1:]).mean(1))


def _around(ink: Array, sides: list[tuple[float, float]]) -> Array:
    """Return the usual ink of a pixel outside all columns, for each row of pixels."""
    outside = np.ones(ink.shape[1], bool)
    for left, right in sides:
        outside[max(0, round(left) - 2) : round(right) + 2] = False
    outside[: PER_MM // 2], outside[-PER_MM // 2 :] = False, False
    if outside.sum() < PER_MM // 2:
        return np.zeros(len(ink), np.float32)
    bare = cv2.blur(ink, (1, round(AROUND * PER_MM)), borderType=cv2.BORDER_REFLECT)
    return np.asarray(np.quantile(bare[:, outside], 0.6, axis=1))


def _rows(strip: Array, around: Array) -> Array:
    """Return the ink of a column's rows, 1 where a row is full."""
    pixels = np.maximum(strip.sum(1) - around * strip.shape[1], 0)
    rows = _stepped(pixels) / PER_MM  # mm of ink
    rows = np.maximum(rows - np.percentile(rows, BARE), 0)
    inked = rows[rows > 0.1]
    full = float(np.percentile(inked, 85)) if len(inked) else 1.0
    return np.asarray(np.clip(rows / full - 0.06, 0, 1.3))


class _Strip(NamedTuple):
    """A column's ink, its strokes, its groups of strokes, and its left end in pixels."""

    ink: Array
    inked: Array
    pieces: Array
    left: int


class Drawn(NamedTuple):
    """A box (x, y, width, height in mm), and whether the ink of its sign was seen."""

    sides: Box
    shows: bool


def drawn(
    ink: Array,
    side: tuple[float, float],
    cells: Sequence[SignExtent],
    expected: Sequence[Expected],
) -> list[Drawn]:
    """Return a box for each sign of a column.

    Signs that show no strokes stand in the middle of the others, and fill what their neighbours
    leave free.

    Args:
        ink: the stroke of each pixel of the rectified plate.
        side: the column's left and right end in pixels.
        cells: where each sign was cut.
        expected: what is expected of each sign.
    """
    left = max(0, round(side[0]))
    ink = np.ascontiguousarray(ink[:, left : max(left + 1, round(side[1]))])
    strip = _Strip(ink, _inked(ink), _near_pieces(ink), left)
    parted = zip(_signs_strokes(strip, cells), expected, strict=True)
    kept = [_kept(strip, strokes) if sign.shows else None for strokes, sign in parted]
    tight = [None if strokes is None else _tight(strip, strokes) for strokes in kept]
    middle, full = _middle_and_width(side, tight, expected)
    tall = _usual([(box[3], sign.length) for box, sign in zip(tight, expected, strict=True) if box])
    found: list[Box | None] = []
    for strokes, box, cell, sign in zip(kept, tight, cells, expected, strict=True):
        if strokes is None or box is None:
            found.append(None)
            continue
        y, height = _lengthened(strip, strokes, cell, tall * sign.length, sign.spread)
        if height < CRUMB * (cell.bottom - cell.top):
            y, height = cell.top, cell.bottom - cell.top
        x, width, wide = box[0], box[2], full * sign.width
        if width < NARROW * wide and sign.width > BROAD:
            x, width = _widened(x, width, NARROW * wide, middle)
        found.append((x, y, width, height))
    return [
        Drawn(box, True)
        if box is not None
        else Drawn(_between(found, index, cells[index], expected[index], middle, full), False)
        for index, box in enumerate(found)
    ]


def _between(
    found: Sequence[Box | None],
    index: int,
    cell: SignExtent,
    sign: Expected,
    middle: float,
    full: float,
) -> Box:
    """Return the box of a sign that is not seen: what its neighbours and a usual space leave."""
    spaces = [
        max(0.0, below[1] - above[1] - above[3])
        for above, below in pairwise(found)
        if above is not None and below is not None
    ]
    space = float(np.median(spaces)) if spaces else SPACE * full
    top, bottom = cell.top, cell.bottom
    if index and (above := found[index - 1]) is not None:
        top = above[1] + above[3] + space
    if index + 1 < len(found) and (below := found[index + 1]) is not None:
        bottom = below[1] - space
    if bottom - top < LEFT * (cell.bottom - cell.top):
        top, bottom = cell.top, cell.bottom
    wide = full * sign.width
    if not sign.form and sign.length == 1:
        wide = math.sqrt(full * (bottom - top))  # any sign: about as broad as it is long
    return middle - wide / 2, top, wide, bottom - top


def _lengthened(
    strip: _Strip, strokes: Array, cell: SignExtent, usual: float, spread: float
) -> tuple[float, float]:
    """Return top and height of a sign in mm, by its strokes and by what is usual of it.

    Some of its strokes may be a neighbour's or grain, and some may not show: the best stretch
    leaves out little of what shows, has little bare metal at its ends, and is about as long as
    the sign is usually.
    """
    rows = strokes.sum(1)
    shown = np.flatnonzero(rows)
    first = max(0, min(int(shown[0]), round(cell.top * PER_MM)))
    end = min(len(rows), max(int(shown[-1]) + 1, round(cell.bottom * PER_MM)))
    ends = np.arange(first, end + 1)
    held = np.concatenate([[0], np.cumsum(rows)])[ends]
    full = shown[rows[shown] >= LEAST * PER_MM]
    inner = np.append(full, len(rows))[np.searchsorted(full, ends)] - ends
    outer = ends - np.insert(full + 1, 0, 0)[np.searchsorted(full, ends)]
    lost = 1 - (held[None] - held[:, None]) / held[-1]
    length = np.maximum(ends[None] - ends[:, None], 1) / PER_MM
    price = LOST * lost + EMPTY * (inner[:, None] + outer[None]) / PER_MM / usual
    price = price + 0.5 * (np.log(length / usual) / spread) ** 2
    price[ends[None] <= ends[:, None] + 1] = np.inf
    top, bottom = np.unravel_index(int(price.argmin()), price.shape)
    low, high = int(ends[top]), int(ends[bottom])
    return _shrunk(low, high, *_goes_on(strip.inked, strokes, low, high))


def _usual(seen: Sequence[tuple[float, float]]) -> float:
    """Return the size of a full sign by the sizes of signs and their shares of a full one."""
    return float(np.median([size / share for size, share in seen])) if seen else 1.0


def _widened(start: float, width: float, wanted: float, middle: float) -> tuple[float, float]:
    """Return start and length of what holds a stretch and is ``wanted`` long, by the middle."""
    end = start + width
    return float(np.clip(middle - wanted / 2, end - wanted, start)), wanted


def _middle_and_width(
    side: tuple[float, float], found: Sequence[Box | None], expected: Sequence[Expected]
) -> tuple[float, float]:
    """Return the middle of a column's signs and the width of a full one, in mm."""
    seen = [(box, sign) for box, sign in zip(found, expected, strict=True) if box is not None]
    if not seen:
        return (side[0] + side[1]) / 2 / PER_MM, (side[1] - side[0]) / PER_MM
    middle = np.median([box[0] + box[2] / 2 for box, _ in seen])
    return float(middle), _usual([(box[2], sign.width) for box, sign in seen])


def _signs_strokes(column: _Strip, cells: Sequence[SignExtent]) -> list[Array]:
    """Return which pixels of a column are strokes of each sign.

    A stroke that lies nearly all in one cell is its sign's to the end, though a cut goes through
    it; others are parted where the cells are.
    """
    strip = column.ink
    number, pieces = cv2.connectedComponents((strip > FAINT).astype(np.uint8))
    ends = np.rint(np.array([(cell.top, cell.bottom) for cell in cells]) * PER_MM)
    rows = np.arange(len(strip))
    nearest = np.searchsorted((ends[1:, 0] + ends[:-1, 1]) / 2, rows, "right")
    within = (rows >= ends[nearest, 0]) & (rows < ends[nearest, 1])
    count = len(cells)
    held = np.bincount(
        (pieces * count + nearest[:, None]).ravel(), strip.ravel(), number * count
    ).reshape(number, count)
    held[0] = 0
    seen = np.bincount(pieces[(strip > CLEAR) & within[:, None]], minlength=number) > 0
    whole = seen & (held.max(1) >= WHOLE * held.sum(1))
    owner = np.where(whole[pieces], held.argmax(1)[pieces], nearest[:, None])
    shown = column.inked & seen[pieces] & (whole[pieces] | within[:, None])
    return [shown & (owner == number) for number in range(count)]


def _inked(strip: Array) -> Array:
    """Return where strokes are, as wide where they are faint as where they are strong."""
    side = 2 * round(STROKE * PER_MM) + 1
    around = cv2.dilate(strip, np.ones((side, side), np.uint8))
    return np.asarray(strip > np.maximum(FAINT, OF_STROKE * around))


def _tight(strip: _Strip, kept: Array) -> Box | None:
    """Return the box of a sign's strokes; None without any."""
    need = LEAST * PER_MM
    across, down = _reach(kept.sum(0), need), _reach(kept.sum(1), need)
    if across is None or down is None:
        return None
    x, width = _shrunk(*across, *_goes_on(strip.inked.T, kept.T, *across))
    y, height = _shrunk(*down, *_goes_on(strip.inked, kept, *down))
    return strip.left / PER_MM + x, y, width, height


def _goes_on(inked: Array, kept: Array, first: int, end: int) -> tuple[bool, bool]:
    """Return whether the strokes at a sign's first and last row go on beyond it: they were cut."""
    before = first == 0 or bool((inked[first - 1] & kept[first]).any())
    return before, end == len(inked) or bool((inked[end] & kept[end - 1]).any())


def _near_pieces(ink: Array) -> Array:
    """Return the numbers of groups of strokes that stand near each other."""
    side = 2 * round(NEAR * PER_MM / 2) + 1
    disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (side, side))
    return np.asarray(cv2.connectedComponents(cv2.dilate((ink > FAINT).astype(np.uint8), disc))[1])


def _kept(strip: _Strip, strokes: Array) -> Array:
    """Return a sign's strokes without crumbs that stand apart."""
    held = np.bincount(strip.pieces[strokes], strip.ink[strokes])
    if not len(held):
        return strokes
    return np.asarray(
        strokes & (held >= PIECE * held.sum())[np.minimum(strip.pieces, len(held) - 1)]
    )


def _reach(sums: Array, need: float) -> tuple[int, int] | None:
    found = np.flatnonzero(sums >= need)
    return (int(found[0]), int(found[-1]) + 1) if len(found) else None


def _shrunk(start: int, end: int, cut_before: bool, cut_after: bool) -> tuple[float, float]:
    """Return start and length in mm without the blur, which a cut through strokes does not have."""
    less = min(BLUR * PER_MM, (end - start) / 4)
    low = start + (0 if cut_before else less)
    high = end - (0 if cut_after else less)
    return low / PER_MM, (high - low) / PER_MM
