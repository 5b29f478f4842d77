"""How large a sign is in its square, and where its strokes are: the table ``sign_shapes``.

Needed: the PyPI package kanjivg, and the tables of forms.
"""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

from sources import KANJIVG, table

SQUARE = 109.0  # units of KanjiVG's square
PEN = 4.0  # units: the width of a written stroke
ROWS, COLUMNS = 8, 4
PIECES = 24  # straight pieces of a curve
SVG = "{http://www.w3.org/2000/svg}"
TOKEN = re.compile(r"[MmCcSsLlHhVvZz]|-?\d*\.?\d+(?:e-?\d+)?")
Point = complex


def points(path: str) -> Iterator[Point]:
    """Yield points along a path of an SVG drawing, close together."""
    tokens = TOKEN.findall(path)
    at = last = 0j
    command, index = "M", 0
    while index < len(tokens):
        if tokens[index].isalpha():
            command, index = tokens[index], index + 1
            if command in "Zz":
                continue
        count = {"M": 1, "L": 1, "C": 3, "S": 2}.get(command.upper())
        if count is None:
            raise ValueError(f"unknown command {command} in {path}")
        numbers = [float(token) for token in tokens[index : index + 2 * count]]
        index += 2 * count
        base = at if command.islower() else 0j
        ends = [base + complex(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        if command in "Ss":
            ends.insert(0, 2 * at - last)
        if command in "Mm":
            at = last = ends[0]
            command = "l" if command == "m" else "L"
            continue
        if len(ends) == 1:
            ends = [at, ends[0], ends[0]]
        for step in range(PIECES + 1):
            t = step / PIECES
            yield (
                at * (1 - t) ** 3
                + 3 * ends[0] * t * (1 - t) ** 2
                + 3 * ends[1] * t * t * (1 - t)
                + ends[2] * t**3
            )
        at, last = ends[2], ends[1]


def strokes_of(file: Path) -> list[list[Point]]:
    """Return the strokes of a drawing, each as points."""
    return [list(points(path.get("d", ""))) for path in ET.parse(file).getroot().iter(f"{SVG}path")]


def shape(strokes: list[list[Point]]) -> tuple[str, str, str, str]:
    """Return width and height in percent of the square, and the grids of level and upright strokes.

    A stroke is level by the square of the cosine of its angle, and upright by that of its sine.
    """
    every = [point for stroke in strokes for point in stroke]
    left, right = min(p.real for p in every) - PEN / 2, max(p.real for p in every) + PEN / 2
    top, bottom = min(p.imag for p in every) - PEN / 2, max(p.imag for p in every) + PEN / 2
    level = [[0.0] * COLUMNS for _ in range(ROWS)]
    upright = [[0.0] * COLUMNS for _ in range(ROWS)]
    for stroke in strokes:
        for one, other in pairwise(stroke):
            way, length = other - one, abs(other - one)
            parts = max(1, math.ceil(length))
            for part in range(parts if length else 0):
                p = one + way * (part + 0.5) / parts
                row = min(ROWS - 1, int((p.imag - top) / (bottom - top) * ROWS))
                column = min(COLUMNS - 1, int((p.real - left) / (right - left) * COLUMNS))
                level[row][column] += way.real**2 / length / parts
                upright[row][column] += way.imag**2 / length / parts
    fullest = max(max(row) for row in (*level, *upright))
    grids = (
        "".join(str(round(9 * cell / fullest)) for row in g for cell in row)
        for g in (level, upright)
    )
    return (
        str(round((right - left) / SQUARE * 100)),
        str(round((bottom - top) / SQUARE * 100)),
        *grids,
    )


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    shapes: dict[str, tuple[str, str, str, str]] = {}
    source: dict[str, str] = {}
    for file in sorted(KANJIVG.glob("?????.svg")):
        char = chr(int(file.stem, 16))
        if char >= "\u3005" and (strokes := [s for s in strokes_of(file) if len(s) > 1]):
            shapes[char], source[char] = shape(strokes), "KanjiVG"
    for name in ("old_forms", "variants"):
        for row in table(name):
            if row[0] not in shapes and row[1] in shapes and len(row[0]) == 1:
                shapes[row[0]], source[row[0]] = shapes[row[1]], f"like {row[1]}"
    return {"sign_shapes": [(c, *shapes[c], source[c]) for c in sorted(shapes)]}
