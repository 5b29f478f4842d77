"""One voice: what is wrong; where; what to do, whoever found it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest


def run(*arguments: str) -> tuple[int, str]:
    """Return exit status and what was said on standard error."""
    done = subprocess.run(
        [sys.executable, "-m", "inscribe", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
        stdin=subprocess.DEVNULL,
    )
    return done.returncode, done.stderr.strip()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("raed",), "inscribe: there is no command raed; did you mean read?"),
        (("zzz",), "inscribe: there is no command zzz; see inscribe --help"),
        (
            ("read", "--leters", "x"),
            "inscribe: there is no option --leters; usage: inscribe read [OPTIONS]"
            " [RECORD|FILE|TEXT|-]; did you mean --letters?",
        ),
        (
            ("check",),
            "inscribe: missing argument 'FOLDER|RECORD'; usage: inscribe check [OPTIONS]"
            " FOLDER|RECORD; see inscribe check --help",
        ),
        (
            ("read", "no/such.toml"),
            "inscribe: there is no such file; no/such.toml; for a text itself, use --text TEXT",
        ),
        (
            ("read", "花（"),
            "inscribe: the bracket （ is opened and never closed; line 1, column 2;"
            " expected ) or ）",
        ),
        (
            ("guide", "nottaion"),
            "inscribe: the guide has no chapter nottaion; did you mean notation?",
        ),
    ],
)
def test_each_message_has_the_same_form(arguments: tuple[str, ...], said: str) -> None:
    assert run(*arguments) == (2, said)


def test_every_problem_of_a_record_has_its_line(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    path.write_text('id = "a"\nkidn = "tsuba"\n[[inscription]]\nplace = "front"\ntxt = "花"\n')
    status, said = run("read", str(path))
    lines = said.splitlines()
    assert status == 2
    assert len(lines) == 2
    assert all(line.startswith("inscribe: ") for line in lines)
    assert (
        f"inscribe: record has no key kidn; {path}, line 2, column 1; did you mean kind?" in lines
    )


def test_debug_shows_where_in_the_program(tmp_path: Path) -> None:
    status, said = run("--debug", "read", "花（")
    assert status == 2
    assert "Traceback" in said
    assert "Python 3" in said
    assert said.endswith("expected ) or ）")
    assert "Traceback" not in run("read", "花（")[1]


def test_alone_it_shows_the_first_steps() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "inscribe"], capture_output=True, text=True, encoding="utf-8"
    )
    assert done.returncode == 0
    assert "inscribe guide first-day" in done.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("read", ""), "the text is empty; give a record, a file, the text itself, or -"),
        (("entry", "a.toml", "--format", "htm"), "--format takes no htm; did you mean html?"),
        (("read", "花", "--register", "x"), "--register takes no x; use one of auto, verse"),
        (("schema", "recrd"), "there is no recrd; did you mean record?"),
        (("source", "fnd"), "there is no command source fnd; did you mean find?"),
        (("settings", "nowhere"), "there is no such record or folder; nowhere"),
        (("merge", "a", "b"), "no such file or directory; a; check the path"),
    ],
)
def test_what_was_meant_is_asked(arguments: tuple[str, ...], said: str) -> None:
    status, shown = run(*arguments)
    assert status == 2
    assert shown.startswith(f"inscribe: {said}")
