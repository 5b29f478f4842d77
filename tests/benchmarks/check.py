"""Checking a folder: 4,000 records made from the examples, on all cores.

python tests/benchmarks/check.py [--records 4000]
"""

from __future__ import annotations

import argparse
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

EXAMPLES = Path(__file__).parent.parent.parent / "examples"


def main() -> None:
    """Print seconds and memory."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--records", type=int, default=4000)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        shutil.copytree(EXAMPLES / "sources", folder / "sources")
        records = sorted(EXAMPLES.glob("*.toml"))
        for number in range(options.records):
            text = records[number % len(records)].read_text("utf-8")
            made = text.replace('id = "DEMO-', f'id = "DEMO-{number}-', 1)
            (folder / f"{number:05}.toml").write_text(made, "utf-8")
        start = time.perf_counter()
        command = [sys.executable, "-m", "inscribe", "check", str(folder), "--format", "json"]
        run = subprocess.run(command, capture_output=True, check=False)
        took = time.perf_counter() - start
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    print(f"{options.records} records on {os.cpu_count()} cores: {took:.1f} s, ", end="")
    print(f"{peak:.0f} MiB a process, exit status {run.returncode}")


if __name__ == "__main__":
    main()
