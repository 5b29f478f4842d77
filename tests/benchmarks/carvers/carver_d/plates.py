"""His plates as they are measured, with the truth about every difference."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from carvers.carver_d.carving import Cut, Piece, Sheet, planned, printed, sheet, slipped
from carvers.carver_d.worlds import WORLDS, World
from carvers.contract import Block, Box, Cause, Plate


def plates(seed: int, count: int) -> Sequence[Plate]:
    """Return simulated plates, the worlds in turn."""
    random = Random(seed)
    names = list(WORLDS)
    return [_plate(random, names[n % len(names)]) for n in range(count)]


def _plate(random: Random, name: str) -> Plate:
    world = WORLDS[name]
    pieces = printed(random, world)
    on = sheet(random, world, len("".join(each.source for each in pieces)))
    seal = random.uniform(6, 14) if random.random() < world.seal else 0.0
    done = planned(random, world, slipped(random, world, pieces), on, seal)
    return {
        "source": "".join(each.source for each in done.pieces),
        "copy": _by_columns(done),
        "length": round(on.length, 1),
        "width": round(on.width, 1),
        "columns": _columns(random, world, on, done),
        "boxes": _boxes(random, world, on, done),
        "takes_room": _seal(on, done, seal),
        "world": name,
        "causes": _causes(done.pieces),
    }


def _by_columns(done: Cut) -> str:
    text = "".join(each.written for each in done.pieces)
    made, before = "", 0
    for sign, (column, _, _) in zip(text, done.signs, strict=True):
        made += "／" * (column - before) + sign
        before = column
    return made


def _columns(
    random: Random, world: World, on: Sheet, done: Cut
) -> list[tuple[float, float, float]]:
    made = []
    for n in range(done.signs[-1][0] + 1):
        own = [each for each in done.signs if each[0] == n]
        top, end = own[0][1], own[-1][2]
        made.append((_read(random, world, top), _read(random, world, end), round(on.column, 1)))
    return made


def _read(random: Random, world: World, length: float) -> float:
    return round(length + random.gauss(0, world.callipers), 1)


def _boxes(random: Random, world: World, on: Sheet, done: Cut) -> list[Box] | None:
    if random.random() > world.boxes:
        return None
    return [
        (on.width - (n + 1) * on.column, round(top, 1), on.column, round(end - top, 1))
        for n, top, end in done.signs
    ]


def _seal(on: Sheet, done: Cut, seal: float) -> list[Block]:
    last = len(on.feet) - 1
    if not seal or done.signs[-1][0] != last:
        return []
    foot = on.feet[-1]
    return [(last, round(foot - seal + 1.0, 1), round(foot, 1), "seal")]


def _causes(pieces: list[Piece]) -> list[Cause]:
    made: list[Cause] = []
    source = copy = 0
    for piece in pieces:
        if piece.cause and piece.written != piece.source:
            end, until = source + len(piece.source), copy + len(piece.written)
            first = copy if piece.written else -1
            made.append(
                {
                    "first": source,
                    "last": end - 1,
                    "copy_first": first,
                    "copy_last": until - 1 if piece.written else -1,
                    "cause": piece.cause,
                }
            )
        source += len(piece.source)
        copy += len(piece.written)
    return made
