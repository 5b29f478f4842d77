"""How often the first reading that ``inscribe read`` proposes of a worn text is right.

    python tests/benchmarks/worn.py [LIBRARY]

Worn texts of nine authors, without a library of sources and with the one that is named; a text is
right where the first reading that fills its worn signs has the letters of a right one. Where an
author gives only the signs that are worn, it is one of the three that the whole text is read.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parents[1])]

from authors import told  # noqa: E402
from reading import letters  # noqa: E402

if TYPE_CHECKING:
    from inscribe.sources import Library


def cases(path: Path) -> Iterator[tuple[str, set[str]]]:
    """Yield each worn text with the letters of its right readings."""
    lines = [line.split("\t") for line in path.read_text("utf-8").splitlines() if line[0] != "#"]
    heads, *rows = lines
    column = next((heads.index(name) for name in ("romaji", "reading") if name in heads), None)
    for row in rows:
        said = row[column].split(" | ") if column is not None else readings(row[1])
        yield row[0], set(map(letters, said))


def readings(full: str) -> list[str]:
    """Return the three likeliest readings of a text that is not worn."""
    from inscribe.reading import read_text

    return [each.romaji for each in read_text(full, alternatives=True).proposals[:3]]


def first_filled(text: str, library: Library | None) -> str:
    """Return the letters of the first reading that fills the worn signs of a text."""
    from inscribe.cli.giving.reading import Wished, read_literal

    proposals = read_literal(text, Wished(), library).proposals
    filled = [each for each in proposals if "[" in each.romaji]
    return letters((filled or proposals)[0].romaji)


def main() -> None:
    """Print the table."""
    from inscribe.sources import Library

    libraries = [None, *(Library(path) for path in sys.argv[1:2])]
    print(f"{'':72}{'texts':>7}{'alone':>7}" + f"{'library':>9}" * (len(libraries) - 1))
    for path in sorted((HERE.parent / "data").glob("worn_*.tsv")):
        rows = list(cases(path))
        right = [sum(first_filled(text, each) in said for text, said in rows) for each in libraries]
        print(f"{told(path.stem):72}{len(rows):7}" + "".join(f"{n:8}" for n in right), flush=True)


if __name__ == "__main__":
    main()
