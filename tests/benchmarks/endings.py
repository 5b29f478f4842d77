"""How well endings that are not written are read, and the weights of what words agree in.

    python tests/benchmarks/endings.py [--fit] [--show N]

From printed poems that the program reads rightly (the odd ones of three sets), texts are made
by rule: voicing marks are left out, and of most inflected words written with one run of kanji the
kana of the ending; each poem several times, by chance. What they say is known. ``--fit`` prints the
rows of glossary/chances/verse_agreement.tsv, fitted on these and on the same poems that only lack
voicing marks, by logistic regression over the nearest readings of each; poems are parted into
halves first, and the share that is right of the half not fitted on is told on stderr.
"""

from __future__ import annotations

import argparse
import math
import random
import re
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parent))
from reading import DEVELOPMENT, FRESH, HYAKUNIN, letters, rows, unvoiced

TIMES, SHARE = 5, 0.6  # texts made of a poem, and of its endings the share left out
UNIT = 700.0  # of MeCab's units make a reading e times less likely
_MOST = 24  # readings held against each other
_ROUNDS, _RATE, _SHRINK = 60, 0.3, 2e-4
_LEAST = 60  # a smaller cost is no row
_ENDING = re.compile("^([\u4e00-\u9fff々]+)([\u3041-\u3096]{1,2})$")


class Made(NamedTuple):
    """A text and the letters of what it says."""

    poem: str
    text: str
    said: str


def printed() -> Iterator[tuple[str, str, str]]:
    """Yield the odd poems: a name, the text, the reading."""
    sets = (("h", HYAKUNIN, 1, 3), ("d", DEVELOPMENT, 2, 4), ("f", FRESH, 2, 4))
    for name, path, text, reading in sets:
        for row in rows(path):
            if int(row[0]) % 2:
                yield f"{name}{row[0]}", row[text].replace("／", ""), row[reading]


def made(times: int = TIMES) -> list[Made]:
    """Return the texts made of printed poems."""
    from inscribe.reading import read_text

    chance = random.Random(1)
    found = []
    for poem, text, reading in printed():
        best = read_text(text, "verse").proposals[0]
        if letters(best.romaji) != letters(reading):
            continue
        said = letters(reading)
        found.append(Made(poem, unvoiced(text), said))
        for _ in range(times):
            surfaces = [
                chance.choice(shorter)
                if (shorter := _shorter(token.surface, token.part_of_speech))
                and chance.random() < SHARE
                else token.surface
                for token in best.tokens
            ]
            found.append(Made(poem, unvoiced("".join(surfaces)), said))
    return list(dict.fromkeys(found))


def _shorter(surface: str, part_of_speech: str) -> list[str]:
    """Return how a word may be written without its ending, or without a part of it."""
    match = _ENDING.match(surface)
    if match is None or not part_of_speech.startswith(("動詞", "形容詞")):
        return []
    stem, ending = match.groups()
    if len(ending) == 1:
        return [stem]
    if part_of_speech.startswith("形容詞"):
        return [stem + ending[1]] if ending[0] == "し" else []
    return [stem, stem + ending[1]] if ending[1] in "るれ" else []


Case = list[tuple[float, Counter[str], bool]]  # of each reading: its cost, its traits, is it right


def case_of(text: str, said: str) -> Case:
    """Return the nearest readings of a text."""
    from inscribe.forms import normalise_text
    from inscribe.reading.verse import reader, rivals
    from inscribe.reading.verse.agreement import traits

    rivals.agreeing = reader.agreeing = lambda reading: reading
    best = reader.read_verse(normalise_text(text).text)
    own, others = rivals.ways(best, _MOST)
    return [
        (
            each.cost / UNIT,
            Counter(traits(each.reading.words, each.reading.phrases)),
            letters(rivals.sounds_of(each.reading.words)) == said,
        )
        for each in ([own] if own else []) + others
    ]


def fitted(cases: list[Case]) -> dict[str, float]:
    """Return the weights under which the right readings are likeliest."""
    weights: dict[str, float] = {}
    squares: dict[str, float] = {}
    told = [case for case in cases if any(right for *_, right in case)]
    chance = random.Random(1)
    for _ in range(_ROUNDS):
        chance.shuffle(told)
        for case in told:
            slope: dict[str, float] = {}
            odds = _odds(case, weights)
            right = sum(o for o, (*_, is_right) in zip(odds, case, strict=True) if is_right)
            for share, (_, traits, is_right) in zip(odds, case, strict=True):
                wrong = share - (share / right if is_right and right else 0.0)
                for trait, count in traits.items():
                    slope[trait] = slope.get(trait, 0.0) - wrong * count
            for trait, much in slope.items():
                much += _SHRINK * len(told) * weights.get(trait, 0.0) / 100
                squares[trait] = squares.get(trait, 1.0) + much * much
                step = _RATE * much / math.sqrt(squares[trait])
                weights[trait] = weights.get(trait, 0.0) - step
    return weights


def _odds(case: Case, weights: dict[str, float]) -> list[float]:
    costs = [c + sum(weights.get(t, 0.0) * n for t, n in traits.items()) for c, traits, _ in case]
    least = min(costs)
    raw = [math.exp(least - cost) for cost in costs]
    total = sum(raw)
    return [each / total for each in raw]


def right_share(cases: list[Case], weights: dict[str, float]) -> tuple[int, int, int]:
    """Return of how many cases the likeliest reading is right, one is right at all, and all."""
    first = within = 0
    for case in cases:
        if case:
            odds = _odds(case, weights)
            first += case[odds.index(max(odds))][2]
            within += any(right for *_, right in case)
    return first, within, len(cases)


def fit() -> None:
    """Print the rows of the table; on stderr, how a half is read by what the other teaches."""
    texts = made()
    cases = [case_of(each.text, each.said) for each in texts]
    halves: tuple[list[Case], list[Case]] = [], []
    for each, case in zip(texts, cases, strict=True):
        halves[sum(map(ord, each.poem)) % 2].append(case)
    for known, new in (halves, halves[::-1]):
        weights = fitted(known)
        report = [right_share(new, {}), right_share(new, weights), right_share(known, weights)]
        print("half not fitted on: before, after; fitted on:", *report, file=sys.stderr)
    weights = fitted(cases)
    print("trait\tcost")
    for trait, weight in sorted(weights.items()):
        if abs(weight * UNIT) >= _LEAST:
            print(f"{trait}\t{round(weight * UNIT)}")


def main() -> None:
    """Print how many of the made texts are read rightly, or the weights."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--fit", action="store_true")
    parser.add_argument("--show", type=int, default=0)
    options = parser.parse_args()
    if options.fit:
        fit()
        return
    from inscribe.reading import read_text

    texts = made(1)
    wrong = [
        (each, found)
        for each in texts
        if letters(found := read_text(each.text, "verse").proposals[0].romaji) != each.said
    ]
    print(f"{len(texts) - len(wrong)} of {len(texts)} texts made of printed poems are read rightly")
    for each, found in wrong[: options.show]:
        print(each.text, found, each.said, sep="\n   ")


if __name__ == "__main__":
    main()
