"""Whole collections: check, index, concord and entry over generated records, cold and warm.

    python tests/benchmarks/drawers.py [--records 2000] [--folder KEEP] [--only check,index]

Each figure is one whole command in a process of its own, the interpreter's start included: seconds
by the clock, seconds of all processors, and the memory of its largest process at its greatest. The
machine's load before each command is told beside it, for on a busy machine the clock says little.
The records are made (``concord.py`` has the texts): names, places, dates and verse put together
from invented pieces; how many texts there are, and how many of them each another, is told first.
"""

from __future__ import annotations

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

import concord

STATES = ("drafted", "read", "reviewed", "published")
COMMANDS = {
    "check": ["check", "{folder}", "--format", "csv"],
    "index": ["index", "{folder}", "--format", "csv"],
    "concord": ["concord", "{folder}", "夢", "--counts"],
    "entry": ["entry", "{folder}", "--format", "md"],
    "page": ["entry", "{folder}", "--format", "html"],
    "site": ["entry", "{folder}", "--format", "html", "-o", "{cache}/site/", "--force"],
    "next": ["next", "{folder}"],
}


def record(number: int, rng: random.Random) -> str:
    """Return an invented record as it lies in a drawer, with measurements and a reader."""
    text = concord.record(number, rng)
    size = f"length = {rng.uniform(70, 98):.1f}\nwidth = {rng.uniform(12, 16):.1f}"
    head, _, rest = text.partition("\n[[inscription]]")
    place = f'state = "{rng.choice(STATES)}"\ndrawer = "{rng.randrange(1, 60)}"\n'
    inscriptions = f"\n[[inscription]]{rest}".replace(
        "[[inscription]]", f'[[inscription]]\nhand = "{rng.choice(("regular", "running"))}"'
    )
    reader = '[[inscription.reading]]\nby = "H. Quist"\non = 2025-03-04\n'
    return f"{head}{place}\n[measurements]\n{size}\n{inscriptions}{reader}"


def make(folder: Path, count: int) -> None:
    """Write ``count`` records, a hundred a folder, and tell how many texts they have."""
    rng, texts = random.Random(20), Counter[str]()
    for number in range(count):
        place = folder / f"drawer {number // 100:03}"
        place.mkdir(parents=True, exist_ok=True)
        made = record(number, rng)
        texts.update(re.findall('^text = "(.*)"$', made, re.MULTILINE))
        (place / f"MADE-{number:05}.toml").write_text(made, encoding="utf-8")
    print(f"{count} records, {texts.total()} texts, {len(texts)} of them unlike each other")


def measured(name: str, folder: Path, cache: Path) -> None:
    """Run one command, and print what it took."""
    arguments = [
        part.format(folder=folder, cache=cache) for part in COMMANDS[name.partition(":")[0]]
    ]
    load = os.getloadavg()[0]
    start = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-m", "inscribe", *arguments],
        env=os.environ | {"INSCRIBE_CACHE": str(cache)},
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )
    assert process.stdout
    size = sum(len(part) for part in iter(lambda: process.stdout.read(2**20), b""))  # type: ignore[union-attr]
    _, status, used = os.wait4(process.pid, 0)
    took = time.perf_counter() - start
    spent = used.ru_utime + used.ru_stime
    print(
        f"{name:20} {took:7.1f} s {spent:7.1f} s of processor {used.ru_maxrss / 1024:6.0f} MiB"
        f"   {size / 2**20:6.1f} MiB written, exit {os.waitstatus_to_exitcode(status)},"
        f" load {load:.1f}",
        flush=True,
    )


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--records", type=int, default=2000)
    parser.add_argument("--folder", type=Path)
    parser.add_argument("--only", default=",".join(COMMANDS))
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as made:
        folder = options.folder or Path(made) / "records"
        if not folder.exists():
            make(folder, options.records)
        print(f"{options.records} records on {os.cpu_count()} cores")
        for name in options.only.split(","):
            cache = Path(made) / "cache"  # each command begins without what another has kept
            cache.mkdir()
            _compiled_into(cache)
            measured(f"{name}: cold", folder, cache)
            measured(f"{name}: warm", folder, cache)
            changed = next(folder.rglob("*.toml"))
            changed.write_text(changed.read_text("utf-8") + "\n# changed\n", "utf-8")
            measured(f"{name}: one changed", folder, cache)
            shutil.rmtree(cache)


def _compiled_into(cache: Path) -> None:
    """Put the compiled dictionaries, which are no part of this, into an empty cache."""
    from inscribe.reading.lexicon import verse_dictionary
    from inscribe.reading.mecab import cache_folder

    verse_dictionary()
    for each in cache_folder().iterdir():
        if not each.name.startswith("kept-"):
            (cache / each.name).symlink_to(each)


if __name__ == "__main__":
    main()
