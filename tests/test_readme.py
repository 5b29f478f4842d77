"""README and guide show real output: every ``console`` block in them is run and compared.

A block's lines that begin with ``$ `` are commands, the lines after them what they print.
``python tests/test_readme.py`` writes what the commands print now into them. In the guide the
example collection lies in the folder ``collection``.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PAGES = (ROOT / "README.md", *sorted((ROOT / "inscribe/guide").glob("*.md")))
BLOCK = re.compile(r"```console\n(.*?)```", re.DOTALL)


def commands(block: str) -> list[tuple[str, str]]:
    """Return the commands of a block, each with the output shown after it."""
    found: list[tuple[str, str]] = []
    for line in block.splitlines(keepends=True):
        if line.startswith("$ "):
            found.append((line[2:].strip(), ""))
        else:
            command, shown = found[-1]
            found[-1] = (command, shown + line)
    return found


@cache
def _stage() -> Path:
    """Return a folder in which the examples go by both their names."""
    folder = Path(tempfile.mkdtemp())
    for name in ("examples", "collection"):
        (folder / name).symlink_to(ROOT / "examples")
    return folder


def printed(command: str, library: Path) -> str:
    """Return what a command shown there prints, without colour.

    A command alone prints to a terminal of 80 columns; what goes into a pipe is not broken.
    """
    program = f"{sys.executable} -m inscribe"
    environment = {
        **{key: value for key, value in os.environ.items() if key != "COLUMNS"},
        **({} if " | " in command else {"COLUMNS": "80"}),
        "NO_COLOR": "1",
        "PYTHONIOENCODING": "utf-8",
        "INSCRIBE_LIBRARY": str(library),
        "PYTHONPATH": str(ROOT),
    }
    run = subprocess.run(
        re.sub(r"\binscribe (?=[a-z-])", f"{program} ", command),
        shell=True,
        cwd=_stage(),
        env=environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    return re.sub(r"[ \t]+$", "", run.stdout, flags=re.MULTILINE)


BLOCKS = [block for page in PAGES for block in BLOCK.findall(page.read_text("utf-8"))]


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("readme") / "sources.sqlite"
    subprocess.run(
        [sys.executable, "-m", "inscribe", "source", "add", "examples/sources", "--library", path],
        cwd=ROOT,
        capture_output=True,
        check=True,
    )
    return path


@pytest.mark.parametrize("block", BLOCKS, ids=[b.split("\n")[0][2:60] for b in BLOCKS])
def test_the_pages_show_what_is_printed(block: str, library: Path) -> None:
    for command, shown in commands(block):
        assert printed(command, library).strip("\n") == shown.strip("\n"), command


def main() -> None:
    """Write what the commands print now into README and guide."""
    with tempfile.TemporaryDirectory() as folder:
        library = Path(folder) / "sources.sqlite"
        add = [sys.executable, "-m", "inscribe", "source", "add", "examples/sources"]
        subprocess.run([*add, "--library", library], cwd=ROOT, capture_output=True, check=True)

        def renewed(match: re.Match[str]) -> str:
            parts = [f"$ {c}\n{printed(c, library)}" for c, _ in commands(match[1])]
            return "```console\n" + "\n".join(p.rstrip("\n") + "\n" for p in parts) + "```"

        for page in PAGES:
            page.write_text(BLOCK.sub(renewed, page.read_text("utf-8")), "utf-8")


if __name__ == "__main__":
    main()
