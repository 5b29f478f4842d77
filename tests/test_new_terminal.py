"""``inscribe new`` as a person uses it: in a terminal, with keys, stops and a second terminal."""

from __future__ import annotations

import json
import os
import sys
from datetime import date
from pathlib import Path

import pytest

from inscribe.record import load
from inscribe.recording import Draft

if sys.platform == "win32":
    pytest.skip("there are no pseudo-terminals", allow_module_level=True)

from terminals import BACKSPACE, CTRL_C, END, HOME, LEFT, UP, Terminal

HEAD = [
    ("object id", ""),
    ("kind of fitting", "小柄"),
    ("title", "Plum"),
    ("drawer", "１２"),
    ("length", "97,2"),
    ("width", "四寸八分"),
    ("thickness", ""),
    ("place", "裏板"),
    ("hand", ""),
    ("execution", ""),
]
FOOT = [
    ("width of the plate", ""),
    ("id of the source", ""),
    ("translation", "The colour"),
    ("next line", "of the blossom"),
    ("next line", ""),
    ("read by", "A. Reader"),
    ("on (", ""),
    ("another inscription", "ｎ"),
    ("remarks", ""),
]


def kept(path: Path) -> dict[str, str]:
    return {row[0]: row[1] for row in json.loads(Draft(path).path.read_text("utf-8"))}


def begun(path: Path, head: list[tuple[str, str]] = HEAD) -> Terminal:
    terminal = Terminal(["new", str(path)])
    for prompt, answer in head:
        terminal.answer(prompt, answer)
    return terminal


def test_an_object_is_recorded_by_someone_who_types_japanese(tmp_path: Path) -> None:
    path = tmp_path / "A-0412.toml"
    terminal = begun(path)
    terminal.wait("column 1 (rightmost)")
    terminal.type("花の色は" + BACKSPACE * 2)
    terminal.type("月")
    assert terminal.line().endswith("花の月")
    terminal.type(LEFT + BACKSPACE + "が" + HOME + "春" + END + "夜")
    assert terminal.line().endswith("春花が月夜")
    terminal.type("\r")
    terminal.answer("keep it?", "")
    terminal.answer("column 2", "")
    for prompt, answer in FOOT:
        terminal.answer(prompt, answer)
    terminal.see("write it?")
    assert "length in mm: 97,2 (97.2 mm)" in terminal.shown()
    terminal.answer("write it?", "")
    assert terminal.ended() == 0
    record = load(path)
    assert (record.id, record.kind, record.drawer) == ("A-0412", "kozuka", "12")
    assert (record.measurements.length, record.measurements.width) == (97.2, 145.5)
    (each,) = record.inscriptions
    assert (each.place, each.text) == ("back plate", "春花が月夜")
    assert each.translation == "The colour\nof the blossom"
    assert each.readers[0].on == date.today()
    assert sorted(p.name for p in tmp_path.iterdir()) == [".inscribe-new.json", "A-0412.toml"]


def test_two_deletions_after_four_kana_leave_what_the_draft_holds(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = begun(path)
    terminal.wait("column 1")
    terminal.type("花の色は" + BACKSPACE + BACKSPACE + "月")
    assert "花の月" in terminal.line()
    assert "色" not in terminal.line()
    terminal.type("\r")
    terminal.wait("keep it?")
    assert kept(path)["inscription.1.column.1"] == "花の月"
    terminal.type(CTRL_C)
    assert terminal.ended() == 130


@pytest.mark.parametrize("stop", range(len(HEAD)))
def test_ctrl_c_keeps_what_stands_on_the_line_at_every_prompt(stop: int, tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = begun(path, HEAD[:stop])
    terminal.wait(HEAD[stop][0])
    terminal.type("半ば")
    terminal.type(CTRL_C)
    assert terminal.ended() == 130
    assert "半ば" in kept(path).values()
    again = Terminal(["new", str(path)])
    again.wait("半ば")
    assert HEAD[stop][0] in again.line()
    again.type(CTRL_C)
    assert again.ended() == 130
    assert "半ば" in kept(path).values()


def test_a_reading_is_put_right_on_the_spot_and_survives_a_stop(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = begun(path)
    terminal.answer("column 1", "武州住嶺曉作")
    terminal.answer("keep it?", "嶺暁＝みねあき")
    terminal.see("Mineaki saku")
    terminal.wait("keep it?")
    terminal.type("武州=む")
    terminal.type(CTRL_C)
    assert terminal.ended() == 130
    again = Terminal(["new", str(path)])
    again.wait("武州=む")
    assert "Mineaki saku" in again.shown()
    again.type(BACKSPACE * 4)
    again.answer("keep it?", "")
    again.answer("column 2", "")
    for prompt, answer in FOOT:
        again.answer(prompt, answer)
    again.answer("write it?", "")
    assert again.ended() == 0
    (override,) = load(path).inscriptions[0].overrides
    assert (override.first, override.kana, override.kind) == (3, "みねあき", "name")
    assert override.by == "A. Reader"


def test_a_last_look_changes_any_answer(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = begun(path)
    terminal.answer("column 1", "武州住嶺曉作")
    terminal.answer("keep it?", "")
    terminal.answer("column 2", "")
    for prompt, answer in FOOT:
        terminal.answer(prompt, answer)
    terminal.answer("write it?", "３")
    terminal.wait("Plum")
    terminal.type(BACKSPACE * 4 + "Pine")
    terminal.type("\r")
    terminal.answer("write it?", "")
    assert terminal.ended() == 0
    assert load(path).title == "Pine"
    assert load(path).inscriptions[0].text == "武州住嶺曉作"


def test_the_next_object_offers_the_last_ones_answers_and_asks_not_what_was_said_once(
    tmp_path: Path,
) -> None:
    first = begun(tmp_path / "a.toml")
    first.answer("column 1", "嶺曉作")
    first.answer("keep it?", "")
    first.answer("column 2", "")
    for prompt, answer in FOOT:
        first.answer(prompt, answer)
    first.answer("write it?", "")
    assert first.ended() == 0
    options = ["--reader", "H. Quist", "--day", "today", "--hand", "running"]
    second = Terminal(["new", str(tmp_path / "b.toml"), *options])
    second.see("said once for this folder: reader H. Quist")
    for prompt in ("id [b]", "fitting [kozuka]", "title", "[１２]"):
        second.answer(prompt, "")
    for prompt in ("length", "width", "thickness", "place of the inscription [back plate]"):
        second.answer(prompt, "")
    second.answer("execution", "")
    second.answer("column 1", "嶺曉作")
    second.answer("keep it?", "")
    second.answer("column 2", "")
    for prompt in ("plate", "source", "translation", "another", "remarks", "write it?"):
        second.answer(prompt, "")
    assert second.ended() == 0
    each = load(tmp_path / "b.toml").inscriptions[0]
    assert (each.hand, each.readers[0].by) == ("running", "H. Quist")
    assert each.readers[0].on == date.today()


def test_a_place_that_the_next_fitting_does_not_have_is_not_offered(tmp_path: Path) -> None:
    (tmp_path / ".inscribe-new.json").write_text(
        json.dumps(
            {"session": {}, "last": {"kind": "kozuka", "inscription.1.place": "back plate"}}
        ),
        "utf-8",
    )
    for kind, offered in (("kozuka", " [back plate]:"), ("tsuba", ":")):
        terminal = Terminal(["new", str(tmp_path / f"{kind}.toml")])
        terminal.answer("object id", "")
        terminal.answer("kind of fitting", kind)
        for prompt in ("title", "drawer"):
            terminal.answer(prompt, "")
        terminal.wait(" in mm")
        while " in mm" in terminal.line():
            terminal.type("\r")
        terminal.wait("place of the inscription")
        assert terminal.line().endswith(f"place of the inscription{offered}")
        terminal.type(CTRL_C)
        assert terminal.ended() == 130


def test_two_terminals_at_once_keep_out_of_each_others_way(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    first = begun(path, HEAD[:4])
    second = Terminal(["new", str(path)])
    assert second.ended() == 2
    assert "another terminal" in second.shown()
    other = begun(tmp_path / "b.toml", HEAD[:4])
    first.answer("length", "7")
    other.answer("length", "8")
    for terminal in (first, other):
        terminal.wait("width")
        terminal.type(CTRL_C)
        assert terminal.ended() == 130
    assert kept(path)["length"] == "7"
    assert kept(tmp_path / "b.toml")["length"] == "8"


def test_a_short_answer_taken_back_is_typed_anew_or_taken_again(tmp_path: Path) -> None:
    terminal = begun(tmp_path / "a.toml", HEAD[:5])
    terminal.answer("width", "＜")
    terminal.answer("length in mm (may stay empty) [97,2]", "96")
    terminal.answer("width", "<")
    terminal.answer("length in mm (may stay empty) [96]", "")
    terminal.wait("width")
    assert kept(tmp_path / "a.toml")["length"] == "96"
    terminal.type(CTRL_C)
    assert terminal.ended() == 130


def test_nothing_is_meant_by_a_stroke_and_a_column_is_written_anew(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = begun(path, [*HEAD[:-2], ("hand", "-"), ("execution", "－")])
    terminal.answer("column 1", "元緑三年")
    terminal.see("look again")
    terminal.answer("keep it?", "ｎ")
    terminal.wait("元緑三年")
    terminal.type(BACKSPACE * 3 + "禄三年")
    terminal.type("\r")
    terminal.answer("keep it?", "")
    terminal.answer("column 2", "")
    for prompt, answer in FOOT:
        terminal.answer(prompt, answer)
    terminal.wait("write it?")
    assert terminal.shown().count("column 1: 元禄三年") == 1
    terminal.answer("write it?", "")
    assert terminal.ended() == 0
    each = load(path).inscriptions[0]
    assert (each.text, each.hand, each.execution) == ("元禄三年", "", "")


def test_history_and_a_search_by_parts_with_full_width_signs(tmp_path: Path) -> None:
    terminal = begun(tmp_path / "a.toml", HEAD[:3])
    terminal.wait("drawer")
    terminal.type(UP)
    assert terminal.line().endswith("Plum")
    terminal.type(BACKSPACE * 4)
    terminal.answer("drawer", "？舟＋公")
    terminal.see("舩")
    terminal.answer("drawer", "＜")
    terminal.wait("title")
    assert terminal.line().endswith("Plum")
    terminal.type(CTRL_C)
    assert terminal.ended() == 130


def test_a_finished_record_is_opened_again(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    text = (
        '# mine\nid = "A-1"\nkind = "kozuka"\n\n[[inscription]]\nplace = "face"  # of two\n'
        "text = '''\n武州住\n嶺曉作\n'''\n\n[[inscription.override]]\nsigns = [4, 5]\n"
        'kana = "みねあき"\nof = "嶺曉"\n'
    )
    path.write_text(text, "utf-8")
    terminal = Terminal(["new", "--again", str(path)])
    terminal.see("column 1: 武州住")
    number = next(
        line.split()[0] for line in terminal.shown().splitlines() if "column 1: 武州住" in line
    )
    terminal.answer("write it?", number)
    terminal.wait("武州住")
    terminal.type(HOME + "於" + "\r")
    terminal.answer("keep it?", "")
    terminal.answer("write it?", "")
    assert terminal.ended() == 0
    expected = text.replace("武州住", "於武州住").replace("[4, 5]", "[5, 6]")
    assert path.read_text("utf-8") == expected
    undone = Terminal(["undo", str(path)])
    assert undone.ended() == 0
    assert path.read_text("utf-8") == text


def test_a_text_of_the_library_is_offered(tmp_path: Path) -> None:
    (tmp_path / "t.txt").write_text("花の色はうつりにけりないたづらに", "utf-8")
    library = str(tmp_path / "l.sqlite")
    added = Terminal(["source", "add", str(tmp_path / "t.txt"), "--library", library])
    assert added.ended() == 0
    path = tmp_path / "a.toml"
    terminal = Terminal(["new", str(path), "--library", library])
    for prompt, answer in HEAD:
        terminal.answer(prompt, answer)
    terminal.answer("column 1", "花の色はうつりにけりな")
    terminal.answer("keep it?", "")
    terminal.answer("column 2", "")
    terminal.answer("width of the plate", "")
    terminal.wait("source text (may stay empty) [t]")
    terminal.type("\r")
    for prompt, answer in FOOT[2:]:
        terminal.answer(prompt, answer)
    terminal.answer("write it?", "")
    assert terminal.ended() == 0
    source = load(path).inscriptions[0].source
    assert source is not None
    assert source.id == "t"


@pytest.mark.parametrize("columns", [80, 120])
def test_a_long_column_is_edited_over_the_edge_of_the_screen(columns: int, tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = Terminal(["new", str(path)], columns=columns)
    for prompt, answer in HEAD:
        terminal.answer(prompt, answer)
    terminal.wait("column 1")
    terminal.type("花の色はうつりにけりな" * 5 + BACKSPACE * 3 + HOME + "春" + END + "月")
    terminal.type("\r")
    terminal.wait("keep it?")
    assert kept(path)["inscription.1.column.1"] == (
        "春" + ("花の色はうつりにけりな" * 5)[:-3] + "月"
    )
    terminal.type(CTRL_C)
    assert terminal.ended() == 130


def test_a_terminal_that_can_move_no_cursor_still_asks(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    terminal = Terminal(["new", str(path)], term="dumb")
    for prompt, answer in HEAD[:3]:
        terminal.answer(prompt, answer)
    terminal.wait("drawer")
    os.kill(terminal.process.pid, 2)
    assert terminal.ended() == 130
    assert kept(path)["title"] == "Plum"


def test_a_stop_while_a_record_is_opened_again_keeps_only_what_was_changed(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    text = 'id = "A-1"\nkind = "kozuka"\ntitle = "Plum"\n\n[[inscription]]\nplace = "face"\n'
    path.write_text(text + 'text = "嶺曉作"\n', "utf-8")
    terminal = Terminal(["new", "--again", str(path)])
    terminal.answer("write it?", "3")
    terminal.wait("Plum")
    terminal.type(BACKSPACE * 4 + "Pine")
    terminal.type("\r")
    terminal.wait("write it?")
    terminal.type(CTRL_C)
    assert terminal.ended() == 130
    assert kept(path) == {"title": "Pine"}
    path.write_text(path.read_text("utf-8").replace("嶺曉作", "嶺曉作之"), "utf-8")  # by an editor
    again = Terminal(["new", "--again", str(path)])
    again.answer("write it?", "")
    assert again.ended() == 0
    assert (load(path).title, load(path).inscriptions[0].text) == ("Pine", "嶺曉作之")
