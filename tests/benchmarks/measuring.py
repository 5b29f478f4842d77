"""Measuring plates that were rendered as photographs, so that the truth is known.

    python tests/benchmarks/measuring.py                    # all looks, 120 plates each
    python tests/benchmarks/measuring.py --plates 20 --look look_a
    python tests/benchmarks/measuring.py --flaws            # are bad pictures told apart?
    python tests/benchmarks/measuring.py --space            # verdicts on space, measured and true

Authors wrote a look each (``looks/``). The first, second, third and fifth are what was tuned on
(the third's author had read the first and the program, the fifth's knew the program). The fourth's
and the sixth's authors had read neither looks nor program, and their pictures were never looked
at: they are what is measured. Corners are given (the truth) or found. The pictures are this
project's own invention: these figures are a check, not a result on photographs.
Needs the extra ``photo`` and Debian's fonts-aoyagi-kouzan-t fonts-kouzan-mouhitsu
fonts-dejima-mincho fonts-aoyagi-soseki fonts-kiloji fonts-seto fonts-ipamj-mincho.
"""

from __future__ import annotations

import argparse
import importlib
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import islice
from pathlib import Path
from typing import Any

import numpy as np

FONTS = {
    "fonts-aoyagi-kouzan-t": "aoyagi-kouzan-t",
    "fonts-kouzan-mouhitsu": "kouzan-mouhitsu",
    "fonts-dejima-mincho": "dejima-mincho",
    "fonts-aoyagi-soseki": "aoyagi-soseki",
    "fonts-kiloji": "kiloji",
    "fonts-seto": "seto",
    "fonts-ipamj-mincho": "ipamj",
}
FLAWS = ("glare", "blur", "bent", "cropped")
FIRST = {
    "look_a": 20_000,
    "look_b": 30_000,
    "look_c": 40_000,
    "look_d": 50_000,
    "look_e": 60_000,
    "look_f": 70_000,
}  # seeds far from those that were looked at
OVERLAP = 0.7


def missing() -> list[str]:
    """Return what is not installed."""
    folder = Path("/usr/share/fonts/truetype")
    found = [package for package, name in FONTS.items() if not (folder / name).is_dir()]
    for module, package in (("cv2", "opencv-python-headless"), ("PIL", "pillow")):
        try:
            importlib.import_module(module)
        except ImportError:
            found.append(package)
    return found


def overlap(one: Any, other: Any) -> float:
    """Return the shared part of two boxes by what they cover together."""
    sides = [
        max(0.0, min(one[i] + one[i + 2], other[i] + other[i + 2]) - max(one[i], other[i]))
        for i in (0, 1)
    ]
    shared = sides[0] * sides[1]
    return shared / (one[2] * one[3] + other[2] * other[3] - shared + 1e-9)


@dataclass
class Score:
    """What was measured on a number of plates, against the truth."""

    plates: int = 0
    overlaps: list[float] = field(default_factory=list)
    sure: list[float] = field(default_factory=list)
    pitches: list[float] = field(default_factory=list)
    ends: list[float] = field(default_factory=list)
    within: list[bool] = field(default_factory=list)
    seconds: list[float] = field(default_factory=list)
    refused: Counter[str] = field(default_factory=Counter)

    def add(self, wanted: Any, taken: Any, found: Any) -> None:
        """Take up one plate."""
        from looks.contract import GAP

        signs = iter(found.signs)
        for column, truth, measured in zip(wanted.columns, taken.boxes, found.columns, strict=True):
            for sign, true in zip(column, truth, strict=True):
                box = next(signs)
                if sign != GAP:
                    self.overlaps.append(overlap(box[1:5], true))
                    self.sure.append(box.certainty)
            top = min(true[1] for true in truth)
            bottom = max(true[1] + true[3] for true in truth)
            pitch = (bottom - top) / len(column)
            self.pitches.append(abs(measured.pitch / pitch - 1))
            self.within.append(abs(measured.pitch - pitch) < 2 * measured.error)
            self.ends += [abs(measured.top - top), abs(measured.bottom - bottom)]

    def rows(self) -> list[tuple[str, str, str]]:
        """Return figures beside what is wanted."""
        if not self.overlaps:
            return [("plates refused", f"{self.refused.total()} of {self.plates}", "")]
        fit = np.array(self.overlaps) >= OVERLAP
        sure = np.array(self.sure)
        rows = [
            ("plates refused", f"{self.refused.total()} of {self.plates}", "few"),
            ("pitch off, median", f"{np.median(self.pitches):.1%}", "3%"),
            ("pitch off, 95%", f"{np.percentile(self.pitches, 95):.1%}", "8%"),
            ("boxes with IoU of 0.7", f"{fit.mean():.1%}", "90%"),
            ("column ends within 0.5 mm", f"{np.mean(np.array(self.ends) <= 0.5):.1%}", "95%"),
            ("processor seconds, mean", f"{np.mean(self.seconds):.2f}", "2"),
            ("processor seconds, worst", f"{np.max(self.seconds):.2f}", ""),
            ("pitch within two errors", f"{np.mean(self.within):.1%}", "about 95%"),
        ]
        for low, high in ((0, 0.6), (0.6, 0.8), (0.8, 0.9), (0.9, 1.01)):
            held = (sure >= low) & (sure < high)
            if held.any():
                said = f"certainty {low:g} to {min(high, 1):g}: said, true"
                rows.append((said, f"{sure[held].mean():.2f}, {fit[held].mean():.2f}", "alike"))
        return rows


def inscription(wanted: Any) -> Any:
    """Return the inscription as a record has it."""
    from looks.contract import GAP

    from inscribe.record import Inscription

    lines = ("".join("［　　］" if s == GAP else s for s in column) for column in wanted.columns)
    return Inscription("back plate", "\n".join(lines))


def measured(look: str, plates: int) -> tuple[Score, Score]:
    """Return the scores of a look with the corners given and with the corners found."""
    from looks.inscriptions import wanted as drawn

    from inscribe.errors import InscribeError
    from inscribe.measuring import Asked, Picture, measure
    from inscribe.record import Plate

    photograph = importlib.import_module(f"looks.{look}").photograph
    scores = Score(), Score()
    for seed in range(FIRST[look], FIRST[look] + plates):
        wanted = drawn(seed)
        taken = photograph(wanted, seed)
        for score, corners in zip(scores, (taken.corners, None), strict=True):
            asked = Asked(Plate(wanted.width, wanted.height), corners)
            score.plates += 1
            start = time.process_time()
            try:
                found = measure(Picture(f"{seed}.png", taken.image), inscription(wanted), asked)
            except InscribeError as error:
                score.refused[error.message] += 1
                continue
            score.seconds.append(time.process_time() - start)
            score.add(wanted, taken, found)
    return scores


def flaws(look: str, plates: int) -> None:
    """Print what is said of flawed pictures."""
    from looks.inscriptions import wanted as drawn

    from inscribe.errors import InscribeError
    from inscribe.measuring import Asked, Picture, measure
    from inscribe.record import Plate

    photograph = importlib.import_module(f"looks.{look}").photograph
    for flaw in FLAWS:
        said: Counter[str] = Counter()
        for seed in range(FIRST[look] + 5000, FIRST[look] + 5000 + plates):
            wanted = drawn(seed)
            wanted = wanted._replace(flaw=flaw, pixels_per_mm=min(wanted.pixels_per_mm, 24))
            taken = photograph(wanted, seed)
            asked = Asked(Plate(wanted.width, wanted.height))
            try:
                measure(Picture("it", taken.image), inscription(wanted), asked)
                said["MEASURED"] += 1
            except InscribeError as error:
                said[error.message.split(":")[0][:60]] += 1
        print(f"{look}, {flaw}: " + "; ".join(f"{n} {text}" for text, n in said.most_common()))


def space(look: str, plates: int) -> None:
    """Print how well space tells sacrifices from slips, by true boxes and by measured ones."""
    import space as simulated
    from looks.contract import Wanted

    from inscribe.collation.space.evidence import weight
    from inscribe.errors import InscribeError
    from inscribe.measuring import Asked, Picture, measure

    photograph = importlib.import_module(f"looks.{look}").photograph
    rng = random.Random(FIRST[look])
    held: dict[str, list[Any]] = {"true": [], "measured": []}
    refused = 0
    for number, plate in enumerate(carved(plates)):
        wanted = Wanted(
            tuple(map(tuple, plate["copy"].split("／"))),
            plate["width"],
            plate["length"],
            rng.uniform(10, 24),
            rng.uniform(0, 15),
            rng.uniform(0, 0.03),
            tuple((top, end) for top, end, _ in plate["columns"]),
        )
        taken = photograph(wanted, FIRST[look] + number)
        bare = inscription(wanted)
        asked = Asked(simulated.inscription_of(plate).plate, taken.corners)
        try:
            found = measure(Picture("it", taken.image), bare, asked)
        except InscribeError:
            refused += 1
            continue
        signs = [tuple(sign[1:5]) for sign in found.signs]
        known = (
            [(min(y for _, y, _, _ in c), max(y + h for _, y, _, h in c)) for c in taken.boxes],
            [(column.top, column.bottom) for column in found.columns],
        )
        for name, ends, boxes in zip(
            held, known, ([box for c in taken.boxes for box in c], signs), strict=True
        ):
            columns = [
                (*end, wide) for end, (_, _, wide) in zip(ends, plate["columns"], strict=True)
            ]
            held[name] += simulated.seen({**plate, "columns": columns, "boxes": boxes})
    print(f"{look}: {plates} plates, {refused} refused, {len(held['true'])} differences")
    for name, rows in held.items():
        chosen = [row for row in rows if row.cause != "habit"]
        truth = np.array([row.cause == "space" for row in chosen], float)
        weights = np.array([weight(row.features) for row in chosen])
        area = simulated.area_under_curve(weights, truth)
        error = simulated.standard_error(area, truth.sum(), len(truth) - truth.sum())
        print(f"  area under the curve by {name} boxes: {area:.3f} ±{error:.3f}")


def carved(count: int) -> Iterator[Any]:
    """Yield plates of all simulated carvers in turn that a look can draw."""
    import space as simulated

    several = [carve(simulated.MEASURE_SEED, 12 * count) for carve in simulated.CARVERS.values()]
    fit = (
        plate for plates in zip(*several, strict=False) for plate in plates if is_drawable(plate)
    )
    yield from islice(fit, count)


def is_drawable(plate: Any) -> bool:
    """Whether a plate has a difference, one to four columns, and all its signs on the metal."""
    columns = plate["copy"].split("／")
    low = max(end for _, end, _ in plate["columns"])
    return (
        any(cause["cause"] != "habit" for cause in plate["causes"])
        and len(columns) == len(plate["columns"]) <= 4
        and min(map(len, columns)) >= 2
        and low < plate["length"] - 0.6
    )


def main() -> None:
    """Print the table that was asked for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--plates", type=int, default=120)
    parser.add_argument("--look", choices=tuple(FIRST))
    parser.add_argument("--flaws", action="store_true")
    parser.add_argument("--space", action="store_true")
    options = parser.parse_args()
    if lacking := missing():
        sys.exit(f"not installed: {', '.join(lacking)}")
    import cv2

    cv2.setNumThreads(1)
    for look in [options.look] if options.look else FIRST:
        if not (Path(__file__).parent / "looks" / f"{look}.py").is_file():
            print(f"{look}: not there")
        elif options.flaws:
            flaws(look, options.plates)
        elif options.space:
            space(look, options.plates)
        else:
            for corners, score in zip(
                ("given", "found"), measured(look, options.plates), strict=True
            ):
                print(f"{look}, corners {corners}")
                for name, value, want in score.rows():
                    print(f"  {name:36}{value:>16}   {want}")


if __name__ == "__main__":
    main()
