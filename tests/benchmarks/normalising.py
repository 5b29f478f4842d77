"""How fast normalisation is, held against ``str.translate`` with a plain mapping of the same forms.

Run: python tests/benchmarks/normalising.py

Texts are made from the current forms of the glossary and kana, with old forms, variants,
hentaigana and repeat marks mixed in at three rates; a tenth of what changes are repeat marks.
str.translate changes the same signs but keeps no trace, knows no repeat marks and no sequences.
"traced" asks for the changes as well, which are made when they are asked for. What counts is the
ratio, not the times.
"""

from __future__ import annotations

import random
import time
from collections.abc import Callable

from inscribe.forms import normalise_text
from inscribe.forms.steps import REPEAT_MARK, steps

SIGNS = 1_000_000
POEM = 31
RATES = (0.0, 0.03, 0.10)
ROUNDS = 3


def made(rate: float, length: int, dice: random.Random) -> str:
    """Return a text of ``length`` signs, ``rate`` of which normalisation changes."""
    kana = [chr(code) for code in range(0x3042, 0x3094)]
    single = [s for s in steps().values() if len(s.before) == len(s.after) == 1]
    kanji = [s.after for s in single if s.kind == "old form"]
    carved = [s.before for s in single if s.kind in ("old form", "variant", "hentaigana")]
    marks = [s.before for s in single if s.kind == REPEAT_MARK]
    dull = kana * 8 + kanji
    text = dice.choices(dull, k=length)
    for index in range(1, length):
        if dice.random() < rate:
            text[index] = dice.choice(marks if dice.random() < 0.1 else carved)
    return "".join(text)


def seconds(work: Callable[[str], object], pieces: list[str]) -> float:
    """Return the least processor time that the work took for all pieces, in a few rounds."""
    best = float("inf")
    for _ in range(ROUNDS):
        start = time.process_time()
        for piece in pieces:
            work(piece)
        best = min(best, time.process_time() - start)
    return best


def main() -> None:
    """Print one line for each rate and size."""
    dice = random.Random(5)
    mapping = {ord(s.before): s.after for s in steps().values() if len(s.before) == 1}
    print("changed  in pieces of  translate  normalise      traced  translate / normalise / traced")
    for rate in RATES:
        text = made(rate, SIGNS, dice)
        for size in (SIGNS, POEM):
            pieces = [text[start : start + size] for start in range(0, SIGNS, size)]
            plain = seconds(lambda piece: piece.translate(mapping), pieces)
            normal = seconds(normalise_text, pieces)
            traced = seconds(lambda piece: normalise_text(piece).changes, pieces)
            print(
                f"{rate:7.0%}  {size:>12,}  {plain * 1e3:6.0f} ms  {normal * 1e3:6.0f} ms"
                f"  {traced * 1e3:7.0f} ms         1 : {plain / normal:.2f} : {plain / traced:.2f}"
            )


if __name__ == "__main__":
    main()
