"""How long a folder of records takes to load, and a long transcription to parse.

Run: python tests/benchmarks/records.py [RECORDS]

Compare the figures of one machine with each other only: the share of the standard TOML parser is
the floor under the loader's time.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
import time
import tomllib
from collections.abc import Callable
from pathlib import Path

from inscribe import notation, record

EXAMPLES = Path(__file__).parent.parent.parent / "examples"


def seconds(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def copies(folder: Path, count: int) -> list[Path]:
    """Write ``count`` records, the examples in turn, and return their paths."""
    shutil.copytree(EXAMPLES / "sources", folder / "sources")
    texts = [path.read_text(encoding="utf-8") for path in sorted(EXAMPLES.glob("*.toml"))]
    paths = []
    for number in range(count):
        path = folder / f"X-{number:05}.toml"
        text = texts[number % len(texts)]
        path.write_text(text.replace("DEMO-", f"X{number}-"), encoding="utf-8")
        paths.append(path)
    return paths


def main(count: int) -> None:
    """Print the table."""
    print(f"{'what':40} {'seconds':>8} {'each':>10}")
    with tempfile.TemporaryDirectory() as name:
        paths = copies(Path(name), count)
        texts = [path.read_text(encoding="utf-8") for path in paths]
        for what, work in (
            ("standard TOML parser alone", lambda: [tomllib.loads(text) for text in texts]),
            ("record.load", lambda: [record.load(path) for path in paths]),
        ):
            taken = seconds(work)
            print(f"{what:40} {taken:8.2f} {taken / count * 1e3:7.3f} ms")
    for what, text in (
        ("10,000 plain signs", "花の色はうつりにけりな" * 910),
        ("10,000 signs, every second one noted", "花(カ)の" * 5000),
        ("10,000 signs in brackets", "［花］の" * 5000),
        ("10,000 hentaigana by parent", "は(者)" * 10000),
        ("10,000 signs of Leiden", "花(?)<の>" * 5000),
    ):
        convention = "leiden" if "Leiden" in what else "japanese"
        taken = seconds(lambda text=text, kind=convention: notation.parse(text, kind))
        print(f"{what:40} {taken:8.3f} {taken / 10_000 * 1e6:7.2f} us")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 4000)
