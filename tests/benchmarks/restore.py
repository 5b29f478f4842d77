"""Restoring: how high the truth ranks where signs of verse and signatures were masked.

    python tests/benchmarks/restore.py [--half measure|look] [--poems 150] [--seed 7]

Verse: tests/data/verse_dev.tsv; ``look`` are the odd-numbered poems (the weights were fitted on
them), ``measure`` the even-numbered. Signatures: tests/data/signatures.tsv with its own halves;
every legible sign of each is masked in turn. A rank counts if the candidate is the masked sign in
current forms; "word" counts a first candidate that may be the same word in another spelling (河
for 川, ち for 散), which nothing but the carver could tell. With a source, the library holds all
poems: as they are, or wholly in kana without voicing marks. The last table says how often the
first candidate was right, by its probability.
"""

from __future__ import annotations

import argparse
import random
import tempfile
import time
import unicodedata
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from authors import told

from inscribe import forms, notation
from inscribe.restoring import restore
from inscribe.restoring.spellings import says
from inscribe.scripts import is_kana, is_kanji
from inscribe.signs import Certainty, Kind, Sign, Transcription, transcription
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.texts import SourceText

DATA = Path(__file__).parent.parent / "data"
Names = dict[str, dict[str, int]]  # by masked text: names expected, with how often
Masked = tuple[Transcription, int, str]  # the text, the sign masked, what stood there


def _may_be_one_word(one: str, other: str) -> bool:
    """Whether one sign says in kanji what the other says in kana, or both are one kana."""
    if is_kana(one) and is_kana(other):
        return one == other
    kana, kanji = (one, other) if is_kana(one) else (other, one)
    return is_kana(kana) and is_kanji(kanji) and says(kanji, kana) > 0.03


def rows(name: str) -> list[list[str]]:
    """Return the rows of a table of test data without its header."""
    lines = (DATA / name).read_text("utf-8").split("\n")
    return [line.split("\t") for line in lines if line and line[0] != "#"][1:]


def masked(text: str, worn: set[int]) -> Transcription:
    """Return a transcription with some signs unreadable."""

    def sign(each: Sign) -> Sign:
        return (
            replace(each, text="", certainty=Certainty.UNREADABLE) if each.index in worn else each
        )

    parsed = notation.parse(text)
    faces = [[[sign(s) for s in column.signs] for column in face.columns] for face in parsed.faces]
    return transcription(faces)


def current(text: str) -> dict[int, str]:
    """Return each legible sign of a text in current forms, by index; repeat marks left out."""
    parsed = notation.parse(text)
    normal = forms.normalise(parsed)
    found: dict[int, str] = {}
    for char, origin in zip(normal.text, normal.origin, strict=True):
        found[origin] = found.get(origin, "") + char
    repeats = {change.sign for change in normal.changes if change.kind == "repeat mark"}
    return {
        sign.index: found[sign.index]
        for sign in parsed.signs
        if sign.kind is Kind.CHARACTER and sign.text and sign.index not in repeats
    }


def verse(half: str, most: int, share: float, rng: random.Random) -> Iterator[Masked]:
    """Yield ``most`` poems with a sign masked, and of all others ``share`` unreadable."""
    odd = half == "look"
    poems = [row for row in rows("verse_dev.tsv") if (int(row[0]) % 2 == 1) == odd]
    for row in rng.sample(poems, min(most, len(poems))):
        text = row[2].replace("／", "")
        legible = current(text)
        asked = rng.choice(sorted(legible))
        others = rng.sample(sorted(legible), round(share * len(legible)))
        yield masked(text, {asked, *others}), asked, legible[asked]


def signatures(half: str) -> Iterator[Masked]:
    """Yield every signature of a half with each of its signs masked in turn."""
    for row in rows("signatures.tsv"):
        if row[0] == half:
            for asked, truth in current(row[1]).items():
                yield masked(row[1], {asked}), asked, truth


def names_beside(half: str) -> Names:
    """Return for each masked signature the names in all the other rows of the table."""
    signed = rows("signatures.tsv")
    parts = [dict(part.split("=") for part in row[4].split(";") if "=" in part) for row in signed]
    own = [part.get("name", "").replace("□", "") for part in parts]
    counted = Counter(name for name in own if len(name) > 1)
    found: dict[str, dict[str, int]] = {}
    for row, name in zip(signed, own, strict=True):
        if row[0] == half:
            others = counted - Counter([name])
            for asked in current(row[1]):
                found[notation.render(masked(row[1], {asked}))] = dict(others)
    return found


def library(folder: Path, name: str, texts: list[tuple[str, str]]) -> Library:
    """Return a new library of texts."""
    made = Library(folder / f"{name}.sqlite", create=True)
    adding.add_texts(made, [SourceText(i, tuple(t.split("／"))) for i, t in texts], len(texts))
    return made


class Ranks:
    """Ranks of the truth, and how often what is said with a probability is so."""

    def __init__(self) -> None:
        self.ranks: list[int] = []
        self.said: defaultdict[int, list[tuple[float, bool]]] = defaultdict(list)

    def measure(
        self,
        name: str,
        items: Iterator[Masked],
        source: Library | None = None,
        names: Names | None = None,
    ) -> None:
        """Restore every item and print one line of the table."""
        names = names or {}
        start, register = (
            time.perf_counter(),
            "signature" if name.startswith("signatures") else "auto",
        )
        ranks, same_word = [], 0
        for text, sign, truth in items:
            expected = names.get(notation.render(text), {})
            found = restore(text, source, sign=sign, most=10, register=register, names=expected)  # type: ignore[arg-type]
            candidates = found.lacunae[0].candidates
            ranks.append(next((c.rank for c in candidates if c.text == truth), 9999))
            same_word += bool(candidates) and _may_be_one_word(candidates[0].text, truth)
            if source is None and not names and candidates:
                first = candidates[0].probability
                self.said[min(9, int(first * 10))].append((first, ranks[-1] == 1))
        took = (time.perf_counter() - start) / max(1, len(ranks))
        first, ten = sum(r == 1 for r in ranks), sum(r <= 10 for r in ranks)
        count = len(ranks) or 1
        print(
            f"{name:36} {len(ranks):5} {first / count:7.3f} {ten / count:7.3f}"
            f" {same_word / count:7.3f} {took * 1000:7.0f}",
            flush=True,
        )


def unvoiced(text: str) -> str:
    """Return ``text`` without voicing marks."""
    plain = unicodedata.normalize("NFD", text).replace("\u3099", "").replace("\u309a", "")
    return unicodedata.normalize("NFC", plain)


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--half", choices=("look", "measure"), default="measure")
    parser.add_argument("--poems", type=int, default=1000, help="poems at the most")
    parser.add_argument("--seed", type=int, default=7)
    options = parser.parse_args()
    half, most = options.half, options.poems

    def poems(share: float = 0.0) -> Iterator[Masked]:
        return verse(half, most, share, random.Random(options.seed))

    ranks = Ranks()
    print(told(f"verse_dev, {half}"), told(f"signatures, {half}"), sep="\n")
    print(f"{'half: ' + half:36} {'signs':>5} {'first':>7} {'in 10':>7} {'word':>7} {'ms each':>7}")
    ranks.measure("verse", poems())
    ranks.measure("verse, 20% of signs unreadable", poems(0.2))
    ranks.measure("signatures", signatures(half))
    named = names_beside(half)
    ranks.measure("signatures, names of others known", signatures(half), names=named)
    with tempfile.TemporaryDirectory() as folder:
        texts = [(f"verse-{row[0]}", row[2], row[3]) for row in rows("verse_dev.tsv")]
        same = library(Path(folder), "same", [(i, text) for i, text, _ in texts])
        kana = library(Path(folder), "kana", [(i, unvoiced(kana)) for i, _, kana in texts])
        ranks.measure("verse, source in the library", poems(), same)
        ranks.measure("  20% of signs unreadable", poems(0.2), same)
        ranks.measure("  source in kana without voicing", poems(), kana)
        ranks.measure("  the same, 20% unreadable", poems(0.2), kana)
    print("without a source: probability said of the first candidate, and how often it was right")
    for _, said in sorted(ranks.said.items()):
        mean = sum(p for p, _ in said) / len(said)
        right = sum(ok for _, ok in said) / len(said)
        print(f"  {mean:5.2f} {right:5.2f}  of {len(said)}")


if __name__ == "__main__":
    main()
