"""Whether the score of a hit is a probability: said against true, by deciles, on held-out queries.

    python tests/benchmarks/find_scores.py          # calibration on queries not fitted on
    python tests/benchmarks/find_scores.py --fit    # print the weights for inscribe/sources/find.py

Half of the real poems stand in the library, among likely verse of the generator of ``find.py``;
queries are made from all of them, so that half have no source there, at every kind of damage. Poems
are divided once more: one part is fitted on, the other measured.
"""

from __future__ import annotations

import argparse
import random
import tempfile
from itertools import pairwise
from pathlib import Path

import find as bench
import numpy as np

from inscribe import notation
from inscribe.sources import ranking as engine
from inscribe.sources.library import Library
from inscribe.sources.query import query_of

SIZES = (500, 5000)
KINDS = (*bench.KINDS, "five signs")


def samples(part: int) -> tuple[np.ndarray, np.ndarray]:
    """Return features and truths of the first hits of the queries of one part of the poems."""
    from rapidfuzz import fuzz

    rng = random.Random(part)
    real = bench.poems()
    rows, truth = [], []
    for size in SIZES:
        made = bench.likely_verse(real, rng)
        held = [(i, kana) for n, (i, _, kana) in enumerate(real) if n % 2 == 0]
        texts = held + [(f"made-{n}", next(made)) for n in range(size - len(held))]
        kana = dict(texts)
        with tempfile.TemporaryDirectory() as folder:
            bench.build(texts, Path(folder, "l"))
            with Library(Path(folder, "l")) as library:
                for number, (_, written, own) in enumerate(real):
                    if number % 4 // 2 != part:
                        continue
                    damaged = _damaged(written, rng)
                    query = query_of(notation.parse(damaged))
                    hits = engine.find(library, notation.parse(damaged), 1)
                    if hits:
                        rows.append(
                            engine.features(query, hits[0].gain, hits[0].behind, library.size)
                        )
                        answer = kana[hits[0].text.id]
                        truth.append(float(fuzz.ratio(answer, own) >= 90))
    return np.array(rows), np.array(truth)


def _damaged(written: str, rng: random.Random) -> str:
    kind = rng.choice(KINDS)
    if kind == "five signs":
        start = rng.randrange(max(1, len(written) - 4))
        return written[start : start + 5]
    return bench.damage(written, kind, rng)


def fitted(values: np.ndarray, truth: np.ndarray) -> np.ndarray:
    """Return intercept and coefficients of a logistic regression."""
    design = np.column_stack([np.ones(len(values)), values])
    found = np.zeros(design.shape[1])
    for _ in range(60):
        p = 1 / (1 + np.exp(-np.clip(design @ found, -30, 30)))
        curve = (design * (p * (1 - p))[:, None]).T @ design + 0.3 * np.eye(len(found))
        found = found + np.linalg.solve(curve, design.T @ (truth - p) - 0.3 * found)
    return found


def main() -> None:
    """Print the weights, or the calibration."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--fit", action="store_true")
    if parser.parse_args().fit:
        values, truth = samples(0)
        weights = fitted(
            values[:, :3], truth
        )  # where queries are few, the falling off is not fitted
        print("WEIGHTS = (" + ", ".join(f"{value:.2f}" for value in weights) + ")")
        return
    values, truth = samples(1)
    said = np.array([engine.probability_of(tuple(row)) for row in values])
    print(f"{len(truth)} queries, {truth.mean():.0%} answered rightly with the first hit")
    print("  said   true      n")
    edges = [0, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 1.01]
    for low, high in pairwise(edges):
        inside = (said >= low) & (said < high)
        if inside.any():
            print(f"  {said[inside].mean():.2f}   {truth[inside].mean():.2f}  {inside.sum():5}")
    right = ((said >= engine.NO_SOURCE) == (truth > 0)).mean()
    print(f"source or no source told rightly: {right:.3f}")


if __name__ == "__main__":
    main()
