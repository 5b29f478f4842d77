"""Kills, full disks, two processes at once, and caches that are missing, sealed or damaged."""

from __future__ import annotations

import os
import resource
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from hostile.running import held_in

ROOT = Path(__file__).parent.parent
sys.path.append(str(ROOT / "tests" / "benchmarks"))

posix = pytest.mark.skipif(os.name != "posix", reason="needs POSIX processes")
EXAMPLE = str(ROOT / "examples" / "DEMO-001.toml")
READ = ["read", "--text", "花の色はうつりにけりな"]


def started(
    arguments: list[str], folder: Path, largest: int = 0, cache: str = ""
) -> subprocess.Popen[bytes]:
    """Start ``inscribe`` in a folder; it can write no file larger than ``largest`` bytes."""

    def limit() -> None:
        if largest:
            resource.setrlimit(resource.RLIMIT_FSIZE, (largest, largest))

    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    if cache:
        environment["INSCRIBE_CACHE"] = cache
    return subprocess.Popen(
        [sys.executable, "-m", "inscribe", *arguments],
        cwd=folder,
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        preexec_fn=limit,
    )


def ended(process: subprocess.Popen[bytes]) -> tuple[int, str, str]:
    out, err = process.communicate(timeout=120)
    return process.returncode, out.decode(), err.decode()


@posix
@pytest.mark.parametrize("work", ["new", "entry", "source"])
def test_a_kill_loses_nothing_that_was_reported(work: str) -> None:
    import kills

    found = kills.kill(work, 2, start=11)
    assert found.kills == 2
    assert found.lost == 0


@posix
def test_a_full_disk_ends_in_a_sentence_and_leaves_the_old_file(tmp_path: Path) -> None:
    (tmp_path / "e.html").write_text("old", "utf-8")
    command = ["entry", EXAMPLE, "--format", "html", "--force", "-o", "e.html"]
    status, _, said = ended(started(command, tmp_path, largest=2000))
    assert status == 2
    assert "file too large; e.html;" in said
    assert "Traceback" not in said
    assert held_in(tmp_path) == {"e.html": b"old"}


@posix
@pytest.mark.parametrize("largest", [2000, 20_000, 60_000])
def test_a_full_disk_leaves_the_library_sound(largest: int, tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("花の色はうつりにけりな", "utf-8")
    (tmp_path / "b.txt").write_text(
        "\n".join("いろはにほへとちりぬるを" * n for n in range(1, 80)), "utf-8"
    )
    add = ["source", "add", "--each", "line", "--library", "l.sqlite"]
    assert ended(started([*add, "a.txt"], tmp_path))[0] == 0
    status, _, said = ended(started([*add, "b.txt"], tmp_path, largest=largest))
    assert status == 2, said
    assert "the library cannot be used" in said
    assert "; l.sqlite; " in said
    assert "Traceback" not in said
    held = sqlite3.connect(tmp_path / "l.sqlite")
    assert held.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    assert held.execute("SELECT COUNT(*) FROM texts").fetchone()[0] == 1


@posix
@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs /dev/full")
@pytest.mark.parametrize("arguments", [READ, ["read", "--lines"], ["entry", EXAMPLE], ["schema"]])
def test_standard_output_without_room(arguments: list[str], tmp_path: Path) -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "inscribe", *arguments],
            input="花の色は\n".encode(),
            stdout=full,
            stderr=subprocess.PIPE,
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            check=False,
        )
    assert done.returncode == 2
    assert b"no space left on device" in done.stderr
    assert b"Traceback" not in done.stderr
    assert len(done.stderr.splitlines()) == 1


@posix
def test_a_pipe_that_closes_early_is_no_fault(tmp_path: Path) -> None:
    process = started(["schema"], tmp_path)
    assert process.stdout is not None
    process.stdout.close()
    assert process.stderr is not None
    said = process.stderr.read()
    assert process.wait(60) in (0, 1)
    assert said == b""


@posix
def test_two_add_to_one_new_library_at_once(tmp_path: Path) -> None:
    both = []
    for name in "ab":
        lines = (f'{{"id": "{name}{n}", "text": "花の色は{chr(0x3042 + n)}"}}\n' for n in range(40))
        (tmp_path / f"{name}.jsonl").write_text("".join(lines), "utf-8")
        command = ["source", "add", f"{name}.jsonl", "--library", "l.sqlite"]
        both.append(started(command, tmp_path))
    for status, _, said in map(ended, both):
        assert status == 0, said
    held = sqlite3.connect(tmp_path / "l.sqlite")
    assert held.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    assert held.execute("SELECT COUNT(*) FROM texts").fetchone()[0] == 80


@posix
def test_two_write_one_file_at_once_and_one_of_them_is_told(tmp_path: Path) -> None:
    both = [started(["schema", "-o", "s.json"], tmp_path) for _ in range(2)]
    found = [ended(each) for each in both]
    assert sorted(status for status, _, _ in found) == [0, 2]
    assert any("exists" in said for _, _, said in found)
    assert list(held_in(tmp_path)) == ["s.json"]
