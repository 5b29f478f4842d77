"""Hostile and sloppy input: one clear sentence, nothing written, in bounded time."""

from __future__ import annotations

import re
import shutil
import time
from pathlib import Path

import pytest
from hostile import encodings, libraries, notations, options, records
from hostile.cases import REFUSED, Case
from hostile.running import held_in, run

ROOMS = (encodings, libraries, notations, options, records)
CASES = [case for room in ROOMS for case in room.cases()]
SECONDS = 10  # no case takes one alone on a quiet machine; the machine may be busy
CONTROL = re.compile(rb"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]|\xc2[\x80-\x9f]")
LONGEST_REFUSAL = 50_000  # bytes; a record's two hundred first problems take half of it


@pytest.fixture(scope="module")
def held_library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("library")
    (folder / "a.txt").write_text("花の色はうつりにけりな\nいたづらに", "utf-8")
    library = folder / "held.sqlite"
    assert run(("source", "add", str(folder / "a.txt"), "--library", str(library))).status == 0
    return library


def laid_out(case: Case, folder: Path) -> None:
    for name, content in case.files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    for name, target in case.links.items():
        (folder / name).symlink_to(target)


def test_the_corpus_is_large_and_names_are_unique() -> None:
    assert len(CASES) >= 150
    assert len({case.name for case in CASES}) == len(CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_hostile_input(
    case: Case, tmp_path: Path, held_library: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    laid_out(case, tmp_path)
    if "held.sqlite" in case.arguments:
        shutil.copy(held_library, tmp_path / "held.sqlite")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("INSCRIBE_LIBRARY", "l.sqlite")
    before = held_in(tmp_path)
    start = time.monotonic()
    result = run(case.arguments, case.stdin)
    assert time.monotonic() - start < SECONDS
    assert result.status == case.status, result.said
    assert case.said in result.said
    assert not CONTROL.search(result.out + result.err)
    if case.status == REFUSED:
        assert result.err.strip()
        assert result.out == b""
        assert len(result.err) < LONGEST_REFUSAL
    after = held_in(tmp_path)
    assert {n for n in after if before.get(n, b"?") != after[n]} <= set(case.writes)
    assert before.keys() - after.keys() <= set(case.writes)
