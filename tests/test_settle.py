"""``inscribe settle`` and ``undo``: what is written, what is kept, and what is taken back."""

from __future__ import annotations

import json
import os
import random
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given, settings, strategies as st
from strategies import records

from inscribe import record, writing
from inscribe.cli import cli
from inscribe.errors import InputError
from inscribe.reading import read
from inscribe.record import Inscription, Override, loads, mended, revised, with_signs
from inscribe.settling import history_of, undo

RECORD = """\
# the first of the drawer
id = "A-1"   # on the label
kind = "kozuka"

[[inscription]]
place = "back plate"
# as seen under raking light
text = '''
武州住浅霧軒
嶺曉□之
'''

[[inscription.reading]]
by = "H. Quist"   # at the bench
on = 2026-05-03
"""
OTHER = RECORD.replace("A-1", "A-2").replace("kozuka", "tsuba").replace("嶺曉", "霧舟")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    file = tmp_path / "a.toml"
    file.write_text(RECORD, "utf-8")
    (tmp_path / "b.toml").write_text(OTHER, "utf-8")
    return file


def run(*arguments: str | Path) -> Result:
    """Run a command whose bad input would be told as an exception."""
    return CliRunner().invoke(cli, list(map(str, arguments)))


def overrides(path: Path) -> tuple[Override, ...]:
    return record.load(path).inscriptions[0].overrides


def test_what_is_settled_is_written_with_who_and_when_and_wins(path: Path) -> None:
    done = run(
        "settle", path, "浅霧軒=あさぎりけん", "--name", "--by", "A. Reader", "--why", "a box"
    )
    assert done.exit_code == 0, done.output
    (made,) = overrides(path)
    assert made[:5] == (3, 5, "あさぎりけん", "浅霧軒", "name")
    assert (made.by, made.reason, made.on) == ("A. Reader", "a box", date.today())
    each = record.load(path).inscriptions[0]
    found = read(each.transcription, "auto", each.overrides)
    assert "Asagiriken" in found.proposals[0].romaji


def test_comments_and_layout_stay_and_undo_gives_the_file_back(path: Path) -> None:
    run("settle", path, "4-6=あさぎりけん", "10=signature:carved")
    text = path.read_text("utf-8")
    assert [line for line in RECORD.splitlines() if line not in text.splitlines()] == []
    assert text.startswith(RECORD)
    assert run("undo", path).exit_code == 0
    assert path.read_text("utf-8") == RECORD
    assert not history_of(path).exists()
    assert isinstance(run("undo", path).exception, InputError)


def test_line_ends_byte_order_mark_and_permissions_stay(path: Path) -> None:
    data = b"\xef\xbb\xbf" + RECORD.replace("\n", "\r\n").encode("utf-8")
    path.write_bytes(data)
    path.chmod(0o640)
    run("settle", path, "嶺暁=みねあき")
    assert path.read_bytes().startswith(data)
    assert path.stat().st_mode & 0o777 == 0o640
    run("undo", path)
    assert path.read_bytes() == data


def test_signs_are_found_in_any_form_and_counted(path: Path) -> None:
    run("settle", path, "嶺暁=みねあき")
    assert overrides(path)[0][:4] == (6, 7, "みねあき", "嶺曉")


def test_a_dry_run_shows_the_change_and_writes_nothing(path: Path) -> None:
    shown = run("settle", path, "嶺曉=みねあき", "--dry-run")
    assert '+kana = "みねあき"' in shown.stdout
    assert path.read_text("utf-8") == RECORD
    assert not history_of(path).exists()
    run("settle", path, "嶺曉=みねあき")
    assert '-kana = "みねあき"' in run("undo", path, "--dry-run").stdout
    assert overrides(path)


def test_what_was_settled_otherwise_is_only_replaced_on_wish(path: Path) -> None:
    run("settle", path, "嶺曉=みねあき", "--by", "A. Reader")
    again = run("settle", path, "嶺曉=れいぎょう")
    assert again.exit_code == 1
    assert "by A. Reader" in again.output
    assert overrides(path)[0].kana == "みねあき"
    assert "so already" in run("settle", path, "嶺曉=みねあき").output
    assert run("settle", path, "嶺曉=れいぎょう", "--replace").exit_code == 0
    assert [each.kana for each in overrides(path)] == ["れいぎょう"]


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("花=はな", "does not stand in"),
        ("40=はな", "no sign 40"),
        ("嶺曉=Mineaki", "neither a reading in kana"),
        ("嶺曉=signatur", "no kind of passage"),
        ("嶺曉=signature:danced", "what the person did"),
        ("嶺曉=", "does not say"),
        ("5-3=はな", "names no signs"),
    ],
)
def test_what_cannot_be_settled_is_said_and_changes_nothing(
    said: str, why: str, path: Path
) -> None:
    refused = run("settle", path, said)
    assert isinstance(refused.exception, InputError)
    assert why in str(refused.exception)
    assert path.read_text("utf-8") == RECORD


def test_a_reading_that_was_offered_is_taken_by_its_number(path: Path) -> None:
    from inscribe.reading import read_text

    text = "武州住浅霧軒\n嶺曉□之"
    offered = read_text(text, alternatives=True).proposals
    assert len(offered) > 1
    done = run("settle", path, "--accept", "2", "--from", "read", "--by", "A. Reader")
    assert done.exit_code == 0, done.exception
    each = record.load(path).inscriptions[0]
    assert read(each.transcription, "auto", each.overrides).proposals[0].romaji == offered[1].romaji


def test_a_reading_is_taken_as_it_was_offered_with_a_source_of_the_library(
    path: Path, tmp_path: Path
) -> None:
    (tmp_path / "t.txt").write_text("春霞立るやいつこみよしのの吉野の山に雪はふりつつ", "utf-8")
    library = tmp_path / "l.sqlite"
    assert run("source", "add", tmp_path / "t.txt", "--library", library).exit_code == 0
    copied = "春霞立るやいつこみよしのの吉野の山に雪はふりつつ\n浅霧軒書\n嶺曉刻之"
    text = RECORD.replace("武州住浅霧軒\n嶺曉□之", copied)
    text = text.replace(
        "[[inscription.reading]]", '[inscription.source]\nid = "t"\n\n[[inscription.reading]]'
    )
    path.write_text(text, "utf-8")
    told = run("read", path, "--format", "json", "--library", library)
    assert told.exit_code == 0, told.exception
    offered = json.loads(told.output)["alternatives"][0]
    done = run("settle", path, "--accept", "2", "--from", "read", "--library", library)
    assert done.exit_code == 0, done.exception
    again = run("read", path, "--format", "json", "--library", library)
    assert json.loads(again.output)["romaji"] == offered["romaji"]


def test_a_worn_sign_is_restored_as_offered_and_marked_so(path: Path) -> None:
    from inscribe.notation import parse
    from inscribe.restoring import restore

    run("settle", path, "嶺曉=みねあき")
    names = {"霧舟": 1}  # of the record beside it
    offered = restore(parse("武州住浅霧軒\n嶺曉□之"), names=names).lacunae[0].candidates
    done = run("settle", path, "--accept", "2", "--from", "restore", "--by", "A. Reader")
    assert done.exit_code == 0, done.exception
    each = record.load(path).inscriptions[0]
    assert each.transcription.signs[8].text in {c.text for c in offered[:3]}
    assert "［" in each.text
    (made,) = each.decisions
    assert (made.first, made.instead_of, made.how, made.by) == (8, "□", "restored", "A. Reader")
    assert each.overrides[0].of == "嶺曉"


def test_a_text_that_was_found_becomes_the_source(path: Path, tmp_path: Path) -> None:
    (tmp_path / "t.txt").write_text("花の色はうつりにけりないたづらに", "utf-8")
    library = tmp_path / "l.sqlite"
    assert run("source", "add", tmp_path / "t.txt", "--library", library).exit_code == 0
    path.write_text(RECORD.replace("武州住浅霧軒\n嶺曉□之", "花の色はうつりにけりな"), "utf-8")
    asked = ("--accept", "1", "--from", "source", "--by", "A. Reader", "--library", library)
    done = run("settle", path, *asked)
    assert done.exit_code == 0, done.exception
    source = record.load(path).inscriptions[0].source
    assert source is not None
    assert (source.id, source.by, source.on) == ("t", "A. Reader", date.today())


def test_what_was_settled_of_signs_that_moved_is_put_right(path: Path) -> None:
    run("settle", path, "嶺曉=みねあき", "7-8=signature:carved")
    moved = path.read_text("utf-8").replace("武州住浅", "於武州住浅")
    path.write_text(moved, "utf-8")
    with pytest.raises(Exception, match="made for 嶺曉"):
        record.load(path)
    done = run("settle", path)
    assert "signs 7-8, and is at 8-9 now" in " ".join(done.output.split())
    assert overrides(path)[0][:4] == (7, 8, "みねあき", "嶺曉")
    assert record.load(path).inscriptions[0].passages[0].first == 7


def test_what_may_have_moved_to_two_places_is_left_alone() -> None:
    text = RECORD + '[[inscription.override]]\nsigns = [1, 1]\nkana = "は"\nof = "{}"\n'
    assert mended(text.format("軒"), "a.toml")[1][0].after == (6, 6)
    twice = text.replace("武州住浅霧軒", "軒武州住浅霧軒軒").format("嶺")
    assert mended(twice, "a.toml")[1][0].after == (9, 9)
    unsure = text.replace("武州住浅霧軒", "武州軒浅霧軒").format("軒")
    assert mended(unsure, "a.toml") == (unsure, ())


def test_many_records_are_told_first_and_changed_on_yes_only(path: Path) -> None:
    folder = path.parent
    asked = run("settle", folder, "浅霧軒=あさぎりけん")
    assert isinstance(asked.exception, InputError)
    assert "2 to change in 2 places" in asked.output
    assert path.read_text("utf-8") == RECORD
    assert run("settle", folder, "浅霧軒=あさぎりけん", "--yes").exit_code == 0
    assert [len(overrides(folder / name)) for name in ("a.toml", "b.toml")] == [1, 1]
    assert run("undo", folder).exit_code == 0
    assert path.read_text("utf-8") == RECORD
    assert (folder / "b.toml").read_text("utf-8") == OTHER


@pytest.mark.parametrize(
    ("condition", "changed"),
    [("kind=kozuka", 1), ("id=A-*", 2), ("text=*霧舟*", 1), ("kind=fuchi", 0), ("reader=H*", 2)],
)
def test_conditions_choose_the_records(condition: str, changed: int, path: Path) -> None:
    done = run("settle", path.parent, "--where", condition, "浅霧軒=あさぎりけん", "--yes")
    assert sum(bool(overrides(path.parent / name)) for name in ("a.toml", "b.toml")) == changed
    assert (done.exit_code == 0) == bool(changed)


def test_undo_leaves_a_record_alone_that_was_changed_since(path: Path) -> None:
    run("settle", path, "嶺曉=みねあき")
    path.write_text(path.read_text("utf-8") + "remarks = 1\n", "utf-8")
    refused = run("undo", path)
    assert "changed since by other means" in str(refused.exception)
    assert run("undo", path, "--force").exit_code == 0
    assert path.read_text("utf-8") == RECORD


def test_changes_are_taken_back_one_by_one(path: Path) -> None:
    run("settle", path, "嶺曉=みねあき")
    first = path.read_text("utf-8")
    run("settle", path, "4-6=あさぎりけん")
    assert run("undo", path, "--list").stdout.count("\n") == 2
    undo(path)
    assert path.read_text("utf-8") == first
    undo(path)
    assert path.read_text("utf-8") == RECORD


@pytest.mark.parametrize("command", ["settle", "undo"])
@pytest.mark.parametrize("write", [1, 2])
def test_a_stop_between_two_writes_leaves_the_old_or_the_new(
    command: str, write: int, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("settle", path, "4-6=あさぎりけん")
    before = path.read_text("utf-8")
    count = 0
    written = writing.write_bytes

    def stopping(*arguments: object, **named: object) -> None:
        nonlocal count
        count += 1
        if count == write:
            raise KeyboardInterrupt
        written(*arguments, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(writing, "write_bytes", stopping)
    run(*(("settle", path, "嶺曉=みねあき") if command == "settle" else ("undo", path)))
    monkeypatch.undo()
    assert path.read_text("utf-8") in (before, RECORD)
    while history_of(path).exists():
        try:
            undo(path)
        except InputError:
            break
    assert path.read_text("utf-8") == RECORD


@pytest.mark.skipif(os.name != "posix", reason="needs POSIX processes")
@pytest.mark.parametrize("work", ["settle", "merge"])
def test_a_kill_leaves_the_record_before_or_after_and_undo_working(work: str, path: Path) -> None:
    chance = random.Random(5)
    given = {"settle": ["嶺曉=みねあき"], "merge": [str(path.parent / "b.toml"), "--prefer", "b"]}
    command = [sys.executable, "-m", "inscribe", work, str(path), *given[work]]
    started = time.monotonic()
    subprocess.run(command, check=True, capture_output=True)
    usual = time.monotonic() - started
    after = path.read_text("utf-8")
    undo(path)
    for _ in range(8):
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(chance.uniform(0.6, 1.05) * usual)
        process.kill()
        process.wait()
        now = path.read_text("utf-8")
        assert now in (RECORD, after)
        if now == after:
            undo(path)
        assert path.read_text("utf-8") == RECORD


@pytest.mark.skipif(os.name != "posix", reason="needs POSIX processes")
def test_a_kill_of_undo_leaves_the_record_before_or_after(path: Path) -> None:
    chance = random.Random(7)
    run("settle", path, "嶺曉=みねあき")
    after = path.read_text("utf-8")
    command = [sys.executable, "-m", "inscribe", "undo", str(path)]
    for _ in range(6):
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(chance.uniform(0.05, 0.35))
        process.kill()
        process.wait()
        assert path.read_text("utf-8") in (RECORD, after)
        if path.read_text("utf-8") == RECORD:
            run("settle", path, "嶺曉=みねあき")
        assert path.read_text("utf-8") == after
    undo(path)
    assert path.read_text("utf-8") == RECORD


def test_a_damaged_history_is_named(path: Path) -> None:
    history_of(path).write_text("[1", "utf-8")
    assert "history cannot be read" in str(run("settle", path, "嶺曉=みねあき").exception)
    assert path.read_text("utf-8") == RECORD


def test_the_history_is_no_record_and_bounded(path: Path) -> None:
    for number in range(53):
        run("settle", path, f"嶺曉={'みれ'[number % 2]}ね", "--replace")
    rows = history_of(path).read_text("utf-8").splitlines()
    assert len(rows) == 50
    assert json.loads(rows[-1])["what"].startswith("column 2, signs 1-2")
    assert record.paths_in(path.parent) == [path, path.parent / "b.toml"]


@settings(max_examples=60, deadline=None)
@given(records, records)
def test_a_file_can_be_made_to_say_any_record(one: record.Record, other: record.Record) -> None:
    text = record.dump(one)
    assert revised(text, "a.toml", one) == text
    assert loads(revised(text, "a.toml", other)) == other


@given(st.integers(0, 9), st.integers(0, 3), st.sampled_from(["", "［花］", "花の", "□"]))
def test_signs_put_in_leave_what_is_settled_of_others(first: int, count: int, new: str) -> None:
    text = "武州住浅\n霧軒嶺曉□之"
    end = min(first + count, 10)
    held = (Override(1, 1, "しゅう", "州"), Override(6, 7, "みねあき", "嶺曉"))
    each = Inscription("front", text, overrides=held)
    try:
        made = with_signs(each, first, end, new)
    except InputError:
        return
    signs = made.transcription.signs
    for override in made.overrides:
        if override.of in ("州", "嶺曉"):
            said = "".join(s.text for s in signs[override.first : override.last + 1])
            assert said == override.of


def test_the_version_of_the_keys_stays_in_a_record_that_is_settled(tmp_path: Path) -> None:
    record = tmp_path / "a.toml"
    text = "version = 1\n" + Path("examples/DEMO-008.toml").read_text("utf-8")
    record.write_text(text, "utf-8")
    found = CliRunner().invoke(cli, ["settle", str(record), "嶺曉=みねあき", "--name", "--by", "N"])
    assert found.exit_code == 0, found.output
    assert record.read_text("utf-8").startswith("version = 1\n")
    assert "みねあき" in record.read_text("utf-8")
