"""What is engraved in the measuring benchmark: old verse and invented signatures, in columns.

The words are the benchmark's own test data (verse from before 1600, invented signatures); how they
are divided, which signs are worn, and the plate and camera are drawn by lot. Knows no look.
"""

from __future__ import annotations

import csv
import random
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from looks.contract import GAP, REPEATED, WORN, Wanted

DATA = Path(__file__).parents[2] / "data"


@cache
def _texts(name: str, column: str) -> tuple[str, ...]:
    lines = (DATA / name).read_text("utf-8").splitlines()
    rows = csv.DictReader((x for x in lines if not x.startswith("#")), delimiter="\t")
    return tuple(row[column].replace("／", "") for row in rows)


def columns(rng: random.Random) -> tuple[tuple[str, ...], ...]:
    """Return one to four columns of signs: a poem, a signature, or both."""
    verse = rng.choice(_texts("verse_manuscript.tsv", "text"))
    signed = rng.choice(_texts("signatures_fresh.tsv", "text"))
    signed = "".join(sign for sign in signed if sign.isalnum())
    kind = rng.random()
    signs = list(signed if kind < 0.25 else verse if kind < 0.75 else verse + signed)[:80]
    signs = [_worn(sign, rng) for sign in signs]
    fewest = -(-len(signs) // 24)
    count = max(fewest, min(4, rng.choice((1, 2, 2, 3, 3, 4)), len(signs) // 4 or 1))
    return tuple(tuple(column) for column in _divided(signs, count, rng))


def _worn(sign: str, rng: random.Random) -> str:
    lot = rng.random()
    if lot < 0.03:
        return WORN
    if lot < 0.034:
        return GAP
    return REPEATED if lot < 0.04 else sign


def _divided(signs: list[str], count: int, rng: random.Random) -> Iterator[list[str]]:
    """Yield the signs in columns about equally long, the last one often shorter."""
    full = len(signs) / (count - rng.choice((0.0, 0.0, 0.2, 0.5)) if count > 1 else 1)
    start = 0
    for number in range(count):
        end = round(full * (number + 1)) + (rng.randint(-1, 1) if number < count - 1 else 0)
        end = len(signs) if number == count - 1 else min(end, len(signs) - 2 * (count - number - 1))
        yield signs[start:end]
        start = end


def wanted(seed: int) -> Wanted:
    """Return an inscription and a camera, drawn by lot."""
    rng = random.Random(seed)
    made = columns(rng)
    longest = max(map(len, made))
    least = max(30.0, longest * 2.6 + 8)
    height = rng.uniform(least, max(least + 5, 100.0)) if len(made) == 1 else rng.uniform(88, 100)
    width = max(4.0 * len(made) + 1, rng.uniform(12.5, 16.0))
    return Wanted(
        columns=made,
        width=round(width, 1),
        height=round(height, 1),
        pixels_per_mm=8 * (60 / 8) ** rng.random(),
        tilt=rng.uniform(0, 15),
        barrel=rng.uniform(0, 0.03),
    )
