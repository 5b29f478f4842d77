"""One carver at work, sign by sign."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from random import Random

from carvers.carver_b.edits import Edit, Text, clear, savers
from carvers.carver_b.tables import is_kanji, need, weight
from carvers.carver_b.worlds import World
from carvers.contract import Block, Cause


@dataclass
class Bench:
    """One carver at work. hard: last mm he cuts in the last column; targets: source positions
    where he means to begin columns 1, 2, ...; floor: least log squeeze; walk, squeeze: log size
    by chance and by will; cuts: sign, column, y, ink height.
    """

    rng: Random
    world: World
    text: Text
    length: float
    pitch: float
    columns: int
    top: float
    foot: float
    hard: float
    size: float
    targets: list[int]
    blocks: list[Block]
    todo: list[Edit]
    floor: float
    col: int = 0
    y: float = 0.0
    walk: float = 0.0
    squeeze: float = 0.0
    cuts: list[tuple[str, int, float, float]] = field(default_factory=list)
    done: list[Edit] = field(default_factory=list)
    causes: list[Cause] = field(default_factory=list)

    def run(self) -> None:
        """Carves the text until its end or the end of the metal."""
        self.y, i, s = self.start(), 0, self.text.signs
        while i < len(s):
            if (
                self.cuts
                and self.cuts[-1][1] == self.col < len(self.targets)
                and i >= self.targets[self.col]
            ):
                self.col, self.y = self.col + 1, self.start()
            before = len(self.cuts)
            edit = next((e for e in self.todo if e.first == i), None) or self.look(i)
            if not self.cut(edit.put if edit else s[i]):
                edit = Edit(i, len(s) - 1, "", "space")
            if edit:
                self.log(edit, before)
            i = edit.last + 1 if edit else i + 1

    def start(self) -> float:
        """The head of a column, never quite on the line."""
        return max(0.1, self.rng.gauss(self.top, 0.1 + self.world.jitter * 6))

    def log(self, edit: Edit, before: int) -> None:
        """Writes down a difference."""
        self.todo = [e for e in self.todo if e != edit]
        self.done.append(edit)
        a, b = (edit.first, edit.last) if edit.last >= edit.first else (-1, -1)
        c, d = (before, len(self.cuts) - 1) if len(self.cuts) > before else (-1, -1)
        self.causes.append(Cause(first=a, last=b, copy_first=c, copy_last=d, cause=edit.cause))

    def look(self, i: int) -> Edit | None:
        """Looks ahead a random way; squeezes, and perhaps shortens what comes next."""
        rng, care, end = self.rng, self.world.care, len(self.text.signs)
        seen = (
            i + 1 + int(rng.expovariate(1 / self.world.far))
            if rng.random() < self.world.look
            else 0
        )
        goal = end if seen >= end or self.col >= len(self.targets) else self.targets[self.col]
        if not i < goal <= seen:
            return None
        pressure = (
            need(self.text.signs[i:goal])
            * self.now()
            * rng.lognormvariate(0, 0.08)
            / max(0.5, self.room(goal == end))
        )
        self.squeeze = max(self.floor, min(0.1, self.squeeze - 0.5 * care * math.log(pressure)))
        if goal < end or pressure < 1.02 or rng.random() > care * (0.3 + 2.5 * (pressure - 1)):
            return None
        options = [e for e in savers(self.text) if e.first == i and clear(e, self.todo + self.done)]
        return rng.choice(options) if options else None

    def now(self) -> float:
        """The present size of a middling sign."""
        return max(1.3, self.size * math.exp(max(-0.5, min(0.45, self.walk)) + self.squeeze))

    def limit(self, col: int) -> float:
        """Where a column has to stop."""
        return self.hard if col >= self.columns - 1 else self.length - self.foot

    def room(self, to_end: bool) -> float:
        """Length left, in this column or in all."""
        last = self.columns - 1 if to_end else self.col
        total = (
            self.limit(self.col) - self.y + (last - self.col) * (self.length - self.foot - self.top)
        )
        left = [
            (a if c > self.col else max(a, self.y), b)
            for c, a, b, _ in self.blocks
            if self.col <= c <= last
        ]
        return total - sum(max(0.0, b - a) for a, b in left)

    def slot(self, height: float) -> tuple[int, float] | None:
        """The next place where a sign of that height goes."""
        col, y = self.col, self.y
        while col < self.columns:
            for c, a, b, _ in self.blocks:
                y = b + 0.4 if c == col and y < b and y + height > a else y
            if y + height <= self.limit(col):
                return col, y
            col, y = col + 1, self.start()
        return None

    def cut(self, put: str) -> bool:
        """Cuts signs, or none of them when the metal ends."""
        count, col, y = len(self.cuts), self.col, self.y
        for sign in put:
            step = self.step(sign)
            spot = self.slot(step * 0.9) or (self.slot(step * 0.68) if self.world.care else None)
            if spot is None:
                self.cuts, self.col, self.y = self.cuts[:count], col, y
                return False
            ink = min(step * 0.88, self.limit(spot[0]) - spot[1])
            self.cuts.append((sign, *spot, ink))
            self.col, self.y = spot[0], spot[1] + ink + step * 0.12
        return True

    def step(self, sign: str) -> float:
        """One step of the walk, then the sign stroke by stroke: each stroke errs on its own, so
        rich signs err less.
        """
        jitter, strokes = self.world.jitter, 8 if is_kanji(sign) else 3
        self.walk += self.world.drift + self.rng.gauss(0, jitter) - 0.05 * self.walk
        errs = sum(self.rng.gauss(0, 0.02 + 3 * jitter) for _ in range(strokes)) / strokes
        return self.now() * weight(sign) * max(0.6, 1 + errs)
