"""Kill -9 at random moments: ``tests/benchmarks/kills.py [--kills N] [--start N] [WORK...]``.

The work is ``new`` with piped answers, ``entry -o`` over an old file, ``source add``, ``settle``,
``undo``, ``merge``, ``measure`` and ``import``. After each kill: no file is half-written, the
library is sound (PRAGMA integrity_check), nothing that was reported as kept or added is lost, a
record is what it was before or what it should become, and an import is there whole or not at all
(``again``: over the records of an earlier list, where each record is the old or the new one).
Printed: kills, those that met the work half done, texts and answers reported, bytes lost, files
left over.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import shutil
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


RECORD = """# kept
id = "X-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
text = "武州住嶺暁作"
[[inscription.reading]]
by = "A. Reader"
"""
SETTLED = ["嶺暁=みねあき", "--name", "--by", "A. Reader", "--quiet"]


def changed(
    folder: Path, commands: list[list[str]], seconds: float, tally: Tally, record: str = RECORD
) -> None:
    """Kill the last of some commands on a record: it is as before, or as the command makes it."""
    states = []
    for number in (1, 2):  # the first time undisturbed
        path = folder / f"{number}/r.toml"
        path.parent.mkdir(exist_ok=True)
        for file in path.parent.iterdir():
            file.unlink()
        path.write_text(record, "utf-8")
        (path.parent / "b.toml").write_text(RECORD.replace("暁作", "曉造"), "utf-8")
        said = [[str(path.parent / a) if a.endswith(".toml") else a for a in c] for c in commands]
        for command in said[:-1]:
            killed(command, UNDISTURBED)
        states += [path.read_text("utf-8")] if number == 1 else []
        alive = killed(said[-1], UNDISTURBED if number == 1 else seconds)[1]
        if number == 1:
            states.append(path.read_text("utf-8"))
    tally.halfway += alive
    tally.reported += 1
    if path.read_text("utf-8").replace("/2/", "/1/") not in states:
        tally.lost += path.stat().st_size
    assert states[0] != states[1], "the command changes nothing"


def settle(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill the writing of a decision."""
    changed(folder, [["settle", "r.toml", *SETTLED]], seconds, tally)


def undo(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill the taking back of a decision."""
    commands = [["settle", "r.toml", *SETTLED], ["undo", "r.toml", "--quiet"]]
    changed(folder, commands, seconds, tally)


def merge(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill the making of one record of two readers'."""
    options = ["--prefer", "b", "--by", "A. Reader", "--why", "raking light", "--quiet"]
    changed(folder, [["merge", "r.toml", "b.toml", *options]], seconds, tally)


def measure(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill the writing of what a photograph measures."""
    photograph = str(ROOT / "examples/photographs/DEMO-004.jpg")
    options = ["--accept", "--replace", "--by", "A. Reader", "--quiet"]
    record = (ROOT / "examples/DEMO-004.toml").read_text("utf-8")
    record = record[: record.index("[inscription.source]")]  # whose files are not here
    changed(
        folder, [["measure", photograph, "--record", "r.toml", *options]], seconds, tally, record
    )


def imported(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill an import of 40 rows: all records are there, each can be read, or none is."""
    listed, mapped, to = folder / "l.csv", folder / "m.toml", folder / "records"
    lines = [f"I-{n},tsuba,武州住嶺暁作,front" for n in range(40)]
    listed.write_text("\n".join(["id,kind,text,place", *lines]) + "\n", "utf-8")
    if not mapped.exists():
        killed(["import", str(listed), "--map", str(mapped)], UNDISTURBED)
    shutil.rmtree(to, ignore_errors=True)
    command = ["import", str(listed), "--map", str(mapped), "--to", str(to), "--quiet"]
    tally.halfway += killed(command, seconds)[1]
    found = sorted(to.glob("*.toml")) if to.exists() else []
    from inscribe.record import load

    for path in found:
        load(path)
    tally.reported += len(lines)
    if len(found) not in (0, len(lines)):
        tally.lost += sum(path.stat().st_size for path in found)


ROWS = 40


def imported_again(folder: Path, seconds: float, tally: Tally) -> None:
    """Kill an import over the records of an earlier one: each is the old or the new, and whole."""
    place, table, mapping = folder / "again", folder / "list.csv", folder / "list.map.toml"
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
    "undo": undo,
    "merge": merge,
    "measure": measure,
    "import": imported,
    "again": imported_again,
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
