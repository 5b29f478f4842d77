"""Memory of ``restore --lines`` by the number of texts: ``python tests/benchmarks/memory.py``.

Signatures and poems of twenty invented signs, ten of them worn, are given to one run: twenty
of them, then a hundred (or as many as the arguments say). Printed: the most memory it took.
"""

from __future__ import annotations

import os
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


def most_memory(register: str, count: int) -> float:
    """Return the most memory in MiB that one run takes for so many texts."""
    command = [sys.executable, "-m", "inscribe", "restore", "--lines", "--format", "jsonl"]
    with tempfile.TemporaryFile("w+") as given:
        given.write("\n".join(texts(register, count)) + "\n")
        given.seek(0)
        process = subprocess.Popen(
            [*command, "--register", register],
            stdin=given,
            stdout=subprocess.DEVNULL,
            cwd=ROOT,
        )
        _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    assert process.returncode == 0
    return used.ru_maxrss / 1024


def main() -> None:
    """Measure both registers."""
    counts = [int(given) for given in sys.argv[1:]] or [20, 100]
    for register in SIGNS:
        for count in counts:
            print(
                f"{register:9} {count:4} texts {most_memory(register, count):6.0f} MiB", flush=True
            )


if __name__ == "__main__":
    main()
