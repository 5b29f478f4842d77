"""Carved metal as a height field, lit by two lamps and seen by a camera.

Imitated is a museum photographer's picture of the back of a small metal plate: signs cut with a
burin, struck with a chisel or inlaid; patina, wear; cloth, paper, wood or a board below. All is
invented: typefaces stand in for hands, colours and depths were set by eye, no object was a model.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple, get_args

import cv2
import numpy as np
from PIL import Image, ImageColor, ImageFont

from looks.contract import GAP, REPEATED, WORN, Flaw, Sides, Taken, Wanted

Grid = Any  # a numpy array
Rng = np.random.Generator
Writing = tuple[Grid, Grid, tuple[tuple[Sides, ...], ...]]  # ink, wear (1: none left), boxes
Placed = tuple[str, Grid, float]  # a sign, its ink at EM pixels an em, the top of that ink in em
FONTS = Path("/usr/share/fonts/truetype")
KOUZAN = ("kouzan-mouhitsu", "kouzan-mouhitsu-gyosho", "KouzanBrushFontSousyo")
BRUSHES = ("aoyagi-kouzan-t/AoyagiKouzanT", *(f"kouzan-mouhitsu/{face}" for face in KOUZAN))
FACES = (*BRUSHES, "dejima-mincho/dejima-mincho-r227")
STAND_INS, KANA_STAND_INS = "書年秋住花時海雲松造", "のるをけす"  # for the lacking and the lost
EM = 256  # pixels of an em while a sign is being drawn
# Patina and bare metal of shakudo, brown and red copper, brass, shibuichi, iron, silver.
SKINS = ("#2a282e", "#7c533d", "#9b6249", "#aa8e56", "#727069", "#403b36", "#ada99f")
BARES = ("#866550", "#b78262", "#c49173", "#cdb57c", "#b8b3aa", "#827d7a", "#d4d3cd")
INLAYS = ("#cfae65", "#cec9c3", "#ae7356")
GROUNDS = ("#cfc7b9", "#949496", "#303038", "#40507a", "#957660", "#dcdad6", "#6b7468")


class Hand(NamedTuple):
    """How an inscription is written and cut; lengths in em."""

    face: str
    thin: float  # least half-width of a line cut along the brush strokes; 0: whole strokes
    swell: float  # share of the brush's half-width that is added to ``thin``
    strike: float  # length of one chisel stroke; 0: a line pushed through
    kana: float  # size of kana beside Chinese characters
    tracking: float  # mean space between two signs
    uneven: float  # spread of sizes and spaces


class Camera(NamedTuple):
    """From mm on the plate to pixels: bow in mm, plate in mm, homography, picture, barrel."""

    bow: float
    plate: Grid
    matrix: Grid
    size: Grid
    barrel: float


def _colour(rng: Rng, names: tuple[str, ...]) -> Grid:
    """One of some colours as linear RGB."""
    return (np.array(ImageColor.getrgb(str(rng.choice(names)))) / 255) ** 2.2


def _soft(picture: Grid, sigma: float) -> Grid:
    """A Gaussian blur, made on a smaller picture where it is wide."""
    step = max(1, int(sigma / 3))
    small = cv2.resize(picture, None, fx=1 / step, fy=1 / step, interpolation=cv2.INTER_AREA)
    return cv2.resize(cv2.GaussianBlur(small, (0, 0), sigma / step), picture.shape[1::-1])


def _clouds(rng: Rng, shape: tuple[int, ...], cell: float) -> Grid:
    """Smooth noise about 0 with a spread of about 0.5 and lumps of about ``cell`` pixels."""
    total = np.zeros(shape, np.float32)
    for part in range(3):
        grid = [int(side * 2**part / max(cell, 2)) + 2 for side in shape]
        noise = rng.standard_normal(grid, dtype=np.float32) * np.float32(0.6 * 0.55**part)
        total += cv2.resize(noise, shape[::-1], interpolation=cv2.INTER_CUBIC)
    return total


def _fine(rng: Rng, shape: tuple[int, ...], layers: int = 1) -> Grid:
    """White noise: a tile repeated, for it is costly to draw."""
    tile = rng.standard_normal((700, 700, layers), dtype=np.float32)
    return cv2.repeat(tile, shape[0] // 700 + 1, shape[1] // 700 + 1)[: shape[0], : shape[1]]


@lru_cache(maxsize=512)
def _typeset(sign: str, face: str) -> Grid:
    """A sign as the face has it, cut to its ink; empty if the face lacks it."""
    font = ImageFont.truetype(str(FONTS / f"{face}.ttf"), EM)
    masks = [font.getmask(text) for text in (sign, "\U0010fffd")]
    drawn, lacking = (np.array(mask, np.uint8).reshape(mask.size[::-1]) for mask in masks)
    return drawn[:0] if np.array_equal(drawn, lacking) or not drawn.any() else drawn


def _model(sign: str, hand: Hand, rng: Rng) -> Grid:
    """The picture a sign is carved after: of this face, another one, or of a like sign."""
    if sign == REPEATED:  # one long bent stroke
        stroke = _model("く", hand._replace(face=FACES[-1]), rng)
        return cv2.resize(stroke, (int(rng.uniform(90, 150)), int(1.8 * EM)))
    sign = str(rng.choice(list(STAND_INS))) if sign in (WORN, GAP) else sign
    kana = "\u3040" <= sign[0] <= "\u30ff" or 0x1B000 <= ord(sign[0]) <= 0x1B16F
    for face in (hand.face, *FACES):
        drawn = _typeset(sign, face)
        if drawn.size:
            ratio = 0.92 * EM / len(_typeset(STAND_INS[0], face)) * (hand.kana if kana else 1)
            size = [max(3, round(side * ratio)) for side in drawn.shape[::-1]]
            return cv2.resize(drawn, size, interpolation=cv2.INTER_AREA)
    return _model(str(rng.choice(list(KANA_STAND_INS if kana else STAND_INS))), hand, rng)


def _carved(sign: str, hand: Hand, rng: Rng) -> Grid:
    """The ink of one sign, swayed as hands do, 0 or 255, cut to its rectangle."""
    page = np.pad(_model(sign, hand, rng), 64)
    high, wide = page.shape
    turn, lean = rng.normal(0, 0.035), rng.normal(0, 0.03)
    grow = np.clip(1 + rng.normal(0, hand.uneven, 2), 0.82, 1.2)
    ys, xs = np.mgrid[0:high, 0:wide].astype(np.float32)
    dx, dy = (xs - wide / 2) / grow[0], (ys - high / 2) / grow[1]
    bend: Grid = rng.normal(0, 0.018 * EM, (5, 4, 2)).astype(np.float32)
    bend = cv2.resize(bend, (wide, high), interpolation=cv2.INTER_CUBIC)
    bend += np.dstack([dx + (turn + lean) * dy + wide / 2, dy - turn * dx + high / 2])
    page = cv2.remap(page, bend[..., 0], bend[..., 1], cv2.INTER_LINEAR)
    if hand.thin:
        reach = cv2.distanceTransform((page > 110).astype(np.uint8), cv2.DIST_L2, 5)
        ridge = (reach >= cv2.dilate(reach, np.ones((3, 3))) - 0.65) & (reach > 1)
        page = np.zeros_like(page)
        for y, x in zip(*np.nonzero(ridge), strict=True):
            radius = hand.thin * EM + hand.swell * reach[y, x]
            if hand.strike:
                radius *= 0.45 + 0.75 * ((x + 0.9 * y) / (EM * hand.strike) % 1.0)
            cv2.circle(page, (int(x) * 8, int(y) * 8), int(radius * 8), 255, -1, shift=3)
    page = ((cv2.GaussianBlur(page, (0, 0), 1.6) > 85) * 255).astype(np.uint8)
    x, y, wide, high = cv2.boundingRect(page)
    return page[y : y + high, x : x + wide] if wide else _carved(STAND_INS[0], hand, rng)


def _hand(rng: Rng) -> Hand:
    """A hand by chance: hairlines, swelling burin lines, chisel strokes, or whole brush strokes."""
    thin, face = rng.uniform(0.012, 0.024), FACES[rng.choice(5, p=(0.26, 0.24, 0.24, 0.1, 0.16))]
    kinds = ((thin, rng.uniform(0.05, 0.65), 0), (thin, 0.15, rng.uniform(0.09, 0.16)), (0, 0, 0))
    habits = rng.uniform((0.68, -0.01, 0.02), (0.92, 0.2, 0.08))
    return Hand(face, *kinds[rng.choice(3, p=(0.55, 0.2, 0.25))], *habits)


def _column(signs: tuple[str, ...], hand: Hand, rng: Rng) -> list[Placed]:
    """One column from 0 downwards, in em; a gap's ink is a stretch of signs that were there."""
    placed, y = list[Placed](), 0.0
    for sign in signs:
        parts = [_carved(sign, hand, rng) for _ in range(rng.integers(2, 6) if sign == GAP else 1)]
        wide = max(part.shape[1] for part in parts)
        ink = np.vstack([np.pad(p, ((0, 0), (0, wide - p.shape[1]))) for p in parts])
        body = max(len(ink) / EM, rng.uniform(0.36, 0.48))
        placed.append((sign, ink, y + (body - len(ink) / EM) / 2))
        y += body + max(-0.06, hand.tracking + rng.normal(0, 1.2 * hand.uneven))
    return [(sign, ink, top - placed[0][2]) for sign, ink, top in placed]


def _stamp(ink: Grid, sign: Grid, x: float, y: float, em: float, scale: float) -> Sides:
    """Puts one sign with its top middle at x, y (mm); returns where its ink lies."""
    high, wide = (max(2, round(side / EM * em * scale)) for side in sign.shape)
    left = min(max(0, round(x * scale - wide / 2)), max(0, ink.shape[1] - wide))
    top = min(max(0, round(y * scale)), max(0, len(ink) - high))
    place = ink[top : top + high, left : left + wide]
    patch = cv2.resize(sign, (wide, high), interpolation=cv2.INTER_AREA)
    np.maximum(place, patch[: place.shape[0], : place.shape[1]], out=place)
    return left / scale, top / scale, place.shape[1] / scale, place.shape[0] / scale


def _written(wanted: Wanted, hand: Hand, scale: float, rng: Rng) -> Writing:
    """The whole inscription at ``scale`` pixels per mm: ink 0 to 255, wear 0 to above 1, boxes."""
    shape = round(wanted.height * scale), round(wanted.width * scale)
    ink, truth = np.zeros(shape, np.uint8), []
    wear = 0.5 * np.clip(_clouds(rng, shape, 3 * scale) - 0.1, 0, 1)
    columns = [_column(signs, hand, rng) for signs in wanted.columns]
    spans = np.array([column[-1][2] + len(column[-1][1]) / EM for column in columns])
    widest = max(0.8, *(ink.shape[1] / EM for column in columns for _, ink, _ in column))
    most = 0.9 * wanted.width / len(columns) * rng.uniform(0.72, 0.98) / widest
    most = min(most, rng.uniform(5.5, 9.0)) * rng.uniform(0.88, 1.0, len(spans))
    if wanted.extents is not None:
        first, last = np.array(wanted.extents, float).T
    else:
        head = min(rng.uniform(2.0, 8.0), 0.2 * wanted.height)
        first = np.maximum(1.2, head + rng.normal(0, 0.4, len(spans)))
        first[-1] += rng.uniform(0, 0.15) * wanted.height * (rng.random() < 0.3)
        last = wanted.height - rng.uniform(1.2, 3.0, len(spans))
        last = np.minimum(last, first + most * spans * rng.uniform(1.0, 1.15, len(spans)))
    ems = np.minimum(most, (last - first) / spans)
    middle, bow = wanted.width * rng.normal(0.5, 0.02), rng.normal(0, 0.1)
    lean, pitch = rng.normal(0, 0.008), 0.9 * wanted.width / len(columns) * rng.uniform(0.9, 1.0)
    for c, (column, y0, y1, em) in enumerate(zip(columns, first, last, ems, strict=True)):
        own, boxes = lean + rng.normal(0, 0.003), list[Sides]()
        spare = y1 - y0 - em * (column[-1][2] + len(column[-1][1]) / EM)
        for i, (sign, cut, below) in enumerate(column):
            y = y0 + below * em + spare * i / max(1, len(column) - 1)
            x = middle + (len(columns) / 2 - 0.5 - c) * pitch + own * (y - wanted.height / 2)
            x += em * (bow * (2 * y / wanted.height - 1) ** 2 + rng.normal(0, 0.04))
            boxes.append(_stamp(ink, cut, float(x), float(y), float(em), scale))
            left, top, wide, high = (round(v * scale) for v in boxes[-1])
            if sign in (WORN, GAP):
                much = 1.35 if sign == GAP else rng.uniform(0.55, 0.9)
                wear[top : top + high, left : left + wide] += np.float32(much)
        truth.append(tuple(boxes))
    return ink, _soft(wear, 0.4 * scale), tuple(truth)


def _grain(rng: Rng, shape: tuple[int, ...], scale: float) -> Grid:
    """The worked surface in mm of height: polished, brushed, matted, or rows of small dots."""
    kind = rng.choice(4, p=(0.35, 0.3, 0.22, 0.13))
    noise = cv2.GaussianBlur(_fine(rng, shape), (0, 0), max(0.7, 0.04 * scale)) * 0.003
    if kind == 1:
        return noise * 0.3 + 0.02 * cv2.blur(_fine(rng, shape), (1, int(3 * scale) | 1))
    if kind == 2:
        return noise * 2 + 0.01 * _clouds(rng, shape, 0.4 * scale)
    if kind == 3:
        turn = np.float32(np.pi / (rng.uniform(0.45, 0.8) * scale))
        sway = _clouds(rng, shape, scale) * np.float32(0.1 * scale)
        ys, xs = (np.arange(side, dtype=np.float32) for side in shape)
        dots = np.cos((xs[None] + sway) * turn) * np.cos((ys[:, None] + sway) * turn)
        return noise + rng.uniform(0.01, 0.025) * np.sqrt(np.abs(dots))
    return noise * rng.uniform(0.3, 1.0)


def _relief(wanted: Wanted, writing: Writing, scale: float, rng: Rng) -> tuple[Grid, Grid, Grid]:
    """Height of the surface, depth of the cut lines (mm), and where the plate is (0 to 1)."""
    ink, wear, _ = writing
    radius, bevel = np.float32(rng.uniform(0, 0.9)), np.float32(rng.uniform(0.1, 0.5))
    ys, xs = (np.arange(side, dtype=np.float32) + 0.5 for side in ink.shape)
    x = np.minimum(xs / scale, wanted.width - xs / scale)[None]
    y = np.minimum(ys / scale, wanted.height - ys / scale)[:, None]
    rim = radius - np.hypot(np.maximum(radius - y, 0), np.maximum(radius - x, 0))
    rim = np.where((y < radius) & (x < radius), rim, np.minimum(y, x))
    scratches = np.zeros(ink.shape, np.uint8)
    for _ in range(rng.integers(6, 50)):
        t, long, way = np.linspace(0, 1, 12), rng.exponential(6) * scale, rng.normal(1.4, 0.6)
        x = rng.uniform(0, len(xs)) + long * (np.cos(way) * t + rng.normal(0, 0.05) * t * t)
        path = np.stack([x, rng.uniform(0, len(ys)) + long * np.sin(way) * t], 1).astype(np.int32)
        thick, shown = max(1, round(rng.uniform(0.01, 0.04) * scale)), int(rng.integers(40, 230))
        cv2.polylines(scratches, [path], False, shown, thick, cv2.LINE_AA)
    deep, steep = rng.uniform(0.05, 0.12), rng.uniform(0.7, 1.4)
    reach = cv2.distanceTransform((ink > 127).astype(np.uint8), cv2.DIST_L2, 3) / scale
    cut = np.maximum(np.minimum(reach * steep, deep) - wear * deep, 0)
    height = _grain(rng, cut.shape, scale) * (1 - 0.6 * np.clip(wear, 0, 1))
    height -= cv2.GaussianBlur(scratches, (0, 0), 0.7) * np.float32(6e-5)
    dents = np.clip(_clouds(rng, cut.shape, rng.uniform(0.8, 2) * scale) - 1.5, 0, 1)
    height -= 0.07 * dents + rng.uniform(0.3, 0.8) * np.maximum(bevel - rim, 0)
    height += 0.3 * np.maximum(_soft(cut, 0.06 * scale) - cut, 0)
    return height, cut, np.clip(rim * scale + 0.5, 0, 1)


def _shade(height: Grid, scale: float, light: Grid, rng: Rng) -> Grid:
    """Light thrown to the camera from each place: a low lamp, a paler one opposite, the room."""
    down: Grid = height * np.float32(-scale / 8)
    slopes: Grid = [cv2.Sobel(down, cv2.CV_32F, *way) for way in ((1, 0), (0, 1))]
    ys, xs = (np.linspace(-0.5, 0.5, side, dtype=np.float32) for side in height.shape)
    bow = rng.normal(0, 0.12, 2).astype(np.float32)
    sx, sy = slopes[0] + bow[0] * xs, slopes[1] + bow[1] * ys[:, None]
    low, sharp = rng.uniform(0.3, 0.55), rng.uniform(0.22, 0.4)
    shade = 0.35 + 0.4 * np.clip(1 + light[0] * sx + light[1] * sy, 0, 2)
    for strength, place in ((rng.uniform(1.2, 2.4), low), (rng.uniform(0.1, 0.5), -1.2 * low)):
        off = (sx - light[0] * place) ** 2 + (sy - light[1] * place) ** 2
        shade += np.float32(strength) * np.exp(off * np.float32(-1 / sharp**2))
    return shade / np.median(shade[::7, ::7])


def _metal(wanted: Wanted, writing: Writing, scale: float, light: Grid, rng: Rng) -> Grid:
    """The lit plate, flat: linear RGB and cover, float32."""
    height, cut, cover = _relief(wanted, writing, scale, rng)
    filled, metal = rng.random() < 0.2, int(rng.integers(len(SKINS)))
    shade = _shade(height - cut * (0.15 if filled else 1), scale, light, rng)
    clouds = _clouds(rng, cut.shape, rng.uniform(2, 9) * scale)
    fine = _clouds(rng, cut.shape, 0.25 * scale)
    bare = rng.uniform(-0.1, 0.25) * writing[1].clip(0, 1) + rng.uniform(0, 0.05) * clouds
    bare = (bare * (1 + clouds) + 0.04 * fine).clip(0, 1)
    shade *= np.exp(rng.uniform(0.05, 0.25) * clouds + 0.07 * fine)
    grooves, inlay = np.clip(cut * 25, 0, 1), np.zeros_like(cut)
    if filled:
        inlay = np.float32(grooves > 0.3)
        shade *= 1 - 0.6 * np.clip(1 - np.abs(grooves - 0.35) / 0.3, 0, 1)
    else:
        bare += (1 - bare) * grooves * (rng.uniform(0, 0.6) * (rng.random() < 0.5))
        shade *= 1 - grooves * np.clip(rng.uniform(0.1, 0.75) + 0.3 * fine, 0, 0.85)
    white = 0.035 * np.maximum(shade - 1, 0)
    if wanted.flaw == "glare":  # burns out a third or more of the writing's length
        boxes = np.array([box for column in writing[2] for box in column])
        top, foot = boxes[:, 1].min(), (boxes[:, 1] + boxes[:, 3]).max()
        half = (foot - top) * rng.uniform(0.17, 0.28)
        ys = np.arange(len(cut)) / scale - rng.uniform(top + half, foot - half)
        edge = np.abs(ys / half)[:, None] + 0.12 * _clouds(rng, cut.shape, 4 * scale)
        white += 6 * np.exp(-10 * np.maximum(edge.astype(np.float32) - 0.85, 0))
    shade, inlay = shade * (1 - inlay), shade * inlay
    parts = cv2.merge((shade * (1 - bare), shade * bare, inlay, white))
    names = ((SKINS[metal],), (BARES[metal],), INLAYS, ("#ffffff",))
    lit = cv2.transform(parts, np.column_stack([_colour(rng, name) for name in names]))
    return np.dstack([lit, cover])


def _camera(wanted: Wanted, rng: Rng) -> Camera:
    """A camera over the plate, and how much of the ground it takes in."""
    plate, way = np.array((wanted.width, wanted.height)), rng.uniform(0, 2 * np.pi)
    tilt = cv2.Rodrigues(np.radians(wanted.tilt) * np.array((np.cos(way), np.sin(way), 0)))[0]
    turn = (tilt @ cv2.Rodrigues(np.radians((0, 0, rng.uniform(-4, 4))))[0])[:, :2]
    far = rng.uniform(2.2, 5) * plate.max()
    lens = np.diag((wanted.pixels_per_mm * far, wanted.pixels_per_mm * far, 1.0))
    matrix = lens @ np.column_stack([turn, (0, 0, far) - turn @ plate / 2])
    bow = rng.choice((-1, 1)) * rng.uniform(0.045, 0.07) * plate[1] * (wanted.flaw == "bent")
    outline = np.array([(0, 0), (1, 0), (1, 1), (0, 1), (0, 0.5), (1, 0.5)]) * plate
    seen = _to_picture(Camera(bow, plate, matrix, np.ones(2), 0.0), outline)
    start, span = seen.min(0), np.ptp(seen, axis=0)
    near, beyond = rng.uniform(0.04, 0.22, (2, 2)) * span
    if wanted.flaw == "cropped":
        side = int(rng.random() < 0.75)
        (near, beyond)[rng.integers(2)][side] = -rng.uniform(0.15, 0.35) * span[side]
    shift = np.array(((1, 0, near[0] - start[0]), (0, 1, near[1] - start[1]), (0, 0, 1)))
    size = np.round(near + span + beyond).astype(int)
    return Camera(bow, plate, shift @ matrix, size, wanted.barrel)


def _to_picture(camera: Camera, points: Grid) -> Grid:
    """Where points of the plate (n, 2) in mm lie in the picture, in pixels."""
    bowed = camera.bow * (1 - (2 * points[:, 1:] / camera.plate[1] - 1) ** 2) * (1, 0)
    seen = cv2.perspectiveTransform((points + bowed)[None], camera.matrix)[0]
    off = seen - camera.size / 2
    return seen - off * camera.barrel * (off**2).sum(1, keepdims=True) / (camera.size**2 / 4).sum()


def _to_plate(camera: Camera) -> Grid:
    """Where on the plate (mm) each pixel looks: (rows, columns, 2), by steps of 16 pixels."""
    nodes = [16 * np.arange(-1, side // 16 + 2) + 8.0 for side in camera.size]
    bent = off = np.stack(np.meshgrid(*nodes), -1) - camera.size / 2
    for _ in range(8):
        share = (off**2).sum(-1, keepdims=True) / (camera.size**2 / 4).sum()
        off = bent / (1 - camera.barrel * share)
    flat = cv2.perspectiveTransform(off + camera.size / 2, np.linalg.inv(camera.matrix))
    flat[..., 0] -= camera.bow * (1 - (2 * flat[..., 1] / camera.plate[1] - 1) ** 2)
    full = cv2.resize(flat.astype(np.float32), None, fx=16, fy=16)
    return full[16 : 16 + camera.size[1], 16 : 16 + camera.size[0]]


def _ground(places: Grid, wanted: Wanted, light: Grid, rng: Rng) -> Grid:
    """Cloth, paper, wood or a board, with the plate's shadow on it: linear RGB, float32."""
    shape, ppm, kind = places.shape[:2], wanted.pixels_per_mm / 2, rng.integers(4)
    rough = 0.1 * _clouds(rng, shape, 9 * ppm) + 0.04 * _fine(rng, shape)
    if kind == 0:
        thread = np.float32(2 * np.pi / rng.uniform(0.5, 1.0))
        weave = np.sin(places * thread + 0.5 * _clouds(rng, shape, ppm)[..., None])
        rough += 0.16 * weave[..., 0] * weave[..., 1]
    elif kind == 1:
        rough += 0.3 * cv2.resize(_clouds(rng, (shape[0] // 40 + 2, shape[1]), ppm), shape[::-1])
    half = np.array((wanted.width, wanted.height), np.float32) / 2
    thick = np.float32(rng.uniform(0.6, 2.0))
    off = np.maximum(np.abs(places - half + light * thick * np.float32(0.8)) - half, 0) / thick
    rough += np.log(1 - np.float32(rng.uniform(0.5, 0.85)) * np.exp(-(off**2).sum(-1)))
    return np.exp(rough)[..., None] * _colour(rng, GROUNDS).astype(np.float32)


def _developed(wanted: Wanted, linear: Grid, writing: Writing, rng: Rng) -> Grid:
    """What the camera makes of the light: uneven light, lens, noise, tone and JPEG."""
    shape, ppm = linear.shape[:2], wanted.pixels_per_mm
    ys, xs = (np.linspace(-1, 1, side, dtype=np.float32) for side in shape)
    uneven = (1 + rng.normal(0, 0.12) * xs - rng.uniform(0, 0.12) * xs**2).clip(0.6, 1.4)[None]
    uneven = uneven * (1 + rng.normal(0, 0.15) * ys).clip(0.6, 1.4)[:, None]
    linear *= cv2.merge([uneven * float(tint) for tint in np.exp(rng.normal(0, 0.04, 3))])
    sign = float(np.median([box[3] for column in writing[2] for box in column])) * ppm
    sigma = rng.uniform(0.14, 0.3) * sign if wanted.flaw == "blur" else 0.4 + 0.008 * ppm
    x = np.linspace(0, 8, 65536, dtype=np.float32)
    curve = 255 * np.where(x < 0.6, x, 0.6 + 0.4 * np.tanh((x - 0.6) / 0.4)) ** (1 / 2.2)
    tone = curve[(_soft(linear, sigma) * 8191).clip(0, 65535).astype(np.uint16)]
    tone += np.float32(rng.uniform(1.0, 3.5)) * _fine(rng, shape, 3)
    pixels = tone.clip(0, 255).astype(np.uint8)[..., ::-1]
    packed = cv2.imencode(".jpg", pixels, [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(80, 96))])[1]
    return cv2.imdecode(packed, cv2.IMREAD_COLOR_RGB)


def photograph(wanted: Wanted, seed: int) -> Taken:
    """Engraves what is wanted on a plate and photographs it; the same for the same seed."""
    rng = np.random.default_rng((seed, 11))
    scale = max(wanted.pixels_per_mm, 20.0)
    writing = _written(wanted, _hand(rng), scale, rng)
    way = rng.normal(-2.2, 0.7)
    light = np.array((np.cos(way), np.sin(way)), np.float32)
    plate = _metal(wanted, writing, scale, light, rng)
    if scale > wanted.pixels_per_mm:
        plate = cv2.GaussianBlur(plate, (0, 0), 0.45 * scale / wanted.pixels_per_mm)
    camera = _camera(wanted, rng)
    places = _to_plate(camera)
    image: Grid = cv2.resize(_ground(places[::2, ::2], wanted, light, rng), places.shape[1::-1])
    spots = places * np.float32(scale) - np.float32(0.5)
    metal: Grid = cv2.remap(plate, spots[..., 0], spots[..., 1], cv2.INTER_LINEAR)
    image += (metal[..., :3] - image) * metal[..., 3:]
    image = _developed(wanted, image, writing, rng)
    ends = _to_picture(camera, np.array([(0, 0), (1, 0), (1, 1), (0, 1)]) * camera.plate)
    return Taken(image, tuple((float(x), float(y)) for x, y in ends), writing[2])


if __name__ == "__main__":
    POEM = (tuple("春立つと〱□花の雪"), ("秋", "の", "夜", GAP, "一", "月"))
    for number, flaw in enumerate(("", "", "", "", *get_args(Flaw)[1:])):
        taken = photograph(Wanted(POEM, 14.5, 96.0, 20.0, 6.0, 0.02, None, flaw), number)
        Image.fromarray(taken.image).save(f"/tmp/look_b_{number}.png")
