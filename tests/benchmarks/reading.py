"""How well, and how fast, verse and signatures are read, beside general-purpose converters.

Run: python tests/benchmarks/reading.py [--rounds 3] [--only READER]

Letters of the romanised reading are compared, case, spaces, marks and macrons left out, mu and n
taken for one (what a peer writes as ou or oo is folded to o, as the references have it).
Every reader runs in a process of its own, so that its memory is its own.

What was tuned, and on what: the costs in verse_connections.tsv, verse_frequencies.tsv,
verse_common_words.tsv and verse_readings.tsv, and the constants at the head of verse_verbs.py,
verse_tables.py, verse_words.py, metre.py and verse.py in inscribe/reading were set by hand on the
odd-numbered poems of the Ogura Hyakunin Isshu and of tests/data/verse_dev.tsv. The even-numbered
poems of the Hyakunin Isshu were only measured. The poems of verse_dev.tsv and the tables of words
come from one author, so its even-numbered poems are held out from the looking, but not from the
vocabulary. The fresh poems (tests/data/verse_fresh.tsv) were written down later, mostly from other
anthologies; their header has their first figures, and their odd-numbered ones were then looked at
too. The poems in manuscript spelling (tests/data/verse_manuscript.tsv) were written down
before they were read; when first read, 2.61% and 2.96% of the letters of the first sixty were
wrong (odd, even), and of the next forty 1.55% and 2.50%.

Haiku and plate words (tests/data/haiku_*.tsv, verse_words_*.tsv) were written by a second author
without sight of any table; the halves "look" were looked at afterwards, the halves "measure" never.
Of the plate words, "word" counts the verses whose word is read right, whatever else is: the
letters that the reading has where the reference has the word's, found by aligning the two.
"""

from __future__ import annotations

import argparse
import json
import re
import resource
import subprocess
import sys
import time
import unicodedata
from collections.abc import Callable
from pathlib import Path

HERE = Path(__file__).parent
HYAKUNIN = HERE.parents[2] / "shared" / "data" / "hyakunin.tsv"
DEVELOPMENT = HERE.parent / "data" / "verse_dev.tsv"
FRESH = HERE.parent / "data" / "verse_fresh.tsv"
WORDS = HERE.parent / "data" / "verse_words_{}.tsv"
HAIKU = HERE.parent / "data" / "haiku_{}.tsv"
AUTHORED = ("endings_d", "endings_f", "endings_g", "endings_h", "verse_j", "verse_l")
AUTHORED += ("haiku_m", "waka_m", "endings_m", "kyoka_m")
AUTHORED += ("haiku_n", "waka_n", "endings_n", "kyoka_n")  # text, kana, readings that may be right
MANUSCRIPT = HERE.parent / "data" / "verse_manuscript.tsv"
SIGNATURES = HERE.parent / "data" / "signatures.tsv"
Reader = Callable[[str], str]


def rows(path: Path) -> list[list[str]]:
    """Return the rows of a table without comments and header; none where it is missing."""
    if not path.exists():
        return []
    lines = path.read_text("utf-8").splitlines()
    return [line.split("\t") for line in lines if line.strip() and not line.startswith("#")][1:]


def unvoiced(text: str) -> str:
    """Return the text without voicing marks, as a manuscript has it."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFD", text).replace("\u3099", ""))


def poems() -> dict[str, list[tuple[str, str]]]:
    """Return the sets of poems as (text, reference); of several references one must be met."""
    sets: dict[str, list[tuple[str, str]]] = {}
    for name, path, text_cell, romaji_cell in (
        ("Hyakunin Isshu", HYAKUNIN, 1, 3),
        ("development", DEVELOPMENT, 2, 4),
        ("fresh", FRESH, 2, 4),
        ("manuscript spelling", MANUSCRIPT, 2, 3),
    ):
        for half, parity in (("odd", 1), ("even", 0)):
            found = [
                (row[text_cell].replace("／", ""), row[romaji_cell])
                for row in rows(path)
                if int(row[0]) % 2 == parity
            ]
            if found:
                sets[f"{name}, {half}"] = found
                if path != MANUSCRIPT:
                    sets[f"{name}, {half}, no voicing marks"] = [(unvoiced(t), r) for t, r in found]
    for half in ("look", "measure"):
        for name in (half, f"f_{half}"):
            path = Path(str(HAIKU).format(name))
            sets[f"haiku, {name}"] = [(row[0], row[1]) for row in rows(path)]
        sets[f"plate words, {half}"] = [(verse, reading) for _, verse, reading in words(half)]
        for name in AUTHORED:
            authored = rows(HERE.parent / "data" / f"{name}_{half}.tsv")
            sets[f"{name}, {half}"] = [(row[0], row[2]) for row in authored]
    return sets


def words(half: str) -> list[list[str]]:
    """Return the verses of everyday words as [word, verse, reading], two for each word."""
    return rows(Path(str(WORDS).format(half)))


def words_right(read: Reader, fold: Callable[[str], str], half: str) -> int:
    """Return in how many verses the reading has the letters that stand for the word.

    These are what its two verses have in common, at the place that fits where the word stands.
    """
    from rapidfuzz.distance import Levenshtein

    right = 0
    verses = words(half)
    for pair in zip(verses[::2], verses[1::2], strict=True):
        for (word, verse, reading), (_, _, beside) in (pair, pair[::-1]):
            truth, found = fold(reading), fold(read(verse))
            start, end = _place_of_word(truth, fold(beside), verse.find(word) / len(verse))
            edits = Levenshtein.editops(truth, found)
            right += not any(start <= edit.src_pos < end for edit in edits)
    return right


def _place_of_word(truth: str, beside: str, share: float) -> tuple[int, int]:
    """Return where the word's letters are in ``truth``; ``share`` of its verse stands before it.

    >>> _place_of_word("zohiitehanano", "suzushisayazonohana", 0)
    (0, 2)
    """
    best, place = -len(truth) / 1.0, (0, 0)
    for start in range(len(truth)):
        for end in range(start + 1, len(truth) + 1):
            if truth[start:end] not in beside:
                break
            score = end - start - abs(start - share * len(truth)) / 2
            if score > best:
                best, place = score, (start, end)
    return place


def signatures() -> list[tuple[str, list[str]]]:
    """Return the measured signatures as (text, accepted readings)."""
    return [
        (row[1].replace("／", ""), [row[2], *filter(None, row[3].split("/"))])
        for row in rows(SIGNATURES)
        if row[0] == "measure"
    ]


def letters(romaji: str) -> str:
    """Return what is compared.

    >>> letters("Kyō koso, mu")
    'kyokoson'
    """
    plain = unicodedata.normalize("NFD", romaji.lower())
    return re.sub("mu", "n", re.sub("[^a-z]", "", plain))


def inscribe_reader() -> Reader:
    """Return the reading of this program."""
    from inscribe import reading

    return lambda text: reading.read_text(text).proposals[0].romaji


def pykakasi_reader() -> Reader:
    """Return pykakasi's modified Hepburn."""
    import pykakasi

    convert = pykakasi.kakasi().convert
    return lambda text: folded("".join(word["hepburn"] for word in convert(text)))


def cutlet_reader() -> Reader:
    """Return cutlet's reading, foreign spellings off."""
    import cutlet

    katsu = cutlet.Cutlet(use_foreign_spelling=False)
    return lambda text: folded(katsu.romaji(text))


def unidic_reader() -> Reader:
    """Return UniDic's own pronunciation of MeCab's best path."""
    import fugashi
    import jaconv

    tagger = fugashi.Tagger()

    def read(text: str) -> str:
        said = "".join(word.feature.pron or word.surface for word in tagger(text))
        return folded(jaconv.kana2alphabet(jaconv.kata2hira(said).replace("ー", "")))

    return read


def fugashi_reader() -> Reader:
    """Return nothing useful: MeCab alone, for its speed."""
    import fugashi

    tagger = fugashi.Tagger()
    return lambda text: "".join(word.surface for word in tagger(text))


def folded(romaji: str) -> str:
    """Return a peer's letters with its long vowels as the references write them."""
    return re.sub("o[uo]|ō", "o", re.sub("uu|ū", "u", romaji.lower()))


READERS: dict[str, Callable[[], Reader]] = {
    "inscribe": inscribe_reader,
    "pykakasi": pykakasi_reader,
    "cutlet": cutlet_reader,
    "unidic-lite": unidic_reader,
    "fugashi alone": fugashi_reader,
}


def measured(name: str, rounds: int) -> dict[str, object]:
    """Return the figures of one reader; run in a process of its own."""
    from rapidfuzz.distance import Levenshtein

    read = READERS[name]()
    fold = letters if name == "inscribe" else lambda text: letters(folded(text))
    plain = [
        text for title, pairs in poems().items() if "no voicing" not in title for text, _ in pairs
    ]
    read(plain[0])  # what is loaded once is no part of any text
    first_time = len(plain) / _seconds(read, plain)
    result: dict[str, object] = {}
    for title, pairs in poems().items():
        errors = total = exact = 0
        for text, reference in pairs:
            found = fold(read(text))
            truths = [
                letters(each if name == "inscribe" else folded(each))
                for each in re.split(r" \| |; ", reference)
            ]
            distance = min(Levenshtein.distance(found, truth) for truth in truths)
            errors, total, exact = errors + distance, total + len(truths[0]), exact + (not distance)
        result[title] = (errors / total, exact, len(pairs))
    for half in ("look", "measure"):
        right = words_right(read, fold, half)
        result[f"plate words, {half}: the word"] = (right, len(words(half)))
    right = sum(
        any(letters(read(text)) == letters(romaji) for romaji in accepted)
        for text, accepted in signatures()
    )
    result["signatures"] = (right, len(signatures()))
    texts = [text for pairs in poems().values() for text, _ in pairs if "。" not in text]
    result["texts a second at first sight"] = first_time
    for kind, sample in (("again, all kept", plain), ("again, half of them unvoiced", texts)):
        best = min(_seconds(read, sample) for _ in range(rounds))
        result[kind] = len(sample) / best
    result["MiB"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return result


def _seconds(read: Reader, texts: list[str]) -> float:
    start = time.perf_counter()
    for text in texts:
        read(text)
    return time.perf_counter() - start


def main() -> None:
    """Print one table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--only", choices=list(READERS))
    options = parser.parse_args()
    if options.only:
        print(json.dumps(measured(options.only, options.rounds)))
        return
    found = {}
    for name in READERS:
        command = [sys.executable, __file__, "--only", name, "--rounds", str(options.rounds)]
        done = subprocess.run(command, capture_output=True, check=True, text=True)
        found[name] = json.loads(done.stdout.strip().splitlines()[-1])
    if not HYAKUNIN.exists():
        print(f"skipped: the Hyakunin Isshu, {HYAKUNIN} is not there")
    print(f"{'':44}" + "".join(f"{name:>16}" for name in found))
    for title in next(iter(found.values())):
        cells = [_cell(figures[title]) for figures in found.values()]
        print(f"{title:44}" + "".join(f"{cell:>16}" for cell in cells))


def _cell(value: object) -> str:
    if isinstance(value, list) and len(value) == 3:
        return f"{value[0]:.2%} {value[1]}/{value[2]}"
    if isinstance(value, list):
        return f"{value[0]}/{value[1]}"
    return f"{value:.0f}"


if __name__ == "__main__":
    main()
