"""Finding the source: rank-1 accuracy and time against two general-purpose peers, in one run.

    python tests/benchmarks/find.py [--texts 5000] [--only-ours]

The library: real public-domain verse (tests/data/verse_dev.tsv and, where ../shared is there, the
Hyakunin Isshu) spelled in kana without voicing marks, filled up to ``--texts`` with verse made by
a chain of order two at most over the kana of that verse, so that the real hide among the likely.
The queries: the same poems in mixed kanji and kana without voicing marks, whole and damaged. A hit
is right if it is the poem or a near twin (nine tenths of its letters). Peers: a linear scan by
rapidfuzz over fugashi's readings, and SQLite FTS5 with its trigram tokenizer on the kana.
"""

from __future__ import annotations

import argparse
import random
import resource
import sqlite3
import statistics
import tempfile
import time
import unicodedata
from collections import defaultdict
from collections.abc import Callable, Iterator
from multiprocessing import Process
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
VERSE = ROOT / "tests" / "data" / "verse_dev.tsv"
HYAKUNIN = ROOT.parent / "shared" / "data" / "hyakunin.tsv"
ORDER = 2
Poem = tuple[str, str, str]  # id, text as a manuscript has it, kana without voicing marks
Ask = Callable[[str], str | None]


def unvoiced(text: str) -> str:
    """Return ``text`` without voicing marks."""
    plain = unicodedata.normalize("NFD", text).replace("\u3099", "").replace("\u309a", "")
    return unicodedata.normalize("NFC", plain)


def poems() -> list[Poem]:
    """Return the real poems."""
    found: list[Poem] = []
    for path in (VERSE, HYAKUNIN):
        if not path.exists():
            continue
        rows = [line.split("\t") for line in path.read_text("utf-8").splitlines()]
        rows = [row for row in rows if not row[0].startswith("#")]
        header, rows = rows[0], rows[1:]
        kana = header.index("kana_historical" if "kana_historical" in header else "kana")
        text = header.index("text")
        for row in rows:
            written = unvoiced(row[text].replace("／", ""))
            found.append((f"{path.stem}-{row[0]}", written, unvoiced(row[kana])))
    return list({poem[2]: poem for poem in found}.values())


def likely_verse(real: list[Poem], rng: random.Random) -> Iterator[str]:
    """Yield made-up verse of 31 kana."""
    follows: defaultdict[str, list[str]] = defaultdict(list)
    for _, _, kana in real:
        for i in range(len(kana)):
            for order in range(ORDER + 1):
                if i >= order:
                    follows[kana[i - order : i]].append(kana[i])
    while True:
        verse = ""
        while len(verse) < 31:
            order = rng.choice((0, 1, ORDER))
            known = verse[-order:] if order else ""
            while known not in follows:
                known = known[1:]
            verse += rng.choice(follows[known])
        yield verse


def damage(text: str, kind: str, rng: random.Random) -> str:
    """Return ``text`` as it would be found worn or copied in part."""
    signs = list(text)
    if kind == "a phrase missing":
        start = rng.choice([0, 5, 11, 16, 22]) * len(signs) // 31
        del signs[start : start + len(signs) // 5]
    elif kind.endswith("unreadable"):
        for at in rng.sample(range(len(signs)), round(len(signs) * int(kind[:2]) / 100)):
            signs[at] = "□"
    elif kind == "first ten signs":
        signs = signs[:10]
    elif kind == "ten signs anywhere":
        start = rng.randrange(max(1, len(signs) - 9))
        signs = signs[start : start + 10]
    return "".join(signs)


KINDS = (
    "clean",
    "a phrase missing",
    "30% unreadable",
    "60% unreadable",
    "first ten signs",
    "ten signs anywhere",
)


def build(texts: list[tuple[str, str]], file: Path) -> None:
    """Index the texts, in a process of its own so that its memory is not counted."""
    from inscribe.sources import adding
    from inscribe.sources.library import Library
    from inscribe.sources.texts import SourceText

    with Library(file, create=True) as library:
        adding.add_texts(library, (SourceText(i, (t,)) for i, t in texts), len(texts))


def ours(texts: list[tuple[str, str]], folder: Path) -> tuple[Ask, str]:
    """Return our search over the texts, and what it took to index them."""
    from inscribe import notation
    from inscribe.sources.library import Library
    from inscribe.sources.ranking import find

    file = folder / "library.sqlite"
    start = time.perf_counter()
    builder = Process(target=build, args=(texts, file))
    builder.start()
    builder.join()
    took = time.perf_counter() - start
    opened = Library(file)

    def ask(query: str) -> str | None:
        hits = find(opened, notation.parse(query), 1)
        return hits[0].text.id if hits else None

    return ask, f"indexed in {took:.0f} s, {file.stat().st_size / 2**20:.0f} MiB"


def rapidfuzz_scan(texts: list[tuple[str, str]]) -> Ask:
    """Return a linear scan over fugashi's readings."""
    import fugashi
    import jaconv
    from rapidfuzz import fuzz, process

    tagger = fugashi.Tagger()
    kana = [text for _, text in texts]

    def ask(query: str) -> str | None:
        said = "".join(word.feature.kana or word.surface for word in tagger(query))
        best = process.extractOne(unvoiced(jaconv.kata2hira(said)), kana, scorer=fuzz.partial_ratio)
        return texts[best[2]][0] if best else None

    return ask


def fts5_trigrams(texts: list[tuple[str, str]]) -> Ask:
    """Return SQLite FTS5 with its trigram tokenizer on the kana alone."""
    db = sqlite3.connect(":memory:")
    db.execute("CREATE VIRTUAL TABLE t USING fts5(id UNINDEXED, kana, tokenize='trigram')")
    db.executemany("INSERT INTO t VALUES (?, ?)", texts)

    def ask(query: str) -> str | None:
        pieces = {query[i : i + 3] for i in range(len(query) - 2)}
        wanted = " OR ".join(f'"{piece}"' for piece in sorted(pieces) if "□" not in piece)
        if not wanted:
            return None
        sql = "SELECT id FROM t WHERE t MATCH ? ORDER BY rank LIMIT 1"
        row = db.execute(sql, (wanted,)).fetchone()
        return row[0] if row else None

    return ask


def measured(name: str, ask: Ask, queries: list[tuple[str, str]], kana: dict[str, str]) -> str:
    """Return one line of the table: accuracy, median and worst time of a query."""
    from rapidfuzz import fuzz

    right, times = 0, []
    for identity, query in queries:
        start = time.perf_counter()
        answer = ask(query)
        times.append((time.perf_counter() - start) * 1000)
        right += answer is not None and fuzz.ratio(kana[answer], kana[identity]) >= 90
    median, worst = statistics.median(times), max(times)
    return f"{name:22} {right / len(queries):6.3f} {median:9.1f} {worst:9.1f}"


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--texts", type=int, default=5000)
    parser.add_argument("--only-ours", action="store_true")
    options = parser.parse_args()
    rng = random.Random(31)
    real = poems()
    made = likely_verse(real, rng)
    texts = [(identity, kana) for identity, _, kana in real]
    texts += [(f"made-{n}", next(made)) for n in range(options.texts - len(texts))]
    kana = dict(texts)
    with tempfile.TemporaryDirectory() as folder:
        ask, remark = ours(texts, Path(folder))
        asks = [("inscribe", ask)]
        if not options.only_ours:
            asks += [("rapidfuzz over fugashi", rapidfuzz_scan(texts))]
            asks += [("FTS5 trigram", fts5_trigrams(texts))]
        print(f"{len(texts)} texts ({len(real)} real); {remark}")
        print(f"{'':22} {'rank 1':>6} {'median ms':>9} {'worst ms':>9}")
        for kind in KINDS:
            print(kind)
            queries = [(identity, damage(text, kind, rng)) for identity, text, _ in real]
            for name, each in asks:
                print("  " + measured(name, each, queries, kana), flush=True)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"peak memory of this process {peak:.0f} MiB")


if __name__ == "__main__":
    main()
