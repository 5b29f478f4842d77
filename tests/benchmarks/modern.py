"""Old texts in current forms and current spelling: characters right, speed and memory, with peers.

    python tests/benchmarks/modern.py

The texts: tests/data/modern_dev.tsv (invented sentences), its odd rows looked at while building,
its even rows only measured. A character is right by edit distance to the current text;
"untouched" is what stays right of texts that are in current spelling already. Peers: the text
left as it is, and two kanji converters of the package index. Each contender runs in a process of
its own.
"""

from __future__ import annotations

import resource
import time
from collections.abc import Callable
from multiprocessing import Process, Queue
from pathlib import Path

from authors import told
from rapidfuzz.distance import Levenshtein

ROWS = Path(__file__).parent.parent / "data" / "modern_dev.tsv"
Convert = Callable[[str], str]


def rows() -> list[tuple[str, str]]:
    """Return the pairs of old and current text."""
    lines = ROWS.read_text(encoding="utf-8").splitlines()
    cells = [line.split("\t") for line in lines if line and not line.startswith("#")]
    return [(old, modern) for old, modern in cells[1:]]


def right(convert: Convert, pairs: list[tuple[str, str]]) -> float:
    """Return the share of characters that are right, in percent."""
    errors = sum(Levenshtein.distance(convert(text), wanted) for text, wanted in pairs)
    return 100 * (1 - errors / sum(len(wanted) for _, wanted in pairs))


def inscribe_converter() -> Convert:
    """Return this program."""
    from inscribe.reading.prose.current import modern_text

    return modern_text


def kyujipy_converter() -> Convert:
    """Return the kanji converter kyujipy."""
    from kyujipy import KyujitaiConverter

    convert: Convert = KyujitaiConverter().kyujitai_to_shinjitai
    return convert


def joyokanji_converter() -> Convert:
    """Return the kanji converter joyokanji."""
    import joyokanji

    convert: Convert = joyokanji.convert
    return convert


CONTENDERS: dict[str, Callable[[], Convert]] = {
    "inscribe": inscribe_converter,
    "kyujipy": kyujipy_converter,
    "joyokanji": joyokanji_converter,
    "left as it is": lambda: lambda text: text,
}


def measure(name: str, results: Queue[tuple[float, ...]]) -> None:
    """Put the figures of one contender into ``results``."""
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    convert, pairs = CONTENDERS[name](), rows()
    convert(pairs[0][0])
    start = time.perf_counter()
    halves = [right(convert, pairs[0::2]), right(convert, pairs[1::2])]
    seconds = time.perf_counter() - start
    untouched = right(convert, [(modern, modern) for _, modern in pairs])
    memory = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024
    results.put((*halves, untouched, len(pairs) / seconds, memory))


def main() -> None:
    """Print the table."""
    print(told("modern_dev, looked at and measured halves"))
    print(f"{len(rows())} texts; characters right in percent")
    columns = "contender", "looked at", "measured", "untouched", "texts/s", "MB more"
    print("{:<15}{:>10}{:>10}{:>11}{:>10}{:>9}".format(*columns))
    for name in CONTENDERS:
        results: Queue[tuple[float, ...]] = Queue()
        process = Process(target=measure, args=(name, results))
        process.start()
        looked_at, measured, untouched, speed, memory = results.get()
        process.join()
        shares = f"{looked_at:>10.2f}{measured:>10.2f}{untouched:>11.2f}"
        print(f"{name:<15}{shares}{speed:>10.0f}{memory:>9.0f}")


if __name__ == "__main__":
    main()
