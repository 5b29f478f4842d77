"""Cutting a column into its signs: dynamic programming over every top and bottom.

A column is told top down as sign, space, sign, space; each sign has a top and a bottom. What is
weighed, in nats: how long a sign is against what is expected of it and of this column; how long a
space is; ink that lies in spaces or outside the column; bare rows within a sign; strokes that a
cut goes through; and strokes that stand elsewhere than in the sign's usual form (``shapes``). The
cheapest telling is the proposal, and the weight of all tellings together (forwards and backwards,
as in a hidden Markov model) says how sure each of its ends is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from inscribe.errors import InputError
from inscribe.measuring.model import Cut
from inscribe.measuring.rhythm import Expected
from inscribe.measuring.shapes import forms, rows_of
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import Array
from inscribe.measuring.ways import after, before, shares, soft

ROWS = 8  # rows per mm in which cuts are sought
COARSER = 2  # rows taken together while the pitch is sought
NO_WAY = 1e6  # price of a cut where no sign can end
STEP = 0.9  # of a pitch to the next one tried
LEAST = 1.0  # mm: the least pitch tried


class Weights(NamedTuple):
    """What the parts of a telling weigh; set on the first look of the benchmark."""

    lost: float = 15.0  # a mm of full rows of ink in a space
    outside: float = 20.0  # the same above or below the column
    bare: float = 9.0  # a pitch of bare rows in a sign
    unseen: float = 4.0  # a sign that should show strokes and shows none
    few: float = 0.04  # what a sign must show to be seen: full rows, by its length
    crossed: float = 3.0  # a cut through a full row of ink
    space: float = 0.14  # the usual space, as a share of the pitch
    spaces: float = 9.0  # how much the excess of a space weighs, by the pitch
    size: float = 1.1  # how much sizes weigh
    far: float = 4.0  # a size further off than this counts less than by its square
    shape: float = 25.0  # strokes that are nowhere where they should be, or cross them
    rows: float = 14.0  # the same by rows, where nothing else is known
    eighths: float = 3.5  # the same beside the whole form
    hands: float = 0.12  # how far the pitches of two columns differ (log)
    square: float = 0.85  # a full sign is as long as this share of its column's width
    squares: float = 0.3  # give or take (log)


USUAL = Weights()


class ColumnInk(NamedTuple):
    """The ink of a column: of its rows (1 in a full row, ``ROWS`` rows a mm), and of its pixels.

    ``pixels`` has a row for each of ``rows``, ``PER_MM`` pixels a mm across, and for each the ink
    of level and of upright strokes; without them strokes are compared by rows alone.
    """

    rows: Array
    pixels: Array | None = None


class SignExtent(NamedTuple):
    """A sign's top and bottom in mm, and the chance of each to be right to a tenth of the pitch."""

    top: float
    bottom: float
    sure_top: float
    sure_bottom: float


def cells(
    columns: Sequence[tuple[ColumnInk, Sequence[Expected]]],
    fixed: Sequence[Mapping[int, Cut]] = (),
    weights: Weights = USUAL,
) -> list[list[SignExtent]]:
    """Return a cell for each sign of each column.

    Args:
        columns: for each column its ink and what is expected of its signs, top down.
        fixed: for each column the tops and bottoms given by a person, by the sign's place in it.
        weights: what the parts of a telling weigh.

    Raises:
        InputError: what was given leaves no room for the other signs.
    """
    held = list(fixed) or [{} for _ in columns]
    pitches = _pitches(columns, held, weights)
    return [
        _Table(ink, signs, pitch, given, weights).told()
        for (ink, signs), given, pitch in zip(columns, held, pitches, strict=True)
    ]


def _pitches(
    columns: Sequence[tuple[ColumnInk, Sequence[Expected]]],
    fixed: Sequence[Mapping[int, Cut]],
    weights: Weights,
) -> list[float]:
    """Return the length of a full sign in rows for each column, alike in all as far as may be."""
    most = max(_longest(ink.rows, signs, weights) for ink, signs in columns)
    tried = [most * STEP**step for step in range(60) if most * STEP**step >= LEAST * ROWS]
    tried = tried or [most]
    costs = np.array(
        [
            [
                _rough_cost(ink.rows, signs, pitch, given, weights) + _oblong(ink, pitch, weights)
                for pitch in tried
            ]
            for (ink, signs), given in zip(columns, fixed, strict=True)
        ]
    )
    steps = np.arange(len(tried))
    unlike = 0.5 * ((steps[:, None] - steps) * np.log(STEP) / weights.hands) ** 2
    alike = (costs[:, None, :] + unlike[None]).min(2).sum(0)
    shared = int(alike.argmin())
    return [tried[int((own + unlike[shared]).argmin())] for own in costs]


def _oblong(ink: ColumnInk, pitch: float, weights: Weights) -> float:
    """Return the price of full signs that are not about as long as their column is wide."""
    if ink.pixels is None:
        return 0.0
    width = ink.pixels.shape[1] / PER_MM * ROWS
    return 0.5 * float(np.log(pitch / (weights.square * width)) / weights.squares) ** 2


def _longest(rows: Array, signs: Sequence[Expected], weights: Weights) -> float:
    """Return the longest pitch, in rows, that the inked stretch of a column lets think of."""
    held = np.cumsum(rows)
    first, last = np.searchsorted(held, [0.005 * held[-1], 0.995 * held[-1]])
    length = sum(sign.length for sign in signs) + weights.space * (len(signs) - 1)
    return max(float(ROWS), float(last - first) / length * 1.15)


def _rough_cost(
    rows: Array,
    signs: Sequence[Expected],
    pitch: float,
    fixed: Mapping[int, Cut],
    weights: Weights,
) -> float:
    coarse = rows[: len(rows) // COARSER * COARSER].reshape(-1, COARSER).mean(1)
    table = _Table(ColumnInk(coarse), signs, pitch / COARSER, fixed, weights, ROWS / COARSER)
    return table.cheapest()[2]


class _Table:
    """The prices of one column, and the cheapest way through them."""

    def __init__(
        self,
        ink: ColumnInk,
        signs: Sequence[Expected],
        pitch: float,
        fixed: Mapping[int, Cut],
        weights: Weights,
        per_mm: float = ROWS,
    ) -> None:
        rows = ink.rows
        self.per_mm = per_mm
        self.rows, self.signs, self.pitch = rows, signs, pitch
        self.fixed, self.weights = fixed, weights
        self.count = len(rows) + 1  # places between rows
        self.held = np.concatenate([[0], np.cumsum(rows)])
        self.bare = np.concatenate([[0], np.cumsum(rows < 0.02)])
        beyond = np.pad(rows, 1)
        self.above = weights.crossed * beyond[:-1]  # the row above each place
        self.below = weights.crossed * beyond[1:]
        reach = int(min(self.count - 1, pitch * 4))
        self.sizes = np.arange(1, max(3, reach))
        self.gaps = np.arange(0, max(2, min(self.count - 1, int(pitch * 3))))
        self.gap_prices = self._gap_prices()
        self.eighths = rows_of(self.held, self.sizes)
        self.forms = None if ink.pixels is None else forms(ink.pixels, self.sizes)
        self.sign_prices = {sign: self._sign_prices(sign) for sign in set(signs)}

    def _gap_prices(self) -> Array:
        """Return the price of a space [place where it ends, length]."""
        w, places = self.weights, np.arange(self.count)[:, None]
        start = places - self.gaps
        lost = (self.held[places] - self.held[np.maximum(start, 0)]) / self.per_mm
        excess = np.abs(self.gaps / self.pitch - w.space)
        price = w.lost * lost + w.spaces * np.minimum(excess, 0.3 + excess / 4)
        return np.where(start < 0, np.inf, price)

    def _sign_prices(self, sign: Expected) -> Array:
        """Return the price of a sign [place of its bottom, length]."""
        w, places = self.weights, np.arange(self.count)[:, None]
        start = np.maximum(places - self.sizes, 0)
        held = (self.held[places] - self.held[start]) / self.per_mm
        bare = (self.bare[places] - self.bare[start]) / self.per_mm
        off = np.log(self.sizes / (sign.length * self.pitch)) / sign.spread
        off = np.minimum(off**2, w.far + np.abs(off))
        price = w.size * 0.5 * off + self.above[start] + self.below[places]
        if sign.form:
            price = price + self._unlike(sign)
        if sign.shows:
            few = w.few * sign.length * self.pitch / self.per_mm
            price = price + w.bare * bare / self.pitch * self.per_mm
            price = price + w.unseen * np.clip(1 - held / few, 0, 1)
        return np.where(places - self.sizes < 0, np.inf, price)

    def _unlike(self, sign: Expected) -> Array:
        """Return the price of strokes that stand elsewhere than in the sign's usual form."""
        w = self.weights
        by_rows = 1 - self.eighths @ np.array(sign.rows, np.float32)
        if self.forms is None:
            return np.asarray(w.rows * by_rows)
        whole = 1 - self.forms @ np.array(sign.form, np.float32)
        return np.asarray(w.shape * whole + w.eighths * by_rows)

    def told(self) -> list[SignExtent]:
        """Return the cheapest telling with its chances."""
        tops, bottoms, cost = self.cheapest()
        if not cost < NO_WAY:
            raise InputError("the cuts or boxes given leave no room for the signs around them")
        chance_top, chance_bottom = self._chances()
        near = max(1, round(0.1 * self.pitch))
        sure = [
            [
                min(1.0, float(chances[n][max(0, at - near) : at + near + 1].sum()))
                for n, at in enumerate(ends)
            ]
            for chances, ends in ((chance_top, tops), (chance_bottom, bottoms))
        ]
        mm = [[at / self.per_mm for at in ends] for ends in (tops, bottoms)]
        return [SignExtent(*each) for each in zip(*mm, *sure, strict=True)]

    def _first(self) -> Array:
        return np.asarray(self.weights.outside * self.held / self.per_mm)

    def _last(self) -> Array:
        return np.asarray(self.weights.outside * (self.held[-1] - self.held) / self.per_mm)

    def _held_to(self, index: int, costs: Array, *, top: bool) -> Array:
        """Return costs, infinite but where a person has put the sign's end."""
        given = self.fixed.get(index)
        at = None if given is None else (given.top if top else given.bottom)
        if at is None:
            return costs
        kept = np.full_like(costs, np.inf)
        place = min(max(round(at * self.per_mm), 0), self.count - 1)
        kept[place] = costs[place] if np.isfinite(costs[place]) else NO_WAY
        return kept

    def cheapest(self) -> tuple[list[int], list[int], float]:
        """Return the places of all tops and bottoms in the cheapest telling, and its cost."""
        costs, steps = self._first(), []
        for index, sign in enumerate(self.signs):
            jump = None
            if index:
                ways = before(costs, self.gaps) + self.gap_prices
                jump, costs = ways.argmin(1), ways.min(1)
            costs = self._held_to(index, costs, top=True)
            ways = before(costs, self.sizes) + self.sign_prices[sign]
            size = ways.argmin(1)
            costs = self._held_to(index, ways.min(1), top=False)
            steps.append((jump, size))
        costs = costs + self._last()
        at = int(costs.argmin())
        cost = float(costs[at])
        tops, bottoms = [], []
        for jump, size in reversed(steps):
            bottoms.append(at)
            at -= int(self.sizes[size[at]])
            tops.append(at)
            if jump is not None:
                at -= int(self.gaps[jump[at]])
        return tops[::-1], bottoms[::-1], cost

    def _chances(self) -> tuple[list[Array], list[Array]]:
        """Return the chance of each place to be each sign's top, and its bottom."""
        tops, bottoms = [], []
        costs = self._first()
        for index, sign in enumerate(self.signs):
            if index:
                costs = soft(before(costs, self.gaps) + self.gap_prices)
            costs = self._held_to(index, costs, top=True)
            tops.append(costs)
            costs = soft(before(costs, self.sizes) + self.sign_prices[sign])
            costs = self._held_to(index, costs, top=False)
            bottoms.append(costs)
        costs = self._last()
        for index in reversed(range(len(self.signs))):
            bottoms[index] = bottoms[index] + costs
            costs = self._held_to(index, costs, top=False)
            costs = soft(after(costs[:, None] + self.sign_prices[self.signs[index]], self.sizes))
            tops[index] = tops[index] + costs
            costs = self._held_to(index, costs, top=True)
            if index:
                costs = soft(after(costs[:, None] + self.gap_prices, self.gaps))
        return [shares(costs) for costs in tops], [shares(costs) for costs in bottoms]
