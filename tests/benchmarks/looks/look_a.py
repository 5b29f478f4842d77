"""The first look: a height map of cuts, grain and scratches, lit from one side.

Everything is invented: five typefaces, cuts with a V section or hairlines or inlay, six alloys,
clouds of patina, file marks or ring punches, wear in clouds, cloth or paper or wood below.
"""

from __future__ import annotations

import random
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import cv2
import numpy as np
from PIL import ImageFont

from looks.contract import GAP, REPEATED, WORN, Sides, Taken, Wanted

Array = Any
FONTS = Path("/usr/share/fonts/truetype")
FACES = (
    "kouzan-mouhitsu/kouzan-mouhitsu.ttf",
    "kouzan-mouhitsu/kouzan-mouhitsu-gyosho.ttf",
    "kouzan-mouhitsu/KouzanBrushFontSousyo.ttf",
    "aoyagi-kouzan-t/AoyagiKouzanT.ttf",
    "dejima-mincho/dejima-mincho-r227.ttf",
)
EM = 120  # pixels of a glyph's em
ALLOYS = {  # RGB of clean metal, 0 to 1
    "black": (0.16, 0.15, 0.18),
    "copper": (0.55, 0.33, 0.22),
    "brass": (0.72, 0.58, 0.30),
    "grey": (0.42, 0.43, 0.42),
    "iron": (0.27, 0.24, 0.22),
    "silver": (0.74, 0.74, 0.72),
}


class Placed(NamedTuple):
    """A sign's ink and where it is cut, in mm."""

    ink: Array
    x: float
    y: float
    width: float
    height: float
    depth: float


@cache
def _face(name: str) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(FONTS / name), EM)


@cache
def _ink(name: str, sign: str) -> Array:
    """Return a sign's ink, 0 to 1, cropped; another sign's where the face lacks it."""
    face = _face(name)
    missing = bytes(face.getmask("\U000e0fff"))
    if sign == REPEATED:
        points = np.array([[60, 0], [15, 90], [55, 190]], np.int32)
        drawn = np.zeros((200, 80), np.uint8)
        cv2.polylines(drawn, [points], False, 255, 11, cv2.LINE_AA)
        return drawn / 255.0
    mask = face.getmask(sign)
    if bytes(mask) == missing or mask.getbbox() is None:
        mask = face.getmask("花夢秋山月"[ord(sign) % 5])
    drawn = np.array(mask, np.uint8).reshape(mask.size[::-1])
    x, y, width, height = cv2.boundingRect((drawn > 80).astype(np.uint8))
    return drawn[y : y + height, x : x + width] / 255.0


def photograph(wanted: Wanted, seed: int) -> Taken:
    """Return an engraved plate as photographed; the same for the same seed."""
    rng = np.random.default_rng(seed)
    placed = _written(wanted, rng)
    scale = float(np.clip(wanted.pixels_per_mm, 16, 36))
    plate = _plate(wanted, placed, scale, rng)
    image, corners = _taken(wanted, plate, scale, rng)
    boxes = tuple(tuple((p.x, p.y, p.width, p.height) for p in column) for column in placed)
    return Taken(image, corners, _as_sides(boxes))


def _as_sides(boxes: Any) -> tuple[tuple[Sides, ...], ...]:
    return tuple(tuple((float(x), float(y), float(w), float(h)) for x, y, w, h in c) for c in boxes)


def _written(wanted: Wanted, rng: np.random.Generator) -> list[list[Placed]]:
    """Return the signs of each column where they are cut."""
    face = FACES[rng.integers(len(FACES))]
    count = len(wanted.columns)
    side = rng.uniform(0.5, 1.3)
    step = (wanted.width - 2 * side) / count
    em = step * rng.uniform(0.72, 1.0) if count > 1 else min(step * 0.8, rng.uniform(3, 7))
    head = rng.uniform(2.5, 7)
    lean, loose = rng.normal(0, 0.004), rng.uniform(0.04, 0.14)
    found = []
    for number, signs in enumerate(wanted.columns):
        middle = wanted.width - side - step * (number + 0.5)
        if wanted.extents is not None:
            top, bottom = wanted.extents[number]
        else:
            top = head + rng.normal(0, 0.4)
            bottom = wanted.height - rng.uniform(1.5, 7)
        found.append(_column(signs, face, (middle, top, bottom), em, lean, loose, wanted, rng))
    return found


def _column(
    signs: tuple[str, ...],
    face: str,
    place: tuple[float, float, float],
    em: float,
    lean: float,
    loose: float,
    wanted: Wanted,
    rng: np.random.Generator,
) -> list[Placed]:
    middle, top, bottom = place
    sizes = []
    for sign in signs:
        shown = chr(0x4E00 + int(rng.integers(2000))) if sign == WORN else sign
        ink = _ink(face, "川") if sign == GAP else _ink(face, shown)
        factor = em / EM * np.exp(rng.normal(0, loose)) * (0.85 if "ぁ" <= sign <= "ゟ" else 1.0)
        height, width = ink.shape[0] * factor, ink.shape[1] * factor
        if sign == GAP:
            height *= rng.uniform(2, 6)
        sizes.append((ink, width, height, 0.0 if sign == GAP else 0.15 if sign == WORN else 1.0))
    gaps = np.maximum(rng.normal(0.1, 0.09, len(signs)) * em, -0.05 * em)
    gaps[0] = 0.0
    length = sum(height for _, _, height, _ in sizes) + gaps.sum()
    fit = (bottom - top) / length
    if wanted.extents is None:
        fit = min(fit, rng.uniform(1.0, 1.35))
    narrow = min(fit, 1.1)
    y, found = top, []
    for (ink, width, height, depth), gap in zip(sizes, gaps, strict=True):
        y += gap * fit
        tall = height * fit
        x = middle + lean * (y - wanted.height / 2) + rng.normal(0, 0.04 * em) - width * narrow / 2
        x = float(np.clip(x, 0.2, wanted.width - width * narrow - 0.2))
        found.append(Placed(ink, x, y, width * narrow, tall, depth))
        y += tall
    return found


def _clouds(shape: tuple[int, int], size: float, rng: np.random.Generator) -> Array:
    """Return smooth noise of mean 0 and deviation 1, in clouds of ``size`` pixels."""
    rows, columns = (max(3, round(side / size) + 3) for side in shape)
    coarse = rng.normal(0, 1, (rows, columns)).astype(np.float32)
    fine = cv2.resize(coarse, shape[::-1], interpolation=cv2.INTER_CUBIC)
    return (fine - fine.mean()) / (fine.std() + 1e-6)


def _depths(
    wanted: Wanted, placed: list[list[Placed]], shape: tuple[int, int], scale: float, joined: bool
) -> Array:
    """Return how much ink stands at each place, 0 to 1, worn signs fainter."""
    depth = np.zeros(shape, np.float32)
    for column in placed:
        for index, sign in enumerate(column):
            left, top = round(sign.x * scale), round(sign.y * scale)
            size = (max(1, round(sign.width * scale)), max(1, round(sign.height * scale)))
            ink = cv2.resize(sign.ink.astype(np.float32), size, interpolation=cv2.INTER_AREA)
            part = depth[max(top, 0) : top + size[1], max(left, 0) : left + size[0]]
            np.maximum(part, ink[: part.shape[0], : part.shape[1]] * sign.depth, out=part)
            if joined and index and sign.depth == 1:
                before = column[index - 1]
                ends = [
                    (round((s.x + s.width * t) * scale), round((s.y + s.height * u) * scale))
                    for s, t, u in ((before, 0.45, 0.93), (sign, 0.5, 0.06))
                ]
                cv2.line(depth, *ends, 0.5, max(1, round(0.1 * scale)), cv2.LINE_AA)
    return depth


def _grain(shape: tuple[int, int], scale: float, rng: np.random.Generator) -> Array:
    """Return the height in mm of the ground's own relief: plain, filed, or punched with rings."""
    kind = rng.integers(4)
    plain = _clouds(shape, 0.12 * scale, rng) * 0.0012
    if kind == 1:
        lines = rng.normal(0, 1, (shape[0] + shape[1], 1)).astype(np.float32)
        slope = rng.uniform(0.3, 0.9)
        rows, columns = np.mgrid[: shape[0], : shape[1]]
        along = np.clip(rows + columns * slope, 0, len(lines) - 1).astype(int)
        lines = cv2.GaussianBlur(lines, (1, 0), 0.05 * scale) if scale > 20 else lines
        return plain + lines[along, 0] * rng.uniform(0.001, 0.004)
    if kind == 2:
        pitch = rng.uniform(0.45, 0.8) * scale
        rows, columns = np.mgrid[: shape[0], : shape[1]].astype(np.float32)
        u = (columns + (np.floor(rows / pitch) % 2) * pitch / 2) % pitch - pitch / 2
        v = rows % pitch - pitch / 2
        round_ = np.sqrt(np.maximum(0, 1 - (u * u + v * v) / (pitch / 2) ** 2))
        return plain + round_.astype(np.float32) * rng.uniform(0.008, 0.025)
    return plain * rng.uniform(0.5, 2.5)


def _scratches(shape: tuple[int, int], scale: float, rng: np.random.Generator) -> Array:
    drawn = np.zeros(shape, np.float32)
    for _ in range(rng.poisson(rng.choice([3, 12, 40]))):
        start = rng.uniform(0, 1, 2) * shape[::-1]
        turn, length = rng.uniform(0, np.pi), rng.exponential(6) * scale
        end = start + length * np.array([np.cos(turn), np.sin(turn)])
        ends = tuple(map(int, start)), tuple(map(int, end))
        cv2.line(drawn, *ends, rng.uniform(0.1, 0.8), 1, cv2.LINE_AA)
    return drawn


def _plate(
    wanted: Wanted, placed: list[list[Placed]], scale: float, rng: np.random.Generator
) -> Array:
    """Return the plate's face as lit, RGB 0 to 1, at ``scale`` pixels per mm."""
    shape = (round(wanted.height * scale), round(wanted.width * scale))
    ink = _depths(wanted, placed, shape, scale, rng.random() < 0.2)
    worn = np.clip(1.15 - np.maximum(0, _clouds(shape, 9 * scale, rng)) * rng.uniform(0, 0.5), 0, 1)
    manner = rng.choice(["cut", "cut", "hairline", "inlay"], p=[0.4, 0.2, 0.25, 0.15])
    if manner == "hairline":
        size = max(1, round(rng.uniform(0.05, 0.1) * scale))
        ink = np.maximum(cv2.erode(ink, np.ones((size, size))), ink * 0.4)
    depth = cv2.GaussianBlur(ink, (0, 0), 0.035 * scale) * worn
    relief = _grain(shape, scale, rng) - _scratches(shape, scale, rng) * 0.02
    if manner != "inlay":
        relief = relief - depth * rng.uniform(0.05, 0.13)
    rise = cv2.Sobel(relief, cv2.CV_32F, 0, 1) * scale / 8
    run = cv2.Sobel(relief, cv2.CV_32F, 1, 0) * scale / 8
    turn, high = rng.uniform(0, 2 * np.pi), rng.uniform(0.35, 1.1)
    light = np.cos(high) * np.cos(turn), np.cos(high) * np.sin(turn), np.sin(high)
    facing = (-run * light[0] - rise * light[1] + light[2]) / np.sqrt(1 + run**2 + rise**2)
    alloy = np.array(ALLOYS[str(rng.choice(list(ALLOYS)))], np.float32)
    patina = np.exp(_clouds(shape, rng.uniform(2, 9) * scale, rng) * rng.uniform(0.03, 0.2))
    tint = _clouds(shape, 12 * scale, rng)[..., None] * rng.normal(0, 0.02, 3)
    shade = 0.35 + 0.65 * np.maximum(facing, 0) / light[2]
    colour = alloy * patina[..., None] * (1 + tint) * np.minimum(shade, 2.2)[..., None]
    if manner == "inlay":
        other = np.array(ALLOYS[str(rng.choice(["brass", "silver", "black"]))]) * 1.1
        colour = colour + (other - colour) * (depth * 0.9)[..., None]
    else:
        colour *= (1 - depth * rng.uniform(0.1, 0.55))[..., None]  # dirt in the cuts
    glint = np.maximum(facing, 0) ** 24 * rng.uniform(0, 0.15)
    return (colour + glint[..., None]).astype(np.float32)


def _ground(shape: tuple[int, int], scale: float, rng: np.random.Generator) -> Array:
    """Return the cloth, paper, wood or board below, RGB 0 to 1."""
    kind = rng.integers(4)
    tone = rng.uniform((0.7, 0.6, 0.35, 0.03)[kind], (0.95, 0.9, 0.6, 0.2)[kind])
    base = tone * (1 + rng.normal(0, 0.05, 3))
    relief = _clouds(shape, 0.1 * scale + 2, rng) * 0.01 + _clouds(shape, 5 * scale, rng) * 0.03
    rows, columns = np.mgrid[: shape[0], : shape[1]].astype(np.float32)
    if kind == 0:
        relief += 0.03 * np.sin(rows * 2 * np.pi / (0.6 * scale)) * np.sin(columns / (0.1 * scale))
    if kind == 2:
        relief += 0.05 * np.sin(columns / (1.3 * scale) + _clouds(shape, 20 * scale, rng))
    return (base * (1 + relief[..., None])).astype(np.float32)


def _turned(wanted: Wanted, margin: float, rng: np.random.Generator) -> tuple[Array, Array, Any]:
    """Return the way from mm on the plate to pixels, and the picture's size."""
    tilt, way = np.radians(wanted.tilt), rng.uniform(0, 2 * np.pi)
    axis = np.array([np.cos(way), np.sin(way), 0]) * tilt
    spin = np.radians(rng.uniform(-3, 3))
    turned = cv2.Rodrigues(axis)[0] @ cv2.Rodrigues(np.array([0, 0, spin]))[0]
    far = rng.uniform(2.5, 6) * wanted.height
    half = np.array([wanted.width, wanted.height]) / 2
    focal = far * wanted.pixels_per_mm
    inner = np.array([[focal, 0, 0], [0, focal, 0], [0, 0, 1]])
    move = np.column_stack([turned[:, 0], turned[:, 1], turned @ [-half[0], -half[1], 0]])
    move[2, 2] += far
    way_out = inner @ move
    seen = cv2.perspectiveTransform(_rim(wanted)[None], way_out)[0]
    low, high = seen.min(0), seen.max(0)
    room = margin * wanted.height * wanted.pixels_per_mm
    size = np.ceil(high - low + 2 * room * np.array([0.6, 1.0])).astype(int)
    shift = np.array([[1, 0, -low[0] + 0.6 * room], [0, 1, -low[1] + room], [0, 0, 1]])
    return shift @ way_out, seen, (int(size[0]), int(size[1]))


def _rim(wanted: Wanted) -> Array:
    w, h = wanted.width, wanted.height
    return np.array([[0, 0], [w, 0], [w, h], [0, h]], np.float64)


def _barrelled(points: Array, size: tuple[int, int], barrel: float) -> Array:
    """Return points of a straight picture where a barrel lens puts them."""
    middle = np.array(size, np.float32) / 2
    away = points - middle
    far = (away**2).sum(-1, keepdims=True) / (middle**2).sum()
    return middle + away * (1 - barrel * far)


def _straight(points: Array, size: tuple[int, int], barrel: float) -> Array:
    """Return the reverse of :func:`_barrelled`."""
    middle = np.array(size, np.float32) / 2
    away = points - middle
    straight = away.copy()
    for _ in range(3):
        far = (straight**2).sum(-1, keepdims=True) / (middle**2).sum()
        straight = away / (1 - barrel * far)
    return middle + straight


def _taken(
    wanted: Wanted, plate: Array, scale: float, rng: np.random.Generator
) -> tuple[Array, tuple[tuple[float, float], ...]]:
    """Return the photograph of a plate and its corners there, in pixels."""
    way, _, size = _turned(wanted, rng.uniform(0.03, 0.13), rng)
    columns, rows = np.meshgrid(np.arange(size[0]) + 0.5, np.arange(size[1]) + 0.5)
    pixels = np.stack([columns, rows], -1).astype(np.float32)
    straight = _straight(pixels, size, wanted.barrel)
    mm = cv2.perspectiveTransform(straight.reshape(1, -1, 2), np.linalg.inv(way))
    mm = mm.reshape(*pixels.shape).astype(np.float32)
    if wanted.flaw == "bent":
        along = mm[..., 1] / wanted.height
        mm[..., 0] += (4 * along * (1 - along) - 0.5) * wanted.height * rng.uniform(0.05, 0.08)
    x, y = mm[..., 0] * scale - 0.5, mm[..., 1] * scale - 0.5
    if wanted.pixels_per_mm < scale:
        plate = cv2.GaussianBlur(plate, (0, 0), 0.4 * scale / wanted.pixels_per_mm)
    face = cv2.remap(plate, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    rounded = rng.uniform(0, 0.8)
    half = np.array([wanted.width, wanted.height], np.float32) / 2
    beyond = np.abs(mm - half) - half + rounded
    away = np.hypot(*np.moveaxis(np.maximum(beyond, 0), -1, 0)) - rounded
    away += np.minimum(beyond.max(-1), 0) * (beyond.max(-1) < 0)
    on_plate = np.clip(0.5 - away * wanted.pixels_per_mm, 0, 1)[..., None]
    bevel = np.exp(-np.maximum(-away, 0) / rng.uniform(0.1, 0.4)) * rng.uniform(-0.5, 0.6)
    face = face * (1 + bevel[..., None])
    below = _ground(pixels.shape[:2], wanted.pixels_per_mm, rng)
    shadow = np.exp(-np.maximum(away, 0) / rng.uniform(0.5, 3)) * rng.uniform(0, 0.6)
    image = face * on_plate + below * (1 - shadow[..., None]) * (1 - on_plate)
    image = _lit(image.astype(np.float32), wanted, rng)
    corners = _barrelled(cv2.perspectiveTransform(_rim(wanted)[None], way)[0], size, wanted.barrel)
    if wanted.flaw == "cropped":
        image, corners = _cropped(image, corners, wanted, rng)
    return image, tuple((float(x), float(y)) for x, y in corners)


def _cropped(
    image: Array, corners: Array, wanted: Wanted, rng: np.random.Generator
) -> tuple[Array, Array]:
    cut = int(corners[:, 1].min() + rng.uniform(0.12, 0.3) * np.ptp(corners[:, 1]))
    if rng.random() < 0.5:
        return np.ascontiguousarray(image[cut:]), corners - [0, cut]
    return np.ascontiguousarray(image[: len(image) - cut]), corners


def _lit(image: Array, wanted: Wanted, rng: np.random.Generator) -> Array:
    """Return the picture as the camera stores it: uneven light, blur, noise, JPEG."""
    shape = image.shape[:2]
    rows, columns = np.mgrid[-1 : 1 : shape[0] * 1j, -1 : 1 : shape[1] * 1j].astype(np.float32)
    slope = rng.normal(0, 0.25, 2).astype(np.float32)
    light = np.exp(rows * slope[0] + columns * slope[1]) * rng.uniform(0.9, 1.3)
    image = image * light[..., None] * np.exp(_clouds(shape, shape[0] / 3, rng) * 0.1)[..., None]
    if wanted.flaw == "glare":
        at = rng.uniform(-0.5, 0.5)
        burn = np.exp(-(((rows - at) / rng.uniform(0.25, 0.5)) ** 2)) * rng.uniform(2, 4)
        image = image + burn[..., None]
    soft = rng.uniform(0.3, 1.0) + 0.01 * wanted.pixels_per_mm
    if wanted.flaw == "blur":
        soft = rng.uniform(0.4, 0.8) * wanted.pixels_per_mm
    image = cv2.GaussianBlur(image.astype(np.float32), (0, 0), soft)
    image = image + rng.standard_normal(image.shape, np.float32) * rng.uniform(0.003, 0.012)
    stored = (np.clip(image, 0, 1, dtype=np.float32) ** np.float32(1 / 1.6) * 255).astype(np.uint8)
    quality = int(rng.integers(75, 96))
    _, packed = cv2.imencode(".jpg", stored[..., ::-1], [cv2.IMWRITE_JPEG_QUALITY, quality])
    return cv2.imdecode(packed, cv2.IMREAD_COLOR)[..., ::-1]


def main() -> None:
    """Write a few pictures to look at, into the folder named on the command line."""
    import sys

    from looks.inscriptions import wanted

    for seed in range(6):
        taken = photograph(wanted(seed), seed)
        cv2.imwrite(f"{sys.argv[1]}/a{seed}.png", taken.image[..., ::-1])


if __name__ == "__main__":
    random.seed(0)
    main()
