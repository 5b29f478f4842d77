"""What is kept of each record: never out of date, never half done, never in the way."""

from __future__ import annotations

import os
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from inscribe.keeping import Work, each as each_module, each_record, open_store


def length(path: Path) -> tuple[Any, ...]:
    text = path.read_text("utf-8")
    return len(text), {"first": text[:1]}


WORK = Work(("length", "first"), length)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "records"
    made.mkdir()
    for number in range(12):
        (made / f"{number:02}.toml").write_text("花" * number, "utf-8")
    return made


class Heard:
    """Runs over a folder, and how many records each had to look at."""

    def __init__(self, folder: Path, cache: Path) -> None:
        self.folder, self.cache = folder, cache

    def run(self, work: Work = WORK, wanted: int = 2) -> tuple[list[tuple[Any, ...]], int]:
        looked_at = []
        paths = sorted(self.folder.glob("*.toml"))
        store = open_store(self.folder, self.cache)
        assert store is not None
        with store:
            found = each_record(paths, work, store, lambda d, _: looked_at.append(d), wanted)
            return [values for _, values in found], len(looked_at)


@pytest.fixture
def heard(folder: Path, tmp_path: Path) -> Heard:
    return Heard(folder, tmp_path / "cache")


def test_each_record_is_looked_at_once(heard: Heard) -> None:
    first, count = heard.run()
    assert count == 12
    assert first == [(n, {"first": "花" if n else ""}) for n in range(12)]
    assert heard.run() == (first, 0)
    assert heard.run(wanted=1) == ([values[:1] for values in first], 0)


def test_what_changed_is_looked_at_again(heard: Heard) -> None:
    heard.run()
    changed = heard.folder / "03.toml"
    changed.write_text("夢夢夢", "utf-8")
    os.utime(changed, ns=(5, 5))
    values, count = heard.run()
    assert (values[3], count) == ((3, {"first": "夢"}), 1)
    (heard.folder / "04.toml").unlink()
    assert len(heard.run()[0]) == 11
    assert heard.run(Work(WORK.makes, length, "another style"))[1] == 11


def test_what_an_older_version_kept_is_made_anew(heard: Heard) -> None:
    first, count = heard.run()
    (file,) = heard.cache.glob("kept-*.sqlite")
    with sqlite3.connect(file) as db:
        db.execute("UPDATE maker SET mark = '0 an older version'")
        db.execute("ALTER TABLE made DROP COLUMN beside")
    db.close()
    assert heard.run() == (first, count)
    assert heard.run() == (first, 0)


def test_a_new_time_of_change_alone_is_no_change(heard: Heard) -> None:
    """As after a fresh checkout, or when a folder was copied over itself."""
    first, _ = heard.run()
    for path in heard.folder.iterdir():
        os.utime(path, ns=(7, 7))
    assert heard.run() == (first, 0)


@pytest.mark.parametrize(
    "named",
    [
        '[[inscription]]\nsource = { file = "words.txt" }\n',
        '[[image]]\nfile = "words.txt"\n',
        '[[inscription]]\n[[inscription.image]]\nfile = "words.txt"\n',
    ],
)
def test_another_file_that_a_record_reads_is_followed(heard: Heard, named: str) -> None:
    record = heard.folder / "00.toml"
    record.write_text(named, "utf-8")
    words = heard.folder / "words.txt"
    words.write_text("花", "utf-8")
    heard.run()
    assert heard.run()[1] == 0
    words.write_text("花の", "utf-8")
    assert heard.run()[1] == 1
    words.unlink()
    assert heard.run()[1] == 1


def test_a_run_that_is_interrupted_has_not_worked_in_vain(
    heard: Heard, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(each_module, "BATCH", 5)

    def interrupted(path: Path) -> tuple[Any, ...]:
        if path.name == "07.toml":
            raise KeyboardInterrupt
        return length(path)

    with pytest.raises(KeyboardInterrupt):
        heard.run(Work(WORK.makes, interrupted))
    values, count = heard.run()
    assert len(values) == 12
    assert count == 12 - 5  # the first batch was finished, and is whole


def test_another_run_that_writes_is_not_waited_for_long(
    heard: Heard, monkeypatch: pytest.MonkeyPatch
) -> None:
    first, _ = heard.run()
    monkeypatch.setattr("inscribe.keeping.store.WAIT", 0.05)
    kept = next(heard.cache.glob("kept-*.sqlite"))
    (heard.folder / "05.toml").write_text("夢", "utf-8")
    with closing(sqlite3.connect(kept, isolation_level=None)) as other:
        other.execute("begin immediate")
        values, count = heard.run()
    assert (values[5], count) == ((1, {"first": "夢"}), 1)
    assert values[6] == first[6]
    assert heard.run() == (values, 1)  # nothing could be kept then; now it is
    assert heard.run() == (values, 0)


def test_what_is_too_large_is_made_each_time(heard: Heard, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(each_module, "LARGEST", 1)
    first, _ = heard.run()
    assert heard.run() == (first, 12)  # {"first": ...} has more than one character


def test_two_folders_do_not_share_what_is_kept(heard: Heard, tmp_path: Path) -> None:
    heard.run()
    other = tmp_path / "other"
    shutil.copytree(heard.folder, other)
    assert Heard(other, heard.cache).run()[1] == 12
