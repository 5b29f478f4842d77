"""Where strokes are: an engraved stroke is dark on one side and bright on the other.

So neither dark nor bright is looked for, but change: gradients at three scales, of the logarithm of
the light (shadows and patina multiply it), with what changes slowly taken away. What the bare metal
shows of it - grain, file marks, the camera's noise - is the ground level, and the rest is ink.
"""

from __future__ import annotations

from typing import NamedTuple

import cv2
import numpy as np

from inscribe.measuring.view import Array

PER_MM = 16  # pixels per mm in which a rectified plate is measured
SCALES = (0.05, 0.1)  # mm: from hairlines to broad cuts, whose edges are as sharp
FINE = 0.065  # mm: over which the way of a stroke is seen
SHADING = 0.45  # mm: what changes more slowly is light, not strokes
WINDOW = 17  # quarters of a mm: what counts as a pixel's surroundings
SILENT = 0.003  # energy that even a blank picture is taken to have
FULL = 88  # percent of the pixels taken for strokes at first that are not full
AROUND = 15  # waves of a spectrum that are compared with each other
LONGEST = 1.2  # mm: the longest wave of a pattern
STRONG = 1.8  # how much stronger (log) a wave of a pattern is
SPECK = 0.08  # square mm: what is smaller is no stroke
TOGETHER = 0.4  # mm: strokes as near as this are a group
LARGER = 0.7  # share of the ink that lies in groups no larger than a large one
OF_LARGE = 0.3  # of a large group: a smaller one that stands alone is no sign's strokes,
ALONE = 0.6  # square mm: unless it is as large as this
ALONG, ASIDE = 3.0, 0.5  # mm: a sign of the same column is as near as this
PASSES = 2  # times that levels are set by the metal beside the writing
DENSITY = 0.8  # mm over which ink is gathered to see where it is dense
BESIDE = 1.0  # mm: nearer to writing no metal is bare
BARE = 0.08  # share of a plate: less bare metal says nothing
GRAIN = 95  # percent of bare metal that is no ink
STROKES = 80  # percent of the pixels of strokes beside bare metal that are not full
REACH = 2.0  # mm: what lies further from dense ink is none
SPREAD = 0.05  # mm: energy is gathered over half a stroke's width
RIM = 0.35  # mm: the plate's edge, which is no stroke
RIM_AT_MOST = 1.3  # mm, where a bevel or a shadow is seen too


def energy(face: Array) -> Array:
    """Return the stroke energy of a rectified plate (RGB, 8 bits), by that of the metal around."""
    light = np.log(face.astype(np.float32) / 255 + 0.03)
    light -= cv2.GaussianBlur(light, (0, 0), SHADING * PER_MM)
    light = np.stack([_without_pattern(light[..., n]) for n in range(light.shape[-1])], -1)
    total = np.zeros(face.shape[:2], np.float32)
    for scale in SCALES:
        smooth = cv2.GaussianBlur(light, (0, 0), scale * PER_MM)
        across = cv2.Sobel(smooth, cv2.CV_32F, 1, 0)
        down = cv2.Sobel(smooth, cv2.CV_32F, 0, 1)
        total += np.sqrt((across**2 + down**2).mean(-1)) * (scale * PER_MM / 8)
    even = cv2.GaussianBlur(total, (0, 0), SPREAD * PER_MM)
    return np.asarray(even / _ground(even))


def level(face: Array) -> Array:
    """Return how level a stroke at each pixel of a rectified plate (RGB) would be, 0 to 1.

    The light changes across a stroke: by the square of the cosine of the stroke's angle.
    """
    light = np.log(face.astype(np.float32) / 255 + 0.03)
    smooth = cv2.GaussianBlur(light, (0, 0), FINE * PER_MM)
    across, down = (
        cv2.GaussianBlur((cv2.Sobel(smooth, cv2.CV_32F, *way) ** 2).mean(-1), (0, 0), FINE * PER_MM)
        for way in ((1, 0), (0, 1))
    )
    return np.asarray(down / (across + down + 1e-9))


def _without_pattern(light: Array) -> Array:
    """Return one colour without what repeats all over the plate: rings punched in rows, file marks.

    A pattern is a few waves much stronger than the waves of about their length and direction;
    these are weakened to what is usual there. Long waves are left, for signs have a rhythm too.
    """
    waves = cv2.dft(light, flags=cv2.DFT_COMPLEX_OUTPUT)
    strength = np.log(np.hypot(waves[..., 0], waves[..., 1]) + 1e-6)
    rolled = np.fft.fftshift(strength)
    usual = cv2.blur(rolled, (AROUND, AROUND), borderType=cv2.BORDER_REFLECT)
    excess = np.fft.ifftshift(np.maximum(rolled - usual - STRONG, 0))
    down = np.fft.fftfreq(light.shape[0], 1 / PER_MM)[:, None]
    across = np.fft.fftfreq(light.shape[1], 1 / PER_MM)
    excess[np.hypot(down, across) < 1 / LONGEST] = 0
    waves *= np.exp(-excess).astype(np.float32)[..., None]
    return np.asarray(cv2.idft(waves, flags=cv2.DFT_REAL_OUTPUT | cv2.DFT_SCALE))


def ink(found: Array) -> Array:
    """Return how much stroke stands at each pixel of a rectified plate, 0 to 1, by its energy.

    Grain looks like strokes, but stands loosely everywhere. So it is asked first where ink stands
    densely; what the metal around shows is the ground level, and far from the writing is no ink.
    """
    levels = _first_levels(found)
    shown = _shown(found, levels)
    for _ in range(PASSES):
        levels = _levels_beside(found, _dense(shown), levels)
        shown = _shown(found, levels)
    return np.asarray(shown * _around(_dense(shown), REACH), np.float32)


class Levels(NamedTuple):
    """The energy below which there is no ink, and from which a pixel is full of it."""

    floor: float
    full: float


def _first_levels(found: Array) -> Levels:
    """Return the levels that part all pixels of a plate into metal and strokes."""
    rim = round(RIM * PER_MM)
    inner = found[rim:-rim, rim:-rim]
    level = _parting(np.sqrt(inner)) ** 2
    ground, strokes = inner[inner < level], inner[inner >= level]
    floor = max(float(np.percentile(ground, 90)), 2.0 * float(np.median(ground)))
    return Levels(floor, max(float(np.percentile(strokes, FULL)), 1.5 * floor))


def _levels_beside(found: Array, written: Array, levels: Levels) -> Levels:
    """Return levels at least as high, by the bare metal around what is ``written``."""
    rim = round(RIM_AT_MOST * PER_MM)
    inner = np.zeros(found.shape, bool)
    inner[rim:-rim, rim:-rim] = True
    metal = found[inner & ~_around(written, BESIDE)]
    if len(metal) < BARE * found.size:
        return levels
    floor = max(levels.floor, float(np.percentile(metal, GRAIN)))
    strokes = found[inner & written & (found > floor)]
    full = float(np.percentile(strokes, STROKES)) if len(strokes) else 0.0
    return Levels(floor, max(levels.full, full, 1.5 * floor))


def _shown(found: Array, levels: Levels) -> Array:
    """Return the ink by its levels, without the plate's rim and without specks."""
    shown = np.clip((found - levels.floor) / (levels.full - levels.floor), 0, 1)
    shown = shown * ~_rim(shown)
    return np.asarray(shown * ~_specks(shown), np.float32)


def _dense(shown: Array) -> Array:
    """Return where ink stands densely, as it does in writing."""
    density = np.sqrt(cv2.GaussianBlur(shown, (0, 0), DENSITY * PER_MM))
    rim = PER_MM
    return np.asarray(density > _parting(density[rim:-rim:4, rim:-rim:4]))


def _around(written: Array, reach: float) -> Array:
    """Return ``written`` with all that lies within ``reach`` mm of it."""
    side = 2 * round(reach * PER_MM) + 1
    disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (side, side))
    return np.asarray(cv2.dilate(written.astype(np.uint8), disc) > 0)


def contrast(found: Array, shown: Array) -> float:
    """Return how many times the energy of bare metal the strokes have, given energy and ink."""
    strokes, metal = found[shown > 0.5], found[shown <= 0]
    if len(strokes) < PER_MM or not len(metal):
        return 0.0
    return float(np.median(strokes) / max(float(np.median(metal)), 1e-6))


def _ground(found: Array) -> Array:
    """Return the energy of bare metal around each pixel: what a fifth of its surroundings has."""
    step = PER_MM // 4
    coarse = found[::step, ::step]
    windows = np.lib.stride_tricks.sliding_window_view(
        np.pad(coarse, WINDOW // 2, mode="reflect"), (WINDOW, WINDOW)
    )[::4, ::4]
    local = np.quantile(windows.reshape(*windows.shape[:2], -1), 0.2, axis=-1)
    local = np.maximum(local, max(float(np.median(local)), SILENT)).astype(np.float32)
    wide = cv2.resize(local, found.shape[::-1], interpolation=cv2.INTER_LINEAR)
    return np.asarray(cv2.GaussianBlur(wide, (0, 0), PER_MM))


def _specks(shown: Array) -> Array:
    """Return where something is too small to be a stroke, or to be the strokes of a sign.

    How large the strokes of a sign are is told by the larger groups of them; a small group stays
    where it stands in one column with a larger one.
    """
    strokes = shown > 0.1
    _, pieces, stats, _ = cv2.connectedComponentsWithStats(strokes.astype(np.uint8))
    strokes &= (stats[:, cv2.CC_STAT_AREA] >= SPECK * PER_MM**2)[pieces]
    number, groups = cv2.connectedComponents(_around(strokes, TOGETHER / 2).astype(np.uint8))
    sizes = np.bincount(groups[strokes], minlength=number)
    order = np.sort(sizes)
    large = order[np.searchsorted(order.cumsum(), LARGER * order.sum())]
    sure = strokes & (sizes >= min(OF_LARGE * large, ALONE * PER_MM**2))[groups]
    column = np.ones([2 * round(reach * PER_MM) + 1 for reach in (ALONG, ASIDE)], np.uint8)
    kept = strokes & (cv2.dilate(sure.astype(np.uint8), column) > 0)
    return ~_around(kept, TOGETHER / 2)  # with what fades away at its ends


def _rim(shown: Array) -> Array:
    """Return where the plate's edge is seen: long lines near its sides."""
    widest, least = round(RIM_AT_MOST * PER_MM), round(RIM * PER_MM)
    sides = np.zeros(shown.shape, bool)
    for turn in range(4):
        turned, found = np.rot90(shown, turn), np.rot90(sides, turn)
        crossed = (turned[:widest] > 0.1).mean(1) > 0.3
        edge = int(np.flatnonzero(crossed)[-1]) + 2 if crossed.any() else 0
        found[: max(least, edge)] = True
    return sides


def _parting(values: Array) -> float:
    """Return the level that parts ``values`` into two groups of least spread (Otsu 1979)."""
    low, high = np.percentile(values, [0.5, 99.5])
    scaled = np.clip((values - low) / (high - low + 1e-6) * 255, 0, 255).astype(np.uint8)
    level, _ = cv2.threshold(np.ascontiguousarray(scaled), 0, 255, cv2.THRESH_OTSU)
    return float(low + level / 255 * (high - low))
