"""What cannot be done is said as it is, and nothing is taken for what it is not."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import cli
from inscribe.errors import InputError, InscribeError, Place, ProblemsError
from inscribe.record import survey
from inscribe.writing import write_text

RECORD = 'id = "A-1"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\ntext = "思作"\n'


def run(*arguments: str | Path, given: str | None = None) -> Result:
    return CliRunner().invoke(cli, [str(each) for each in arguments], input=given)


def refusal(*arguments: str | Path) -> InscribeError:
    result = run(*arguments)
    assert isinstance(result.exception, InscribeError), (result.output, result.exception)
    return result.exception


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    Path("A-1.toml").write_text(RECORD, "utf-8")
    return tmp_path


@pytest.mark.parametrize(
    "record",
    [
        RECORD.replace("kind", "titel"),
        RECORD + 'source = { file = "gone.txt" }\n',
        RECORD.replace("思作", "思［作"),
    ],
)
def test_settle_says_of_a_record_what_read_says(folder: Path, record: str) -> None:
    Path("A-1.toml").write_text(record, "utf-8")
    said = str(refusal("settle", "A-1.toml", "思=おも", "--by", "X"))
    assert said == str(refusal("read", "A-1.toml"))
    assert "A-1.toml, line" in said


def test_of_several_problems_those_without_a_file_are_placed() -> None:
    odd, other = InputError("odd", Place(None, 2)), InputError("other", Place("b.txt", 3))
    problems = ProblemsError([odd, other])
    assert str(problems.in_file("a.txt", 5)) == "odd; a.txt, line 6\nother; b.txt, line 3"
    assert problems.within_line() == "odd\nother; b.txt"


def test_settings_beside_the_records_are_no_record(folder: Path) -> None:
    Path("inscribe.toml").write_text('labels = "en"\n', "utf-8")
    Path("in").mkdir()
    Path("in/inscribe.toml").write_text('labels = "en"\n', "utf-8")
    assert survey(folder).records == [folder / "A-1.toml"]
    assert run("check", folder).exit_code == 0


def test_settings_beside_source_texts_hold_no_text(folder: Path) -> None:
    Path("t").mkdir()
    Path("t/inscribe.toml").write_text('labels = "en"\n', "utf-8")
    Path("t/a.txt").write_text("花の色", "utf-8")
    assert run("source", "add", "t", "--library", "l.sqlite").exit_code == 0


@pytest.mark.parametrize(
    "arguments",
    [
        ("source", "add", "{}"),
        ("guide", "--man", "{}"),
        ("entry", "A-1.toml", "-o", "{}"),
        ("read", "A-1.toml", "-o", "{}"),
        ("merge", "A-1.toml", "A-1.toml", "-o", "{}"),
        ("import", "list.csv", "--to", "{}"),
    ],
)
def test_an_empty_name_is_no_folder(folder: Path, arguments: tuple[str, ...]) -> None:
    error = refusal(*(each.format("") for each in arguments))
    assert error.message.endswith("is empty")
    assert error.hint.startswith("name it: ")
    assert [each.name for each in folder.iterdir()] == ["A-1.toml"]


@pytest.mark.parametrize(
    "arguments",
    [
        ("read", "A-1.toml"),
        ("read", "A-1.toml", "--format", "json"),
        ("entry", "A-1.toml"),
        ("entry", "A-1.toml", "--format", "csv"),
        ("guide",),
        ("check", "A-1.toml"),
    ],
)
def test_a_stroke_writes_to_standard_output(folder: Path, arguments: tuple[str, ...]) -> None:
    assert run(*arguments, "-o", "-").stdout == run(*arguments).stdout != ""
    assert not Path("-").exists()


@pytest.mark.parametrize("option", ["--errors", "--to", "--map"])
def test_a_stroke_is_no_file_of_that_name(folder: Path, option: str) -> None:
    Path("list.csv").write_text("id,kind\n1,tsuba\n", "utf-8")
    assert (
        refusal("import", "list.csv", option, "-").message
        == f"{option} names a file, and - is none"
    )


def main(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "inscribe", *arguments]
    return subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=False)


@pytest.mark.parametrize("arguments", [("--help",), ("guide",), ("read", "--help"), ()])
def test_help_comes_though_the_settings_are_broken(
    folder: Path, arguments: tuple[str, ...]
) -> None:
    Path("inscribe.toml").write_text("labels = ", "utf-8")
    done = main(*arguments)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout


def test_broken_settings_stop_the_work_itself(folder: Path) -> None:
    Path("inscribe.toml").write_text("labels = ", "utf-8")
    done = main("read", "A-1.toml")
    assert done.returncode == 2
    assert "this is not TOML" in done.stderr


@pytest.mark.parametrize("table", ["coins(year)", "about(version)"])
def test_the_file_of_another_program_is_left_as_it_is(folder: Path, table: str) -> None:
    with sqlite3.connect("other.sqlite") as db:
        db.execute(f"CREATE TABLE {table}")
    db.close()
    before = Path("other.sqlite").read_bytes()
    said = str(refusal("source", "add", "--starter", "--library", "other.sqlite"))
    assert said == str(refusal("source", "list", "--library", "other.sqlite")) or "about" in table
    assert "the library cannot be used" in said
    assert Path("other.sqlite").read_bytes() == before


def test_texts_go_into_no_file_of_another_kind(folder: Path) -> None:
    Path("a.txt").write_text("花の色", "utf-8")
    assert run("source", "add", "a.txt", "--library", "l.sqlite").exit_code == 0
    for name in ("k.xyz", "k.tsv"):
        error = refusal("source", "export", "a", "-o", name, "--library", "l.sqlite")
        assert error.message == f"no format is written into files that end in {name[1:]}"
        assert error.hint == "use .jsonl"
        assert not Path(name).exists()
    assert run("source", "export", "-o", "k.jsonl", "--library", "l.sqlite").exit_code == 0


def test_a_workbook_that_is_missing_is_said_to_be(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    assert refusal("import", "list.xlsx").message == "no such file or directory"


def test_a_place_that_cannot_be_written_is_told_without_an_option(folder: Path) -> None:
    for path in (folder / "none" / "a.toml", folder):
        with pytest.raises(InputError) as caught:
            write_text(path, "花")
        assert "-o" not in caught.value.hint
