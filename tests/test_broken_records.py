"""A folder with broken records: sound ones are used, every other one is told, none in silence."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from test_surroundings import read_only

from inscribe.checking import check_folder
from inscribe.entry import entries_in
from inscribe.errors import ProblemsError, RecordError
from inscribe.record import load

ROOT = Path(__file__).parent.parent
SOUND = """id = "X-{0}"
kind = "tsuba"
[[inscription]]
place = "front"
text = "嶺暁作{0}"
[[inscription.reading]]
by = "A. Reader"
"""
BROKEN = {
    "b-not-toml.toml": "id = ",
    "d-unknown-key.toml": SOUND.format(4) + "colour = 1\n",
    "f-two-problems.toml": "id = 3\nkind = 4\n",
    "h-too-long.toml": SOUND.format(8).replace("嶺暁作", "花" * 21_000),
}

posix = pytest.mark.skipif(os.name != "posix", reason="there are no pipes or devices as files")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    below = tmp_path / "records" / "below"
    below.mkdir(parents=True)
    for number, name in enumerate(("a", "c", "below/e", "g")):
        (below.parent / f"{name}.toml").write_text(SOUND.format(number), "utf-8")
    for name, text in BROKEN.items():
        (below.parent / name).write_text(text, "utf-8")
    return below.parent


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "inscribe", *arguments]
    return subprocess.run(
        command, capture_output=True, text=True, check=False, encoding="utf-8", timeout=120
    )


def test_entries_of_the_sound_ones_are_written_and_all_broken_ones_told(folder: Path) -> None:
    out = folder.parent / "out"
    done = run("entry", str(folder), "--format", "json", "-o", f"{out}/")
    assert done.returncode == 1
    written = {str(path.relative_to(out)) for path in out.rglob("*.json")}
    assert written == {"a.json", "c.json", "below/e.json", "g.json"}
    for name in BROKEN:
        assert str(folder / name) in done.stderr
    assert "kind" in done.stderr  # the second problem of one record
    assert "left out, as said above: 4" in done.stderr


def test_one_document_has_the_sound_ones(folder: Path) -> None:
    done = run("entry", str(folder), "--format", "csv")
    assert done.returncode == 1
    assert len(done.stdout.splitlines()) == 1 + 4
    assert done.stderr.count(".toml") >= len(BROKEN)


def test_without_a_sound_record_nothing_is_done(tmp_path: Path) -> None:
    for name, text in BROKEN.items():
        (tmp_path / name).write_text(text, "utf-8")
    done = run("entry", str(tmp_path))
    assert done.returncode == 2
    assert done.stdout == ""
    assert all(name in done.stderr for name in BROKEN)


def test_the_library_call_names_every_broken_record(folder: Path) -> None:
    with pytest.raises(ProblemsError) as raised:
        entries_in(folder)
    assert all(name in str(raised.value) for name in BROKEN)


def test_a_single_broken_record_is_bad_input(folder: Path) -> None:
    assert run("entry", str(folder / "b-not-toml.toml")).returncode == 2


@pytest.mark.parametrize("shape", ["text", "json", "csv"])
def test_the_concordance_tells_all_broken_ones_too(folder: Path, shape: str) -> None:
    done = run("concord", str(folder), "嶺暁", "--format", shape, "--no-cache")
    assert done.returncode == 1
    assert done.stdout.count("嶺暁") >= 4
    for name in BROKEN:
        assert str(folder / name) in done.stderr


def test_many_records_on_several_cores(folder: Path) -> None:
    for number in range(100, 160):
        (folder / f"{number}.toml").write_text(SOUND.format(number), "utf-8")
    done = run("entry", str(folder), "--format", "csv")
    assert done.returncode == 1
    assert len(done.stdout.splitlines()) == 1 + 64
    assert all(name in done.stderr for name in BROKEN)


@posix
@pytest.mark.parametrize("command", ["check", "entry", "concord"])
def test_pipes_devices_and_closed_folders_are_told(folder: Path, command: str) -> None:
    for name in BROKEN:
        (folder / name).unlink()
    os.mkfifo(folder / "pipe.toml")
    (folder / "device.toml").symlink_to("/dev/zero")
    word = ["花", "--no-cache"] if command == "concord" else []
    done = run(command, str(folder), *word)
    said = done.stdout if command == "check" else done.stderr
    assert done.returncode == 1
    assert "pipe.toml" in said
    assert "device.toml" in said


@posix
def test_a_folder_that_may_not_be_read_is_told(folder: Path) -> None:
    closed = folder / "closed"
    closed.mkdir()
    (closed / "x.toml").write_text(SOUND.format(9), "utf-8")
    check_folder(folder)  # the tables are read: nobody may look for them in root's folder
    closed.chmod(0)
    with read_only(folder.parent):
        checked = check_folder(folder)
        count, found = checked.records, list(checked.findings)
    closed.chmod(0o755)
    assert count == len(BROKEN) + 4
    assert [each.file for each in found if each.code == "closed"] == [str(closed)]


@posix
def test_a_link_to_a_folder_is_told_and_not_followed(folder: Path) -> None:
    (folder / "again").symlink_to(folder)
    checked = check_folder(folder)
    count, found = checked.records, list(checked.findings)
    assert count == len(BROKEN) + 4
    (told,) = [each for each in found if each.code == "linked"]
    assert told.file == str(folder / "again")
    assert told.message == "a link to a folder is not followed"
    assert told.todo


def test_a_decimal_comma_is_told_with_what_to_write(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    path.write_text('id = "A"\n[measurements]\nlength = 95,5\n', encoding="utf-8")
    with pytest.raises(RecordError, match=r"point in a number: 95\.5") as told:
        load(path)
    assert "line 3" in str(told.value)
