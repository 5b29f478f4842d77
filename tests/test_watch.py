"""A file that is being edited is read again when it is saved, and only then."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.cli.showing.watching import saved, watch
from inscribe.errors import InputError

Edit = Callable[[], object]


def edits(*steps: Edit) -> Callable[[float], None]:
    """Return a way of waiting in which one edit happens at each wait; then comes Ctrl-C."""
    left = iter(steps)

    def wait(seconds: float) -> None:
        step = next(left, None)
        if step is None:
            raise KeyboardInterrupt
        step()

    return wait


def seen(path: Path, *steps: Edit) -> list[str]:
    """Return what the file held at each reading."""
    found: list[str] = []

    def shown() -> str:
        found.append(path.read_text(encoding="utf-8"))
        return found[-1]

    watch(path, shown, saved(path, edits(*steps)))
    return found


@pytest.fixture
def path(tmp_path: Path) -> Path:
    file = tmp_path / "record.toml"
    file.write_text("one", encoding="utf-8")
    return file


def nothing() -> None:
    """Let a moment pass."""


def test_it_is_read_once_where_nothing_changes(path: Path) -> None:
    assert seen(path, nothing, nothing, nothing) == ["one"]


def test_it_is_read_again_once_it_stands_still(path: Path) -> None:
    steps = [lambda: path.write_text("two!"), lambda: path.write_text("three"), nothing, nothing]
    assert seen(path, *steps) == ["one", "three"]


def test_an_editor_may_put_a_new_file_in_its_place(path: Path) -> None:
    def replaced() -> None:
        other = path.with_suffix(".new")
        other.write_text("two")
        other.replace(path)

    assert seen(path, path.unlink, nothing, replaced, nothing, nothing) == ["one", "two"]


def test_an_error_is_shown_and_watching_goes_on(
    path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def shown() -> str:
        if path.read_text() == "bad":
            raise InputError("this cannot be read")
        return "good"

    steps = [lambda: path.write_text("bad"), nothing, lambda: path.write_text("better"), nothing]
    watch(path, shown, saved(path, edits(*steps)))
    printed = capsys.readouterr()
    assert printed.out.split() == ["good", "good"]
    assert "this cannot be read" in printed.err
    assert printed.err.endswith("stopped\n")


def test_a_file_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no such file"):
        watch(tmp_path / "none.toml", str)


@pytest.mark.parametrize("arguments", [["--text", "花"], ["-"], ["a.toml", "-o", "b"], ["--lines"]])
def test_what_cannot_be_watched_is_said(arguments: list[str]) -> None:
    result = CliRunner().invoke(cli, ["read", "--watch", *arguments], input="花")
    assert isinstance(result.exception, InputError)


def lines_of(process: subprocess.Popen[str]) -> Iterator[str]:
    assert process.stdout is not None
    yield from iter(process.stdout.readline, "")


@pytest.mark.skipif(os.name != "posix", reason="sends an interrupt as a terminal does")
def test_the_command_reads_again_and_stops_cleanly(tmp_path: Path) -> None:
    path = tmp_path / "text.txt"
    path.write_text("花の色は", encoding="utf-8")
    arguments = [sys.executable, "-m", "inscribe", "read", "--watch", str(path)]
    environment = {**os.environ, "PYTHONUNBUFFERED": "1"}
    process = subprocess.Popen(
        arguments, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment
    )
    try:
        lines = lines_of(process)
        assert any("花の色は" in line for line in lines)
        path.write_text("［花の", encoding="utf-8")
        time.sleep(1)
        path.write_text("月の色は", encoding="utf-8")
        assert any("月の色は" in line for line in lines)
        process.send_signal(signal.SIGINT)
        _, said = process.communicate(timeout=10)
    finally:
        process.kill()
    assert process.returncode == 0
    assert "bracket" in said or "［" in said
    assert "Traceback" not in said
    assert said.endswith("stopped\n")
