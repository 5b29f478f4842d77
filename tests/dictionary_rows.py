"""What writes the entries of small dictionaries, in a process of its own as all entries are."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from inscribe.reading.mecab.compiling import MecabRow, write_rows

_row = partial(MecabRow, left=5128, right=5128, cost=-20000)
ROWS = [_row("てふてふ", feature="蝶々"), _row('"、,', feature="marks")]


def write(folder: Path) -> None:
    write_rows(folder / "entries.csv", ROWS)


def write_frog(folder: Path) -> None:
    write_rows(folder / "entries.csv", [_row("蛙", feature="x")])


def write_respelt(folder: Path) -> None:
    write_rows(folder / "entries.csv", [_row("てふてふ", feature="=ちょうちょう")])


def write_what_mecab_refuses(folder: Path) -> None:
    write_rows(folder / "entries.csv", [MecabRow("花", 99999, 99999, 0, "x")])
