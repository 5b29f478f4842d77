"""How well endings that are not written are read, on poems printed with them.

    python tests/benchmarks/endings.py [--show N]

From printed poems that the program reads rightly (the odd ones of three sets), texts are made
by rule: voicing marks are left out, and of most inflected words written with one run of kanji the
kana of the ending; each poem several times, by chance. What they say is known.

Weights fitted on these texts (the form of a word by what follows it, over ends of phrases too; the
transitivity of verbs from EDICT) brought 44 of 869 of the texts of poems not fitted on, and nothing
on the measured sets (manuscripts 23 to 21 of 50, the others within one). So there are none.
"""

from __future__ import annotations

import argparse
import random
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parent))
from reading import DEVELOPMENT, FRESH, HYAKUNIN, letters, rows, unvoiced

TIMES, SHARE = 1, 0.6  # texts made of a poem, and of its endings the share left out
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


def main() -> None:
    """Print how many of the made texts are read rightly."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--show", type=int, default=0)
    options = parser.parse_args()
    from inscribe.reading import read_text

    texts = made()
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
