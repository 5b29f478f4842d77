"""How far a reading's chance can be trusted, and whether what is wrong is doubted or rivalled.

    python tests/benchmarks/chances.py [--fit] [--tables]

Of each set: how many readings are right first, and among the first three; how many are shown with
no doubt and no other reading, and how many of those are wrong. ``--tables`` prints for each band
of the chance, of whole readings and of words, how often it is right (calibration). ``--fit`` prints
the weights for glossary/verse/reading_chances.tsv, fitted on the sets for looking and on the even
poems of verse_dev.tsv; all other sets are only measured.

A word is right where aligning the letters of the reading with the nearest right reading changes
none of its letters. The rows of the files ``*_measure.tsv`` are for measuring, never for looking.
"""

from __future__ import annotations

import argparse
import sys
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parent))
from reading import letters, poems, rows

DATA = Path(__file__).parent.parent / "data"
BANDS = (0.0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.95, 0.98, 1.01)
_FEW = 15  # texts from which nothing can be fitted
FITTED = ("development, even", "look", "fresh, odd", "manuscript spelling, odd")


class Case(NamedTuple):
    """A text and its right readings, as letters."""

    text: str
    right: tuple[str, ...]


def cases(last: bool = False) -> dict[str, list[Case]]:
    """Return the sets of texts with their right readings; ``last`` adds those kept for the end."""
    found = {
        name: [Case(text, tuple(_accepted(reading))) for text, reading in pairs]
        for name, pairs in poems().items()
    }
    for half in ("look", "measure"):
        found[f"formulas, {half}"] = [
            Case(row[1], tuple(_accepted(row[2]))) for row in rows(DATA / f"formulas_{half}.tsv")
        ]
        for name in ("signatures", "signatures_fresh"):
            found[f"{name}, {half}"] = [
                Case(row[1].replace("／", ""), tuple(map(letters, filter(None, _also(row)))))
                for row in rows(DATA / f"{name}.tsv")
                if row[0] == half
            ]
    for path in sorted(DATA.glob("prose_*.tsv")):
        if last or not path.stem.endswith(("_d_measure", "_f_measure")):
            found[path.stem.replace("_look", ", look").replace("_measure", ", measure")] = list(
                _of_file(path)
            )
    return {name: each for name, each in found.items() if each}


def _of_file(path: Path) -> Iterator[Case]:
    """Yield the rows of a set of texts: text, reading, or text, kana, reading."""
    cell = 2 if "\ntext\tkana" in path.read_text("utf-8") else 1
    for row in rows(path):
        yield Case(row[0], tuple(_accepted(row[cell])))


def _also(row: list[str]) -> list[str]:
    return [row[2], *row[3].split("/")] if len(row) > 3 else [row[2]]


def _accepted(reading: str) -> Iterator[str]:
    """Yield the letters of each right reading: others after " | ", or of a word in brackets."""
    import re

    for whole in reading.split(" | "):
        yield letters(re.sub(r" ?\([^)]*\)", "", whole))
        yield letters(re.sub(r"\S+ \(([^)]*)\)", r"\1", whole))


class Shown(NamedTuple):
    """What is shown of a text: readings, whether one is doubted, chances."""

    readings: list[str]
    doubted: bool
    whole: float
    words: list[tuple[float, bool]]  # chance of each word, and whether it is right


def shown(case: Case) -> Shown:
    """Read a text as a user does and hold the reading against the right ones."""
    from inscribe.reading import read_text

    found = read_text(case.text, alternatives=True)
    best = found.proposals[0]
    readings = [letters(each.romaji) for each in found.proposals]
    words = list(zip(best.chances.words, _words_right(best, case.right), strict=False))
    return Shown(readings, bool(found.doubts), best.chance, words)


def _words_right(proposal, right: tuple[str, ...]) -> list[bool]:  # type: ignore[no-untyped-def]
    from rapidfuzz.distance import Levenshtein

    said = ["" if token.romaji == "(kaō)" else letters(token.romaji) for token in proposal.tokens]
    whole = "".join(said)
    truth = min(right, key=lambda each: Levenshtein.distance(whole, each))
    changed = {edit.src_pos for edit in Levenshtein.editops(whole, truth)}
    result, at = [], 0
    for word in said:
        result.append(not any(at <= place < at + max(1, len(word)) for place in changed))
        at += len(word)
    return result


Row = tuple[dict[str, float], bool]  # what speaks for a reading, and whether it is right


def fit() -> None:
    """Print the rows of the table, fitted on the sets for looking."""
    from inscribe.reading.words import chances

    told: list[tuple[str, dict[str, float]]] = []
    weigh = chances.chance

    def noted(kind: str, evidence: dict[str, float]) -> float:
        told.append((kind, dict(evidence)))
        return weigh(kind, evidence)

    chances.chance = noted  # before any reader is imported  # type: ignore[assignment]
    words: dict[str, list[Row]] = defaultdict(list)
    wholes: dict[str, list[tuple[list[tuple[str, dict[str, float]]], dict[str, float], bool]]]
    wholes = defaultdict(list)
    for name, each in cases().items():
        if not any(part in name for part in FITTED):
            continue
        for case in each:
            told.clear()
            result = shown(case)
            of_words = [row for row in told if row[0].endswith("word")]
            of_wholes = [row for row in told if row[0].endswith("whole")]
            right = result.readings[0] in case.right
            for (kind, evidence), (_, good) in zip(of_words, result.words, strict=False):
                words[kind].append((evidence, good))
            if len(of_wholes) == 1:
                wholes[of_wholes[0][0]].append((of_words, of_wholes[0][1], right))
    print("kind\tevidence\tweight")
    weights = {kind: fitted(rows_) for kind, rows_ in words.items()}
    for kind in sorted(words):
        _print_weights(kind, weights[kind])
    for kind in sorted(wholes):
        if len(wholes[kind]) < _FEW:
            print(f"# {kind}: too few texts; keep its rows")
            continue
        made = []
        for of_words, evidence, right in wholes[kind]:
            said = [_sure(weights[each], told_) for each, told_ in of_words]
            known = {"words": chances.together(said)} if "words" in evidence else {}
            made.append(({**evidence, **known}, right))
        _print_weights(kind, fitted(made))


def _sure(weights: dict[str, float], evidence: dict[str, float]) -> float:
    import math

    odds = weights["certain"] + sum(weights.get(k, 0.0) * v for k, v in evidence.items())
    return 1 / (1 + math.exp(-odds))


def _print_weights(kind: str, weights: dict[str, float]) -> None:
    for evidence, weight in weights.items():
        if abs(weight) >= 0.005 or evidence == "certain":
            print(f"{kind}\t{evidence}\t{weight:.2f}")


def fitted(rows_: list[Row], held: float = 1.0) -> dict[str, float]:
    """Return the weights of a logistic regression, held small by ``held``."""
    import numpy as np

    names = sorted({name for evidence, _ in rows_ for name in evidence})
    x = np.array([[1.0, *(evidence.get(n, 0.0) for n in names)] for evidence, _ in rows_])
    y = np.array([float(right) for _, right in rows_])
    w = np.zeros(x.shape[1])
    ridge = held * np.eye(len(w))
    ridge[0, 0] = 1e-6
    for _ in range(30):
        p = 1 / (1 + np.exp(-x @ w))
        gradient = x.T @ (y - p) - ridge @ w
        w += np.linalg.solve(x.T @ (x * (p * (1 - p))[:, None]) + ridge, gradient)
    return dict(zip(["certain", *names], map(float, w), strict=True))


def main() -> None:
    """Print the table, and what else is asked for."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--fit", action="store_true")
    parser.add_argument("--tables", action="store_true")
    parser.add_argument("--only", default="")
    parser.add_argument("--last", action="store_true", help="the sets kept for the end too")
    options = parser.parse_args()
    if options.fit:
        fit()
        return
    bands: dict[str, dict[int, list[bool]]] = defaultdict(lambda: defaultdict(list))
    print(f"{'':44}{'texts':>7}{'first':>7}{'three':>7}{'silent':>8}{'wrong':>7}{'chance':>8}")
    for name, each in cases(options.last).items():
        if options.only and options.only not in name:
            continue
        results = [(case, shown(case)) for case in each]
        first = sum(result.readings[0] in case.right for case, result in results)
        three = sum(any(r in case.right for r in result.readings[:3]) for case, result in results)
        silent = [
            result.readings[0] in case.right
            for case, result in results
            if not result.doubted and len(result.readings) == 1
        ]
        mean = sum(result.whole for _, result in results) / len(results)
        wrong = silent.count(False)
        n = len(each)
        print(f"{name:44}{n:7}{first:7}{three:7}{len(silent):8}{wrong:7}{mean:8.2f}")
        fitted = any(part in name for part in FITTED)
        half = "fitted" if fitted else "measured"
        for case, result in results:
            bands[f"whole readings, {half}"][_band(result.whole)].append(
                result.readings[0] in case.right
            )
            for chance, right in result.words:
                bands[f"words, {half}"][_band(chance)].append(right)
    if options.tables:
        for title, by_band in bands.items():
            print(f"\n{title:28}{'number':>8}{'right':>8}")
            for band in sorted(by_band):
                right = by_band[band]
                said = f"{BANDS[band]:.2f} to {min(1, BANDS[band + 1]):.2f}"
                print(f"{said:28}{len(right):8}{sum(right) / len(right):8.2f}")


def _band(chance: float) -> int:
    return max(at for at, least in enumerate(BANDS[:-1]) if chance >= least)


if __name__ == "__main__":
    main()
