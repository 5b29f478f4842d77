"""Chinese passages of inscriptions: sayings, couplets, lines; how many are read right, with a peer.

    python tests/benchmarks/chinese.py FILE...

Each FILE is a set of composed inscriptions, a JSON object a line, whose ``parts`` have a ``kind``,
a ``text``, a ``romaji`` and perhaps ``romaji_alternatives`` and ``by_sound``; only those of the
kind ``chinese`` count. Only totals are printed, so that a set kept for measuring stays unseen.

A reading is right if it is one of those the set gives, division into words, capitals, hyphens and
apostrophes aside. "usual" counts the readings as usually said; "or by sound" those by sound too.
"Rules alone" is the same without the tables of sayings, for lines nobody has heard of: there the
figure for texts the tables know tells what the grammar can do. The peer, pykakasi, has one
reading a text; its kana are put into Latin letters by this program, which favours it.
"""

from __future__ import annotations

import json
import re
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from authors import told

from inscribe import tables
from inscribe.forms import normalise_text
from inscribe.reading.chinese import chinese_readings, known_saying, sayings
from inscribe.reading.spelling import hepburn

Read = Callable[[str], list[str]]
_NOT_LETTERS = re.compile(r"[\s'’|-]")
_DOUBTS = re.compile(r"（[^）]*）|\([^)]*\)|[／」\s]")


class Passage(NamedTuple):
    """A Chinese passage with the readings that are right."""

    text: str
    usual: frozenset[str]
    by_sound: frozenset[str]


def passages(paths: list[Path]) -> list[Passage]:
    """Return the Chinese passages of the sets."""
    found = []
    for path in paths:
        for line in path.read_text(encoding="utf-8").splitlines():
            for part in json.loads(line).get("parts", []):
                if part["kind"] == "chinese":
                    text = normalise_text(_DOUBTS.sub("", part["text"])).text
                    usual = [part["romaji"], *part.get("romaji_alternatives", [])]
                    found.append(Passage(text, letters(usual), letters(part.get("by_sound", []))))
    return found


def letters(readings: list[str]) -> frozenset[str]:
    """Return readings without what is a matter of taste."""
    return frozenset(_NOT_LETTERS.sub("", reading).lower() for reading in readings)


def this_program(text: str) -> list[str]:
    """Return the ranked readings of this program."""
    return [reading.romaji for reading in chinese_readings(text)]


def pykakasi_reader() -> Read:
    """Return the peer."""
    from pykakasi import kakasi

    convert = kakasi().convert
    return lambda text: [hepburn("".join(word["hira"] for word in convert(text)))]


def without_sayings() -> None:
    """Empty the tables of sayings for the rest of the run."""
    tables.forget()
    sayings._beginning = lambda text, start: []  # type: ignore[assignment]
    sayings._compounds = lambda text: []  # type: ignore[assignment]


def measure(name: str, read: Read, chosen: list[Passage]) -> None:
    """Print the figures of one reader."""
    start = time.perf_counter()
    answers = [read(passage.text) for passage in chosen]
    each = 1000 * (time.perf_counter() - start) / max(1, len(chosen))
    counts = [0, 0, 0, 0]
    for passage, answer in zip(chosen, answers, strict=True):
        ranked = [next(iter(letters([reading]))) for reading in answer]
        either = passage.usual | passage.by_sound
        rights = (ranked[:1], passage.usual), (ranked[:2], passage.usual)
        more = (ranked[:1], either), (ranked[:2], either)
        for place, (some, wanted) in enumerate((*rights, *more)):
            counts[place] += not wanted.isdisjoint(some)
    shown = "  ".join(f"{count:4d}" for count in counts)
    print(f"{name:34s} {len(chosen):4d}  {shown}  {each:6.2f} ms")


def main() -> None:
    """Measure all readers on the sets that are named."""
    chosen = passages([Path(name) for name in sys.argv[1:]])
    known = [passage for passage in chosen if known_saying(passage.text)]
    other = [passage for passage in chosen if not known_saying(passage.text)]
    print(told("chinese sayings, look"))
    print(f"{'':34s}  all   usual: 1st, 2   or by sound: 1st, 2")
    peer = pykakasi_reader()
    for name, group in (("all", chosen), ("known to the tables", known), ("not known", other)):
        measure(f"inscribe, {name}", this_program, group)
        measure(f"pykakasi, {name}", peer, group)
    without_sayings()
    measure("rules alone, all", this_program, chosen)
    measure("rules alone, known to the tables", this_program, known)


if __name__ == "__main__":
    main()
