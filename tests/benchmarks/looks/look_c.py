"""A third look, for robustness only: nothing that measures is set on it.

What the other two do not have: handwriting typefaces (Debian fonts-aoyagi-soseki, fonts-kiloji,
fonts-seto), signs turned and slanted each by itself, sizes that grow or shrink down a column,
columns that lean and waver; facets of a chisel as wide as the stroke; a shadow across the plate, a
vignette, a colour cast, a ruler beside the plate; a camera that sharpens and stores small files.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import cv2
import numpy as np
from PIL import ImageFont

from looks.contract import GAP, REPEATED, WORN, Taken, Wanted

Array = Any
FACES = ("aoyagi-soseki/aoyagi-soseki", "kiloji/kiloji", "kiloji/kiloji_b", "seto/setofont")
FOLDER = "/usr/share/fonts/truetype"
STAND_INS = "青風水竹里"
EM = 96  # pixels of a glyph's em
FINE = 24  # pixels a mm on the plate before it is photographed
METALS = ((60, 52, 50), (128, 84, 62), (176, 146, 92), (118, 120, 116), (190, 188, 180))


@cache
def _glyph(face: str, sign: str) -> Array:
    """Return a sign's ink in its typeface, 0 to 1, with some bare ground around."""
    font = ImageFont.truetype(f"{FOLDER}/{face}.ttf", EM)
    if sign == REPEATED:
        drawn = np.zeros((2 * EM, EM), np.uint8)
        way = np.array([[70, 12], [30, 90], [62, 180]], np.int32)
        cv2.polylines(drawn, [way], False, 255, 9, cv2.LINE_AA)
        return drawn / 255
    mask = font.getmask(sign)
    if mask.getbbox() is None or bytes(mask) == bytes(font.getmask("\U000e0fff")):
        mask = font.getmask(STAND_INS[ord(sign) % len(STAND_INS)])
    drawn = np.array(mask, np.uint8).reshape(mask.size[::-1])
    return np.pad(drawn, EM // 3) / 255


def _turned(ink: Array, turn: float, slant: float, size: float) -> Array:
    """Return ink turned (degrees), slanted, and as large as wanted, cropped to itself."""
    height, width = ink.shape
    way = cv2.getRotationMatrix2D((width / 2, height / 2), turn, 1.0)
    way[0, 1] += slant
    way[0, 2] -= slant * height / 2
    moved = cv2.warpAffine(ink.astype(np.float32), way, (width, height))
    x, y, w, h = cv2.boundingRect((moved > 0.3).astype(np.uint8))
    shape = max(2, round(w * size)), max(2, round(h * size))
    return cv2.resize(moved[y : y + h, x : x + w], shape, interpolation=cv2.INTER_AREA)


def _written(wanted: Wanted, rng: np.random.Generator) -> tuple[Array, tuple[Any, ...]]:
    """Return the ink of the whole plate, and the box of each sign."""
    plate = np.zeros((round(wanted.height * FINE), round(wanted.width * FINE)), np.float32)
    face, step = str(rng.choice(FACES)), (wanted.width - 1.6) / len(wanted.columns)
    em = min(step * rng.uniform(0.75, 1.0), 6.5) * FINE
    lean, first, boxes = rng.normal(0, 0.006), rng.uniform(2, 6), []
    for number, signs in enumerate(wanted.columns):
        middle = wanted.width - 0.8 - step * (number + 0.5)
        ends = first + rng.uniform(0, 0.6), wanted.height - rng.uniform(2, 6)
        top, bottom = wanted.extents[number] if wanted.extents else ends
        inks = _inks(signs, face, em, rng)
        spaces = em * np.maximum(rng.normal(0.14, 0.08, len(signs)), -0.03)
        spaces[0] = 0
        fit = (bottom - top) * FINE / (sum(len(ink) for ink in inks) + spaces.sum())
        fit = fit if wanted.extents else min(fit, 1.3)
        y, own = top * FINE, []
        for ink, space, sign in zip(inks, spaces, signs, strict=True):
            y += space * fit
            wide, high = round(ink.shape[1] * min(fit, 1.1)), round(len(ink) * fit)
            waver = 0.06 * em * np.sin(y / FINE / 7) + lean * (y - len(plate) / 2)
            x = round(np.clip(middle * FINE + waver - wide / 2, 4, plate.shape[1] - wide - 4))
            strength = 0.0 if sign == GAP else 0.2 if sign == WORN else 1.0
            drawn = cv2.resize(ink, (wide, high), interpolation=cv2.INTER_AREA) * strength
            part = plate[round(y) : round(y) + high, x : x + wide]
            np.maximum(part, drawn[: part.shape[0], : part.shape[1]], out=part)
            own.append((x / FINE, round(y) / FINE, wide / FINE, high / FINE))
            y += high
        boxes.append(tuple(own))
    return plate, tuple(boxes)


def _inks(signs: tuple[str, ...], face: str, em: float, rng: np.random.Generator) -> list[Array]:
    """Return the ink of each sign of a column, its size growing or shrinking on the way down."""
    trend, found = rng.normal(0, 0.12), []
    for place, sign in enumerate(signs):
        size = em / EM * np.exp(trend * (place / len(signs) - 0.5) + rng.normal(0, 0.07))
        shown = str(rng.choice(list(STAND_INS))) if sign in (WORN, GAP) else sign
        ink = _turned(_glyph(face, shown), rng.normal(0, 2.5), rng.normal(0, 0.05), size)
        if sign == GAP:
            ink = cv2.resize(ink, (ink.shape[1], round(em * rng.uniform(2, 5))))
        found.append(ink)
    return found


def _noise(shape: Any, size: float, rng: np.random.Generator) -> Array:
    coarse = rng.normal(0, 1, [max(2, round(side / size) + 2) for side in shape[:2]])
    return cv2.resize(coarse.astype(np.float32), shape[1::-1], interpolation=cv2.INTER_CUBIC)


def _engraved(plate: Array, rng: np.random.Generator) -> Array:
    """Return the plate in its colours: each stroke two facets, one lit and one in shade."""
    deep = cv2.distanceTransform((plate > 0.3).astype(np.uint8), cv2.DIST_L2, 5) * np.minimum(
        plate * 1.2, 1
    )
    relief = -cv2.GaussianBlur(deep.astype(np.float32), (0, 0), 0.8) * rng.uniform(0.25, 0.7)
    hammered = _noise(plate.shape, rng.uniform(8, 40), rng) * rng.uniform(0, 0.8)
    relief += hammered + _noise(plate.shape, 1.5, rng) * rng.uniform(0.02, 0.15)
    turn = rng.uniform(0, 2 * np.pi)
    slope = np.cos(turn) * cv2.Sobel(relief, cv2.CV_32F, 1, 0) / 8
    slope += np.sin(turn) * cv2.Sobel(relief, cv2.CV_32F, 0, 1) / 8
    light = np.clip(1 + slope * rng.uniform(0.8, 1.8), 0.15, 2.2)
    light *= 1 - np.minimum(plate, 1) * rng.uniform(0, 0.45)
    cloud = np.exp(_noise(plate.shape, rng.uniform(40, 200), rng) * rng.uniform(0.02, 0.15))
    metal = np.array(METALS[rng.integers(len(METALS))], np.float32) / 255
    return metal * (light * cloud)[..., None]


def _camera(
    wanted: Wanted, margin: float, rng: np.random.Generator
) -> tuple[Array, tuple[int, int]]:
    """Return the way from mm on the plate to pixels, and the picture's size."""
    scale, tilt, way = wanted.pixels_per_mm, np.radians(wanted.tilt), rng.uniform(0, 6.28)
    turned = cv2.Rodrigues(np.array([np.cos(way) * tilt, np.sin(way) * tilt, 0]))[0]
    turned = turned @ cv2.Rodrigues(np.array([0, 0, rng.normal(0, 0.02)]))[0]
    far = wanted.height * rng.uniform(3, 8)
    half = turned @ np.array([-wanted.width / 2, -wanted.height / 2, 0])
    move = np.column_stack([turned[:, 0], turned[:, 1], half + np.array([0, 0, far])])
    lens = np.diag([far * scale, far * scale, 1.0])
    size = np.array([wanted.width + 2 * margin, wanted.height + 2 * margin]) * scale
    centre = np.array([[1, 0, size[0] / 2], [0, 1, size[1] / 2], [0, 0, 1]])
    return centre @ lens @ move, (int(size[0]), int(size[1]))


def photograph(wanted: Wanted, seed: int) -> Taken:
    """Return an engraved plate as photographed; the same for the same seed."""
    rng = np.random.default_rng(seed + 7_000_000)
    plate, boxes = _written(wanted, rng)
    face = _engraved(plate, rng)
    way, size = _camera(wanted, wanted.height * rng.uniform(0.06, 0.12), rng)
    rim = np.array([[0, 0], [1, 0], [1, 1], [0, 1]]) * (wanted.width, wanted.height)
    middle = np.array(size, np.float32) / 2
    seen = np.stack(np.meshgrid(np.arange(size[0]), np.arange(size[1])), -1).astype(np.float32)
    straight = away = seen + 0.5 - middle
    for _ in range(4):
        straight = away / (
            1 - wanted.barrel * (straight**2).sum(-1, keepdims=True) / (middle**2).sum()
        )
    mm = cv2.perspectiveTransform((straight + middle).reshape(1, -1, 2), np.linalg.inv(way))
    mm = mm.reshape(*seen.shape).astype(np.float32)
    if wanted.flaw == "bent":
        mm[..., 0] += wanted.height * 0.065 * np.sin(np.pi * mm[..., 1] / wanted.height)
    if wanted.pixels_per_mm < FINE:
        face = cv2.GaussianBlur(face, (0, 0), 0.4 * FINE / wanted.pixels_per_mm)
    x, y = mm[..., 0] * FINE - 0.5, mm[..., 1] * FINE - 0.5
    image = cv2.remap(
        face.astype(np.float32), x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE
    )
    half = np.array([wanted.width, wanted.height], np.float32) / 2
    outside = (np.abs(mm - half) - half).max(-1)
    on = np.clip(0.5 - outside * wanted.pixels_per_mm, 0, 1)[..., None]
    image = image * on + _below(mm, outside, wanted, rng) * (1 - on)
    flat = cv2.perspectiveTransform(rim[None], way)[0] - middle
    corners = middle + flat * (
        1 - wanted.barrel * (flat**2).sum(-1, keepdims=True) / (middle**2).sum()
    )
    image = _stored(image, mm, wanted, rng)
    if wanted.flaw == "cropped":
        image = np.ascontiguousarray(image[: int(size[1] * rng.uniform(0.6, 0.8))])
    return Taken(image, tuple((float(a), float(b)) for a, b in corners), boxes)


def _below(mm: Array, outside: Array, wanted: Wanted, rng: np.random.Generator) -> Array:
    """Return felt with a ruler on it, and the plate's soft shadow."""
    tone = rng.uniform(0.05, 0.9) * (1 + rng.normal(0, 0.08, 3))
    felt = tone * (1 + 0.05 * _noise(mm.shape, 2, rng)[..., None])
    ruler = wanted.width + rng.uniform(2, 4)
    on = ((mm[..., 0] > ruler) & (mm[..., 1] > 4) & (mm[..., 1] < wanted.height - 9))[..., None]
    marks = ((mm[..., 1] % 1 < 0.2) & (mm[..., 0] < ruler + 1.5))[..., None]
    felt = np.where(on, np.where(marks, 0.1, 0.85), felt)
    return felt * (1 - rng.uniform(0.1, 0.6) * np.exp(-np.maximum(outside, 0) / 1.2))[..., None]


def _stored(image: Array, mm: Array, wanted: Wanted, rng: np.random.Generator) -> Array:
    """Return the picture as its camera stores it."""
    rows, columns = np.mgrid[-1 : 1 : image.shape[0] * 1j, -1 : 1 : image.shape[1] * 1j]
    light = (1 - rng.uniform(0, 0.3) * (rows**2 + columns**2) / 2) * rng.uniform(0.9, 1.3)
    edge = mm[..., 1] - wanted.height * rng.uniform(0.1, 0.9) + mm[..., 0] * rng.normal(0, 0.5)
    light *= 1 - rng.uniform(0, 0.5) / (1 + np.exp(np.clip(-edge / 1.5, -30, 30)))
    image = image * light[..., None] * (1 + rng.normal(0, 0.04, 3))
    if wanted.flaw == "glare":
        at = mm[..., 1] / wanted.height - rng.uniform(0.3, 0.7)
        image = image + (3.5 * np.exp(-((at / 0.3) ** 2)))[..., None]
    soft = 0.5 * wanted.pixels_per_mm if wanted.flaw == "blur" else rng.uniform(0.5, 1.2)
    image = cv2.GaussianBlur(image.astype(np.float32), (0, 0), soft)
    if wanted.flaw != "blur":
        image += rng.uniform(0.2, 0.9) * (image - cv2.GaussianBlur(image, (0, 0), 1.5))
    image += rng.normal(0, rng.uniform(0.004, 0.015), image.shape)
    stored = (np.clip(image, 0, 1) ** (1 / 1.8) * 255).astype(np.uint8)
    quality = [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(55, 85))]
    return cv2.imdecode(cv2.imencode(".jpg", stored[..., ::-1], quality)[1], 1)[..., ::-1]
