"""``inscribe new``: questions in order, second looks, interruption, and a record that passes."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from inscribe.checking import check_folder
from inscribe.errors import InputError
from inscribe.notation import parse
from inscribe.reading.suspicious import suspicions
from inscribe.record import load
from inscribe.recording import Draft, checks as q, old_forms, seen
from inscribe.recording.measures import mm_of

FIRST = ["X-9", "kozuka", "", "96", "14.5", "", "back plate", "running", ""]
COLUMNS = ["春過て夏来にけらし白妙の", "y", "衣ほすてふ天の香具山", "", ""]
REST = ["14.5", "95", "5 80", "5 70", "", "", "A. Reader", "2026-11-25", "n", ""]


def new(path: Path, answers: list[str]) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "inscribe", "new", str(path)],
        input="".join(f"{answer}\n" for answer in answers),
        capture_output=True,
        text=True,
        check=False,
        encoding="utf-8",
    )


def test_the_answers_make_a_record_that_check_accepts(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    run = new(path, FIRST + COLUMNS + REST)
    assert run.returncode == 0, run.stderr
    record = load(path)
    assert record.id == "X-9"
    assert record.measurements.length == 96
    inscription = record.inscriptions[0]
    assert [len(c.signs) for c in inscription.transcription.columns] == [12, 10]
    assert [c.bottom for c in inscription.columns] == [80, 70]
    assert inscription.readers[0].by == "A. Reader"
    checked = check_folder(tmp_path)
    assert (checked.records, list(checked.findings)) == (1, [])
    assert "reads:" in run.stderr
    assert "来 (來)" in run.stderr
    assert [p.name for p in tmp_path.iterdir()] == ["x.toml"]


@pytest.mark.parametrize("stop", [1, 5, 11, 12, 14, 18])
def test_stopping_keeps_every_answer_and_the_next_run_takes_up(stop: int, tmp_path: Path) -> None:
    answers = FIRST + COLUMNS + REST
    path = tmp_path / "x.toml"
    stopped = new(path, answers[:stop])
    assert stopped.returncode == 130
    assert not path.exists()
    kept = len(json.loads(Draft(path).path.read_text("utf-8")))
    again = new(path, answers[kept:])
    assert again.returncode == 0, again.stderr
    assert f"taken up again after {kept} answers" in again.stderr
    whole = tmp_path / "whole.toml"
    new(whole, answers)
    assert path.read_text("utf-8") == whole.read_text("utf-8")


def test_bad_answers_are_asked_again(tmp_path: Path) -> None:
    answers = [FIRST[0], "", *FIRST[1:3], "wide", "-3", *FIRST[3:], "春過て(", *COLUMNS, *REST]
    run = new(tmp_path / "x.toml", answers)
    assert run.returncode == 0, run.stderr
    assert "an answer is needed" in run.stderr
    assert "a length is expected" in run.stderr
    assert "never closed" in run.stderr


def test_a_sign_that_cannot_be_typed_is_looked_for(tmp_path: Path) -> None:
    run = new(tmp_path / "x.toml", [*FIRST, "?舟+公", *COLUMNS, *REST])
    assert "舩" in run.stderr


def test_an_existing_record_is_never_written_over(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    path.write_text("id = 1", "utf-8")
    run = new(path, FIRST)
    assert run.returncode == 2
    assert "exists already" in run.stderr
    assert path.read_text("utf-8") == "id = 1"


def test_a_broken_draft_is_named(tmp_path: Path) -> None:
    (tmp_path / "x.toml.draft").write_text("[1", "utf-8")
    with pytest.raises(InputError, match="draft cannot be read"):
        Draft.of(tmp_path / "x.toml")


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("龙", "simplified"),
        ("っ", "small and long kana"),
        ("A", "Latin letter"),
        ("曰", "looks like a commoner sign"),
    ],
)
def test_what_deserves_a_second_look(typed: str, why: str) -> None:
    assert any(why in found.why for found in suspicions(parse(typed).signs))


def test_a_current_form_is_a_remark_and_no_suspicion() -> None:
    assert suspicions(parse("国の花").signs) == ()
    assert old_forms(parse("国の花国").signs) == (("国", ("國",)),)


def test_what_is_suspicious_is_named_as_one_types(tmp_path: Path) -> None:
    columns = ["露△岳作", "y", "元緑三年", "y", "", ""]
    run = new(tmp_path / "x.toml", [*FIRST[:-1], "", *columns, *REST])
    said = " ".join(run.stderr.split())
    assert "look again, no mark of the conventions; □ stands for" in said
    assert "sign 2 △ (□)" in said
    assert "look again, 元緑三年: 元緑 is the name of no era" in said


def test_ordinary_signs_are_left_alone() -> None:
    assert suspicions(parse("山の花は(者)□［　　］（花押）").signs) == ()


def test_right_columns_are_not_warned_even_cut_in_two() -> None:
    rows = (Path(__file__).parent / "data" / "columns_right.tsv").read_text("utf-8").splitlines()
    right = [row.split("\t")[2] for row in rows if not row.startswith(("#", "set\t"))]
    assert [t for t in right if any(r.startswith("look again") for r in seen(t, "").remarks)] == []
    warned = cut = 0
    for text in right:
        middle = len(text) // 2
        if len(text) >= 4 and not set(text) & set("([（［〔"):
            cut += 1
            looks = (*seen(text[:middle], "").remarks, *seen(text[middle:], text[:middle]).remarks)
            warned += any(remark.startswith("look again") for remark in looks)
    assert cut > 60
    assert warned <= 0.05 * cut


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("97.2", 97.2),
        ("97,2", 97.2),
        ("97.2 mm", 97.2),
        ("97.2㎜", 97.2),
        ("９７．２", 97.2),
        ("9.72 cm", 97.2),
        ("七寸", 212.1),
        ("3寸2分", 97.0),
        ("三寸二分五厘", 98.5),
        ("0.32尺", 97.0),
        ("3.2 sun", 97.0),
        ("五分半", 16.7),
    ],
)
def test_lengths_are_understood_as_people_write_them(typed: str, mm: float) -> None:
    assert mm_of(typed) == mm


@pytest.mark.parametrize("typed", ["wide", "97,2,3", "寸", "3 2", "97.2 kg", "半", "1e5", "-3"])
def test_what_is_no_length_is_none(typed: str) -> None:
    assert mm_of(typed) is None


@given(st.text(max_size=30))
def test_every_check_answers_for_every_text(answer: str) -> None:
    for check in (q.anything, q.required, q.size_problem, q.day_problem, q.yes_problem):
        assert isinstance(check(answer), str)
    assert isinstance(q.extent_problem(answer, 95.0), str)
    assert isinstance(q.column_problem(answer), str)


def test_a_missing_folder_is_made_and_a_missing_path_refused(tmp_path: Path) -> None:
    path = tmp_path / "records" / "x.toml"
    run = new(path, FIRST + COLUMNS + REST)
    assert run.returncode == 0, run.stderr
    assert "made the folder" in run.stderr
    assert path.is_file()
    refused = new(tmp_path / "no" / "where" / "x.toml", FIRST)
    assert refused.returncode == 2
    assert "there is no such folder" in refused.stderr


def test_a_plate_whose_height_is_not_known_is_left_out(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    run = new(path, [*FIRST, *COLUMNS, "14.5", "", *REST[4:]])
    assert run.returncode == 0, run.stderr
    assert load(path).inscriptions[0].plate is None


def test_answers_are_taken_back_one_by_one(tmp_path: Path) -> None:
    wrong = ["<", "X-8", "tsuba", "<", "<"]
    columns = ["春過き", "<", COLUMNS[0], "y", "衣ほさす", "y", "<", *COLUMNS[2:]]
    run = new(tmp_path / "x.toml", [*wrong, *FIRST, *columns, *REST[:2], "<", *REST[1:]])
    assert run.returncode == 0, run.stderr
    assert new(tmp_path / "y.toml", FIRST + COLUMNS + REST).returncode == 0
    assert (tmp_path / "x.toml").read_text("utf-8") == (tmp_path / "y.toml").read_text("utf-8")
    assert run.stderr.count("this is the first question") == 1


def test_an_unusual_word_is_kept_and_remarked_on(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    run = new(path, [*FIRST[:7], "runing", *FIRST[8:], "?", *COLUMNS, *REST])
    assert run.returncode == 0, run.stderr
    assert "none of the usual words" in run.stderr
    assert "look for a sign with" in run.stderr
    assert load(path).inscriptions[0].hand == "runing"


def test_how_to_look_at_a_worn_sign_is_said_once(tmp_path: Path) -> None:
    worn = [*COLUMNS[:2], "衣□すてふ", "y", "天の香□山", "", ""]
    said = new(tmp_path / "x.toml", [*FIRST, *worn, *REST]).stderr
    assert said.count("raking light") == 1
    assert "raking light" not in new(tmp_path / "y.toml", FIRST + COLUMNS + REST).stderr


def test_what_is_said_once_is_not_asked_for(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    answers = [*FIRST, *COLUMNS, *REST[:6], *REST[8:]]
    command = [sys.executable, "-m", "inscribe", "new", str(path), "--drawer", "１２"]
    run = subprocess.run(
        [*command, "--reader", "A. Reader", "--day", "2026/11/25"],
        input="".join(f"{answer}\n" for answer in answers),
        capture_output=True,
        text=True,
        check=False,
        encoding="utf-8",
    )
    assert run.returncode == 0, run.stderr
    record = load(path)
    assert record.drawer == "12"
    reader = record.inscriptions[0].readers[0]
    assert (reader.by, str(reader.on)) == ("A. Reader", "2026-11-25")
