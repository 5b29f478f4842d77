"""What long texts cost: processor seconds, states looked at, groups, memory.

Run: python tests/benchmarks/collate_long.py [--signs N]

Pairs that go together are poems of ``tests/data/verse_dev.tsv`` drawn at random, the copy spelled
by another hand (see collate_pairs.py), the source with this share of its poems wholly in kana and
this share of the copy's poems with a changed place. Both are cut to length: where the source is in
kana it ends before the copy does, and what is over is one difference. The other pairs have little
in common, or too much in too many ways. Each line is one collation in a process of its own that has
collated before: processor seconds (compare them at equal load, which is printed), and the MiB that
the process held at most beyond what it held with all tables loaded.
"""

from __future__ import annotations

import argparse
import os
import random
import resource
import sys
import time
from collections.abc import Iterator
from multiprocessing import get_context
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parent))
from collate_pairs import noisy, poems

KANA = [chr(code) for code in range(0x3042, 0x3094)]
KANJI = [chr(code) for code in range(0x4E00, 0x9FA0)]


def alike(signs: int, kana: float, differing: float, seed: int = 3) -> tuple[str, str]:
    """Return a copy and a source of ``signs`` signs that go together."""
    chance = random.Random(seed)
    known = poems()
    copy = source = ""
    while min(len(copy), len(source)) < signs:
        poem = chance.choice(known)
        written = noisy(poem.text.replace("／", ""), chance, light=True)
        if chance.random() < differing:
            at = chance.randrange(len(written) - 4)
            new = chance.choice(["", "花の", "人も", "ける"])
            written = written[:at] + new + written[at + chance.randrange(1, 4) :]
        copy += written
        source += poem.kana if chance.random() < kana else poem.text.replace("／", "")
    return copy[:signs], source[:signs]


def pairs(signs: int) -> Iterator[tuple[str, str, str]]:
    """Yield name, copy and source."""
    for kana, differing in ((0, 0), (0.4, 0.2), (1, 0), (1, 0.3), (1, 1)):
        yield f"kana {kana:.0%}, changed {differing:.0%}", *alike(signs, kana, differing)
    draw = random.Random(1).choices
    verse = sorted({char for poem in poems() for char in poem.text if char >= "一"})
    text, source = alike(signs, 0.4, 0)
    other = alike(signs, 0, 0, seed=9)[0]
    for name, one, two in (
        ("kanji", KANJI, KANJI),
        ("kanji of verse", verse, verse),
        ("kana", KANA, KANA),
        ("four kana", "のにはを", "のにはを"),
        ("kanji against kana", verse, KANA),
    ):
        yield f"random {name}", "".join(draw(one, k=signs)), "".join(draw(two, k=signs))
    yield "one sign, another", "の" * signs, "花" * signs
    yield "one sign, the same", "の" * signs, "の" * (signs * 9 // 10)
    yield "all unreadable", "□" * signs, source
    yield "every other unreadable", worn(text, 2), source
    yield "every third unreadable", worn(text, 3), source
    yield "gaps", "［　　］".join(text[at : at + 20] for at in range(0, signs, 40)), source
    yield "reversed", text[::-1], text
    yield "other poems", other, source
    yield "half alike", text[: signs // 2] + other[signs // 2 :], source
    mixed = (text if at // 31 % 2 else other for at in range(0, signs, 31))
    yield (
        "every other 31 signs",
        "".join(t[n * 31 : n * 31 + 31] for n, t in enumerate(mixed)),
        source,
    )
    yield "two poems over and over", repeated(text[:31], signs), repeated(source[:29], signs)
    yield "repeat marks", "花" + "ゝ" * (signs - 1), source
    yield "30 signs of it", text[signs // 2 : signs // 2 + 30], source
    yield "30 other signs", "".join(draw(verse, k=30)), source


def worn(text: str, every: int) -> str:
    """Return ``text`` with every so many signs unreadable."""
    return "".join("□" if at % every == 0 else char for at, char in enumerate(text))


def repeated(text: str, signs: int) -> str:
    """Return ``text`` over and over, up to so many signs."""
    return (text * (signs // len(text) + 1))[:signs]


class Cost(NamedTuple):
    """What one collation took, and what it found."""

    seconds: float
    states: int
    groups: int
    differing: int
    mebibytes: int
    is_rough: bool


def cost(texts: tuple[str, str]) -> Cost:
    """Return what the collation of a copy and its source takes in this process."""
    from inscribe.collation import collate_texts

    held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    started = time.process_time()
    found = collate_texts(*texts)
    seconds = time.process_time() - started
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    differing = sum(group.is_substantive for group in found.groups)
    is_rough = any("roughly" in note for note in found.notes)
    return Cost(seconds, found.work, len(found.groups), differing, (most - held) // 1024, is_rough)


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--signs", type=int, default=10_000)
    parser.add_argument("--like", default="", help="only pairs whose name begins so")
    options = parser.parse_args()
    signs = options.signs
    cost(alike(2000, 0.4, 0.2, seed=5))  # load the tables before the clock runs
    held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    print(f"load {os.getloadavg()[0]:.1f}; {held} MiB with all tables loaded")
    print(f"{signs:,} signs{'seconds':>27}{'states':>9}{'groups':>8}{'in wording':>12}{'MiB':>6}")
    for name, *texts in pairs(signs):
        if name.startswith(options.like):
            with get_context("fork").Pool(1) as pool:
                took = pool.apply(cost, (texts,))
            print(
                f"{name:28}{took.seconds:12.2f}{took.states:9}{took.groups:8}{took.differing:12}"
                f"{took.mebibytes:6}" + "  roughly" * took.is_rough
            )


if __name__ == "__main__":
    main()
