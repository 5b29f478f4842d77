"""A sixth look: a plate as a relief in mm, lit by lamps that are placed about it.

Its author did not read the program. Heights: cuts (V, slanted, worn), ground (polish, ishime,
files, nanako, pits), scratches, rim. Light: a raking lamp with shadows, a broad box, or two lamps.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from typing import Any

import cv2
import numpy as np
from PIL import ImageFont

from looks.contract import GAP, REPEATED, WORN, Sides, Taken, Wanted

Array = Any
Rng = np.random.Generator
RUNNING = "aoyagi-kouzan-t/AoyagiKouzanT", "kouzan-mouhitsu/kouzan-mouhitsu-gyosho"
BRUSHES = (*RUNNING, "aoyagi-soseki/aoyagi-soseki", "kouzan-mouhitsu/kouzan-mouhitsu")
PRINTED = ("dejima-mincho/dejima-mincho-r227", "ipamj/ipamjm")
EM = 144  # pixels of a sign before it is cut
SHOWN = "花月作山春"  # stands where a sign is worn
KANA = frozenset(map(chr, range(0x3041, 0x30FF)))
LENGTHS = {"一": 0.3, "二": 0.6, REPEATED: 2.0}  # in em; others by their script
METALS = (  # colour, what lies in its cuts, how it shines (all linear, 0 to 1), how it is finished
    ((0.33, 0.33, 0.30), (0.10, 0.09, 0.08), 0.40, ("polish", "ishime", "files")),  # shibuichi
    ((0.50, 0.27, 0.17), (0.13, 0.08, 0.06), 0.40, ("polish", "files", "nanako")),  # copper
    ((0.17, 0.14, 0.13), (0.30, 0.20, 0.13), 0.15, ("pits", "ishime", "files")),  # iron
    ((0.80, 0.58, 0.24), (0.30, 0.17, 0.09), 0.60, ("polish", "nanako", "files")),  # gilt
    ((0.13, 0.13, 0.14), (0.04, 0.04, 0.03), 0.45, ("polish", "nanako")),  # shakudo
)
CLOTHS = (0.5, 0.5, 0.5), (0.04, 0.04, 0.05), (0.35, 0.28, 0.2), (0.07, 0.1, 0.2)  # linear


def _to_ink(ink: Array) -> tuple[slice, slice]:
    """Return where there is ink."""
    x, y, wide, high = cv2.boundingRect((ink > 0.4).astype(np.uint8))
    return slice(y, y + high), slice(x, x + wide)


@cache
def _sign(face: str, sign: str) -> Array:
    """Return a sign's ink, 0 to 1, cropped; from another typeface where this one has none."""
    for name in (face, *PRINTED):
        font = ImageFont.truetype(f"/usr/share/fonts/truetype/{name}.ttf", EM)
        masks = [font.getmask(one) for one in (sign, "\U000f1234")]
        ink, none = (np.array(m, np.float32).reshape(m.size[::-1]) / 255 for m in masks)
        if ink.size and ink.max() > 0.5 and not np.array_equal(ink, none):
            break
    return np.pad(ink[_to_ink(ink)], 3)


def _shaped(face: str, sign: str, size: float, rng: Rng) -> Array:
    """Return a sign's ink as this hand cuts it once: turned, slanted, ``size`` pixels an em."""
    shown = {WORN: str(rng.choice(list(SHOWN))), REPEATED: "く"}.get(sign, sign)
    ink, scale = _sign(face, shown), size / EM
    high, wide = ink.shape
    turn, slant, stretch = rng.normal(0, 0.03), rng.normal(-0.02, 0.04), rng.normal(1, 0.05, 2)
    turned = np.array([[np.cos(turn), slant - np.sin(turn)], [np.sin(turn), np.cos(turn)]])
    turned = turned @ np.diag(scale * stretch)
    room = np.array([wide * scale * 1.3 + high * scale * 0.15, high * scale * 1.3 + 8])
    way = np.column_stack([turned, room / 2 - turned @ (wide / 2, high / 2)])
    ink = cv2.GaussianBlur(ink, (0, 0), 0.35 / min(scale, 1))
    drawn = cv2.warpAffine(ink, way, tuple(int(side) for side in room))
    drawn = np.clip(1.6 * drawn, 0, 1)  # the hairs of a brush get a chisel's width
    return drawn[_to_ink(drawn)]


def _column(signs: Any, ends: Any, em: float, space: float, fills: bool, rng: Rng) -> Array:
    """Return each sign's first y and height in mm; too many are crowded, few may fill the room."""
    length = np.array([LENGTHS.get(s, 0.72 if s in KANA else 0.92) for s in signs])
    length[[s == GAP for s in signs]] = rng.uniform(2, 6)
    length *= em * np.exp(rng.normal(0, 0.11, len(signs)))
    spaces = np.maximum(space + em * rng.normal(0, 0.08, len(signs)), -0.05 * em)
    spaces[0] = 0
    room = ends[1] - ends[0] - (length + spaces).sum()
    if room > 0:
        spaces[1:] += fills * room / max(len(signs) - 1, 1)
    else:
        crowd = np.linspace(1, rng.uniform(0.75, 1), len(signs))
        crowd *= (ends[1] - ends[0]) / ((length + spaces) * crowd).sum()
        length, spaces = length * crowd, spaces * crowd
    return np.column_stack([ends[0] + np.cumsum(spaces + length) - length, length])


def _cut(wanted: Wanted, fine: float, rng: Rng) -> tuple[Array, Array, tuple[Any, ...]]:
    """Return ink and what is rubbed away, 0 to 1, ``fine`` pixels a mm; the box of each sign."""
    size = round(wanted.height * fine), round(wanted.width * fine)
    ink, rubbed, boxes = np.zeros(size, np.float32), np.zeros(size, np.float32), []
    face, step = str(rng.choice(BRUSHES + PRINTED[:1])), (wanted.width - 1.4) / len(wanted.columns)
    em, start, foot = min(step * rng.uniform(0.72, 1.0), 5.5), rng.uniform(2, 7), rng.uniform(2, 7)
    bare = (wanted.height - start - foot) * rng.uniform(0.6, 1) / max(map(len, wanted.columns))
    space, fills = np.clip(bare - 0.8 * em, 0.06 * em, 0.7 * em), wanted.extents is not None
    joins = 0.5 if face in BRUSHES and rng.random() < 0.5 else 0
    for number, signs in enumerate(wanted.columns):
        middle = wanted.width - 0.7 - step * (number + 0.5) + rng.normal(0, 0.04) * step
        free = start + rng.uniform(0, 0.8), wanted.height - foot - rng.uniform(0, 0.8)
        ends, own = wanted.extents[number] if wanted.extents else free, list[Sides]()
        placed = _column(signs, ends, em, float(space), fills, rng)
        for sign, (y, high) in zip(signs, placed, strict=True):
            if sign == GAP:
                own.append((middle - em / 2, y, em, high))
            else:
                drawn = _shaped(face, sign, em * fine, rng)
                wide = drawn.shape[1] * np.clip(high * fine / len(drawn), 0.7, 1.1)
                wide = max(round(min(wide, (step + 0.3) * fine)), 2)
                drawn = cv2.resize(drawn, (wide, max(round(high * fine), 2)))
                x = middle + rng.normal(0, 0.05) * em - wide / fine / 2
                x = float(np.clip(x, 0.35, wanted.width - 0.35 - wide / fine))
                left, top = round(x * fine), round(y * fine)
                part = ink[top : top + len(drawn), left : left + wide]
                drawn = drawn[: len(part)]
                x, y, w, h = cv2.boundingRect((drawn > 0.4).astype(np.uint8))
                own.append(((left + x) / fine, (top + y) / fine, w / fine, h / fine))
                np.maximum(part, drawn * (0.5 if sign == WORN else 1), out=part)
            if sign in (GAP, WORN):
                spot = np.array(own[-1]) * fine
                centre, whole = spot[:2] + spot[2:] / 2, spot[2:] * 1.1 + 2
                cv2.ellipse(rubbed, (centre.tolist(), whole.tolist(), 0), 1.0, -1)
        for pair, one, two in zip(pairwise(signs), own, own[1:], strict=False):
            is_near = two[1] - one[1] - one[3] < 0.35 * em
            if is_near and KANA.issuperset(pair) and rng.random() < joins:
                _join(ink, np.array(one) * fine, np.array(two) * fine, max(round(0.1 * fine), 1))
        boxes.append(tuple(own))
    return ink, cv2.GaussianBlur(rubbed, (0, 0), 0.35 * fine), tuple(boxes)


def _join(ink: Array, one: Array, two: Array, width: int) -> None:
    """Draw the thin stroke by which a running hand goes from one kana to the next."""
    spots = []
    for (x, y, wide, high), place in ((one, -1), (two, 0)):
        inked = np.argwhere(ink[round(y) : round(y + high), round(x) : round(x + wide)] > 0.4)
        spots.append((round(x) + int(inked[place][1]), round(y) + int(inked[place][0])))
    cv2.line(ink, spots[0], spots[1], 0.8, width, cv2.LINE_AA)


def _noise(shape: tuple[int, ...], size: float, rng: Rng) -> Array:
    """Return smooth noise of mean 0 and deviation 1 with blots ``size`` pixels wide."""
    small = rng.normal(0, 1, [round(side / max(size, 1)) + 3 for side in shape[:2]])
    drawn = cv2.resize(small.astype(np.float32), shape[1::-1], interpolation=cv2.INTER_CUBIC)
    return (drawn - drawn.mean()) / drawn.std()


def _depth(ink: Array, fine: float, rng: Rng) -> Array:
    """Return how deep the cuts are in mm."""
    profile = str(rng.choice(["V", "V", "slanted", "worn"]))
    inside, deepest = (ink > 0.45).astype(np.float32), rng.uniform(0.10, 0.20)
    wall = cv2.distanceTransform(inside.astype(np.uint8), cv2.DIST_L2, 5) / fine
    cut = np.minimum(0.05 * ink + wall * rng.uniform(0.9, 1.5), deepest)
    if profile == "slanted":  # one side falls gently from its edge, the other is a wall
        way, run, still = rng.uniform(0, 2 * np.pi), np.zeros_like(ink), inside
        for far in range(1, int(0.45 * fine)):
            move = np.array([[1, 0, far * np.cos(way)], [0, 1, far * np.sin(way)]])
            still = still * cv2.warpAffine(inside, move, ink.shape[::-1])
            run += still / fine
        cut = np.minimum(0.4 * cut + 0.55 * run, deepest)
    soft = 0.05 if profile == "worn" else 0.013
    cut = cv2.GaussianBlur(cut * np.clip(ink * 1.6, 0.2, 1), (0, 0), max(soft * fine, 0.4))
    wear = np.clip(0.75 + 0.2 * _noise(ink.shape, 5 * fine, rng), 0.35, 1)
    return cut * wear if profile == "worn" else cut


def _ground(kind: str, shape: tuple[int, ...], fine: float, rng: Rng) -> Array:
    """Return the heights of the plate without its cuts in mm."""
    y, x = np.mgrid[: shape[0], : shape[1]].astype(np.float32) / fine
    height = 0.03 * _noise(shape, 9 * fine, rng) + 0.0007 * _noise(shape, 0.12 * fine, rng)
    if kind == "ishime":
        height += rng.uniform(0.004, 0.009) * _noise(shape, rng.uniform(0.2, 0.4) * fine, rng)
    elif kind == "pits":
        pits = np.clip(_noise(shape, rng.uniform(0.15, 0.35) * fine, rng) - 1.5, 0, 1.5)
        pits *= np.clip(0.5 + 0.6 * _noise(shape, 5 * fine, rng), 0, 1)
        height += 0.005 * _noise(shape, 0.3 * fine, rng) - rng.uniform(0.02, 0.06) * pits
    elif kind == "nanako":
        bead = rng.uniform(0.32, 0.5)
        row = y / bead / 0.87
        off = np.hypot((x / bead + row // 1 % 2 / 2) % 1 - 0.5, row % 1 - 0.5)
        height += rng.uniform(0.015, 0.03) * np.sqrt(np.clip(1 - 4 * off**2, 0, 1))
    elif kind == "files":
        way = rng.choice([0.0, 0.5, 1.57, 2.6]) + rng.normal(0, 0.05)
        along = x * np.cos(way) + y * np.sin(way) + 0.03 * _noise(shape, 4 * fine, rng)
        waves = np.sin(along * rng.uniform(13, 28)) * (1 + 0.4 * _noise(shape, fine, rng))
        height += rng.uniform(0.004, 0.008) * waves
    lines, end = np.zeros_like(height), np.array(shape[::-1])
    for _ in range(rng.integers(8, 60)):
        one = rng.uniform(0, end)
        two = (one + rng.normal(0, 4 * fine, 2)).astype(int).tolist()
        cv2.line(lines, one.astype(int).tolist(), two, rng.uniform(0.1, 1), 1 + int(fine / 30))
    height -= rng.uniform(0.004, 0.015) * cv2.GaussianBlur(lines, (0, 0), 0.02 * fine + 0.3)
    rim = np.minimum.reduce([x, y, x.max() - x, y.max() - y])
    return height - 0.3 * np.clip(1 - rim / rng.uniform(0.2, 0.5), 0, 1) ** 2


def _lamps(rng: Rng) -> tuple[float, list[tuple[Array, Array, float]]]:
    """Return the light from all around, and of each lamp its place, colour and breadth."""
    kind, side = str(rng.choice(["rake", "box", "two"])), rng.normal(-2.3, 0.9)  # upper left
    low, high, around = {"rake": (12, 28, 0.22), "box": (40, 65, 0.5), "two": (18, 45, 0.25)}[kind]
    lamps = []
    for turn in (0.0, rng.uniform(1.8, 3.6))[: 1 + (kind == "two")]:
        up, warm = np.radians(rng.uniform(low, high)), rng.normal(0, 0.05)
        flat = np.array([np.cos(side + turn), np.sin(side + turn)]) * np.cos(up)
        tint = (rng.uniform(0.4, 0.8) if turn else 1.0) * np.array([1 + warm, 1, 1 - warm])
        broad = rng.uniform(0.25, 0.45) if kind == "box" else rng.uniform(0.06, 0.16)
        lamps.append((np.array([*flat, np.sin(up)]), tint, broad))
    return around * rng.uniform(0.8, 1.3), lamps


def _lit(height: Array, colour: Array, shine: Array, fine: float, rng: Rng) -> Array:
    """Return the relief's colours under its lamps, linear."""
    slope_y, slope_x = np.gradient(height * fine)
    normal = np.dstack([-slope_x, -slope_y, np.ones_like(height)]).astype(np.float32)
    normal /= np.linalg.norm(normal, axis=2, keepdims=True)
    around, lamps = _lamps(rng)
    bare = 1 - np.clip((cv2.GaussianBlur(height, (0, 0), 0.3 * fine) - height) * 5, 0, 0.6)
    light, gloss = (around * bare)[..., None] * np.ones(3), np.zeros_like(colour)
    y, x = np.mgrid[-1 : 1 : height.shape[0] * 1j, -1 : 1 : height.shape[1] * 1j]
    for place, tint, broad in lamps:
        lit = np.clip(normal @ place, 0, None) / place[2]  # as metered on the flat
        half = place + np.array([0, 0, 1])
        half /= np.linalg.norm(half)
        sheen = np.exp(-(1 - np.clip(normal @ half, 0, 1)) / broad**2)
        for far in np.linspace(0.05, 0.5, 6):  # what stands higher towards the lamp
            move = np.array([[1, 0, -place[0] * far * fine], [0, 1, -place[1] * far * fine]])
            seen = cv2.warpAffine(height, move, height.shape[::-1], borderMode=cv2.BORDER_REPLICATE)
            lit *= 1 - 0.8 * np.clip((seen - height - far * place[2]) / 0.02, 0, 1)
        near = 1 + rng.uniform(0.1, 0.3) * (x * place[0] + y * place[1])
        light += np.multiply.outer(np.minimum(lit, 2.2) * near, tint)
        gloss += np.multiply.outer(sheen * near**2, tint)
    return colour * light * (1 - 0.5 * shine) + shine * gloss * (0.4 + colour)


def _plate(ink: Array, rubbed: Array, fine: float, rng: Rng) -> Array:
    """Return the plate's colours, linear, exposed for the camera."""
    metal, dirt, gloss, grounds = METALS[rng.integers(len(METALS))]
    depth = _depth(ink, fine, rng) * (1 - 0.9 * rubbed)
    height = _ground(str(rng.choice(grounds)), ink.shape, fine, rng) * (1 - 0.8 * rubbed) - depth
    height += 0.006 * rubbed * _noise(ink.shape, 0.3 * fine, rng)
    age = 0.6 * _noise(ink.shape, 7 * fine, rng) + 0.3 * _noise(ink.shape, 0.8 * fine, rng)
    spots = _noise(ink.shape, rng.uniform(0.3, 1.5) * fine, rng) - rng.uniform(2, 3)
    spots, age = np.clip(spots, 0, 1), np.clip(age, -1.5, 1.5)
    filled = np.clip(depth / 0.08, 0, 1) * rng.uniform(0.2, 0.9) * np.clip(0.8 + 0.3 * age, 0, 1)
    colour = np.array(metal, np.float32) * (1 + rng.uniform(0.02, 0.11) * age)[..., None]
    for share in (filled, 0.7 * spots):
        colour += share[..., None] * (np.array(dirt, np.float32) - colour)
    shine = np.clip(gloss * rng.uniform(0.5, 1.2) * (1 - 0.8 * filled) * (1 - spots), 0, 0.8)
    plate = _lit(height.astype("f4"), colour, shine[..., None], fine, rng).astype("f4")
    return plate * rng.uniform(0.3, 0.6) * float(np.mean(metal) ** 0.6 / np.median(plate))


def photograph(wanted: Wanted, seed: int) -> Taken:
    """Return an engraved plate as photographed; the same for the same seed."""
    rng, density = np.random.default_rng([seed, 6]), wanted.pixels_per_mm
    fine, flat = float(np.clip(density, 16, 36)), np.array([wanted.width, wanted.height])
    ink, rubbed, boxes = _cut(wanted, fine, rng)
    face = cv2.GaussianBlur(_plate(ink, rubbed, fine, rng), (0, 0), max(0.4 * fine / density, 0.2))
    size = ((flat + 2 * rng.uniform(3, 8)) * density).astype(int)
    axis, far, middle = rng.uniform(0, 2 * np.pi), wanted.height * rng.uniform(2.5, 6), size / 2
    lean = np.array([np.cos(axis), np.sin(axis), 0]) * np.radians(wanted.tilt)
    turn = cv2.Rodrigues(lean)[0] @ cv2.Rodrigues(np.array([0, 0, rng.normal(0, 0.015)]))[0]
    way = np.column_stack([turn[:, :2], turn @ (*-flat / 2, 0) + (0, 0, far)])
    way = np.diag([far * density, far * density, 1]) @ way  # mm to pixels from the middle
    sides = [np.arange(0.5, side, dtype=np.float32) - side / 2 for side in size.tolist()]
    straight = seen = np.stack(np.meshgrid(*sides), -1)
    bend = float(wanted.barrel / (middle**2).sum())
    for _ in range(5):
        straight = seen / (1 - bend * (straight**2).sum(-1, keepdims=True))
    mm = cv2.perspectiveTransform(straight, np.linalg.inv(way))
    if wanted.flaw == "bent":
        mm[..., 0] += 0.06 * wanted.height * np.sin(np.pi * mm[..., 1] / wanted.height)
    x, y = cv2.split(mm * fine - 0.5)
    image = cv2.remap(face, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    outside = np.maximum(*cv2.split(np.abs(mm - flat.astype("f4") / 2) - flat.astype("f4") / 2))
    on = np.clip(0.5 - outside * density, 0, 1)[..., None]
    weave = 1 + rng.uniform(0, 0.12) * np.sin(mm * 9).prod(-1) + 0.05 * _noise(seen.shape, 2, rng)
    weave *= 1 - 0.5 * np.exp(-np.clip(outside, 0, None) / rng.uniform(0.4, 2))  # its shadow
    image = image * on + np.array(CLOTHS[rng.integers(4)], "f4") * weave[..., None] * (1 - on)
    rim = cv2.perspectiveTransform(np.array([[[0, 0], [1, 0], [1, 1], [0, 1]]]) * flat, way)[0]
    corners = middle + rim * (1 - bend * (rim**2).sum(-1, keepdims=True))
    kept = _stored(image.astype(np.float32), wanted, rng)
    return Taken(kept, tuple((float(x), float(y)) for x, y in corners), boxes)


def _stored(image: Array, wanted: Wanted, rng: Rng) -> Array:
    """Return the picture as a camera keeps it: its flaw, focus, tone, noise and compression."""
    high, wide = image.shape[:2]
    if wanted.flaw == "glare":
        y, x = np.mgrid[:high, :wide] / np.reshape([high, wide], (2, 1, 1)) - rng.uniform(0.3, 0.7)
        image = image + 3 * np.exp(-((6 * y) ** 2) - (2 * x) ** 2)[..., None].astype(np.float32)
    focus = 0.7 * wanted.pixels_per_mm if wanted.flaw == "blur" else rng.uniform(0.3, 0.9)
    image = cv2.GaussianBlur(image, (0, 0), focus)
    image = np.clip(1.25 * image / (1 + 0.25 * image), 0.002, 1)
    image += rng.uniform(0.004, 0.02) * np.sqrt(image) * rng.standard_normal(image.shape, "f4")
    image = (255 * np.clip(image, 0, 1) ** (1 / 2.2)).astype(np.uint8)
    quality = [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(75, 96))]
    image = cv2.imdecode(cv2.imencode(".jpg", image[..., ::-1], quality)[1], cv2.IMREAD_COLOR)
    kept = rng.uniform(0.6, 0.8) if wanted.flaw == "cropped" else 1
    return np.ascontiguousarray(image[: int(high * kept), :, ::-1])
