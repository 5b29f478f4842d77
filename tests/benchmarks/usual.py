"""Usual inscriptions read whole, kind by kind, against general-purpose peers, in one run.

    python tests/benchmarks/usual.py [FILE ...] [--misses]

Files have the columns kind, carved and reading; lines that begin with # are remarks. Without FILE:
the shared list of usual formulas (../shared/data/usual_inscriptions.tsv, which may be looked at)
and the two halves of a second author's list, tests/data/formulas_look.tsv and
tests/data/formulas_measure.tsv, and those of a third (formulas_d_*; 77% of its measured half were
right when first read) and a sixth (formulas_f_*). The rows of the measured halves are only counted:
--misses shows those of the other files.

A reading counts when it is right as a whole, but for capitals, hyphens and word division. Other
readings that are right too stand in the lists after " | ", or in brackets after the word that they
replace; "(no)" may be said or not, and so may no after a clan (Fujiwara no, Minamoto no). "first
3" counts rows for which a right reading is among the first three proposals. The peers, pykakasi and
cutlet where they are installed, are given the text in current forms, which favours them.
"""

from __future__ import annotations

import argparse
import csv
import importlib.util
import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from authors import told

DATA = Path(__file__).resolve().parent.parent / "data"
SHARED = Path(__file__).parents[3] / "shared" / "data" / "usual_inscriptions.tsv"
SETS = ("formulas", *(f"formulas_{author}" for author in "dfghjln"))
COUNTED_ONLY = tuple(DATA / f"{name}_measure.tsv" for name in SETS)
FILES = (SHARED, *(DATA / f"{name}_look.tsv" for name in SETS), *COUNTED_ONLY)
BRACKET = re.compile(r"\s*\(([^)]*)\)")
LINKING = "no"
CLAN_LINKED = re.compile(r"\b(fujiwara|minamoto|taira|tachibana|sugawara) no (?=\w)")
Reader = Callable[[str], list[str]]


@dataclass(frozen=True)
class Row:
    """An inscription of a kind, with every reading that is right, as ``letters`` has it."""

    kind: str
    carved: str
    right: frozenset[str]


def letters(text: str) -> str:
    """Return a romanised text without capitals, hyphens, apostrophes and spaces; macrons stay.

    >>> letters("San'yō jū Ayasato-shi")
    'sanyōjūayasatoshi'
    """
    folded = unicodedata.normalize("NFC", text).lower()
    folded = CLAN_LINKED.sub(r"\1 ", folded)
    return "".join(char for char in folded if char.isalpha())


def alternatives(reading: str) -> Iterator[str]:
    """Yield every reading that a cell of the lists stands for.

    >>> sorted(alternatives("kore o shinsu (kizamu, horu)"))
    ['kore o horu', 'kore o kizamu', 'kore o shinsu']
    >>> sorted(alternatives("Minamoto (no) Ayasato | Gen Ayasato"))
    ['Gen Ayasato', 'Minamoto Ayasato', 'Minamoto no Ayasato']
    """
    for whole in reading.split(" | "):
        yield from _unfolded(whole)


def _unfolded(text: str) -> Iterator[str]:
    bracket = BRACKET.search(text)
    if not bracket:
        yield text
        return
    before, after = text[: bracket.start()], text[bracket.end() :]
    yield from _unfolded(before + after)
    for other in bracket.group(1).split(","):
        words = other.split()
        kept = before.split() if other == LINKING else before.split()[: -len(words)]
        yield from _unfolded(" ".join([*kept, *words]) + after)


def rows(path: Path) -> list[Row]:
    """Return the inscriptions of a file."""
    with path.open(encoding="utf-8", newline="") as lines:
        plain = (line for line in lines if not line.startswith("#"))
        cells = csv.DictReader(plain, delimiter="\t", quoting=csv.QUOTE_NONE)
        return [
            Row(c["kind"], c["carved"], frozenset(map(letters, alternatives(c["reading"]))))
            for c in cells
        ]


def inscribe_reader() -> Reader:
    """Return this program's reader as a user calls it: register found by itself."""
    from inscribe.reading import read_text

    return lambda text: [proposal.romaji for proposal in read_text(text).proposals]


def _current(text: str) -> str:
    from inscribe.forms import normalise_text

    return normalise_text(text).text


def pykakasi_reader() -> Reader:
    """Return pykakasi's Hepburn."""
    import pykakasi

    kakasi = pykakasi.kakasi()
    return lambda text: [_long("".join(w["hepburn"] for w in kakasi.convert(_current(text))))]


def cutlet_reader() -> Reader:
    """Return cutlet's Hepburn, foreign spelling off."""
    import cutlet

    katsu = cutlet.Cutlet()
    katsu.use_foreign_spelling = False
    return lambda text: [_long(katsu.romaji(_current(text)))]


def _long(text: str) -> str:
    """Return Hepburn without marks of length with macrons, as far as letters tell (ou, oo, uu)."""
    for pair, long in (("ou", "ō"), ("oo", "ō"), ("uu", "ū")):
        text = text.replace(pair, long)
    return text


PEERS = {"pykakasi": pykakasi_reader, "cutlet": cutlet_reader}


def readers() -> dict[str, Reader]:
    """Return the readers that are installed, this program's first."""
    found = {"inscribe": inscribe_reader()}
    for name, make in PEERS.items():
        if importlib.util.find_spec(name):
            found[name] = make()
        else:
            print(f"{name}: skipped, it is not installed")
    return found


def counted(path: Path, by: dict[str, Reader], *, misses: bool) -> None:
    """Print what share of a file's rows each reader has right, kind by kind."""
    found = rows(path)
    right = {name: [read(row.carved) for row in found] for name, read in by.items()}
    print(f"\n{path.name}: {len(found)} inscriptions")
    print(f"{'':34}{'rows':>6}{'first':>8}{'first 3':>9}" + "".join(f"{n:>10}" for n in PEERS))
    kinds = dict.fromkeys(row.kind for row in found)
    for kind in (*kinds, "all"):
        chosen = [at for at, row in enumerate(found) if kind in (row.kind, "all")]
        print(f"{kind:34}{len(chosen):6}" + "".join(_shares(chosen, found, right)))
    if misses and path.resolve() not in COUNTED_ONLY:
        for row, read in zip(found, right["inscribe"], strict=True):
            if not _is_right(read[:1], row):
                late = "*" if _is_right(read[:3], row) else " "
                print(f"{late} {row.carved}\t{' | '.join(read[:2])}\t{' | '.join(row.right)}")


def _is_right(readings: list[str], row: Row) -> bool:
    return any(letters(reading) in row.right for reading in readings)


def _shares(
    chosen: list[int], found: list[Row], right: dict[str, list[list[str]]]
) -> Iterator[str]:
    def share(name: str, most: int) -> float:
        return sum(_is_right(right[name][at][:most], found[at]) for at in chosen) / len(chosen)

    yield f"{share('inscribe', 1):8.1%}{share('inscribe', 3):9.1%}"
    for name in PEERS:
        yield f"{share(name, 1):10.1%}" if name in right else f"{'-':>10}"


def main() -> None:
    """Print a table for each file."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--misses", action="store_true", help="show the rows read otherwise")
    options = parser.parse_args()
    by = readers()
    for path in options.files or [path for path in FILES if path.exists()]:
        print(told(path.stem))
        counted(path, by, misses=options.misses)


if __name__ == "__main__":
    main()
