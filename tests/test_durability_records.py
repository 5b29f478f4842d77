"""Kills, full disks and two writers over the commands that write into records."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hostile.running import held_in
from test_durability import ROOT, ended, posix, started

from inscribe.record import load

sys.path.append(str(ROOT / "tests" / "benchmarks"))

RECORD = """# kept
id = "X-1"
kind = "kozuka"

[[inscription]]
place = "back plate"
text = "武州住嶺暁作"

[[inscription.reading]]
by = "A. Reader"
"""
OTHER = RECORD.replace("暁作", "曉造")
SETTLE = ["settle", "r.toml", "嶺暁=みねあき", "--name", "--by", "A. Reader", "--quiet"]
MERGE = ["merge", "r.toml", "b.toml", "--prefer", "b", "--by", "A. Reader", "--why", "light", "-q"]
IMPORT = ["import", "l.csv", "--map", "m.toml", "--to", "records", "--quiet"]
MEASURE = ["measure", "p.png", "--record", "r.toml", "--accept", "--by", "A. Reader"]
NO_ROOM = 60  # bytes that a file may have


def with_settled(folder: Path) -> None:
    assert ended(started(SETTLE, folder))[0] == 0


def with_list(folder: Path) -> None:
    lines = [f"I-{n},tsuba,武州住嶺暁作,front" for n in range(3)]
    (folder / "l.csv").write_text("\n".join(["id,kind,text,place", *lines]) + "\n", "utf-8")
    assert ended(started(["import", "l.csv", "--map", "m.toml"], folder))[0] == 0


def with_photograph(folder: Path) -> None:
    pytest.importorskip("cv2")
    from drawn_plates import HEIGHT, TEXT, WIDTH, photographed
    from PIL import Image

    Image.fromarray(photographed().pixels).save(folder / "p.png")
    text = RECORD.replace("武州住嶺暁作", TEXT.replace("\n", "／"))
    plate = f"\n[inscription.plate]\nwidth = {WIDTH}\nheight = {HEIGHT}\n"
    (folder / "r.toml").write_text(text + plate, "utf-8")


def nothing(folder: Path) -> None:
    """What needs no preparation."""


WORK: dict[str, tuple[list[str], Callable[[Path], None]]] = {
    "settle": (SETTLE, nothing),
    "undo": (["undo", "r.toml", "--quiet"], with_settled),
    "merge": (MERGE, nothing),
    "import": (IMPORT, with_list),
    "measure": (MEASURE, with_photograph),
}
KILLED = [work for work in WORK if work != "measure"]  # those that the benchmark of kills knows


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "r.toml").write_text(RECORD, "utf-8")
    (tmp_path / "b.toml").write_text(OTHER, "utf-8")
    return tmp_path


@posix
@pytest.mark.parametrize("work", WORK)
def test_a_full_disk_leaves_every_record_as_it_was(work: str, folder: Path) -> None:
    command, prepare = WORK[work]
    prepare(folder)
    before = held_in(folder)
    status, _, said = ended(started(command, folder, largest=NO_ROOM))
    assert status == 2, said
    assert "file too large" in said
    assert "Traceback" not in said
    left = {name: text for name, text in held_in(folder).items() if name != "records"}
    assert left == before
    assert ended(started(command, folder))[0] == 0  # with room it is done
    assert held_in(folder) != before


@posix
@pytest.mark.parametrize("work", KILLED)
def test_a_kill_leaves_a_record_as_it_was_or_as_it_is_to_be(work: str) -> None:
    import kills

    found = kills.kill(work, 1, start=5)
    assert found.kills == 1
    assert found.lost == 0


@posix
def test_two_who_settle_at_once_lose_no_decision_that_was_reported(folder: Path) -> None:
    second = ["settle", "r.toml", "武州=むさし", "--by", "B. Reader", "--quiet"]
    both = [(each, started(each, folder)) for each in (SETTLE, second)]
    done = [command for command, process in both if _is_done(ended(process))]
    assert done
    settled = {each.of for each in load(folder / "r.toml").inscriptions[0].overrides}
    assert settled == {command[2].partition("=")[0] for command in done}


@posix
def test_two_imports_at_once_leave_whole_records(folder: Path) -> None:
    with_list(folder)
    both = [started(IMPORT, folder) for _ in range(2)]
    found = list(map(ended, both))
    assert any(status in (0, 1) for status, _, _ in found), found
    assert not any("Traceback" in said for _, _, said in found)
    records = sorted((folder / "records").glob("*.toml"))
    assert [load(path).id for path in records] == ["I-0", "I-1", "I-2"]


@posix
def test_two_who_accept_measurements_at_once_leave_one_of_them(folder: Path) -> None:
    with_photograph(folder)
    found = list(map(ended, [started(MEASURE, folder) for _ in range(2)]))
    assert sorted(status for status, _, _ in found) in ([0, 2], [0, 0]), found
    assert not any("Traceback" in said for _, _, said in found)
    assert len(load(folder / "r.toml").inscriptions[0].boxes) == 7


@posix
def test_two_merges_at_once_make_what_one_makes(folder: Path) -> None:
    alone = folder / "alone"
    alone.mkdir()
    for name, text in (("r.toml", RECORD), ("b.toml", OTHER)):
        (alone / name).write_text(text, "utf-8")
    assert ended(started(MERGE, alone))[0] == 0
    found = list(map(ended, [started(MERGE, folder) for _ in range(2)]))
    assert any(status == 0 for status, _, _ in found), found
    assert not any("Traceback" in said for _, _, said in found)
    assert load(folder / "r.toml") == load(alone / "r.toml")


def _is_done(result: tuple[int, str, str]) -> bool:
    status, _, said = result
    assert status in (0, 2), said
    if status == 2:
        assert "changed meanwhile" in said
    return status == 0
