"""Whole plates: carved, measured, and the truth about each difference."""

from __future__ import annotations

import math
import random

from carvers.carver_a.cutting import carved
from carvers.carver_a.sheets import Cut, Sheet, field, planned
from carvers.carver_a.tables import BLANK, TEXTS
from carvers.carver_a.words import Words, drafted, slip, words_of
from carvers.carver_a.worlds import WORLDS, World
from carvers.contract import Cause, Plate, common_start


def causes_of(words: Words) -> list[Cause]:
    """Every difference with its spans, cut down to the signs that differ; neighbouring omissions
    of one cause are one.
    """
    causes, at = list[Cause](), 0
    for word in words:
        now = word.now.replace(BLANK, "")
        for a, b, c, d in spans(word.src, now):
            here, there = (
                (word.first + a, word.first + b - 1) if b > a else (-1, -1),
                (at + c, at + d - 1) if d > c else (-1, -1),
            )
            old = causes[-1] if causes and causes[-1]["copy_first"] < 0 and there[0] < 0 else None
            if old and old["last"] + 1 == here[0] and old["cause"] == word.cause:
                old["last"] = here[1]
            else:
                causes.append(
                    Cause(
                        first=here[0],
                        last=here[1],
                        copy_first=there[0],
                        copy_last=there[1],
                        cause=word.cause,
                    )
                )
        at += len(now)
    return causes


def spans(old: str, new: str) -> list[tuple[int, int, int, int]]:
    """Half-open spans (old, new) that differ: sign by sign at equal length, else what is left
    between common ends.
    """
    if len(old) == len(new):
        edges = [
            i
            for i in range(len(old) + 1)
            if (i > 0 and old[i - 1] != new[i - 1]) != (i < len(old) and old[i] != new[i])
        ]
        return [(a, b, a, b) for a, b in zip(edges[::2], edges[1::2], strict=False)]
    head = common_start(old, new)
    tail = common_start(old[head:][::-1], new[head:][::-1])
    return [(head, len(old) - tail, head, len(new) - tail)]


def plate(rng: random.Random) -> Plate:
    """One plate from text to measured columns; slips happen in the draft or, in four of ten, in
    the cutting after it was reckoned.
    """
    world, text = rng.choices(WORLDS, [w.share for w in WORLDS])[0], rng.choice(TEXTS)
    words = words_of(text if rng.random() < 0.6 else text.split("＠")[0].rstrip(" ／"))
    source = "／".join(
        "".join(w.src for w in words if w.line == k) for k in range(words[-1].line + 1)
    )
    words = drafted(words, world, rng)
    sheet, late, count = (
        field(words, world, rng),
        rng.random() < 0.4,
        sum(int(rng.random() < world.slips / 4) for _ in range(4)),
    )
    words, sheet = planned(words, sheet, world, rng) if late else (words, sheet)
    for _ in range(count):
        words = slip(words, rng, world.name == "from_memory" and not late)
    words, sheet = (words, sheet) if late else planned(words, sheet, world, rng)
    words, cuts = carved(words, sheet, world, rng)
    return recorded(source, words, cuts, sheet, world, rng)


def recorded(
    source: str, words: Words, cuts: list[Cut], sheet: Sheet, world: World, rng: random.Random
) -> Plate:
    """The plate as someone with callipers sets it down (error 0.1-0.5, steps of 0.5 or 0.1 mm)."""
    error, step, bow, slant = (
        rng.uniform(0.1, 0.5),
        rng.choice((0.5, 0.1)),
        rng.gauss(0, world.bow),
        rng.gauss(0, world.bow / 2),
    )

    def mm(value: float, share: float = 1.0) -> float:
        return max(0.0, round(round((value + rng.gauss(0, error * share)) / step) * step, 1))

    def left(cut: Cut) -> float:
        down, right = (
            (cut.y + cut.height / 2) / sheet.length,
            (sheet.width - sheet.gap) / sheet.many * (cut.column + 0.5),
        )
        return (
            sheet.width
            - right
            - sheet.gap * (cut.column >= sheet.many / 2)
            + bow * math.sin(math.pi * down)
            + slant * (down - 0.5)
            - cut.width / 2
        )

    shown, used = (
        [c for c in cuts if c.sign != BLANK],
        sorted({c.column for c in cuts if c.sign != BLANK}),
    )
    by_column = [[c for c in shown if c.column == k] for k in used]
    boxes = (
        [(mm(left(c)), mm(c.y), mm(c.width, 0.5), mm(c.height, 0.5)) for c in shown]
        if rng.random() < 0.33
        else None
    )
    return Plate(
        source=source,
        copy="／".join("".join(c.sign for c in col) for col in by_column),
        length=mm(sheet.length),
        width=mm(sheet.width),
        columns=[
            (mm(col[0].y), mm(col[-1].y + col[-1].height), mm(max(c.width for c in col)))
            for col in by_column
        ],
        boxes=boxes,
        takes_room=[
            (used.index(k), mm(a), mm(b), what) for k, a, b, what in sheet.blocked if k in used
        ],
        world=world.name,
        causes=causes_of(words),
    )


def plates(seed: int, count: int) -> list[Plate]:
    """`count` plates, the same for the same seed."""
    rng = random.Random(seed)
    return [plate(rng) for _ in range(count)]
