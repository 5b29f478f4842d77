"""Readings settled on the command line."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest


def read(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "inscribe", "read", *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, encoding="utf-8")


def romaji(*arguments: str) -> str:
    run = read(*arguments, "--format", "json")
    assert run.returncode == 0, run.stderr
    return str(json.loads(run.stdout)["romaji"])


@pytest.mark.parametrize(
    ("text", "settled", "said"),
    [
        ("於東都嶺曉造之", ["4-5=name:みねあき"], "Tōto ni oite Mineaki kore o tsukuru"),
        ("春過て夏来にけらし白妙の衣ほすてふ天の香具山", ["18=あめ"], "ame no Kaguyama"),
        ("天保三年", ["1-2=name:てんぽ"], "Tenpo"),
        ("於東都嶺曉造之", ["4-5=みねあき"], "Tōto ni oite Mineaki kore o tsukuru"),
    ],
)
def test_a_reading_given_on_the_command_line_wins(text: str, settled: list[str], said: str) -> None:
    given = [part for each in settled for part in ("--override", each)]
    assert said in romaji("--text", text, *given)


def test_it_wins_over_that_of_the_record() -> None:
    assert "Mineaki" in romaji("examples/DEMO-010.toml", "--override", "7-8=name:みねあき")


@pytest.mark.parametrize(
    "given",
    [
        ["4-5"],
        ["5-4=はな"],
        ["0=はな"],
        ["4=hana"],
        ["1-2=はな", "2=つき"],
        ["4=はな"],
    ],
)
def test_what_says_no_reading_is_refused(given: list[str]) -> None:
    run = read("--text", "花の色", *[part for each in given for part in ("--override", each)])
    assert run.returncode == 2
    assert "Traceback" not in run.stderr
    assert "override" in run.stderr


def test_the_reason_of_the_reading_that_lost_is_not_told() -> None:
    run = read("--text", "於東都嶺曉造之", "--override", "4-5=name:みねあき", "--format", "json")
    assert json.loads(run.stdout)["reasons"] == ["settled: given on the command line"]
