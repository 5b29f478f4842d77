"""Plates drawn with lines and no typeface, as small photographs whose truth is known."""

from __future__ import annotations

from typing import Any, NamedTuple

import cv2
import numpy as np

FINE = 24  # pixels per mm at which the plate itself is drawn
TEXT = "夢見花\n山川月日"
WIDTH, HEIGHT = 14.0, 40.0


class Drawn(NamedTuple):
    """A photograph of a plate, its corners in pixels, and its signs' boxes in mm."""

    pixels: Any
    corners: tuple[tuple[float, float], ...]
    boxes: list[tuple[float, float, float, float]]


def boxes(text: str = TEXT, *, size: float = 4.2, top: float = 4.0) -> list[Any]:
    """Return a box for each sign, columns from right to left."""
    columns = text.split("\n")
    found = []
    for number, column in enumerate(columns):
        middle = WIDTH * (1 - (number + 0.5) / len(columns))
        for place in range(len(column)):
            found.append((middle - size / 2, top + place * size * 1.3, size, size))
    return found


def _plate(signs: list[Any], rng: np.random.Generator, grain: float) -> Any:
    shape = (round(HEIGHT * FINE), round(WIDTH * FINE))
    depth = np.zeros(shape, np.float32)
    for x, y, width, height in signs:
        left, right, top, bottom = (
            round(v * FINE) for v in (x + 0.15, x + width - 0.15, y + 0.15, y + height - 0.15)
        )
        middle, level = (left + right) // 2, (top + bottom) // 2
        lines = [((left, top), (right, bottom)), ((left, bottom), (right, top))]
        lines += [((left, level), (right, level)), ((middle, top), (middle, bottom))]
        lines = [
            line for line, is_drawn in zip(lines, rng.random(4) < 0.6, strict=True) if is_drawn
        ]
        for _ in range(2):
            ends = rng.uniform((left, top), (right, bottom), (2, 2)).astype(int)
            lines.append((tuple(map(int, ends[0])), tuple(map(int, ends[1]))))
        for height in (top, bottom):
            cv2.line(depth, (left, height), (right, height), 1.0, 7)
        for start, end in lines:
            cv2.line(depth, start, end, 1.0, 7)
    depth = cv2.GaussianBlur(depth, (0, 0), 2)
    slope = cv2.Sobel(depth, cv2.CV_32F, 1, 1, ksize=3) + cv2.Sobel(depth, cv2.CV_32F, 1, 0)
    metal = 110 + 90 * slope - 30 * depth + rng.normal(0, 1.5, shape)
    if grain:
        bumps = cv2.GaussianBlur(rng.normal(0, 1, shape).astype(np.float32), (0, 0), 2.5)
        metal += grain * bumps / bumps.std() * (bumps > 1.2 * bumps.std())
    return np.clip(metal, 0, 255).astype(np.float32)


def photographed(
    text: str = TEXT,
    *,
    scale: float = 14.0,
    askew: float = 0.0,
    bow: float = 0.0,
    blur: float = 0.0,
    glare: float = 0.0,
    top: float = 4.0,
    grain: float = 0.0,
) -> Drawn:
    """Return a photograph of a plate.

    ``askew`` draws the top's ends together, by this share; ``bow`` bends the plate, by this share
    of its height; ``blur`` is in mm; ``glare`` is the share of the plate that is burnt out;
    ``grain`` is how much brighter (of 255) bumps of the metal are.
    """
    rng = np.random.default_rng(5)
    signs = boxes(text, top=top)
    plate = _plate(signs, rng, grain)
    if glare:
        plate[: round(glare * len(plate))] = 400
    margin = 4.0 * scale
    width, height = WIDTH * scale, HEIGHT * scale
    inset = askew * width
    corners = np.array(
        [[inset, 0], [width - inset, 0], [width, height], [0, height]], np.float32
    ) + np.float32(margin)
    size = (round(width + 2 * margin), round(height + 2 * margin))
    source = np.array(
        [[0, 0], [plate.shape[1], 0], [plate.shape[1], plate.shape[0]], [0, plate.shape[0]]],
        np.float32,
    )
    way = cv2.getPerspectiveTransform(source, corners)
    ground = np.full((size[1], size[0]), 225, np.float32) + rng.normal(0, 2, size[::-1])
    mask = cv2.warpPerspective(np.ones_like(plate), way, size, flags=cv2.INTER_AREA)
    seen = cv2.warpPerspective(plate, way, size, flags=cv2.INTER_AREA)
    image = (seen + (1 - mask) * ground).astype(np.float32)
    if bow:
        rows = np.arange(size[1], dtype=np.float32)[:, None]
        along = (rows - margin) / height
        columns = np.arange(size[0], dtype=np.float32)[None]
        shifted = columns + (4 * along * (1 - along) - 0.5) * bow * height
        rows = np.repeat(rows, size[0], 1)
        image = cv2.remap(
            image,
            shifted.astype(np.float32),
            rows,
            cv2.INTER_LINEAR,
            borderMode=cv2.BORDER_REPLICATE,
        )
    image = cv2.GaussianBlur(image, (0, 0), 0.5 + blur * scale)
    pixels = np.repeat(np.clip(image, 0, 255).astype(np.uint8)[..., None], 3, 2)
    return Drawn(pixels, tuple((float(x), float(y)) for x, y in corners), signs)
