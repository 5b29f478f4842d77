"""Space verdicts on simulated plates: area under the ROC curve and calibration by deciles.

    python tests/benchmarks/space.py            # measure on plates the weights were not fitted on
    python tests/benchmarks/space.py --fit      # print the rows of space_weights.tsv

The simulated carver knows nothing of the model. He plans by eye, with an error of a tenth or more;
crowds gradually as the end comes near; writes words shorter, drops particles and leaves off the end
when he believes that he runs out of room; sometimes starts a new column at the end of a phrase; and
slips, skipping signs or writing a word shorter by habit, anywhere. The model sees none of this: it
sees, to 0.3 mm, where the plate and the columns begin and end, and the differences. The plates that
are measured come from other ranges of plates and hands than those fitted on (see ``RANGES``).
"""

from __future__ import annotations

import argparse
import math
import random
from collections.abc import Iterator
from dataclasses import astuple, dataclass, fields

import numpy as np

from inscribe.collation.model import Group, Span
from inscribe.collation.space import evidence
from inscribe.collation.space.measures import measures_of
from inscribe.record import ColumnMeasure, Inscription, Plate
from inscribe.signs import Sign, transcription


@dataclass(frozen=True)
class Ranges:
    """What plates and hands vary between."""

    height: tuple[float, float]
    pitch: tuple[float, float]
    signs: tuple[int, int]
    misjudged: float  # standard error of the carver's eye
    slips: float  # chance of a slip at a word
    temper: float  # how readily he gives something up when short of room


RANGES = {
    "fitted": Ranges((92, 99), (3.4, 5.4), (18, 60), 0.10, 0.05, 0.5),
    "measured": Ranges((70, 110), (3.0, 6.2), (12, 80), 0.15, 0.06, 0.35),
}


@dataclass(frozen=True)
class Word:
    """A word of the source: its length in signs, and the shorter writing it has, if any."""

    length: int
    shorter: int
    is_particle: bool


@dataclass
class Carved:
    """A plate as carved: the copy's columns, the differences, and why each came about."""

    columns: list[int]
    lengths: list[float]
    differences: list[tuple[Group, bool]]
    need: int
    plate: Plate
    top: float


def source(rng: random.Random, signs: int) -> list[Word]:
    """Return a source of about ``signs`` signs."""
    words: list[Word] = []
    while sum(word.length for word in words) < signs:
        length = rng.choice((1, 1, 2, 2, 3, 3, 4))
        shorter = (
            max(1, length - rng.choice((1, 2))) if length > 1 and rng.random() < 0.6 else length
        )
        words.append(Word(length, shorter, length == 1 and rng.random() < 0.7))
    return words


def carve(rng: random.Random, ranges: Ranges) -> Carved:
    """Return one carved plate."""
    words = source(rng, rng.randint(*ranges.signs))
    need = sum(word.length for word in words)
    height, top = rng.uniform(*ranges.height), rng.uniform(2.5, 7.0)
    natural = rng.uniform(*ranges.pitch)
    usable = height - top - max(1.5, top + rng.gauss(0, 1.0))
    wished = need * natural / usable
    count = max(1, min(5, round(wished + rng.choice((-0.35, -0.2, 0.0, 0.2, 0.5, 0.8)))))
    eye = math.exp(rng.gauss(0, ranges.misjudged))
    squeeze = rng.uniform(0.68, 0.85)  # the tightest he will write
    columns, lengths, differences = [0], [0.0], []
    at = 0
    for index, word in enumerate(words):
        left = need - sum(w.length for w in words[:index])
        room = (count - len(columns)) * usable + usable - lengths[-1]
        short = left * natural * eye / max(room, 0.1)
        pitch = natural * min(1.0, max(squeeze, 1 / short if short > 1 else 1.0))
        written, why = _written(
            rng, word, short * squeeze, left, room / (natural * squeeze), ranges
        )
        start = at
        at += word.length
        if why is not None:
            copied = sum(columns)
            kind = "omitted" if written == 0 else "spelling"
            span = Span(copied, copied + written, "字" * written)
            differences.append((Group(kind, span, Span(start, at, "あ" * word.length)), why))
        for _ in range(written):
            step = pitch * math.exp(rng.gauss(0, 0.04))
            if lengths[-1] + step > usable * 1.02 and len(columns) < count:
                columns.append(0)
                lengths.append(0.0)
            columns[-1] += 1
            lengths[-1] += step
        if len(columns) < count and lengths[-1] > 0.8 * usable and rng.random() < 0.1:
            columns.append(0)
            lengths.append(0.0)
    if columns[-1] == 0 and len(columns) > 1:
        columns.pop()
        lengths.pop()
    return Carved(columns, lengths, _joined(differences), need, Plate(14.5, height), top)


def _written(
    rng: random.Random, word: Word, short: float, left: int, fits: float, ranges: Ranges
) -> tuple[int, bool | None]:
    """Return how many signs of a word are written, and whether space or a slip decided it."""
    if fits < 1:
        return 0, True
    if rng.random() < ranges.slips:
        return (
            (0, False)
            if rng.random() < 0.5 or word.shorter == word.length
            else (word.shorter, False)
        )
    pressed = min(1.0, max(0.0, (short - 0.85) * 4)) * ranges.temper * 2
    if word.shorter < word.length and rng.random() < pressed:
        return word.shorter, True
    if word.is_particle and rng.random() < pressed * 0.4:
        return 0, True
    if short > 1.15 and left < 8 and rng.random() < pressed * 0.5:
        return 0, True
    return word.length, None


def _joined(differences: list[tuple[Group, bool]]) -> list[tuple[Group, bool]]:
    """Join neighbouring omissions, as a collation shows them."""
    found: list[tuple[Group, bool]] = []
    for group, why in differences:
        last = found[-1] if found else None
        if (
            last
            and group.kind == last[0].kind == "omitted"
            and last[0].source.end == group.source.start
        ):
            text = last[0].source.text + group.source.text
            joined = Span(last[0].source.start, group.source.end, text)
            found[-1] = (Group("omitted", last[0].copy, joined), why or last[1])
        else:
            found.append((group, why))
    return found


def observed(plate: Carved, rng: random.Random) -> Iterator[tuple[evidence.Features, bool]]:
    """Yield what the program sees of each difference of a plate, and the truth."""
    if not sum(plate.columns) or min(plate.columns) == 0:
        return
    copy = transcription([[[Sign("字")] * signs for signs in plate.columns]])

    def noise() -> float:
        return rng.gauss(0, 0.15)

    measures = tuple(
        ColumnMeasure(plate.top + noise(), plate.top + length + noise()) for length in plate.lengths
    )
    text = "\n".join("字" * signs for signs in plate.columns)
    found = measures_of(copy, Inscription("back plate", text, plate=plate.plate, columns=measures))
    if found is None or not found.pitches:
        return
    for group, why in plate.differences:
        yield evidence.features(group, copy, plate.need, found), why


def sample(name: str, plates: int, seed: int) -> tuple[np.ndarray, np.ndarray]:
    """Return features and truths of the differences of so many plates."""
    rng = random.Random(seed)
    pairs = [pair for _ in range(plates) for pair in observed(carve(rng, RANGES[name]), rng)]
    return np.array([astuple(f) for f, _ in pairs]), np.array([why for _, why in pairs], float)


def fitted(values: np.ndarray, truth: np.ndarray) -> np.ndarray:
    """Return intercept and coefficients of a logistic regression with classes of equal weight."""
    design = np.column_stack([np.ones(len(values)), values])
    share = truth.mean()
    weights = np.where(truth > 0, 0.5 / share, 0.5 / (1 - share))
    found = np.zeros(design.shape[1])
    for _ in range(50):
        p = 1 / (1 + np.exp(-design @ found))
        gradient = design.T @ (weights * (truth - p)) - 1e-3 * found
        curve = (design * (weights * p * (1 - p))[:, None]).T @ design + 1e-3 * np.eye(len(found))
        found = found + np.linalg.solve(curve, gradient)
    return found


def area_under_curve(score: np.ndarray, truth: np.ndarray) -> float:
    """Return the chance that a sacrifice is scored above a slip."""
    order = score.argsort(kind="stable")
    ranks = np.empty(len(score))
    ranks[order] = np.arange(1, len(score) + 1)
    for value in np.unique(score):
        same = score == value
        ranks[same] = ranks[same].mean()
    positive = truth.sum()
    total = ranks[truth > 0].sum() - positive * (positive + 1) / 2
    return float(total / (positive * (len(truth) - positive)))


def main() -> None:
    """Print the weights, or the measurements."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--fit", action="store_true")
    options = parser.parse_args()
    if options.fit:
        values, truth = sample("fitted", 6000, 7)
        names = ["intercept", *(field.name for field in fields(evidence.Features))]
        for name, coefficient in zip(names, fitted(values, truth), strict=True):
            print(f"{name}\t{coefficient:.2f}")
        return
    for name, seed in (("fitted", 11), ("measured", 13)):
        values, truth = sample(name, 3000, seed)
        weights = np.array([evidence.weight(evidence.Features(*row)) for row in values])
        odds = truth.mean() / (1 - truth.mean())
        print(f"plates like those {name}: {len(truth)} differences, {truth.mean():.0%} for space")
        print(f"  area under the ROC curve {area_under_curve(weights, truth):.3f}")
        said = weights * odds / (1 + weights * odds)
        print("  decile   said   true")
        worst = 0.0
        for part in np.array_split(said.argsort(kind="stable"), 10):
            worst = max(worst, abs(said[part].mean() - truth[part].mean()))
            print(f"         {said[part].mean():6.2f} {truth[part].mean():6.2f}")
        print(f"  largest difference {worst:.3f}")


if __name__ == "__main__":
    main()
