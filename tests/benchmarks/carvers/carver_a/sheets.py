"""The metal chosen and ruled, and the brush draft."""

from __future__ import annotations

import random
from typing import NamedTuple

from carvers.carver_a.words import Words, is_kana, save_once, signs_of
from carvers.carver_a.worlds import World

Blocks = tuple[tuple[int, float, float, str], ...]


class Sheet(NamedTuple):
    """The field of `many` columns: wished sign height `size`, `air` pitch over height, heads and
    foot line in mm, `breaks` planned first sign of each column.
    """

    length: float
    width: float
    gap: float
    many: int
    size: float
    air: float
    tops: tuple[float, ...]
    foot: float
    floor: float
    notice: float
    spread: bool
    jitter: tuple[float, ...]
    blocked: Blocks = ()
    breaks: tuple[int, ...] | None = None

    def room(self, column: int, seal: bool = True) -> float:
        """Free mm of a column, less what blocks it if he thinks of it."""
        return (
            self.foot
            - self.tops[column]
            - sum(b - a for c, a, b, _ in self.blocked if c == column and seal)
        )

    def heights(self, signs: str, start: int = 0) -> list[float]:
        """Pitch of the signs in mm: kana lower than kanji, the long repeat mark longer, of the
        hand's unevenness.
        """
        shares = (
            1.35 if s == "〱" else 0.62 if s in "ゝ々しつくへのヿ" else 0.8 if is_kana(s) else 1.0
            for s in signs
        )
        return [
            share * self.air * self.size * self.jitter[start + i] for i, share in enumerate(shares)
        ]


class Cut(NamedTuple):
    """A carved sign: column, head, height and width in mm."""

    sign: str
    column: int
    y: float
    height: float
    width: float


def field(words: Words, world: World, rng: random.Random) -> Sheet:
    """The metal chosen (kozuka, or seppa-dai and fuchi with a middle opening) and ruled: the
    fewest columns that look roomy enough to him.
    """
    kozuka = sum(len(w.now) for w in words) > 22 or rng.random() < 0.6
    metal = (
        ((95, 98), (14, 15), 0.0)
        if kozuka
        else rng.choice((((39, 46), (22, 26), 8.0), ((18, 21), (36, 40), 9.0)))
    )
    length, width, gap = rng.uniform(*metal[0]), rng.uniform(*metal[1]), metal[2]
    top, foot = (
        rng.uniform(*margin) * (1.0 if kozuka else length / 96 + 0.12)
        for margin in (world.top, world.foot)
    )
    wish, hope, notice = (
        rng.uniform(3.3, 7.0) * (1 if kozuka else 0.8),
        rng.uniform(*world.hope),
        rng.choice((0.0, rng.uniform(0.2, 0.7))),
    )
    step, scatter = (
        rng.uniform(0, 0.16 if world.name == "scattered" else 0.006) * length,
        world.name == "scattered",
    )
    jitter, air, spread = (
        tuple(max(0.6, rng.gauss(1, world.uneven)) for _ in range(200)),
        rng.uniform(1.05, 1.45),
        rng.random() < world.spread,
    )
    for count in range(1 if kozuka else 2, 6 if kozuka else 9):
        tops = tuple(
            top + abs(rng.gauss(0, step * 0.4)) + step * (k % 2) * scatter for k in range(count)
        )
        sheet = Sheet(
            length,
            width,
            gap,
            count,
            min(wish, (width - gap) / count * 0.9),
            air,
            tops,
            length - foot,
            world.floor,
            notice,
            spread,
            jitter,
        )
        sheet = sheet._replace(blocked=blocked_of(sheet, world, rng))
        if sum(sheet.heights(signs_of(words))) <= hope * sum(
            sheet.room(k, world.name != "seal_forgotten") for k in range(count)
        ):
            break
    return sheet


def blocked_of(sheet: Sheet, world: World, rng: random.Random) -> Blocks:
    """Seal or picture at the foot of the last column; now and then a flaw in the metal."""
    out, last, small = list[tuple[int, float, float, str]](), sheet.many - 1, sheet.length < 90
    if rng.random() < world.seal and not (small and last < 2):
        what = "seal" if small or rng.random() < 0.7 else "picture"
        out = [
            (
                last,
                sheet.foot
                - (5 if small else rng.uniform(6, 12) if what == "seal" else rng.uniform(16, 30)),
                sheet.foot,
                what,
            )
        ]
    at = rng.uniform(20, 55)
    return tuple(
        [(rng.randrange(last + 1), at, at + rng.uniform(3, 7), "damage")]
        * (rng.random() < 0.04 and not small)
        + out
    )


def planned(words: Words, sheet: Sheet, world: World, rng: random.Random) -> tuple[Words, Sheet]:
    """The brush draft: savings until he believes it fits, then one size for all and the places of
    the breaks.
    """
    if world.judge is None:
        return words, sheet
    eye, soft = rng.gauss(1, world.judge) / rng.uniform(*world.paper), rng.uniform(world.floor, 1.0)
    room = sum(sheet.room(k, world.name != "seal_forgotten") for k in range(sheet.many))
    every, fit = rng.random() < 0.35, room / (sum(sheet.heights(signs_of(words))) * eye)
    while fit < soft and (saved := save_once(words, world.saves, 0, every)):
        words, fit = saved, room / (sum(sheet.heights(signs_of(saved))) * eye)
    sheet = sheet._replace(
        size=sheet.size * min(1.0, max(world.floor, fit)), floor=max(0.75, world.floor)
    )
    return words, sheet._replace(
        breaks=breaks_of(words, sheet, rng.random() < 0.3, world.name != "seal_forgotten")
    )


def breaks_of(words: Words, sheet: Sheet, by_line: bool, seal: bool) -> tuple[int, ...]:
    """First sign of each column: shares of the height by room, at the nearest word or line of the
    verse.
    """
    heights, breaks, shares = (
        sheet.heights(signs_of(words)),
        [0],
        [sheet.room(k, seal) for k in range(sheet.many)],
    )
    places = [0] + [
        len(signs_of(words[:i]))
        for i, w in enumerate(words)
        if i and (w.line != words[i - 1].line or not by_line)
    ]
    for k in range(1, sheet.many):
        target = sum(heights) * sum(shares[:k]) / sum(shares)
        breaks.append(max(breaks[-1], min(places, key=lambda p: abs(sum(heights[:p]) - target))))
    return tuple(breaks)
