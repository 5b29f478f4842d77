"""The cache of dictionaries maltreated: ``python tests/benchmarks/caches.py`` (some minutes).

Each time a text is read twice and the answers compared with those of a sound cache: the cache
folder is missing, is a file, cannot be written to, is built by two processes at once, or one of
its files is cut short, empty, or overwritten with as many other bytes. Printed: what was done,
exit status, whether the answer is the same, seconds.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
POEM = "春過て夏来にけらし白妙の衣ほすてふ天の香具山"


def reading(cache: Path, wait: bool = True) -> subprocess.Popen[bytes]:
    """Start the reading of a poem with a cache; wait for its end unless told not to."""
    process = subprocess.Popen(
        [sys.executable, "-m", "inscribe", "read", "--format", "json", "--text", POEM],
        env={**os.environ, "PYTHONPATH": str(ROOT), "INSCRIBE_CACHE": str(cache)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    if wait:
        process.wait(300)
    return process


def tried(name: str, cache: Path, right: bytes) -> None:
    """Read with the cache and print what came of it."""
    start = time.monotonic()
    process = reading(cache)
    out, err = process.stdout.read(), process.stderr.read()  # type: ignore[union-attr]
    last = err.decode().strip().rpartition("\n")[2][:100]
    same = "same" if out == right else "OTHER"
    print(
        f"{name:48} {process.returncode:4} {same:6} {time.monotonic() - start:6.1f} {last}",
        flush=True,
    )


def main() -> None:
    """Try everything and print the table."""
    with tempfile.TemporaryDirectory() as kept:
        folder = Path(kept)
        sound = folder / "sound"
        both = [reading(sound, wait=False) for _ in range(2)]
        first, second = (process.communicate(timeout=300)[0] for process in both)
        print("two at once, no cache before: answers", "same" if first == second else "DIFFER")
        tried("a sound cache", sound, first)
        place = folder / "file"
        place.write_text("in the way")
        tried("a file in place of the folder", place, first)
        files = [path.relative_to(sound) for path in sound.rglob("*") if path.is_file()]
        for file in files:
            for harm in ("cut", "emptied", "overwritten"):
                harmed = folder / "harmed"
                shutil.copytree(sound, harmed)
                damage(harmed / file, harm)
                tried(f"{harm}: {file}", harmed, first)
                shutil.rmtree(harmed)


def damage(path: Path, harm: str) -> None:
    """Cut a file to half its length, empty it, or overwrite its second half."""
    data = path.read_bytes()
    half = len(data) // 2
    path.write_bytes(
        {
            "cut": data[:half],
            "emptied": b"",
            "overwritten": data[:half] + b"\xa5" * (len(data) - half),
        }[harm]
    )


if __name__ == "__main__":
    main()
