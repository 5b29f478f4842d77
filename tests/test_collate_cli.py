"""``inscribe collate`` as it is used: files, records, pairs, formats, widths and errors."""

from __future__ import annotations

import json
import os
import pty
import re
import subprocess
import sys
import unicodedata
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import cli
from inscribe.cli.showing.results import terminal_bytes
from inscribe.errors import InscribeError

COPY = "夢か／現か□"
SOURCE = "ゆめか／うつつかは"


def run(*arguments: str, stdin: str | None = None, **env: str) -> Result:
    return CliRunner().invoke(cli, ["collate", *arguments], input=stdin, env=env or None)


def answer(*arguments: str, stdin: str | None = None) -> dict[str, object]:
    result = run(*arguments, stdin=stdin)
    assert result.exit_code == 0, result.output
    found: dict[str, object] = json.loads(result.stdout)
    return found


def test_json_has_the_keys_of_the_contract() -> None:
    found = answer("--text", "夢か", "ゆめか", "--format", "json")
    assert set(found) >= {"groups", "fidelity", "differences", "space"}
    assert found["differences"] == [
        {
            "kind": "spelling",
            "copy": {"start": 0, "end": 1, "text": "夢"},
            "source": {"start": 0, "end": 2, "text": "ゆめ"},
            "why": "夢 is read ゆめ (as manuscripts write it)",
            "printed": {
                "copy": {"start": 0, "end": 1, "text": "夢"},
                "source": {"start": 0, "end": 2, "text": "ゆめ"},
            },
        }
    ]
    assert found["space"] is None


def test_pairs_are_answered_in_order_and_a_bad_line_does_not_stop_them() -> None:
    lines = [
        json.dumps({"id": "a", "copy": "夢か", "source": "ゆめか"}),
        "not json",
        json.dumps({"id": "b", "copy": "花"}),
        json.dumps({"id": "c", "copy": "花［", "source": "花"}),
        json.dumps({"id": "d", "copy": "花は", "source": "花の"}),
    ]
    result = run("--pairs", "-", "--format", "jsonl", stdin="\n".join(lines) + "\n")
    found = [json.loads(line) for line in result.stdout.splitlines()]
    assert result.exit_code == 1
    assert [line.get("id") for line in found] == ["a", None, "b", "c", "d"]
    assert ["error" in line for line in found] == [False, True, True, True, False]
    assert [line["line"] for line in found if "error" in line] == [2, 3, 4]
    assert found[4]["differences"][0]["kind"] == "replaced"


def test_strict_exits_with_1_only_when_the_wording_differs() -> None:
    assert run("--text", "夢か", "ゆめか", "--strict").exit_code == 0
    assert run("--text", "夢は", "ゆめか", "--strict").exit_code == 1
    assert run("--text", "夢は", "ゆめか").exit_code == 0


@pytest.mark.parametrize("columns", ["40", "80", "120"])
def test_the_terminal_report_keeps_to_the_width(columns: str) -> None:
    result = run(
        "--text", COPY + "花の色は移りにけりな徒らに我が身世にふる", SOURCE, COLUMNS=columns
    )
    assert result.exit_code == 0
    assert "\x1b" not in result.output
    for line in result.output.splitlines():
        wide = sum(2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in line)
        assert wide <= int(columns), line


def test_the_report_says_what_where_and_why() -> None:
    output = run("--text", COPY, SOURCE, COLUMNS="100").output
    assert "The copy has the words of the source; 1 place cannot be read." in output
    assert "col. 1, 1" in output
    assert "夢 is read ゆめ" in output
    assert "Column ends that fall where a line of the source ends: 1 of 1." in output


def test_markdown_is_tables_without_markup_of_the_text() -> None:
    output = run("--text", "夢*か", "ゆめか", "--format", "md").output
    assert "| no. | kind | copy | source | where | why |" in output
    assert "夢\\*か" in output


def test_files_and_standard_input(tmp_path: Path) -> None:
    copy, source = tmp_path / "copy.txt", tmp_path / "source.txt"
    copy.write_text("夢か\n現か\n", encoding="utf-8")
    source.write_text("ゆめか\nうつつか\n", encoding="utf-8")
    found = answer(str(copy), str(source), "--format", "json")
    assert found == answer("-", str(source), "--format", "json", stdin="夢か\n現か\n")


def test_a_record_is_held_against_its_own_source(tmp_path: Path) -> None:
    record = tmp_path / "DEMO-900.toml"
    record.write_text(
        'id = "DEMO-900"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        'text = "夢か／現か"\n[inscription.source]\ntext = "ゆめか／うつつかも"\n',
        encoding="utf-8",
    )
    found = answer(str(record), "--format", "json")
    assert [group["kind"] for group in found["differences"]][-1] == "omitted"  # type: ignore[attr-defined]
    assert "DEMO-900, back plate held against" in run(str(record)).output


def test_several_sources_tell_which_one_the_copy_follows() -> None:
    sources = ("花の散るらむ春の暮", "花の散るらむ秋の夢")
    output = run("--text", "花の散るらむ春の夢", *sources, COLUMNS="100").output
    assert "undecided" in output
    assert "Apparatus" in output
    output = run("--text", "花の散るらむ春の夢", "花の散るらむ春の夢", "花は散りけむ春の空").output
    assert "It follows A" in output
    assert "花は散りけむ春の空" in output


def test_a_source_without_the_text_is_kept_out_of_the_apparatus() -> None:
    other = "山里は冬ぞさびしさまさりける人目も草もかれぬと思へば"
    sources = ("花の散るらむ春の暮", other, "花は散りけむ春の夢")
    for shape in ("text", "md"):
        output = run(
            "--text", "花の散るらむ春の夢", *sources, "--format", shape, COLUMNS="120"
        ).output
        assert "undecided; likeliest A" in output
        assert output.count("does not contain this text") == 1
        apparatus = [line for line in output.splitlines() if re.search(r"\] .* [AC]$", line)]
        assert len(apparatus) == 3
        assert not any("山里" in line for line in apparatus)
        assert f"held against {other}" not in output
    assert (
        "None of the sources contains this text."
        in run("--text", "花の散るらむ", other, other).output
    )
    output = run("--text", "花の散るらむ春の夢", other).output
    assert "The source does not contain this text" in output


def test_nothing_to_hold_against_is_said_so() -> None:
    output = run("--text", "夢", "").output
    assert "The source has no signs" in output
    assert "100%" not in output
    assert "%" not in run("--text", "夢", "", "--format", "md").output
    assert "The copy has no signs" in run("--text", "", "夢").output
    found = answer("--text", "夢", "", "--format", "json")
    assert found["fidelity"]["levels"]["words"] == {"signs": 0, "share": 0.0}  # type: ignore[index]


def test_an_excerpt_is_recognised_and_may_be_denied() -> None:
    source = "春すぎて夏来にけらし白妙の衣ほすてふ天の香具山"
    found = answer("--text", "衣ほすてふ", source, "--format", "json")
    assert found["window"] == [13, 18]
    assert "Taken for an excerpt" in found["notes"][0]  # type: ignore[index]
    found = answer("--text", "衣ほすてふ", source, "--whole", "--format", "json")
    assert found["window"] == [0, 23]
    assert found["notes"] == []
    assert found["fidelity"]["omitted"] == 18  # type: ignore[index]
    said = run("--text", "衣ほすてふ", source).output
    assert "The copy has the words of the source where it is from." in said
    without_end = answer("--text", source[:16], source, "--format", "json")
    assert without_end["window"] == [0, 23]


def test_a_terminal_is_not_flooded_with_what_differs_in_writing_only() -> None:
    texts = ("--text", "國の花は" * 600, "国の花は" * 600)
    assert "In writing only (600, the first 500; --format json has all)" in run(*texts).output
    found = json.loads(run(*texts, "--format", "json").stdout)
    assert len(found["differences"]) == 600


def test_an_excerpt_says_which_part_it_answers() -> None:
    found = answer("--text", "うつつか", "ゆめかうつつかしらず", "--excerpt", "--format", "json")
    assert found["window"] == [3, 7]


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((), "a copy and a source are needed"),
        (("no-such-file.txt", "other.txt"), "there is no such file"),
        (("no-such-file.txt",), "there is no such file"),
        ((str(Path(__file__).parent),), "this is a folder"),
        (("-", "-"), "only one text can come from standard input"),
        (("--pairs", "-", "x"), "either --pairs or texts"),
        (("--text", "花［", "花"), "bracket"),
    ],
)
def test_wrong_use_is_one_clear_sentence(arguments: tuple[str, ...], message: str) -> None:
    result = CliRunner().invoke(cli, ["collate", *arguments], input="")
    assert isinstance(result.exception, InscribeError)
    assert message in str(result.exception)


def test_the_result_is_written_whole_and_not_over_another(tmp_path: Path) -> None:
    out = tmp_path / "out.json"
    assert run("--text", "夢", "ゆめ", "--format", "json", "-o", str(out)).exit_code == 0
    assert json.loads(out.read_text(encoding="utf-8"))["fidelity"]["signs_in_source"] == 2
    again = run("--text", "夢", "ゆめ", "-o", str(out))
    assert isinstance(again.exception, InscribeError)


def on_a_terminal(*arguments: str, **env: str) -> bytes:
    """Return what the command writes to a terminal."""
    screen, terminal = pty.openpty()
    command = [sys.executable, "-m", "inscribe", "collate", *arguments]
    here = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    with subprocess.Popen(command, stdout=terminal, env={**here, "TERM": "xterm", **env}) as run:
        os.close(terminal)
        written = b""
        try:
            while piece := os.read(screen, 4096):
                written += piece
        except OSError:  # how Linux says that the other end is closed
            pass
        assert run.wait() == 0
    os.close(screen)
    return written


@pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are of Unix")
def test_headings_are_bold_on_a_terminal_and_plain_with_no_color() -> None:
    written = on_a_terminal("--text", COPY, SOURCE)
    assert b"\x1b[1m" in written
    assert b"u001b" not in written
    assert b"\x1b" not in on_a_terminal("--text", COPY, SOURCE, NO_COLOR="1")


def test_styles_pass_to_the_terminal_and_nothing_else_does() -> None:
    assert terminal_bytes("\x1b[1mま\x1b[0m", styled=True) == "\x1b[1mま\x1b[0m".encode()
    assert b"\x1b" not in terminal_bytes("ま\x1b]0;title\x07\x1b[2J", styled=True)
    assert b"\x1b" not in terminal_bytes("ま\x1b[1m")


def invoked(*arguments: str) -> Result:
    return CliRunner().invoke(cli, arguments)


def test_a_source_may_be_named_by_its_id_in_the_library(tmp_path: Path) -> None:
    library = str(tmp_path / "lib.sqlite")
    assert invoked("source", "add", "examples/sources", "--library", library).exit_code == 0
    copy = "世の中に桜のなかりせは"
    found = invoked("collate", copy, "kokinshu-053", "--library", library)
    assert "held against kokinshu-053" in found.stdout
    nearly = invoked("collate", copy, "kokinsh-053", "--library", library)
    assert nearly.exit_code != 0
    assert "did you mean kokinshu-053?" in str(nearly.exception)
    for command in ("remove", "export"):
        refused = invoked("source", command, "kokinsh-053", "--library", library)
        assert "did you mean kokinshu-053?" in str(refused.exception)
