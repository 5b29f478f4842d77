"""Look E: shaved cuts on corroded metal under a sky of soft lights, through a two-term lens.

A check only: its author knew the measuring program, and made everything otherwise than the other
looks do where he could. Cuts are one-sided (steep on one flank, shaved flat on the other); the
metal mirrors a room drawn by lot; its texture has the spectrum of natural surfaces (1/f) with pits
of corrosion; the lens has a second radial term, which the program does not know; the sensor has a
Bayer mosaic. Signs are written with a slant that grows and with unequal spaces; the truth of each
is where its ink lies after all of that.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import cv2
import numpy as np
from PIL import ImageFont

from looks.contract import GAP, REPEATED, WORN, Sides, Taken, Wanted

Array = Any
FONTS = Path("/usr/share/fonts/truetype")
FACES = (
    "ipamj/ipamjm.ttf",
    "kouzan-mouhitsu/kouzan-mouhitsu-gyosho.ttf",
    "aoyagi-kouzan-t/AoyagiKouzanT.ttf",
    "dejima-mincho/dejima-mincho-r227.ttf",
    "kouzan-mouhitsu/kouzan-mouhitsu.ttf",
)
METALS = ((0.20, 0.19, 0.22), (0.50, 0.30, 0.22), (0.66, 0.55, 0.32), (0.45, 0.46, 0.45))
EM, FINE = 128, 22  # pixels of an em; pixels per mm of the plate


@cache
def _glyph(face: str, sign: str) -> Array:
    """Return a sign's ink, 0 to 1, cut to its rectangle."""
    font = ImageFont.truetype(str(FONTS / face), EM)
    if sign == REPEATED:
        drawn = np.zeros((2 * EM, EM), np.uint8)
        cv2.ellipse(drawn, (20, EM), (60, EM - 12), 0, -70, 70, 255, 10, cv2.LINE_AA)
    else:
        mask = font.getmask(sign)
        if mask.getbbox() is None or bytes(mask) == bytes(font.getmask("\U000e0fff")):
            mask = font.getmask("雲竹泉石"[ord(sign) % 4])
        drawn = np.array(mask, np.uint8).reshape(mask.size[::-1])
    x, y, wide, high = cv2.boundingRect((drawn > 90).astype(np.uint8))
    return drawn[y : y + high, x : x + wide] / 255.0


def _natural(shape: tuple[int, int], rng: np.random.Generator, power: float) -> Array:
    """Return a texture whose amplitudes fall with the frequency, mean 0 and deviation 1."""
    side = 512
    waves = np.fft.rfft2(rng.standard_normal((side, side)))
    far = np.hypot(np.fft.fftfreq(side)[:, None], np.fft.rfftfreq(side)[None])
    far[0, 0] = 1
    tile = np.fft.irfft2(waves / far**power)
    tile = np.tile(tile, (shape[0] // side + 1, shape[1] // side + 1))[: shape[0], : shape[1]]
    return ((tile - tile.mean()) / tile.std()).astype(np.float32)


def _written(wanted: Wanted, rng: np.random.Generator) -> tuple[Array, list[list[Sides]]]:
    """Return the depth of the ink (0 to 1) at ``FINE`` pixels a mm, and every sign's box in mm."""
    depth = np.zeros((round(wanted.height * FINE), round(wanted.width * FINE)), np.float32)
    face = FACES[int(rng.integers(len(FACES)))]
    count = len(wanted.columns)
    step = (wanted.width - 1.4) / count
    top, foot = rng.uniform(2.5, 8), wanted.height - rng.uniform(2, 6)
    longest = max(map(len, wanted.columns))
    em = min(step * rng.uniform(0.75, 1.0), (foot - top) / longest * rng.uniform(0.8, 0.95), 6.5)
    kana, slant, space = rng.uniform(0.75, 1.0), rng.normal(0, 0.05), rng.uniform(0.02, 0.22)
    found = []
    for number, signs in enumerate(wanted.columns):
        middle = wanted.width - 0.7 - step * (number + 0.5)
        at, end = wanted.extents[number] if wanted.extents else (top + rng.normal(0, 0.5), 0.0)
        parts = [_sign(sign, face, em, kana, slant, rng) for sign in signs]
        spaces = np.maximum(rng.gamma(2, space / 2, len(signs)) * em - 0.08 * em, -0.05 * em)
        length = sum(part.shape[0] for part, _ in parts) / FINE + spaces[1:].sum()
        fit = (end - at) / length if wanted.extents else min(1.0, (foot - at) / length)
        column = []
        for index, (ink, strength) in enumerate(parts):
            at += spaces[index] * fit if index else 0.0
            high, wide = max(3, round(len(ink) * fit)), max(3, round(ink.shape[1] * min(fit, 1)))
            left = round((middle + rng.normal(0, 0.06) * em) * FINE - wide / 2)
            left, row = int(np.clip(left, 4, depth.shape[1] - wide - 4)), round(at * FINE)
            high = min(high, len(depth) - row)
            part = depth[row : row + high, left : left + wide]
            np.maximum(part, cv2.resize(ink, (wide, high)) * strength, out=part)
            column.append((left / FINE, row / FINE, wide / FINE, high / FINE))
            at += high / FINE
        found.append(column)
    return depth, found


def _sign(
    sign: str, face: str, em: float, kana: float, slant: float, rng: np.random.Generator
) -> tuple[Array, float]:
    """Return a sign's ink at ``FINE`` pixels a mm, slanted, and how deep it is cut."""
    shown = "鳥" if sign in (WORN, GAP) else sign
    ink = np.asarray(_glyph(face, shown), np.float32)
    size = em / EM * FINE * float(np.exp(rng.normal(0, 0.09)))
    size *= kana if "ぁ" <= sign <= "ゟ" else 1.0
    stretch = rng.uniform(2, 5) if sign == GAP else 1.0
    wide, high = max(3, round(ink.shape[1] * size)), max(3, round(len(ink) * size * stretch))
    ink = cv2.resize(ink, (wide, high), interpolation=cv2.INTER_AREA)
    lean = slant + rng.normal(0, 0.03)
    room = round(abs(lean) * high) + 2
    way = np.array([[1, -lean, room + lean * high / 2], [0, 1, 1]], np.float32)
    ink = cv2.warpAffine(ink, way, (wide + 2 * room, high + 2))
    x, y, wide, high = cv2.boundingRect((ink > 0.3).astype(np.uint8))
    strength = 0.0 if sign == GAP else rng.uniform(0.05, 0.2) if sign == WORN else 1.0
    return ink[y : y + high, x : x + wide], strength


def _room(slope_x: Array, slope_y: Array, rng: np.random.Generator) -> Array:
    """Return the light that a mirror of these slopes shows of a room with three soft windows."""
    light = np.full(slope_x.shape, 0.25, np.float32)
    for _ in range(3):
        x, y, wide = rng.uniform(-0.7, 0.7), rng.uniform(-0.7, 0.7), rng.uniform(0.25, 0.6)
        off = ((slope_x - x) ** 2 + (slope_y - y) ** 2) / wide**2
        light += np.float32(rng.uniform(0.3, 0.9)) * np.exp(-off)
    return light


def _metal(depth: Array, rng: np.random.Generator) -> Array:
    """Return the plate's face in linear light, RGB."""
    shape = depth.shape
    cut = cv2.GaussianBlur(depth, (0, 0), 0.03 * FINE)
    shift = rng.uniform(0.04, 0.09) * FINE
    way = np.array([[1, 0, shift], [0, 1, shift * rng.choice((-1, 1))]], np.float32)
    shaved = cv2.warpAffine(cv2.GaussianBlur(depth, (0, 0), 0.09 * FINE), way, shape[::-1])
    pits = np.maximum(_natural(shape, rng, 0.6) - rng.uniform(1.6, 2.6), 0)
    relief = _natural(shape, rng, 1.1) * rng.uniform(0.002, 0.008) - pits * 0.01
    relief -= (0.6 * cut + 0.4 * shaved) * rng.uniform(0.06, 0.14)
    relief = relief.astype(np.float32)
    slopes = [cv2.Sobel(relief, cv2.CV_32F, *axis) * FINE / 8 for axis in ((1, 0), (0, 1))]
    light = _room(*slopes, rng)
    stain = np.exp(_natural(shape, rng, 1.6) * rng.uniform(0.05, 0.25)).astype(np.float32)
    dirt = 1 - cut * rng.uniform(0.0, 0.5)
    colour = np.array(METALS[int(rng.integers(len(METALS)))], np.float32)
    return (light * stain * dirt)[..., None] * colour * (1 + rng.normal(0, 0.03, 3))


def _lens(wanted: Wanted, rng: np.random.Generator) -> tuple[Array, Array, Array, Array, Any]:
    """Return rotation, shift, camera matrix, distortion and the picture's size."""
    way, tilt = rng.uniform(0, 2 * np.pi), np.radians(wanted.tilt)
    turned = cv2.Rodrigues(np.array([np.cos(way), np.sin(way), 0]) * tilt)[0]
    turned = turned @ cv2.Rodrigues(np.array([0, 0, np.radians(rng.uniform(-2.5, 2.5))]))[0]
    far = rng.uniform(3, 7) * wanted.height
    focal = far * wanted.pixels_per_mm
    half = np.array([wanted.width, wanted.height, 0]) / 2
    move = np.array([0, 0, far]) - turned @ half
    margin = rng.uniform(1.08, 1.25), rng.uniform(1.3, 1.9)
    high = wanted.height * wanted.pixels_per_mm * margin[0]
    wide = wanted.width * wanted.pixels_per_mm * margin[1] + 0.08 * high
    size = round(wide), round(high)
    camera = np.array([[focal, 0, wide / 2], [0, focal, high / 2], [0, 0, 1]])
    corner = (wide**2 + high**2) / 4 / focal**2
    bent = np.array([-0.7 * wanted.barrel / corner, -0.3 * wanted.barrel / corner**2, 0, 0])
    return cv2.Rodrigues(turned)[0], move, camera, bent, size


def photograph(wanted: Wanted, seed: int) -> Taken:
    """Return the plate as photographed; the same for the same seed."""
    rng = np.random.default_rng((seed, 5))
    depth, boxes = _written(wanted, rng)
    turn, move, camera, bent, size = _lens(wanted, rng)
    face = np.pad(_metal(depth, rng).astype(np.float32), ((8, 8), (8, 8), (0, 0)), "edge")
    grid = np.stack(np.meshgrid(np.arange(size[0]) + 0.5, np.arange(size[1]) + 0.5), -1)
    straight = cv2.undistortPoints(
        grid.reshape(-1, 1, 2), camera, bent, criteria=(3, 12, 1e-8)
    ).reshape(-1, 2)
    flat = np.column_stack([cv2.Rodrigues(turn)[0][:, :2], move])
    mm = cv2.perspectiveTransform(straight[None], np.linalg.inv(flat)).reshape(*grid.shape)
    mm = mm.astype(np.float32)
    if wanted.pixels_per_mm < FINE:
        face = cv2.GaussianBlur(face, (0, 0), 0.4 * FINE / wanted.pixels_per_mm)
    spots = mm * FINE + 7.5
    image = cv2.remap(face, spots[..., 0], spots[..., 1], cv2.INTER_LINEAR)
    edge = np.minimum(mm, np.array([wanted.width, wanted.height], np.float32) - mm).min(-1)
    cover = np.clip(edge * wanted.pixels_per_mm + 0.5, 0, 1)[..., None]
    ground = rng.choice([0.05, 0.6, 0.8]) * (1 + 0.06 * _natural(size[::-1], rng, 0.9)[..., None])
    image = image * cover + ground * (1 - cover)
    rim = np.array([[0, 0], [1, 0], [1, 1], [0, 1]]) * (wanted.width, wanted.height)
    corners = cv2.projectPoints(np.pad(rim, ((0, 0), (0, 1))), turn, move, camera, bent)[0]
    sides = tuple(tuple(column) for column in boxes)
    return Taken(_sensed(image, rng), tuple(map(tuple, corners.reshape(-1, 2).tolist())), sides)


def _sensed(image: Array, rng: np.random.Generator) -> Array:
    """Return what a sensor with a Bayer mosaic keeps: shot noise, demosaicing, tone."""
    fall = np.linspace(-1, 1, len(image), dtype=np.float32)[:, None, None]
    image = np.clip(image * (1 + rng.normal(0, 0.2) * fall), 0, None) / np.percentile(image, 98)
    mosaic = np.empty(image.shape[:2], np.float32)
    for channel, (row, column) in zip((0, 1, 1, 2), ((0, 0), (0, 1), (1, 0), (1, 1)), strict=True):
        mosaic[row::2, column::2] = image[row::2, column::2, channel]
    mosaic += rng.standard_normal(mosaic.shape) * np.sqrt(mosaic + 0.01) * rng.uniform(0.01, 0.04)
    raw = (np.clip(mosaic * 0.9, 0, 1) * 65535).astype(np.uint16)
    colour = cv2.cvtColor(raw, cv2.COLOR_BayerRGGB2RGB).astype(np.float32) / 65535
    return (colour ** (1 / 2.2) * 255).astype(np.uint8)
