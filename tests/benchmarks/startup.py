"""Start-up: whole commands against ``python -c "import click"``, the best of many runs, as ratios.

An installed program is measured, outside the checkout (whose modules Python would take first):
cd /tmp && VENV/bin/python CHECKOUT/tests/benchmarks/startup.py
"""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
RUNS = 25
COMMANDS = {
    "inscribe --version": ["-m", "inscribe", "--version"],
    "inscribe date": ["-m", "inscribe", "date", "嘉永六年癸丑仲秋"],
    "inscribe sign": ["-m", "inscribe", "sign", "舩"],
    "inscribe collate DEMO-001": ["-m", "inscribe", "collate", str(EXAMPLES / "DEMO-001.toml")],
    **{
        f"inscribe read {record.stem}": ["-m", "inscribe", "read", str(record)]
        for record in sorted(EXAMPLES.glob("DEMO-*.toml"))
    },
}


def best_of(arguments: list[str]) -> float:
    """Return the shortest time of a command in seconds."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        subprocess.run([sys.executable, *arguments], capture_output=True, check=True)
        times.append(time.perf_counter() - start)
    return min(times)


def main() -> None:
    """Print the ratios."""
    base = best_of(["-c", "import click"])
    for name, arguments in COMMANDS.items():
        print(f"{name:36} {best_of(arguments) / base:5.2f} times import click")


if __name__ == "__main__":
    main()
