"""Dividing signatures: every listed surname, before made names, in ten usual frames.

    python tests/benchmarks/division.py [--set measure|look|all] [--full] [--misses N]

Right is a division whose pieces are exactly those the frame was made of. Every surname of
glossary/names/surnames.tsv of two signs and more stands in each frame, each time before another
name (with --full before all ten); so do 500 surnames of the dictionary of names that the table
lacks (drawn with a fixed seed), and towns that end in 生 before every frame with 住. The even
surnames are for measuring, the odd ones for looking. It is a check against the program's own
tables, with invented names: what it shows is that no surname is torn apart, not how real signatures
fare. Some are honestly open (原田 before 作 could be 原 and a name 田作): they count as misses.
"""

from __future__ import annotations

import argparse
import random
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

NAMES = ("綾郷", "正葭", "磐房", "永近", "楯国", "磐正", "篁月", "霰斎", "萩珉", "椋雲斎")
FRAMES = (
    "S N 作",
    "S N 造 之",
    "武州 住 S N 作",
    "京都 住 S N 作",
    "江戸 住 S N",
    "応 需 S N 作",
    "応 需 武州 住 S N 造 之",
    "応 S 氏 需 N 作",
    "S N 彫 之",
    "於 東都 S N 刻 之",
)
TOWNS = ("桐生", "麻生", "壬生", "福生")  # towns in 生, which is a word of residence itself
OUTSIDE = 500


class Made(NamedTuple):
    """A signature and the pieces it was made of."""

    frame: str
    surname: str
    pieces: tuple[str, ...]

    @property
    def text(self) -> str:
        """The signature."""
        return "".join(self.pieces)


def listed_surnames() -> list[str]:
    """Return the surnames of the table that have two signs and more."""
    from inscribe import tables

    items = (item for row in tables.rows("surnames") for item in tables.listed(row["names"]))
    return [name for item in items if len(name := item.partition("=")[0]) > 1]


def outside_surnames() -> list[str]:
    """Return surnames of the dictionary of names, of two or three signs, that the table lacks."""
    from inscribe import tables

    known = set(listed_surnames())
    found = [
        row["written"]
        for row in tables.rows("name_dictionary")
        if row["surname"] and 2 <= len(row["written"]) <= 3 and row["written"] not in known
    ]
    return random.Random(1868).sample(found, OUTSIDE)


def made(surnames: Sequence[str], full: bool) -> Iterator[Made]:
    """Yield the signatures with some surnames, before one name in each frame or before all."""
    for number, surname in enumerate(surnames):
        for at, frame in enumerate(FRAMES):
            names = NAMES if full else (NAMES[(number + at) % len(NAMES)],)
            for name in names:
                yield Made(frame, surname, _filled(frame, surname, name))


def with_towns(surnames: Sequence[str]) -> Iterator[Made]:
    """Yield signatures from towns in 生."""
    for number, surname in enumerate(surnames):
        town, name = TOWNS[number % len(TOWNS)], NAMES[number % len(NAMES)]
        for frame in (f"{town} 住 S N", f"上州 {town} 住 N 作"):
            yield Made(frame, surname, _filled(frame, surname, name))


def _filled(frame: str, surname: str, name: str) -> tuple[str, ...]:
    return tuple(surname if p == "S" else name if p == "N" else p for p in frame.split())


def measured(texts: Iterator[Made], misses: int = 0) -> tuple[int, Counter[str], Counter[str]]:
    """Return how many were divided, and the misses by frame and by surname; print some."""
    from inscribe.reading.signatures.dates import dated_pieces
    from inscribe.reading.signatures.split import divisions

    total, by_frame, by_surname = 0, Counter[str](), Counter[str]()
    for one in texts:
        total += 1
        dated = [piece for piece, _ in dated_pieces(one.text)]
        best = divisions(one.text, (), dated)[0].pieces
        if tuple(piece.text for piece in best) == one.pieces:
            continue
        by_frame[one.frame] += 1
        by_surname[one.surname] += 1
        if by_frame.total() <= misses:
            print(" ".join(f"{piece.text}/{piece.kind}" for piece in best), "for", one.pieces)
    return total, by_frame, by_surname


def main() -> None:
    """Print the shares."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--set", default="measure", choices=("measure", "look", "all"))
    parser.add_argument("--full", action="store_true", help="every name in every frame")
    parser.add_argument("--every", type=int, default=1, help="only every Nth surname")
    parser.add_argument("--misses", type=int, default=0, help="print so many misses of each")
    options = parser.parse_args()
    part = {"all": slice(None), "measure": slice(0, None, 2), "look": slice(1, None, 2)}
    listed = listed_surnames()[part[options.set]][:: options.every]
    outside = outside_surnames()[part[options.set]]
    for name, texts in (
        ("surnames of the table", made(listed, options.full)),
        ("of them those in 屋", made([s for s in listed if s[-1] == "屋"], True)),
        ("towns in 生", with_towns(listed[::20])),
        ("surnames outside the table", made(outside, options.full)),
    ):
        total, by_frame, by_surname = measured(texts, options.misses)
        lost = by_frame.total()
        print(f"{name:28}{total:8} divided, {1 - lost / total:7.2%} right", end="")
        print(f" ({len(by_surname)} surnames with a miss)")
        for frame, count in by_frame.most_common():
            print(f"    {frame:26} {count:6} misses")


if __name__ == "__main__":
    main()
