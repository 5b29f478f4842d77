"""Whole plates: measured by somebody, with the truth about each difference."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from random import Random

from carvers.carver_b.bench import Bench
from carvers.carver_b.carving import carve
from carvers.carver_b.worlds import WORLDS
from carvers.contract import Box, Plate


def reader(
    rng: Random, scatter: float, offset: float, step: float, heap: float
) -> Callable[..., float]:
    """A measuring person: scatter, offset from the worn edge, least step, liking for half mm; one
    reading in 150 is a mm wrong.
    """
    scale = rng.gauss(1, 0.002)

    def read(mm: float, low: float = 0.0, high: float = 200.0, edge: bool = True) -> float:
        value = (
            mm * scale
            + offset * edge
            + rng.gauss(0, scatter)
            + rng.choice([-1, 1]) * (rng.random() < 1 / 150)
        )
        unit = 0.5 if rng.random() < heap else step
        return round(max(low, min(high, round(value / unit) * unit)), 1)

    return read


def inks(bench: Bench, width: float) -> list[Box]:
    """True boxes of the signs: x from the left edge, y from the head edge, width, height; a column
    may bend.
    """
    rng, found, right = bench.rng, list[Box](), bench.rng.uniform(0.3, 0.6)
    bends = [rng.gauss(0, bench.world.bend) for _ in range(bench.columns)]
    for sign, col, y, height in bench.cuts:
        wide = (
            min(0.92 * bench.pitch, bench.size * 1.05)
            * rng.gauss(0.9, 0.05)
            * (0.7 if sign in "ゝ〱ヿしく" else 1)
        )
        centre = (
            width
            - right
            - bench.pitch * (col + 0.5)
            + bends[col] * math.sin(math.pi * y / bench.length)
        )
        found.append((max(0.1, centre - wide / 2), y, wide, height))
    return found


def recorded(bench: Bench, width: float) -> Plate:
    """The plate as somebody measured it; worse tools are noted to half a millimetre more often,
    boxes come from a photograph.
    """
    rng, marks, text, columns = (
        bench.rng,
        inks(bench, width),
        bench.text,
        list[tuple[float, float, float]](),
    )
    scatter, used = rng.uniform(0.08, 0.4), sorted({cut[1] for cut in bench.cuts})
    read = reader(
        rng,
        scatter,
        rng.gauss(0, 0.15),
        0.5 if rng.random() < scatter + 0.1 else 0.1,
        rng.choice([0, 0, 0.3]),
    )
    fine, length, edges = (
        reader(rng, scatter * 0.6, 0, 0.1, 0),
        read(bench.length, edge=False),
        [*text.starts, len(text.signs)],
    )
    for own in (
        [m for m, cut in zip(marks, bench.cuts, strict=False) if cut[1] == col] for col in used
    ):
        top, broad = (
            read(own[0][1]),
            max(x + w for x, _, w, _ in own) - min(x for x, _, _, _ in own),
        )
        columns.append(
            (top, read(own[-1][1] + own[-1][3], top + 0.5, length), read(broad, 0.5, edge=False))
        )
    return Plate(
        source="／".join(text.signs[a:b] for a, b in itertools.pairwise(edges)),
        copy="／".join("".join(cut[0] for cut in bench.cuts if cut[1] == col) for col in used),
        length=length,
        width=read(width, edge=False),
        columns=columns,
        world=bench.world.name,
        causes=bench.causes,
        boxes=[(fine(x), fine(y), fine(w, 0.3), fine(h, 0.3)) for x, y, w, h in marks]
        if rng.random() < 0.34
        else None,
        takes_room=[
            (used.index(c), read(a), read(b, 0, length), what)
            for c, a, b, what in bench.blocks
            if c in used
        ],
    )


def plates(seed: int, count: int) -> list[Plate]:
    """`count` plates, the same for the same seed."""
    hands = (Random(f"walk {seed} {k}") for k in range(count))
    return [
        recorded(*carve(rng, rng.choices(WORLDS, [w.share for w in WORLDS])[0])) for rng in hands
    ]
