"""What the shell offers: file names where files are taken, ids and tables where these are."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent


def offered(line: str, **environment: str) -> list[str]:
    """Return what is offered at the end of a command line, as the shell script gets it."""
    words = line.split(" ")
    done = subprocess.run(
        [sys.executable, "-m", "inscribe"],
        env={
            **os.environ,
            "_INSCRIBE_COMPLETE": "bash_complete",
            **environment,
            "COMP_WORDS": line,
            "COMP_CWORD": str(len(words) - 1),
        },
        capture_output=True,
        text=True,
        check=True,
        cwd=ROOT,
    )
    return done.stdout.split()


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("inscribe read ex", "file"),
        ("inscribe collate a.toml ex", "file"),
        ("inscribe read a.toml -o ex", "file"),
        ("inscribe check ex", "file"),
        ("inscribe source add ex", "file"),
        ("inscribe entry a.toml --style ex", "file"),
        ("inscribe name 花 --records ex", "dir"),
        ("inscribe glossary check ex", "dir"),
        ("inscribe example ex", "dir"),
        ("inscribe --glossary ex", "dir"),
        ("inscribe collate a.toml ", "file"),
    ],
)
def test_files_and_folders_are_left_to_the_shell(line: str, kind: str) -> None:
    assert offered(line) == [f"{kind},{line.split(' ')[-1]}"]


def test_words_are_offered_where_they_are_known(tmp_path: Path) -> None:
    library = str(tmp_path / "l.sqlite")
    add = [sys.executable, "-m", "inscribe", "source", "add", "examples/sources"]
    subprocess.run([*add, "--library", library], cwd=ROOT, check=True, capture_output=True)
    found = offered("inscribe source remove koki", INSCRIBE_LIBRARY=library)
    assert found
    assert all(each.startswith("plain,kokinshu-") for each in found)
    assert offered("inscribe collate a.toml koki", INSCRIBE_LIBRARY=library) == found
    assert offered("inscribe source remove x", INSCRIBE_LIBRARY=str(tmp_path / "none")) == []
    assert "plain,hentaigana" in offered("inscribe glossary show hen")
    assert offered("inscribe guide no") == ["plain,notation"]
    assert "plain,verse" in offered("inscribe read --register v")
    assert "plain,collate" in offered("inscribe col")


def test_a_value_is_completed_after_an_equals_sign() -> None:
    assert offered("inscribe entry --format = ht") == ["plain,html"]  # as bash divides the line
    assert offered("inscribe entry --format=ht") == ["plain,--format=html"]
    zsh = offered("inscribe entry --format=ht", _INSCRIBE_COMPLETE="zsh_complete")
    assert "--format=html" in zsh
