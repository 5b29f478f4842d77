"""Space verdicts on simulated plates: fitted on all carvers but one, measured on that one, in turn.

    python tests/benchmarks/space.py            # every pairing, and the table as it stands
    python tests/benchmarks/space.py --seed 404 # measured on plates that nobody has chosen with
    python tests/benchmarks/space.py --fit      # print the rows of glossary/.../space_weights.tsv
    python tests/benchmarks/space.py --hidden carver_x.py   # the table, on another carver

The carvers in ``carvers/`` are by several authors who have not read the model or each other. Each
gives plates with the true cause of every difference; the program sees what was measured and its own
collation. Told apart are sacrifices to space from slips and other wordings; what a carver writes
shorter by habit cannot be told from either, counts a quarter in fitting, and is not measured.

Each carver's plates are drawn until every one of his worlds (equal margins, no plan before the
first cut, an even hand ...) has 120 differences in fitting and 500 in measuring (or twice as many
plates); in fitting, each carver counts the same, and of a carver each world. The differences of
one plate go together, so that 120 of a world may be some twenty plates: the area of a world then
came out at .82 that is .90 on 1,200. The whole takes ten minutes of processor time.

Printed for each carver and each of his worlds: the area under the ROC curve of the weight with its
standard error (Hanley and McNeil) and of the plain rule "how few signs had fitted below the last
one"; the area were the same evidence weighed by this carver's own plates (``best``: what it can
tell of him at all); the mean difference of chance and truth over deciles of the chance, its
largest, and what that mean would be by chance alone with so few differences were the chances
exactly right. A carver is a check, not the world: no figure is a result about real plates.
"""

from __future__ import annotations

import argparse
import importlib.util
import math
import sys
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import astuple, dataclass, fields
from typing import Any

import numpy as np
from carvers import carver_a, carver_b, carver_c, carver_d
from carvers.contract import applied

from inscribe.collation import Group, collate
from inscribe.collation.space.evidence import (
    SUREST,
    Case,
    Features,
    features,
    saves_space,
    weight,
)
from inscribe.collation.space.measures import measures_of
from inscribe.notation import parse
from inscribe.record import ColumnMeasure, Inscription, Obstacle, Plate, SignBox

Carve = Callable[[int, int], Sequence[Any]]
CARVERS: dict[str, Carve] = {
    "a": carver_a.plates,
    "b": carver_b.plates,
    "c": carver_c.plates,
    "d": carver_d.plates,
}
EACH, EACH_MEASURED = 120, 500  # differences of each world
FIT_SEED, MEASURE_SEED = 101, 202
DRAWN = 400  # plates that are simulated at once; those of worlds that have enough are passed over
DRAWS = 20  # at most
HABIT = 0.25  # how much a difference by habit counts in fitting
WANTED_AREA, WANTED_CALIBRATION = 0.88, 0.10
RIDGE = 3.0  # penalty on coefficients of features scaled to their spread


@dataclass(frozen=True)
class Seen:
    """One difference: what the program sees, the plain rule, and the truth."""

    features: Features
    signs_below: float
    cause: str
    world: str


@dataclass(frozen=True)
class Set:
    """Many differences as arrays: features (n, k), signs below (n), truth (n), weights (n)."""

    values: np.ndarray
    below: np.ndarray
    truth: np.ndarray
    counts: np.ndarray
    worlds: np.ndarray


def inscription_of(plate: Any) -> Inscription:
    """Return a simulated plate as a record has it."""
    boxes = plate["boxes"] or []
    return Inscription(
        "back plate",
        plate["copy"].replace("／", "\n"),
        plate=Plate(plate["width"], plate["length"]),
        columns=tuple(ColumnMeasure(top, end, None, wide) for top, end, wide in plate["columns"]),
        boxes=tuple(SignBox(n, *box) for n, box in enumerate(boxes)),
        takes_room=tuple(Obstacle(*each) for each in plate["takes_room"]),
    )


def seen(plate: Any) -> Iterator[Seen]:
    """Yield what the program sees of each difference of a plate that saves signs."""
    if applied(plate) != plate["copy"].replace("／", ""):
        raise ValueError(f"the causes do not make the copy: {plate}")
    inscription = inscription_of(plate)
    copy, source = inscription.transcription, parse(plate["source"].replace("／", "\n"))
    found = collate(copy, source)
    measures = measures_of(copy, inscription)
    if measures is None or not measures.pitches:
        return
    case = Case(copy, source, found.differences, found.window, measures)
    for group in found.differences:
        cause = cause_of(plate, group)
        if saves_space(group) and cause:
            yield Seen(features(group, case), measures.signs_below, cause, plate["world"])


def cause_of(plate: Any, group: Group) -> str:
    """Return the cause to which most signs of a difference are due, or nothing."""
    start, end = group.source.start, group.source.end
    found: dict[str, float] = {}
    for cause in plate["causes"]:
        first, last = cause["first"], cause["last"]
        if first < 0 or (last < start - 1 or first > end):
            continue
        written = cause["copy_last"] - cause["copy_first"] + (cause["copy_first"] >= 0)
        inside = min(end, last + 1) - max(start, first) > 0
        weight = max(0.1, last - first + 1 - written) if inside else 0.01
        found[cause["cause"]] = found.get(cause["cause"], 0.0) + weight
    return max(found, key=lambda cause: found[cause], default="")


def drawn(carve: Carve, seed: int, wanted: int) -> Iterator[Seen]:
    """Yield the differences of one carver, about ``wanted`` of each of his worlds."""
    found: Counter[str] = Counter()
    plates: Counter[str] = Counter()
    for draw in range(DRAWS):
        for plate in carve(seed * 1000 + draw, DRAWN):
            world = plate["world"]
            if found[world] < wanted and plates[world] < 2 * wanted:
                plates[world] += 1
                for row in seen(plate):
                    found[world] += row.cause != "habit"
                    yield row
        if all(found[world] >= wanted or plates[world] >= 2 * wanted for world in plates):
            return


def sample(carve: Carve, seed: int, wanted: int) -> Set:
    """Return the differences of one carver, about ``wanted`` of each of his worlds."""
    rows = list(drawn(carve, seed, wanted))
    return Set(
        np.array([astuple(row.features) for row in rows]),
        np.array([row.signs_below for row in rows]),
        np.array([row.cause == "space" for row in rows], float),
        np.array([HABIT if row.cause == "habit" else 1.0 for row in rows]),
        np.array([row.world for row in rows]),
    )


def evened(data: Set, wanted: int) -> np.ndarray:
    """Return what each difference counts in fitting: 1000 in all, each world the same."""
    counts = data.counts.copy()
    for world in np.unique(data.worlds):
        chosen = data.worlds == world
        counts[chosen] /= max(counts[chosen].sum(), wanted / 4)
    return 1000 * counts / counts.sum()


def fitted(sets: Sequence[Set], wanted: int = EACH) -> np.ndarray:
    """Return intercept and coefficients of a logistic regression, each carver of equal weight."""
    values = np.vstack([each.values for each in sets])
    truth = np.concatenate([each.truth for each in sets])
    counts = np.concatenate([evened(each, wanted) for each in sets])
    spread = values.std(axis=0) + 1e-9
    design = np.column_stack([np.ones(len(values)), values / spread])
    penalty = np.diag([1e-6] + [RIDGE] * values.shape[1])
    found = np.zeros(design.shape[1])
    for _ in range(40):
        chance = 1 / (1 + np.exp(-design @ found))
        gradient = design.T @ (counts * (truth - chance)) - penalty @ found
        curve = (design * (counts * chance * (1 - chance))[:, None]).T @ design + penalty
        found = found + np.linalg.solve(curve, gradient)
    return np.concatenate([found[:1], found[1:] / spread])


def area_under_curve(score: np.ndarray, truth: np.ndarray) -> float:
    """Return the chance that a sacrifice is scored above anything else."""
    order = score.argsort(kind="stable")
    ranks = np.empty(len(score))
    ranks[order] = np.arange(1, len(score) + 1)
    for value in np.unique(score):
        same = score == value
        ranks[same] = ranks[same].mean()
    positive = truth.sum()
    if positive in (0, len(truth)):
        return float("nan")
    total = ranks[truth > 0].sum() - positive * (positive + 1) / 2
    return float(total / (positive * (len(truth) - positive)))


def calibration(chance: np.ndarray, truth: np.ndarray) -> tuple[float, float]:
    """Return the mean and the largest difference of chance and truth over deciles of the chance."""
    parts = np.array_split(chance.argsort(kind="stable"), min(10, len(chance)))
    errors = [abs(chance[part].mean() - truth[part].mean()) for part in parts]
    return float(np.mean(errors)), float(max(errors))


def standard_error(area: float, positive: float, negative: float) -> float:
    """Return the standard error of an area under the curve (Hanley and McNeil, 1982)."""
    if not positive or not negative:
        return float("nan")
    both = area / (2 - area) - area**2
    other = 2 * area**2 / (1 + area) - area**2
    spread = area * (1 - area) + (positive - 1) * both + (negative - 1) * other
    return math.sqrt(max(spread, 0.0) / (positive * negative))


def by_chance(chance: np.ndarray, times: int = 50) -> float:
    """Return the mean difference of ``calibration`` that comes about were ``chance`` the truth."""
    draw = np.random.default_rng(1)
    tried = [(draw.random(len(chance)) < chance).astype(float) for _ in range(times)]
    return float(np.mean([calibration(chance, truth)[0] for truth in tried]))


def report(chance: np.ndarray, data: Set, best: np.ndarray | None = None) -> None:
    """Print the figures of one carver, and, where ``best`` is given, of each of his worlds."""
    measured = data.counts == 1.0
    print(
        "  world                n  space  weight         plain   best"
        "  calibration (largest; by chance)"
    )
    for world in ["all", *(np.unique(data.worlds) if best is not None else [])]:
        chosen = measured & ((data.worlds == world) | (world == "all"))
        said, truth = chance[chosen], data.truth[chosen]
        plain = area_under_curve(-data.below[chosen], truth)
        mean, largest = calibration(said, truth)
        area = area_under_curve(said, truth)
        at_best = (
            "" if best is None or best is chance else f"{area_under_curve(best[chosen], truth):.3f}"
        )
        error = standard_error(area, truth.sum(), len(truth) - truth.sum())
        short = area < WANTED_AREA or mean > WANTED_CALIBRATION or area < plain
        print(
            f"  {world:18}{len(truth):5}{truth.mean():6.0%}{area:8.3f} ±{error:.3f}{plain:7.3f}"
            f"{at_best:>7}{mean:8.3f} ({largest:.2f}; {by_chance(said):.3f})" + "  short" * short
        )


def chances(weights: np.ndarray, values: np.ndarray) -> np.ndarray:
    """Return the chance of space, as far from 0 and 1 as the program goes."""
    total = np.clip(weights[0] + values @ weights[1:], -SUREST, SUREST)
    return np.asarray(1 / (1 + np.exp(-total)))


def pairings(sets: dict[str, Set], others: dict[str, Set]) -> None:
    """Print each carver measured by weights fitted on the others, two together and one alone."""
    for measured in sets:
        rest = [name for name in sets if name != measured]
        best = chances(fitted([sets[measured]]), others[measured].values)
        for names in (rest, *([name] for name in rest)):
            found = fitted([sets[name] for name in names])
            data = others[measured]
            print(f"fitted on {' and '.join(names)}, measured on {measured}")
            report(chances(found, data.values), data, best if len(names) > 1 else None)


def as_it_stands(others: dict[str, Set]) -> None:
    """Print the figures of the table of weights."""
    for name, data in others.items():
        weights = np.array([weight(Features(*row)) for row in data.values])
        print(f"the table as it stands, measured on {name}")
        chance = weights / (1 + weights)
        report(chance, data, chance if name not in CARVERS else None)


def hidden(path: str) -> Any:
    """Return ``plates`` of a carver who is not among those of ``carvers/``."""
    spec = importlib.util.spec_from_file_location("hidden_carver", path)
    if spec is None or spec.loader is None:
        raise SystemExit(f"{path} is no Python file.")
    module = importlib.util.module_from_spec(spec)
    sys.modules["hidden_carver"] = module
    spec.loader.exec_module(module)
    return module.plates


def main() -> None:
    """Print the weights, or the measurements."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--fit", action="store_true")
    parser.add_argument("--hidden", help="a carver's file: measure the table on him, and no more")
    parser.add_argument("--seed", type=int, default=MEASURE_SEED, help="of the plates measured")
    options = parser.parse_args()
    if options.hidden:
        plates = hidden(options.hidden)
        as_it_stands({options.hidden: sample(plates, options.seed, EACH_MEASURED)})
        return
    sets = {name: sample(carve, FIT_SEED, EACH) for name, carve in CARVERS.items()}
    if options.fit:
        names = ["intercept", *(field.name for field in fields(Features))]
        for name, coefficient in zip(names, fitted(list(sets.values())), strict=True):
            print(f"{name}\t{coefficient:.2f}")
        return
    others = {n: sample(carve, options.seed, EACH_MEASURED) for n, carve in CARVERS.items()}
    pairings(sets, others)
    as_it_stands(others)


if __name__ == "__main__":
    main()
