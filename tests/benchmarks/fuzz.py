"""Fuzz every stage: ``python tests/benchmarks/fuzz.py [--seconds N] [--start N] [STAGE...]``.

Each stage runs in a process of its own on random bytes, or with ``--guided`` on bytes that atheris
finds by what they reach in the code: slower, and it sees more; what reached something new is kept
in ``--corpus``, and the next run begins with it. Printed for each: executions, executions a second,
the worst time of one execution, and what went wrong; a broken law of the stage counts like a crash.
The inputs of crashes, and of executions that took more than two seconds, are shown so that they can
be tried again with ``--try STAGE HEX``.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import resource
import subprocess
import sys
import tempfile
import time
import traceback
from collections.abc import Callable
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]
HANG = 2.0  # seconds
KEPT = 20  # kinds of crash that are shown
CORPUS = Path("~/.cache/inscribe-fuzz").expanduser()


class Log:
    """What happened so far; written to a file, for the engine ends the process as it likes."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.began = time.process_time()
        self.written = 0.0
        self.executions, self.accepted, self.worst = 0, 0, 0.0
        self.slow: list[str] = []
        self.crashes: dict[str, str] = {}

    def run(self, stage: Callable[[bytes], bool], data: bytes) -> None:
        start = time.process_time()
        try:
            self.accepted += stage(data)
        except Exception as error:
            frame = traceback.extract_tb(error.__traceback__)[-1]
            where = f"{type(error).__name__} at {frame.filename}:{frame.lineno}: {error}"[:300]
            if len(self.crashes) < KEPT:
                self.crashes.setdefault(
                    where.split(":", 2)[0] + f":{frame.lineno}", where + f" | {data.hex()}"
                )
        end = time.process_time()
        self.executions += 1
        if end - start > self.worst:
            self.worst = end - start
        if end - start > HANG and len(self.slow) < KEPT:
            self.slow.append(f"{end - start:.1f} s | {data.hex()}")
        if end - self.written > 1 or self.executions == 1:
            self.written = end
            self.write(end)

    def write(self, now: float) -> None:
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
        found = {
            "executions": self.executions,
            "accepted": self.accepted,
            "seconds": now - self.began,
            "worst": self.worst,
            "memory": memory,
            "slow": self.slow,
            "crashes": list(self.crashes.values()),
        }
        part = self.path.with_suffix(".part")
        part.write_text(json.dumps(found), "utf-8")
        part.replace(self.path)


def stages() -> dict[str, Callable[[], Callable[[bytes], bool]]]:
    """Return every stage by its name; the package is loaded, instrumented then or never."""
    import fuzz_parsers
    import fuzz_stages

    return {**fuzz_stages.STAGES, **fuzz_parsers.STAGES}


def guided_child(name: str, seconds: float, path: Path, start: int, corpus: Path) -> None:
    """Fuzz one stage by what its inputs reach, until so much of the processor is used."""
    import atheris

    with atheris.instrument_imports(include=["inscribe"]):  # the first to import it
        import fuzz_stages

        stage, log = stages()[name](), Log(path)

    def run(data: bytes) -> None:
        log.run(stage, data)
        if time.process_time() - log.began > seconds:
            log.write(time.process_time())
            os._exit(0)

    kept = corpus / name
    kept.mkdir(parents=True, exist_ok=True)
    fuzz_stages.LONGEST = 300  # or it would find nothing but long texts
    options = [f"-seed={start}", "-max_len=300", "-timeout=600", "-verbosity=0"]
    options += ["-max_total_time=86400", f"-artifact_prefix={path.parent}/", str(kept)]
    atheris.Setup([sys.argv[0], *options], run)
    atheris.Fuzz()


def child(name: str, seconds: float, path: Path, start: int) -> None:
    """Fuzz one stage with chance inputs until so much of the processor is used."""
    stage, log = stages()[name](), Log(path)
    chance = random.Random(start)
    end = time.process_time() + seconds
    while time.process_time() < end:
        log.run(stage, chance.randbytes(chance.choice((3, 7, 15, 40, 120, 300))))
    log.write(time.process_time())


def main() -> None:
    """Run the stages one after the other and print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("stages", nargs="*", metavar="STAGE")
    parser.add_argument(
        "--seconds", type=float, default=20, help="of the processor, for each stage"
    )
    parser.add_argument("--start", type=int, default=1, help="begin elsewhere: another seed")
    parser.add_argument("--guided", action="store_true", help="by coverage; needs atheris")
    parser.add_argument("--corpus", type=Path, default=CORPUS, help="inputs kept by --guided")
    parser.add_argument("--child", help=argparse.SUPPRESS)
    parser.add_argument("--log", type=Path, help=argparse.SUPPRESS)
    parser.add_argument("--try", dest="again", nargs=2, metavar=("STAGE", "HEX"))
    given = parser.parse_args()
    if given.again:
        print("accepted:", stages()[given.again[0]]()(bytes.fromhex(given.again[1])))
        return
    if given.child:
        of = given.child, given.seconds, given.log, given.start
        guided_child(*of, given.corpus) if given.guided else child(*of)
        return
    if unknown := set(given.stages) - set(stages()):
        parser.error(f"no stage {', '.join(unknown)}; there are {', '.join(stages())}")
    print(
        f"{'stage':10} {'executions':>12} {'accepted':>9} {'a second':>9} {'worst s':>8}"
        f" {'MiB':>5} faults"
    )
    total = 0
    for name in given.stages or stages():
        with tempfile.TemporaryDirectory() as folder:
            guided = ["--guided", "--corpus", str(given.corpus)] if given.guided else []
            total += _run(name, given.seconds, given.start, Path(folder, "log.json"), guided)
    print(f"{'total':10} {total:12,}")


def _run(name: str, seconds: float, start: int, log: Path, more: list[str]) -> int:
    command = [sys.executable, __file__, "--child", name, "--log", str(log), "--start", str(start)]
    done = subprocess.run(
        [*command, "--seconds", str(seconds), *more],
        capture_output=True,
        timeout=seconds * 60 + 600,
    )
    found = json.loads(log.read_text("utf-8")) if log.exists() else {}
    if not found:
        print(name, "did not run:", done.stderr[-500:].decode("utf-8", "replace"))
        return 0
    count = int(found["executions"])
    rate = count / max(found["seconds"], 0.01)
    faults = len(found["crashes"]) + len(found["slow"])
    print(
        f"{name:10} {count:12,} {found['accepted'] / count:9.0%} {rate:9,.0f}"
        f" {found['worst']:8.2f} {found['memory']:5} {faults}",
        flush=True,
    )
    for said in [*found["crashes"], *found["slow"]]:
        print("    ", said)
    if done.returncode < 0:
        print("     ended by signal", -done.returncode, done.stderr[-300:])
    return count


if __name__ == "__main__":
    main()
