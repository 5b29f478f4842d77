"""Reading signatures: exact readings and letter errors against general-purpose peers, in one run.

    python tests/benchmarks/signatures.py [--set measure|look|all] [--misses]
                                          [--formulas | --fresh | --file FILE]

The signatures are those of tests/data/signatures.tsv, or with --formulas those of
tests/data/signature_formulas.tsv (models, requests, materials), or with --fresh those of
tests/data/signatures_fresh.tsv (written down before the tables were looked at), or of a FILE of
the columns text, romaji and alternatives (divided by ";"; tests/data/signatures_f_look.tsv and
signatures_f_measure.tsv, by a sixth author), all invented. --misses prints what is read otherwise,
of sets that may be looked at. A reading counts by its letters alone (spaces, capitals, hyphens and
macrons folded); the readings listed as right too are right for the peers as well, and the letter
errors are those against the nearest right reading.
Peers: pykakasi, cutlet, and the pronunciation of unidic-lite through fugashi. They are given the
text in current forms, which favours them. Each has read the other half before it is timed.
"""

from __future__ import annotations

import argparse
import re
import time
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from authors import told

DATA = Path(__file__).parent.parent / "data" / "signatures.tsv"
FORMULAS = DATA.with_name("signature_formulas.tsv")
FRESH = DATA.with_name("signatures_fresh.tsv")
FILES = tuple(DATA.with_name(f"signatures_f_{half}.tsv") for half in ("look", "measure"))
FACE_END = re.compile("(?<!（印「.)」(?!）)")
MARKS = re.compile("（花押）|（印「[^」]*」）")
Reader = Callable[[str], list[str]]


@dataclass(frozen=True)
class Signature:
    """A signature and its right readings, the ordinary one first."""

    text: str
    right: tuple[str, ...]


def letters(text: str) -> str:
    """Return the letters of a romanised text, without macrons, spaces or capitals."""
    plain = unicodedata.normalize("NFD", text.lower().replace("(kaō)", ""))
    return "".join(c for c in plain if "a" <= c <= "z")


def signatures(which: str, path: Path = DATA) -> list[Signature]:
    """Return the invented signatures of one half, or of both."""
    if path not in (DATA, FORMULAS, FRESH):
        return of_file(path)
    found = []
    for line in path.read_text(encoding="utf-8").splitlines():
        cells = line.split("\t")
        if line.startswith("#") or cells[0] not in ("look", "measure"):
            continue
        if which in (cells[0], "all"):
            text = FACE_END.sub("", cells[1].replace("／", ""))
            right = tuple(letters(r) for r in (cells[2], *cells[3].split("/")) if r)
            found.append(Signature(text, right))
    return found


def of_file(path: Path) -> list[Signature]:
    """Return the signatures of a file whose lines are text, reading and other right readings."""
    lines = [line for line in path.read_text("utf-8").splitlines() if not line.startswith("#")]
    rows = [(*line.split("\t"), "")[:3] for line in lines[1:]]
    return [
        Signature(text, tuple(letters(one) for one in (usual, *also.split("; ")) if one))
        for text, usual, also in rows
    ]


def misses(reader: Reader, texts: list[Signature]) -> None:
    """Print the texts whose first reading is not right; * where one of the first three is."""
    for signature in texts:
        found = reader(signature.text)[:3]
        right = [letters(one) in signature.right for one in found]
        if not any(right[:1]):
            shown = " | ".join(found)
            print(f"{'*' if any(right) else ' '} {signature.text}\t{shown}\t{signature.right[0]}")


def inscribe_reader() -> Reader:
    """Return this program's reader, register given."""
    from inscribe.forms import normalise_text
    from inscribe.reading.signatures.reader import read_signature

    return lambda text: [p.romaji for p in read_signature(normalise_text(text)).proposals]


def automatic_reader() -> Reader:
    """Return this program's reader as a user calls it: register found by itself."""
    from inscribe.reading import read_text

    return lambda text: [p.romaji for p in read_text(text).proposals]


def _current(text: str) -> str:
    from inscribe.forms import normalise_text

    return MARKS.sub("", normalise_text(text).text)


def pykakasi_reader() -> Reader:
    """Return pykakasi's Hepburn."""
    import pykakasi

    kakasi = pykakasi.kakasi()
    return lambda text: [" ".join(w["hepburn"] for w in kakasi.convert(_current(text)))]


def cutlet_reader() -> Reader:
    """Return cutlet's Hepburn, foreign spelling off."""
    import cutlet

    katsu = cutlet.Cutlet()
    katsu.use_foreign_spelling = False
    return lambda text: [katsu.romaji(_current(text))]


def unidic_reader() -> Reader:
    """Return unidic-lite's pronunciation in Hepburn."""
    import fugashi
    import jaconv

    from inscribe.reading.spelling.letters import hepburn

    tagger = fugashi.Tagger()

    def read(text: str) -> list[str]:
        kana = [w.feature.pron or w.surface for w in tagger(_current(text))]
        return [" ".join(hepburn(jaconv.kata2hira(k)) for k in kana)]

    return read


READERS: dict[str, Callable[[], Reader]] = {
    "inscribe, as a signature": inscribe_reader,
    "inscribe, by itself": automatic_reader,
    "pykakasi": pykakasi_reader,
    "cutlet": cutlet_reader,
    "unidic-lite": unidic_reader,
}


def measured(reader: Reader, texts: list[Signature]) -> tuple[float, float, float, float]:
    """Return shares of exact readings (first, first three), letter errors, texts a second."""
    from rapidfuzz.distance import Levenshtein

    for other in signatures("look"):  # dictionaries and tables are loaded by now
        reader(other.text)
    exact = three = errors = total = 0
    elapsed = 0.0
    for signature in texts:
        start = time.perf_counter()
        found = reader(signature.text)
        elapsed += time.perf_counter() - start
        readings = [letters(r) for r in found] or [""]
        exact += readings[0] in signature.right
        three += any(r in signature.right for r in readings[:3])
        errors += min(Levenshtein.distance(readings[0], right) for right in signature.right)
        total += len(signature.right[0])
    count = len(texts)
    return exact / count, three / count, errors / total, count / elapsed


def table(which: str, path: Path) -> list[tuple[str, float, float, float, float]]:
    """Return a row for each reader that is installed."""
    rows = []
    for name, make in READERS.items():
        try:
            reader = make()
        except ImportError as missing:
            print(f"{name}: skipped, {missing}")
            continue
        rows.append((name, *measured(reader, signatures(which, path))))
    return rows


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--set", default="measure", choices=("measure", "look", "all"))
    parser.add_argument("--formulas", action="store_true")
    parser.add_argument("--fresh", action="store_true")
    parser.add_argument("--file", type=Path, help="of the columns text, romaji, alternatives")
    parser.add_argument("--misses", action="store_true", help="show the rows read otherwise")
    options = parser.parse_args()
    path = options.file or (FORMULAS if options.formulas else FRESH if options.fresh else DATA)
    which = options.set
    print(told(f"{path.stem}, {which}"))
    print(f"{len(signatures(which, path))} invented signatures ({which})")
    print(f"{'':26}{'exact':>8}{'first 3':>9}{'letter errors':>15}{'texts/s':>9}")
    for name, exact, three, errors, speed in table(which, path):
        print(f"{name:26}{exact:8.1%}{three:9.1%}{errors:15.2%}{speed:9.0f}")
    if options.misses and which == "look" and not path.stem.endswith("_measure"):
        misses(automatic_reader(), signatures(which, path))


if __name__ == "__main__":
    main()
