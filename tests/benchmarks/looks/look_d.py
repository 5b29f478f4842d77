"""Look D: plates lit by lamps that the metal mirrors, the grooves cut into a relief of the plate.

Written by an author who had read neither the measuring program nor the other looks. Everything is
cut into one relief in mm; the picture shows how its slopes mirror one or two soft lamps, through
a pinhole camera whose lens has barrel distortion.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any, NamedTuple

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

from looks.contract import GAP, REPEATED, WORN, Sides, Taken, Wanted

FONTS = Path("/usr/share/fonts/truetype")
BRUSHES = ("AoyagiKouzanT", "aoyagi-soseki", "kouzan-mouhitsu", "KouzanBrushFontSousyo")
OTHERS = ("kouzan-mouhitsu-gyosho", "dejima-mincho-r227", "ipamjm", "kiloji", "setofont")
# display colour of the metal, of its patina, of the bared grooves; usual grey level; gloss
ALLOYS = {
    "shakudo": ((30, 30, 37), (40, 36, 45), (132, 106, 86), 48, 0.9),
    "shibuichi": ((112, 112, 108), (92, 98, 96), (70, 66, 62), 108, 0.7),
    "copper": ((140, 84, 62), (98, 64, 56), (66, 44, 38), 100, 0.8),
    "brass": ((160, 136, 82), (126, 106, 70), (74, 60, 40), 128, 0.9),
    "iron": ((66, 60, 57), (92, 68, 52), (52, 44, 40), 70, 0.35),
    "gilt": ((196, 158, 80), (166, 128, 76), (104, 74, 46), 140, 1.1),
}
CLOTHS = {
    "paper": (0xDEDCD6, 0xECECEA),
    "felt": (0x969698, 0x2C2C30, 0x5C1E24, 0x283A5C, 0x3A4C3C),
    "linen": (0xC4B8A0, 0x78746C, 0x161618),
}
GROUNDS = ("file", "nanako", "cat", "stone", "polished", "hammered", "plain")  # steepest first
Lots = np.random.Generator
Boxes = tuple[tuple[Sides, ...], ...]


class _Sign(NamedTuple):
    """One sign before it has a place: its ink, and its size in parts of the column's em."""

    sign: str
    ink: Any  # uint8 mask cropped to the ink; None when there is nothing to cut
    width: float
    height: float


def _noise(lots: Lots, shape: tuple[int, ...], cell: float) -> Any:
    """Return smooth noise of about unit variance, its grains ``cell`` pixels wide."""
    cell = max(cell, 1.0)
    small = (int(shape[0] / cell) + 4, int(shape[1] / cell) + 4)
    grid: Any = lots.standard_normal(small, dtype=np.float32)
    if cell > 4:  # smoothly to a quarter of a cell, then quickly
        grid = cv2.resize(grid, (small[1] * 4, small[0] * 4), interpolation=cv2.INTER_CUBIC)
    large = cv2.resize(grid, (round(small[1] * cell), round(small[0] * cell)))
    return 1.4 * large[int(cell) : int(cell) + shape[0], int(cell) : int(cell) + shape[1]]


class _Writer:
    """A hand: draws the ink of signs with one typeface, jittered."""

    def __init__(self, lots: Lots, em: int) -> None:
        self.lots, self.em = lots, em
        names = (str(lots.choice(BRUSHES if lots.random() < 0.45 else OTHERS)), *OTHERS[2:])
        self.fonts = [ImageFont.truetype(next(FONTS.rglob(f"{x}.ttf")), em) for x in names]
        self.slant, self.turn = lots.normal(0, 0.04), lots.uniform(0.005, 0.05)
        self.wobble = lots.uniform(0.004, 0.018) * em
        self.uneven, self.small_kana = lots.uniform(0.04, 0.15), lots.uniform(0.68, 0.95)
        # the line: as broad as the brush, or a hairline or a chisel's line down its middle
        self.line = lots.random() < 0.3
        least = 0.03 if self.line else 0.015 if names[0] in BRUSHES else 0.0
        self.breadth = max(2, round(lots.uniform(least, 2.2 * least) * em)) if least else 0

    def sign(self, sign: str) -> _Sign:
        lots, size = self.lots, self.lots.lognormal(0, self.uneven)
        if sign == WORN:
            drawn = self._typed(str(lots.choice(list("山風春秋花月鳥松霜葉雲夜"))))
            return _Sign(sign, self._cut(drawn), 0.85, lots.uniform(0.75, 1.0))
        if sign == REPEATED:
            return _Sign(sign, self._cut(self._repeat()), 0.5 * size, lots.uniform(1.7, 2.1))
        ink = None if sign == GAP else self._cut(self._typed(sign))
        if ink is None:
            return _Sign(GAP, None, 0.8, lots.uniform(1.9, 5.8) if sign == GAP else 0.8)
        size *= self.small_kana if "ぁ" <= sign <= "ヿ" else 1.0
        high, wide = (n / self.em * size for n in ink.shape)
        return _Sign(sign, ink, wide * lots.lognormal(0, self.uneven / 2), high)

    def _typed(self, sign: str) -> Any:
        for font in self.fonts:
            mask = bytes(font.getmask(sign))
            if any(mask) and mask != bytes(font.getmask("\U0010fffd")):
                break
        page = Image.new("L", (2 * self.em, 2 * self.em))
        ImageDraw.Draw(page).text((self.em // 2, self.em // 2), sign, 255, font)
        return np.asarray(page)

    def _repeat(self) -> Any:
        path = np.array([(1.15, 0.3), (1.05, 0.6), (0.72, 1.0), (0.95, 1.3), (1.3, 1.7)])
        path = (path + self.lots.normal(0, 0.03, path.shape)) * self.em
        page = np.zeros((2 * self.em, 2 * self.em), np.uint8)
        return cv2.polylines(page, [path.astype(np.int32)], False, 255, self.em // 12)

    def _cut(self, page: Any) -> Any:
        """Return the ink as the graver cuts it: slanted, turned, wavering, thinned; cropped."""
        em, lots = self.em, self.lots
        y, x = np.mgrid[0 : 2 * em, 0 : 2 * em].astype(np.float32)
        turn, across = lots.normal(0, self.turn), x - em
        x += (self.slant + turn) * (y - em) + self.wobble * _noise(lots, x.shape, em / 2.5)
        y += self.wobble * _noise(lots, x.shape, em / 2.5) - turn * across
        ink: Any = (cv2.remap(page, x, y, cv2.INTER_LINEAR) > 127).astype(np.uint8)
        if self.line and ink.any():
            deep = cv2.GaussianBlur(cv2.distanceTransform(ink, cv2.DIST_L2, 5), (0, 0), 1.0)
            ink = ((cv2.Laplacian(deep, cv2.CV_32F) < -0.3) & (ink > 0)).astype(np.uint8)
        if self.breadth:  # no graver cuts as fine as the tip of a brush
            ink = cv2.dilate(ink, cv2.getStructuringElement(2, (self.breadth, self.breadth)))
        left, top, wide, high = cv2.boundingRect(ink)
        return ink[top : top + high, left : left + wide] * 255 if wide else None


def _places(high: Any, em: float, room: Any, fill: float | None, loose: float, lots: Lots) -> Any:
    """Return first and last y of signs so ``high`` in mm, and by how much they were resized."""
    least = np.maximum(0.42 * em - high, 0)  # low signs stand free
    gaps = em * np.maximum(loose + 0.06 * lots.standard_normal(len(high) - 1), -0.1)
    gaps += (least[1:] + least[:-1]) / 2
    whole, length = float(high.sum() + gaps.sum()), room[1] - room[0]
    if fill is not None and whole < length:
        length = max(whole, length * fill)
    resized = min(length / whole, 1.25 if len(high) > 1 else np.inf)
    high, gaps = high * resized, gaps * resized
    weights = 0.6 + lots.random(len(gaps))
    gaps += (length - high.sum() - gaps.sum()) * weights / max(weights.sum(), 1e-9)
    tops = room[0] + np.concatenate([[0.0], np.cumsum(high[:-1] + gaps)])
    return tops, tops + high, float(np.clip(resized, 0.05, 1.25))


def _groove(ink: Any, fine: float, style: tuple[float, float, float]) -> Any:
    """Return the depth of a groove in mm: a V, or one wall steep and the other flat."""
    outer, (steep, slope, deepest) = np.pad(ink, 8), style
    outer = np.maximum(outer, np.roll(outer, round(steep * fine), (0, 1)))
    wall = cv2.distanceTransform(outer, cv2.DIST_L2, 5)[8:-8, 8:-8] * ink
    return np.minimum(wall * (slope / fine), deepest).astype(np.float32)


def _engraved(wanted: Wanted, fine: float, lots: Lots) -> tuple[Any, Any, Boxes]:
    """Return the grooves' depth in mm, how far the plate is rubbed (0 to 1), and the boxes."""
    shape = (int(np.ceil(wanted.height * fine)), int(np.ceil(wanted.width * fine)))
    count, side = len(wanted.columns), wanted.width * lots.uniform(0.04, 0.09)
    pitch = (wanted.width - 2 * side) / count * lots.uniform(0.88, 1.0)
    right = wanted.width - side - pitch / 2
    right -= (wanted.width - 2 * side - pitch * count) * lots.random()
    em = min(pitch * lots.uniform(0.8, 1.0), lots.uniform(3.8, 7.5))
    sway, loose = min(pitch, 1.2 * em), float(lots.choice([-0.07, -0.03, 0.03, 0.1, 0.16, 0.28]))
    filled = lots.uniform(0.4, 1.0) if loose > 0.05 and lots.random() < 0.8 else 0.0
    writer = _Writer(lots, int(np.clip(em * fine, 56, 260)))
    top, foot = lots.uniform(2.0, 5.0), wanted.height - lots.uniform(2.0, 4.0)
    style = float(lots.choice([0, 0, 0.05])), lots.uniform(0.55, 1.1), lots.uniform(0.09, 0.2)
    lean, wear = lots.normal(0, 0.25) * sway, lots.uniform(0.0, 0.5)
    patches = _noise(lots, shape, 1.1 * fine)
    depth, rubbed = np.zeros(shape, np.float32), np.zeros((shape[0] // 8, shape[1] // 8), np.uint8)
    boxes: list[tuple[Sides, ...]] = []
    for number, column in enumerate(wanted.columns):
        signs, last = [writer.sign(sign) for sign in column], number == count - 1
        high = np.array([sign.height * em for sign in signs])
        high *= np.linspace(1, lots.uniform(0.7, 1) if last else 1, len(signs))  # crowding
        low = last and count > 1 and len(signs) < 7 and lots.random() < 0.5
        first = top + (lots.uniform(0, 0.3) * wanted.height if low else abs(lots.normal(0, 0.6)))
        fill = None if wanted.extents else filled * lots.uniform(0.9, 1.0)
        room = wanted.extents[number] if wanted.extents else (first, foot)
        tops, feet, grown = _places(high, em, room, fill, loose, lots)
        own, drift = lean + lots.normal(0, 0.1) * sway, lots.normal(0, 0.05, 2) * sway
        found: list[Sides] = []
        for sign, y0, y1 in zip(signs, tops, feet, strict=True):
            wide = min(sign.width * em * grown**0.7, pitch * 0.99)
            part = (y0 + y1) / 2 / wanted.height
            x = right - number * pitch + own * (part - 0.5) + lots.normal(0, 0.03) * sway
            x += drift[0] * np.sin(6 * part) + drift[1] * np.cos(9 * part)
            x = min(max(x, wide / 2 + 0.3), wanted.width - wide / 2 - 0.3)
            a, b = round((x - wide / 2) * fine), round(y0 * fine)
            across, along = max(2, round(wide * fine)), max(2, round(y1 * fine) - b)
            a, b = min(max(0, a), shape[1] - across), min(max(0, b), shape[0] - along)
            here = slice(b, b + along), slice(a, a + across)
            if sign.sign in (WORN, GAP) and lots.random() < 0.75:
                middle = (a + across / 2) / 8, (b + along / 2) / 8
                cv2.ellipse(rubbed, (middle, (across / 7, along / 8), 0), 255, -1)
            kept = np.clip(1.1 - wear * (lots.random() + 0.6 * patches[here]), 0.45, 1.05)
            if sign.sign == WORN:
                kept = np.clip(0.45 * patches[here] - 0.12, 0.0, lots.uniform(0.2, 0.45))
            if sign.ink is not None:
                ink: Any = cv2.resize(sign.ink, (across, along), interpolation=cv2.INTER_AREA) > 90
                ink = ink.astype(np.uint8)
                depth[here] = np.maximum(depth[here], _groove(ink, fine, style) * kept)
                if sign.sign != WORN:  # the tips may have got lost
                    left, up, across, along = cv2.boundingRect(ink)
                    a, b = a + left, b + up
            found.append((a / fine, b / fine, across / fine, along / fine))
        boxes.append(tuple(found))
    smooth = cv2.blur(rubbed, (7, 7)).astype(np.float32) / 255
    return depth, cv2.resize(smooth, shape[::-1]), tuple(boxes)


def _grain(shape: tuple[int, int], fine: float, lots: Lots) -> Any:
    """Return the relief of the plate's ground in mm."""
    kind, y, x = str(lots.choice(GROUNDS)), *(np.arange(n, dtype=np.float32) for n in shape)
    steepness = lots.uniform(0.02, 0.06) if kind in GROUNDS[4:] else lots.uniform(0.06, 0.16)
    if kind == "nanako":
        step = 2 * np.pi / (lots.uniform(0.32, 0.6) * fine)
        relief = np.outer(np.cos(step * y / 2), 2 * np.cos(step * x * 0.866))
        relief = np.maximum(relief + np.cos(step * y)[:, None], -0.9)
        relief *= 1 + 0.2 * _noise(lots, shape, 0.5 * fine)
    elif kind in ("file", "polished"):
        turn, cell = (lots.uniform(-0.7, 0.7), 0.14) if kind == "file" else (1.57, 0.05)
        place = np.add.outer(y * np.cos(turn), x * np.sin(turn)).astype(int)  # may be below 0
        rough, fibre = (_noise(lots, (1, sum(shape)), size)[0] for size in (cell * fine, 1))
        relief = (rough + 0.4 * fibre)[place] * (0.8 + 0.35 * _noise(lots, shape, 2.5 * fine))
    elif kind == "cat":
        relief = -_scratched(shape, fine, lots, 270, lots.uniform(0.3, 2.8), 0.12)
    else:
        cell = {"stone": lots.uniform(0.1, 0.3), "hammered": lots.uniform(1.2, 3)}.get(kind, 0.08)
        relief = _noise(lots, shape, cell * fine)
    spread = float(np.diff(relief[::5], axis=1).std() + np.diff(relief[:, ::5], axis=0).std())
    return relief.astype(np.float32) * (1.3 * steepness / (spread * fine))


def _scratched(shape: Any, fine: float, lots: Lots, count: int, lean: float, vary: float) -> Any:
    """Return scratches, 0 to 1, that lean by ``lean``, more or less."""
    page = np.zeros(shape, np.uint8)
    for _ in range(count):
        angles = lots.normal(lean, vary) + lots.normal(0, 0.3 * vary) * np.linspace(0, 1, 6)
        steps = np.stack([np.cos(angles), np.sin(angles)], 1) * lots.exponential(0.6) * fine
        path = (lots.random(2) * shape[::-1] + np.cumsum(steps, 0)).astype(np.int32)
        cv2.polylines(page, [path], False, int(lots.integers(40, 255)), 1, cv2.LINE_AA)
    return page.astype(np.float32) / 255


def _plate(wanted: Wanted, depth: Any, rubbed: Any, fine: float, lots: Lots) -> tuple[Any, Any]:
    """Return the lit plate's red, green and blue, and how far its pixels cover the cloth."""
    shape, w, h, alloy = depth.shape, wanted.width, wanted.height, str(lots.choice(list(ALLOYS)))
    metal, patina, bare, level, gloss = ALLOYS[alloy]
    y, x = (((np.arange(n) + 0.5) / fine).astype(np.float32) for n in shape)
    radius, bevel = min(lots.uniform(0.2, 2.5), w / 4), lots.uniform(0.2, 0.7)
    over, beyond = (np.abs(v - n / 2) - (n / 2 - radius) for v, n in ((x, w), (y, h)))
    inside = radius - np.sqrt(np.add.outer(np.maximum(beyond, 0) ** 2, np.maximum(over, 0) ** 2))
    inside -= np.minimum(np.maximum.outer(beyond, over), 0)
    relief = _grain(shape, fine, lots) * (1 - 0.7 * rubbed)
    relief -= 0.35 / bevel * np.maximum(bevel - inside, 0) ** 2
    edge = cv2.GaussianBlur(depth, (0, 0), 0.05 * fine)
    relief += lots.uniform(0.0, 0.25) * edge  # the burr
    relief -= depth * (1 + lots.uniform(0.03, 0.2) * _noise(lots, shape, 0.09 * fine))
    marks = _scratched(shape, fine, lots, int(lots.integers(3, 70)), 0, 1.5)
    relief = cv2.GaussianBlur(relief - 0.01 * marks, (0, 0), max(0.5, 0.012 * fine))
    gx, gy = (cv2.Sobel(relief, cv2.CV_32F, 1 - n, n, ksize=3, scale=fine / 8) for n in (0, 1))
    turn = lots.uniform(0, 2 * np.pi)
    lit = float(np.cos(turn)) * gx + float(np.sin(turn)) * gy
    lit = np.clip(1 - lots.uniform(0.45, 0.9) * lit, 0.12, 1.9)
    lit *= 1 - lots.uniform(0.2, 0.65) * np.minimum(edge / 0.06, 1)
    lit *= np.clip(1 + lots.uniform(0.03, 0.2) * _noise(lots, shape, 45 * fine), 0.5, 1.6)
    lit *= 1 + lots.uniform(-0.3, 1.2) * marks
    glint = np.zeros(shape, np.float32)
    for strength in (1.0, 0.6)[: int(lots.integers(1, 3))]:  # soft lamps, mirrored
        soft, away = lots.uniform(0.16, 0.4), lots.uniform(0.25, 0.6)
        ax = away * np.cos(turn) + lots.normal(0, 0.025) * (x - w / 2)
        ay = away * np.sin(turn) + lots.normal(0, 0.009) * (y - h / 2)
        far = (gx + ax.astype(np.float32)) ** 2 + (gy + ay.astype(np.float32)[:, None]) ** 2
        glint += np.float32(strength) * cv2.exp(far / np.float32(-2 * soft * soft))
        turn += lots.uniform(1.5, 4.5)
    clouds = sum(a * _noise(lots, shape, b * fine) for a, b in ((1, 8), (0.3, 0.9), (0.2, 0.2)))
    mix = 0.4 + lots.uniform(0.05, 0.35) * clouds - 0.5 * rubbed
    if alloy == "iron" or lots.random() < 0.25:
        spots = _noise(lots, shape, 1.3 * fine) + 0.8 * _noise(lots, shape, 0.25 * fine)
        mix += 0.4 * np.maximum(spots - 1.7, 0)
    fills = (bare, bare, (205, 196, 176) if level < 80 else (34, 29, 25), (190, 152, 82))
    fill = fills[int(lots.choice(4, p=[0.35, 0.25, 0.3, 0.1]))]  # bare metal, dust, dirt or gold
    filled = np.minimum(depth / 0.07, 1) * lots.uniform(0.05, 0.75)
    glint *= (1 - 0.6 * filled) * (0.9 * gloss)
    colours = []
    for low, high, own in ((np.array((metal, patina, fill)) / 255) ** 2).T.tolist():
        colour = low + (high - low) * np.clip(mix, 0, 1)
        colour += (own - colour) * filled
        colours.append(colour * lit + glint * (0.35 * low + 0.28 * low**0.5))
    gain = (level * lots.uniform(0.8, 1.25) / 255) ** 2
    gain /= float(np.mean([np.median(colour[::7, ::7]) for colour in colours]))
    return [colour * gain for colour in colours], np.clip(inside * fine + 0.5, 0, 1)


def _cloth(shape: tuple[int, int], fine: float, lots: Lots) -> tuple[Any, Any]:
    """Return the brightness of what the plate lies on, and its colour in linear light."""
    kind = str(lots.choice(list(CLOTHS)))
    colour = int(lots.choice(CLOTHS[kind])).to_bytes(3)  # red, green, blue
    weave = 0.09 * _noise(lots, shape, 0.14 * fine) + 0.05 * _noise(lots, shape, 1.5 * fine)
    weave *= 0.25 if kind == "paper" else 1.0
    if kind == "linen":
        step = 2 * np.pi / (lots.uniform(0.35, 0.8) * fine)
        weave += np.outer(*(0.4 * np.sin(step * np.arange(n, dtype=np.float32)) for n in shape))
    weave += 1 + 0.06 * _noise(lots, shape, 30 * fine)
    return weave, (np.array(list(colour)) / 255) ** 2


class _Camera:
    """Where points of the flat plate come to lie in the picture."""

    def __init__(self, wanted: Wanted, lots: Lots) -> None:
        self.scale, self.barrel, self.distance = wanted.pixels_per_mm, 0.0, lots.uniform(260, 600)
        axis, w, h = lots.uniform(0, 2 * np.pi), wanted.width, wanted.height
        tipped = np.array([np.cos(axis), np.sin(axis), 0]) * np.radians(wanted.tilt)
        roll = cv2.Rodrigues(np.array([0, 0, np.radians(lots.normal(0, 0.9))]))[0]
        self.turn = roll @ cv2.Rodrigues(tipped)[0]
        self.curve = lots.uniform(0.35, 0.9) / h * lots.choice([-1, 1]) * (wanted.flaw == "bent")
        self.outline = np.array([(0, 0), (w, 0), (w, h), (0, h)], float)
        limit = 9.5e6 / (self.scale**2 * h)  # keeps the picture below about ten megapixels
        self.margin = margin = lots.uniform(1.5, max(1.6, min(9.0, (limit - w) / 2)), 2)
        self.aim = np.array([w / 2, h / 2]) + margin * lots.uniform(-0.3, 0.3, 2)
        if wanted.flaw == "cropped":
            self.aim[1] = h * (0.5 + lots.uniform(0.08, 0.16) * lots.choice([-1, 1]))
        self.centre, self.reach = np.zeros(2), 1.0
        middles = (self.outline + np.roll(self.outline, -1, 0)) / 2
        seen = self.project(np.vstack([self.outline, middles]))
        ends = np.sort(np.abs([seen.min(0), seen.max(0)]), axis=0)
        half = ends[1] + 0.7 * margin * self.scale
        if wanted.flaw == "cropped":
            half[1] = ends[0, 1] + 0.5 * margin[1] * self.scale
        self.size, self.barrel = np.ceil(2 * half).astype(int), wanted.barrel
        self.centre, self.reach = self.size / 2, float(np.hypot(*self.size)) / 2

    def project(self, points: Any) -> Any:
        flat = points - self.aim
        x, y, z = flat[:, 0], flat[:, 1], np.zeros(len(flat))
        if self.curve:
            y, z = np.sin(y * self.curve) / self.curve, (1 - np.cos(y * self.curve)) / self.curve
        seen = np.stack([x, y, z], 1) @ self.turn.T
        ideal = seen[:, :2] * (self.scale * self.distance / (self.distance + seen[:, 2:]))
        part = (ideal**2).sum(1, keepdims=True) / self.reach**2
        return self.centre + ideal * (1 - self.barrel * part)

    def unproject(self, step: int) -> Any:
        """Return x and y in mm for every pixel, found on a grid of ``step`` and filled in."""
        wide, high = (int(n) for n in self.size)
        xs, ys = (np.arange(-1, -(-n // step) + 1) * step + step / 2 for n in (wide, high))
        pixels = np.stack(np.meshgrid(xs, ys), -1).reshape(-1, 2)
        points = self.aim + (pixels - self.centre) / self.scale
        for _ in range(7):  # Newton's steps
            now = self.project(points)
            slopes = np.stack([self.project(points + by) - now for by in np.eye(2) / 1e3], -1) * 1e3
            points = points + np.linalg.solve(slopes, (pixels - now)[..., None])[..., 0]
        grid = points.reshape(len(ys), len(xs), 2).astype(np.float32)
        full = cv2.resize(grid, (len(xs) * step, len(ys) * step), interpolation=cv2.INTER_LINEAR)
        return full[step : step + high, step : step + wide]


def _developed(picture: Any, wanted: Wanted, lots: Lots) -> Any:
    """Return the picture (BGR) as the camera stores it: with noise, as JPEG; then as RGB."""
    if wanted.flaw == "blur":
        picture = cv2.GaussianBlur(picture, (0, 0), wanted.pixels_per_mm * lots.uniform(0.14, 0.28))
    noise = lots.standard_normal((509, 509, 3), dtype=np.float32) * lots.uniform(0.3, 1.2)
    noise += lots.standard_normal((509, 509, 1), dtype=np.float32) * lots.uniform(0.5, 3.5)
    high, wide = picture.shape[:2]
    tile = np.tile(np.round(noise).astype(np.int16), (-(-high // 509), -(-wide // 509), 1))
    noisy = cv2.add(picture, tile[:high, :wide], dtype=cv2.CV_8U)
    quality = [cv2.IMWRITE_JPEG_QUALITY, int(lots.integers(68, 97))]
    stored: Any = cv2.imdecode(cv2.imencode(".jpg", noisy, quality)[1], cv2.IMREAD_COLOR)
    return cv2.cvtColor(stored, cv2.COLOR_BGR2RGB)


def photograph(wanted: Wanted, seed: int) -> Taken:
    """Engrave the inscription and photograph the plate."""
    for_signs, lots, for_camera = np.random.default_rng([seed, 4]).spawn(3)
    camera = _Camera(wanted, for_camera)
    fine = float(np.clip(wanted.pixels_per_mm * 1.2, 26, 44))  # the relief's pixels per mm
    depth, rubbed, boxes = _engraved(wanted, fine, for_signs)
    plate, cover = _plate(wanted, depth, rubbed, fine, lots)
    across, down = (int(n) for n in (1.5 * camera.margin + 2) * fine)  # the cloth around
    here = slice(down, -down), slice(across, -across)
    shape = cover.shape[0] + 2 * down, cover.shape[1] + 2 * across
    thrown = (lots.normal(0, 1.1, 2) * fine / 8).astype(int).tolist()
    weave, colour = _cloth(shape, fine, lots)
    shadow = cv2.copyMakeBorder(cover, down, down, across, across, cv2.BORDER_CONSTANT)
    shadow = np.roll(cv2.resize(shadow, (shape[1] // 8, shape[0] // 8)), thrown, (0, 1))
    shadow = cv2.GaussianBlur(shadow, (0, 0), lots.uniform(0.05, 0.2) * fine)
    weave *= 1 - lots.uniform(0.4, 0.85) * cv2.resize(shadow, shape[::-1])
    y = np.arange(-down, shape[0] - down, dtype=np.float32) / fine
    x = np.arange(-across, shape[1] - across, dtype=np.float32) / fine
    ends = [(v - float(n)) ** 2 for v, n in zip((y, x), camera.aim[::-1], strict=True)]
    fall = np.exp(np.add.outer(*ends) * (for_camera.uniform(-1.6, 0) / wanted.height**2))
    left, top, wide, high = boxes[0][int(for_camera.integers(len(boxes[0])))]
    x, y = (x - left - wide / 2) / (0.5 * wanted.width), (y - top - high / 2) / 13
    shine = np.outer(np.exp(-(y**2)), np.exp(-(x**2))) * (1.9 * (wanted.flaw == "glare"))
    softness = 0.4 * max(1.0, fine / wanted.pixels_per_mm) * for_camera.uniform(0.9, 1.6)
    planes: list[Any] = []
    for shade, lit in zip(colour.tolist(), plate, strict=True):
        plane = weave * shade
        plane[here] += (lit + shine[here] - plane[here]) * cover
        plane *= fall * for_camera.normal(1, 0.04)
        plane = cv2.sqrt(cv2.GaussianBlur(np.clip(plane, 0, 4), (0, 0), softness))
        planes.insert(0, cv2.convertScaleAbs(np.minimum(plane, 1), alpha=255))
    place = camera.unproject(16) * np.float32(fine)
    xs, ys = place[..., 0] + (across - 0.5), place[..., 1] + (down - 0.5)
    sharp = cv2.remap(cv2.merge(planes), xs, ys, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REFLECT)
    corners = tuple((float(x), float(y)) for x, y in camera.project(camera.outline))
    return Taken(_developed(sharp, wanted, for_camera), corners, boxes)
