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
        (("READ",), "there is no command READ; did you mean read?"),
        (
            ("--hepl",),
            "there is no option --hepl; usage: inscribe [OPTIONS] [COMMAND] [ARGS]...;"
            " did you mean --help?",
        ),
        (
            ("read", "--text"),
            "option '--text' requires an argument; usage: inscribe read [OPTIONS]"
            " [RECORD|FILE|TEXT|-]; see inscribe read --help",
        ),
        (
            ("source",),
            "missing command; usage: inscribe source [OPTIONS] COMMAND [ARGS]...;"
            " use one of add, export, find, list, remove",
        ),
        (("source", "add", "nofile"), "there is no such file or folder; nofile; check the path"),
        (("--glossary", "nope", "read", "花"), "there is no such glossary folder; nope; check the"),
        (("collate", "-", "-"), "only one text can come from standard input; name a file for the"),
        (("settings", "nowhere"), "there is no such record or folder; nowhere"),
        (("merge", "a", "b"), "no such file or directory; a; check the path"),
    ],
)
def test_what_was_meant_is_asked(arguments: tuple[str, ...], said: str) -> None:
    status, shown = run(*arguments)
    assert status == 2
    assert shown.startswith(f"inscribe: {said}")


@pytest.mark.parametrize(
    ("command", "file", "said"),
    [
        ("name", "nm.txt", "inscribe read {}"),
        ("date", "nm.txt", "inscribe read {}"),
        ("date", "r.toml", "inscribe date --record {}"),
        ("sign", "nm.txt", "inscribe read {}"),
    ],
)
def test_a_file_is_no_word_to_look_up(command: str, file: str, said: str, tmp_path: Path) -> None:
    path = tmp_path / file
    path.write_text("花", "utf-8")
    what = f"inscribe: it is a file, and the words themselves are wanted; {path}; for what it holds"
    assert run(command, str(path)) == (2, f"{what}, use: {said.format(path)}")


def test_a_style_asks_what_was_meant_and_says_what_to_write(tmp_path: Path) -> None:
    path = tmp_path / "house.toml"
    for text, said in (
        ('lables = "ja"', "did you mean labels?"),
        ('order = ["objct"]', "did you mean object?"),
        ('labels = "jp"', 'write "en" or "ja"'),
    ):
        path.write_text(text, "utf-8")
        status, shown = run("entry", "examples/DEMO-001.toml", "--style", str(path))
        assert status == 2
        assert shown.endswith(f"; {said}")


def test_every_line_about_the_records_of_a_folder_is_the_programs(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text('id = "a"\nkidn = "tsuba"\n', "utf-8")
    status, said = run("entry", str(tmp_path))
    assert status == 2
    assert len(said.splitlines()) == 2
    assert all(line.startswith("inscribe: ") for line in said.splitlines())


def test_what_the_system_refuses_is_said_in_words(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")
    library = str(tmp_path / "file" / "inner" / "library.sqlite")
    status, said = run("source", "add", "examples/sources", "--library", library, "--quiet")
    assert status == 2
    assert "Errno" not in said
    assert "the library cannot be used (not a directory)" in said
