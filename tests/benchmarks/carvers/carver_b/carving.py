"""The plate laid out, and one carver let to work on it."""

from __future__ import annotations

import math
from random import Random

from carvers.carver_b.bench import Bench
from carvers.carver_b.edits import Text, choose_text, planned, unforced
from carvers.carver_b.tables import need
from carvers.carver_b.worlds import World
from carvers.contract import Block


def layout(
    rng: Random, world: World, width: float, body: float, total: float, fill: float
) -> tuple[int, float, float]:
    """Number of columns, their pitch and the size of a sign: roughly square signs at the fill
    wanted.
    """
    usable = width - rng.uniform(0.6, 3.0)
    options = [(n, usable / n, fill * n * body / total) for n in range(1, 7)]
    return rng.choices(
        options,
        [math.exp(-((math.log(size / pitch) / 0.6) ** 2) / 2) + 1e-9 for _, pitch, size in options],
    )[0]


def turns(text: Text, count: int, division: str) -> list[int]:
    """Source positions at which he means to begin columns 1, 2, ..."""
    if division == "run":
        return []
    total, marks = (
        need(text.signs),
        text.starts[1:] if division == "lines" else range(1, len(text.signs)),
    )
    return sorted(
        {
            min(marks, key=lambda m: abs(need(text.signs[:m]) - total * k / count))
            for k in range(1, count)
        }
    )


def obstacles(rng: Random, world: World, length: float, columns: int) -> list[Block]:
    """What stood, or was to stand, on the plate: a seal or picture at the last foot, now and then
    an old flaw.
    """
    found, foot, start = list[Block](), length - rng.uniform(0.5, 3), rng.uniform(0.2, 0.7) * length
    if rng.random() < world.seal:
        found.append(
            (
                columns - 1,
                foot - length * rng.uniform(0.07, 0.18),
                foot,
                rng.choice(["seal", "seal", "picture"]),
            )
        )
    if rng.random() < 0.05:
        found.append(
            (rng.randrange(columns), start, start + length * rng.uniform(0.03, 0.07), "damage")
        )
    return found


def carve(rng: Random, world: World) -> tuple[Bench, float]:
    """Lets one carver work; returns the bench as he left it and the width of the plate."""
    text, small = choose_text(rng), rng.random() < world.small
    length, width = (
        (rng.uniform(28, 42), rng.uniform(9, 14))
        if small
        else (rng.uniform(95, 98), rng.uniform(14, 15))
    )
    top, fill = rng.uniform(*world.margin) * (0.4 if small else 1), rng.uniform(*world.fill)
    foot = top if world.plan > 0.5 or rng.random() < 0.3 else max(0.3, rng.uniform(0.2, 1.3) * top)
    count, pitch, size = layout(rng, world, width, length - top - foot, need(text.signs), fill)
    blocks, edits, shrink = obstacles(rng, world, length, count), unforced(rng, world, text), 1.0
    if rng.random() < world.plan:
        lost = sum(b - a for _, a, b, _ in blocks) / (count * (length - top - foot))
        drops, shrink = planned(rng, text, fill / (1 - lost), edits)
        edits += drops
    hard = length - (foot if world.care and rng.random() < 0.4 else 0.3)
    targets, floor = turns(text, count, world.division), -rng.uniform(0.1, 0.55)
    bench = Bench(
        rng,
        world,
        text,
        length,
        pitch,
        count,
        top,
        foot,
        hard,
        size / shrink,
        targets,
        blocks,
        edits,
        floor,
    )
    bench.run()
    return bench, width
