"""The end of a run over many lines: what was refused is told, and so is an empty input."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import cli
from inscribe.cli.showing import bar

COMMANDS = {
    "read": ["read", "--lines", "--format", "jsonl"],
    "restore": ["restore", "--lines", "--format", "jsonl"],
    "date": ["date", "--lines", "--format", "jsonl"],
    "source find": ["source", "find", "--lines", "--format", "jsonl"],
}
GOOD = {"read": "花の色", "restore": "花の□", "date": "嘉永六年", "source find": "花の色は"}
BAD = "（"
PAIR = json.dumps({"id": "a", "copy": "夢", "source": "ゆめ"}, ensure_ascii=False)


@pytest.fixture(autouse=True)
def _library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INSCRIBE_LIBRARY", str(tmp_path / "l.sqlite"))
    text = '{"id": "a", "text": "花の色はうつりにけりな"}'
    assert run(["source", "add", "-", "--quiet"], text).exit_code == 0


def run(arguments: Sequence[str], given: str) -> Result:
    return CliRunner().invoke(cli, arguments, input=given)


@pytest.mark.parametrize("command", COMMANDS)
def test_refused_lines_are_counted_at_the_end(command: str) -> None:
    good = GOOD[command]
    result = run(COMMANDS[command], f"{good}\n{BAD}\n{good}\n{BAD}\n")
    answers = [json.loads(line) for line in result.stdout.splitlines()]
    assert ["error" in answer for answer in answers] == [False, True, False, True]
    said = "2 of 4 lines were refused (the first is line 2); see “error” in the result\n"
    assert (result.exit_code, result.stderr) == (1, said)


@pytest.mark.parametrize("command", COMMANDS)
def test_lines_that_can_all_be_used_need_no_remark(command: str) -> None:
    result = run(COMMANDS[command], f"{GOOD[command]}\n" * 2)
    assert (result.exit_code, result.stderr) == (0, "")


@pytest.mark.parametrize("command", COMMANDS)
def test_every_line_has_its_answer_blank_ones_too(command: str) -> None:
    result = run(COMMANDS[command], f"\n{GOOD[command]}\n\n\n")
    assert len(result.stdout.splitlines()) == 4


@pytest.mark.parametrize("command", COMMANDS)
def test_an_empty_input_is_told(command: str) -> None:
    result = run(COMMANDS[command], "")
    said = "there was no text in the input; give one text a line\n"
    assert (result.exit_code, result.stdout, result.stderr) == (1, "", said)


@pytest.mark.parametrize("command", COMMANDS)
def test_the_file_that_has_the_errors_is_named_and_quiet_says_nothing(
    command: str, tmp_path: Path
) -> None:
    out = str(tmp_path / "out.jsonl")
    told = run([*COMMANDS[command], "-o", out], f"{GOOD[command]}\n{BAD}\n")
    said = f"1 of 2 lines was refused (line 2); see “error” in {out}\n"
    assert (told.exit_code, told.stderr) == (1, said)
    quiet = run([*COMMANDS[command], "--quiet"], BAD)
    assert (quiet.exit_code, quiet.stderr) == (1, "")


def test_pairs_end_in_the_same_way() -> None:
    pairs = ["collate", "--pairs", "-"]
    refused = run(pairs, f"{PAIR}\n{{}}\n\n{PAIR}\nx\n")
    assert [("error" in json.loads(line)) for line in refused.stdout.splitlines()] == [
        False,
        True,
        False,
        True,
    ]
    said = "2 of 4 pairs were refused (the first is line 2); see “error” in the result\n"
    assert (refused.exit_code, refused.stderr) == (1, said)
    empty = run(pairs, "\n")
    said = "there was no pair in the input; give one pair a line\n"
    assert (empty.exit_code, empty.stdout, empty.stderr) == (1, "", said)
    sound = run(pairs, PAIR)
    assert (sound.exit_code, sound.stderr) == (0, "")
    other = PAIR.replace("ゆめ", "花")
    assert run([*pairs, "--strict"], other).exit_code == 1
    assert run(pairs, other).exit_code == 0


@pytest.mark.parametrize("command", COMMANDS)
def test_how_far_the_lines_are_is_shown(
    command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[tuple[int, int | None]] = []

    class Bar:
        def __init__(self, what: str) -> None:
            pass

        def show(self, done: int, count: int | None) -> None:
            seen.append((done, count))

        def close(self) -> None:
            pass

    monkeypatch.setattr(bar, "_Bar", Bar)
    monkeypatch.setattr("click.testing._NamedTextIOWrapper.isatty", lambda self: True)
    out = ["-o", str(tmp_path / "out.jsonl")]
    assert run([*COMMANDS[command], *out], f"{GOOD[command]}\n" * 3).exit_code == 0
    assert [done for done, _ in seen] in ([0, 1, 2], [1, 2, 3])
    seen.clear()
    run(COMMANDS[command], GOOD[command])  # the answers are seen coming
    assert not seen


def test_adding_texts_shows_how_far_it_is_from_the_beginning(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from inscribe.sources import adding
    from inscribe.sources.library import Library
    from inscribe.sources.texts import SourceText

    texts = [SourceText(str(number), (f"はな{number}",)) for number in range(1000)]
    heard: list[tuple[int, int]] = []
    looked_at: list[int] = []
    assert adding.checked(texts, looked_at.append) == 1000
    assert looked_at == list(range(100, 1001, 100))
    with Library(tmp_path / "own.sqlite", create=True) as library:
        adding.add_texts(library, texts, 1000, lambda done: heard.append((done, len(library))))
    assert [done for done, _ in heard] == list(range(100, 1001, 100))
    assert heard[0][1] == 0  # long before the first is written
