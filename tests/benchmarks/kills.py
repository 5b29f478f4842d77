"""Kill -9 at random moments: ``tests/benchmarks/kills.py [--kills N] [--start N] [WORK...]``.

The work is ``new`` with piped answers, ``entry -o`` over an old file, ``source add``, ``settle`` in
a record, and ``import`` of a list over the records of an earlier state of it. After each kill: no
file is half-written, the library is sound (PRAGMA integrity_check), nothing that was reported as
kept or added is lost, and a second run of the import does what the first left undone. Printed:
kills, those that met the work half done, texts and
answers reported, bytes lost, files left over.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
ANSWERS = ["X-9", "kozuka", "", "96", "14.5", "", "back plate", "running", "", "花の色は"]
ANSWERS += ["y", "", "", "", "", "A. Reader", "", "n", "a remark"]


@dataclass
class Tally:
    """What the kills did."""

    kills: int = 0
    halfway: int = 0
    reported: int = 0
    lost: int = 0
    left_over: int = 0


def killed(command: list[str], seconds: float, given: str = "") -> tuple[bytes, bool]:
    """Run a command, kill it after some seconds; return its messages and whether it was killed."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    process = subprocess.Popen(
        [sys.executable, "-m", "inscribe", *command],
        stdin=subprocess.PIPE,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        env=environment,
        start_new_session=True,
    )
    timer = time.monotonic() + seconds
    assert process.stdin is not None
    process.stdin.write(given.encode())
    process.stdin.flush()
    while process.poll() is None and time.monotonic() < timer:
        time.sleep(0.002)
    alive = process.poll() is None
    if alive:
        process.send_signal(signal.SIGKILL)
    _, said = process.communicate()
    return said, alive


def new(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill an interview: the record is whole or absent, the answers kept are a true beginning."""
    path = folder / "r.toml"
    path.unlink(missing_ok=True)
    _, alive = killed(["new", str(path)], seconds, "".join(f"{answer}\n" for answer in ANSWERS))
    tally.halfway += alive
    draft = path.with_name(path.name + ".draft")
    if draft.exists():
        kept = [value for _, value in json.loads(draft.read_text("utf-8"))]
        tally.reported += len(kept)
        if kept != ANSWERS[: len(kept)]:
            tally.lost += len("".join(kept).encode())
        draft.unlink()
    elif path.exists():
        tally.reported += len(ANSWERS)
    if path.exists():
        _loads(path)


def _loads(path: Path) -> None:
    from inscribe.record import load

    assert load(path).remarks == "a remark"


def entry(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill the writing of an entry over an old one: it is the old one or the new one, whole."""
    path = folder / "e.html"
    old, new_one = "old\n" * 5000, _entry()
    path.write_text(old, "utf-8")
    tally.reported += 1
    command = ["entry", str(ROOT / "examples"), "--format", "html", "--force", "-o", str(path)]
    tally.halfway += killed(command, seconds)[1]
    if path.read_text("utf-8") not in (old, new_one):
        tally.lost += path.stat().st_size


_made: list[str] = []


def _entry() -> str:
    if not _made:
        command = [sys.executable, "-m", "inscribe", "entry", str(ROOT / "examples")]
        done = subprocess.run(
            [*command, "--format", "html"],
            capture_output=True,
            check=True,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )
        _made.append(done.stdout.decode())
    return _made[0]


def source(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill an addition: what was reported before is there, what is there is whole."""
    library = folder / "l.sqlite"
    told = folder / "told"
    number = int(told.read_text()) if told.exists() else 0
    texts = [f"花の色は{chr(0x3042 + number % 80)}{chr(0x3042 + n % 80)}" for n in range(60)]
    lines = "".join(
        json.dumps({"id": f"{number}-{n}", "text": t}) + "\n" for n, t in enumerate(texts)
    )
    file = folder / "s.jsonl"
    file.write_text(lines, "utf-8")
    said, alive = killed(["source", "add", str(file), "--library", str(library)], seconds)
    tally.halfway += alive
    if b"added" in said:
        told.write_text(str(number + 1))
        tally.reported += len(texts)
    if library.exists():
        _examine(library, int(told.read_text()) if told.exists() else 0, tally)


def _examine(library: Path, told: int, tally: Tally) -> None:
    """Hold the library against what was reported: additions 0 to ``told``, each of 60 texts."""
    held = sqlite3.connect(library)
    assert held.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    tables = {name for (name,) in held.execute("SELECT name FROM sqlite_master")}
    ids = {i for (i,) in held.execute("SELECT id FROM texts")} if "texts" in tables else set()
    held.close()
    missing = [f"{a}-{n}" for a in range(told) for n in range(60) if f"{a}-{n}" not in ids]
    tally.lost += 18 * len(missing)  # bytes of one text
    assert len(ids) % 60 == 0, "an addition is there in part"


RECORD = """id = "K-1"
kind = "kozuka"
[[inscription]]
place = "back"
text = "武州住嶺曉作"
"""


def settle(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill a decision: the record is as before or has it, and is whole."""
    from inscribe.record import load

    path = folder / "settled.toml"
    path.write_text(RECORD, "utf-8")
    command = ["settle", str(path), "嶺曉=みねあき", "--name", "--by", "H. Quist"]
    tally.halfway += killed(command, seconds)[1]
    tally.reported += 1
    if path.read_text("utf-8") != RECORD and not load(path).inscriptions[0].overrides:
        tally.lost += len(RECORD.encode())


ROWS = 40


def imported(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill an import over the records of an earlier one: each is the old or the new, and whole."""
    place, table, mapping = folder / "imported", folder / "list.csv", folder / "list.map.toml"
    command = ["import", str(table), "--map", str(mapping), "--to", str(place), "-q"]
    for length in (96, 97):
        lines = [f"L-{n},kozuka,{length}.5,武州住嶺暁作" for n in range(ROWS)]
        table.write_text("\n".join(["id,kind,length,inscription", *lines]) + "\n", "utf-8")
        if not mapping.exists():
            killed(["import", str(table), "--map", str(mapping), "-q"], UNDISTURBED)
        tally.halfway += killed(command, UNDISTURBED if length == 96 else seconds / 3)[1]
    tally.reported += ROWS
    tally.lost += sum(length not in (96.5, 97.5) for length in _lengths(place))
    killed(command, UNDISTURBED)
    assert _lengths(place) == [97.5] * ROWS, "a second run does not end what the first began"
    for path in place.rglob("*.toml"):
        path.unlink()


def _lengths(folder: Path) -> list[float | None]:
    from inscribe.record import load

    return [load(path).measurements.length for path in sorted(folder.rglob("*.toml"))]


WORK: dict[str, Callable[[Path, float, Tally], None]] = {
    "new": new,
    "entry": entry,
    "source": source,
    "settle": settle,
    "import": imported,
}
UNDISTURBED = 120.0  # seconds: no kill


def kill(name: str, kills: int, start: int) -> Tally:
    """Return what ``kills`` kills of one work did; ``start`` begins the random moments."""
    work, chance, tally = WORK[name], random.Random(start), Tally()
    with tempfile.TemporaryDirectory() as kept:
        folder = Path(kept)
        took = 0.0
        for _ in range(2):  # the second time the dictionaries are there
            began = time.monotonic()
            work(folder, UNDISTURBED, Tally())
            took = time.monotonic() - began
        for _ in range(kills):
            work(folder, took * chance.uniform(0.2, 1.1), tally)
            tally.kills += 1
        tally.left_over = sum(1 for path in folder.rglob(".*") if path.is_file())
    return tally


def main() -> None:
    """Kill and print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("work", nargs="*", choices=[*WORK, []], metavar="WORK")
    parser.add_argument("--kills", type=int, default=200, help="in all")
    parser.add_argument("--start", type=int, default=1)
    given = parser.parse_args()
    names = given.work or list(WORK)
    print("work      kills  halfway  reported  bytes lost  left over")
    for name in names:
        found = kill(name, -(-given.kills // len(names)), given.start)
        print(
            f"{name:8} {found.kills:6} {found.halfway:8} {found.reported:9} {found.lost:11}"
            f" {found.left_over:10}",
            flush=True,
        )


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))
    main()
