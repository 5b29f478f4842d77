"""How many kanji the tables know, of the Joyo table and of JIS X 0208 levels 1 and 2.

Run: python tests/benchmarks/characters.py (needs the Debian package unicode-data for the Joyo list)

"forms" counts the kanji that have at least one other form; not every kanji has one.
"""

from __future__ import annotations

import bz2
from collections.abc import Callable, Iterable
from pathlib import Path

from inscribe.forms import related
from inscribe.forms.characters import character, sounds_of
from inscribe.forms.components import parts
from inscribe.forms.relations import look_alikes

UNIHAN = Path("/usr/share/unicode/Unihan_OtherMappings.txt.bz2")
FIRST_OF_LEVEL_2 = 48  # rows of JIS X 0208


def joyo() -> list[str]:
    """Return the kanji of the Joyo table."""
    with bz2.open(UNIHAN, "rt", encoding="utf-8") as lines:
        cells = [line.rstrip("\n").split("\t") for line in lines]
    listed = [(c[0], c[2]) for c in cells if len(c) == 3 and c[1] == "kJoyoKanji"]
    return [chr(int(code[2:], 16)) for code, value in listed if "U+" not in value]


def jis(first_row: int, last_row: int) -> list[str]:
    """Return the kanji of some rows of JIS X 0208."""
    codes = (
        bytes((0xA0 + r, 0xA0 + c)) for r in range(first_row, last_row + 1) for c in range(1, 95)
    )
    return [char for code in codes for char in code.decode("euc_jp", "ignore")]


COUNTED: dict[str, Callable[[str], object]] = {
    "on": lambda kanji: character(kanji).readings.on,
    "kun": lambda kanji: character(kanji).readings.kun,
    "names": lambda kanji: character(kanji).readings.names,
    "strokes": lambda kanji: character(kanji).strokes,
    "senses": lambda kanji: character(kanji).senses,
    "parts": parts,
    "forms": lambda kanji: any(r.is_same_character for r in related(kanji).values()),
    "look-alikes": look_alikes,
    "sounds": sounds_of,
}


def main() -> None:
    """Print one line for each set of kanji."""
    sets: dict[str, Iterable[str]] = {
        "Joyo": joyo(),
        "JIS level 1": jis(16, FIRST_OF_LEVEL_2 - 1),
        "JIS level 2": jis(FIRST_OF_LEVEL_2, 84),
    }
    print(f"{'':<12}{'kanji':>7}" + "".join(f"{name:>13}" for name in COUNTED))
    for name, kanji in sets.items():
        chars = list(kanji)
        counts = [sum(bool(known(char)) for char in chars) for known in COUNTED.values()]
        print(f"{name:<12}{len(chars):>7}" + "".join(f"{count:>13}" for count in counts))


if __name__ == "__main__":
    main()
