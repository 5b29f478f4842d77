"""Memory of ``restore --lines`` as texts go by: ``python tests/benchmarks/memory.py [COUNT]``.

Signatures and poems of twenty invented signs, ten of them worn, are given one after the other.
Printed: texts done, and the resident memory of the process in MiB (Linux: from /proc).
"""

from __future__ import annotations

import json
import random
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
SIGNS = {
    "signature": "武州住作於江戸之彫天保三年春日行六十八歳嶺暁霜村露岳舎軒斎法橋",
    "verse": "世の中に絶えて桜のなかりせば春の心はのどけからまし秋山里鹿鳴く音露夢風",
}


def texts(register: str, count: int) -> Iterator[str]:
    """Yield texts of twenty signs with ten □ each."""
    chance = random.Random(7)
    for _ in range(count):
        signs = chance.choices(SIGNS[register], k=20)
        for place in chance.sample(range(20), 10):
            signs[place] = "□"
        yield "".join(signs)


def resident(process: int) -> float:
    """Return the resident memory of a process in MiB."""
    status = Path(f"/proc/{process}/status").read_text()
    line = next(line for line in status.splitlines() if line.startswith("VmRSS"))
    return int(line.split()[1]) / 1024


def measured(register: str, count: int) -> None:
    """Restore the texts of a register in one process and print its memory every ten texts."""
    command = [sys.executable, "-m", "inscribe", "restore", "--lines", "--format", "jsonl"]
    with tempfile.TemporaryFile("w+") as given:
        given.write("\n".join(texts(register, count)) + "\n")
        given.seek(0)
        with subprocess.Popen(
            [*command, "--register", register], stdin=given, stdout=subprocess.PIPE, cwd=ROOT
        ) as process:
            assert process.stdout is not None
            for number, line in enumerate(process.stdout, start=1):
                assert "error" not in json.loads(line)
                if number % 10 == 0:
                    print(f"{register} {number:4} {resident(process.pid):6.0f} MiB", flush=True)


def main() -> None:
    """Measure both registers."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    for register in SIGNS:
        measured(register, count)


if __name__ == "__main__":
    main()
