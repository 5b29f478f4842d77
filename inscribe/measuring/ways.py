"""Ways down a column, place by place: what a step costs, and what all ways cost together.

Costs are in nats, infinite where no way leads.
"""

from __future__ import annotations

import numpy as np

from inscribe.measuring.view import Array


def before(costs: Array, lengths: Array) -> Array:
    """Return ``costs`` at [place - length]; infinite above the first place."""
    at = np.arange(len(costs))[:, None] - lengths
    return np.asarray(np.where(at < 0, np.inf, costs[np.maximum(at, 0)]))


def after(prices: Array, lengths: Array) -> Array:
    """Return ``prices`` at [place + length, length]; infinite below the last place."""
    at = np.arange(len(prices))[:, None] + lengths
    found = prices[np.minimum(at, len(prices) - 1), np.arange(len(lengths))]
    return np.asarray(np.where(at >= len(prices), np.inf, found))


def soft(costs: Array) -> Array:
    """Return the cost of all ways together, along the last axis."""
    least = costs.min(1)
    least = np.where(np.isfinite(least), least, 0.0)
    with np.errstate(divide="ignore"):
        return np.asarray(least - np.log(np.exp(least[:, None] - costs).sum(1)))


def shares(costs: Array) -> Array:
    """Return the chance of each place, given the cost of all ways that pass it."""
    shares = np.exp(costs.min() - costs)
    return np.asarray(shares / shares.sum())
