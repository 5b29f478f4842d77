"""``inscribe merge``: two transcriptions of one object side by side, and one made of them."""

from __future__ import annotations

import json
import sys
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given, settings, strategies as st
from strategies import transcriptions
from test_output_schemas import assert_keeps

from inscribe import record, writing
from inscribe.cli import cli
from inscribe.notation import parse, render
from inscribe.record import Inscription
from inscribe.settling import MergeChoice, Who, compared, merged, surer_of, undo

A = """\
# first reading, by lamp light
id = "A-1"
kind = "kozuka"

[[inscription]]
place = "face"
text = '''
行年六十八歳
嶺曉□之
'''

[[inscription.reading]]
by = "H. Quist"
on = 2026-05-03
"""
B = (
    A.replace("嶺曉□之", "嶺晩彫(カ)之")
    .replace("H. Quist", "T. Amberley")
    .replace("六十八", "六十八")
)
WHO = Who("C. Third", date(2026, 11, 30), "raking light")


@pytest.fixture
def paths(tmp_path: Path) -> tuple[Path, Path]:
    found = tmp_path / "a.toml", tmp_path / "b.toml"
    for path, text in zip(found, (A, B), strict=True):
        path.write_text(text, "utf-8")
    return found


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, list(map(str, arguments)))


def kinds(a: str, b: str) -> list[tuple[str, str, str]]:
    one, other = parse(a), parse(b)
    return [
        (
            place.kind,
            "".join(s.text or "□" for s in one.signs[slice(*place.a)]),
            "".join(s.text or "□" for s in other.signs[slice(*place.b)]),
        )
        for place in compared(one, other)
    ]


@pytest.mark.parametrize(
    ("a", "b", "found"),
    [
        ("嶺曉作", "嶺曉作", [("agreed", "嶺曉作", "嶺曉作")]),
        ("嶺曉□", "嶺曉作", [("agreed", "嶺曉", "嶺曉"), ("one legible", "□", "作")]),
        ("嶺曉作(カ)", "嶺曉作", [("agreed", "嶺曉", "嶺曉"), ("one sure", "作", "作")]),
        (
            "嶺曉作",
            "嶺暁作",
            [("agreed", "嶺", "嶺"), ("different", "曉", "暁"), ("agreed", "作", "作")],
        ),
        ("嶺曉作", "嶺曉作之", [("agreed", "嶺曉作", "嶺曉作"), ("different", "", "之")]),
        ("武州住嶺曉作", "嶺曉作", [("different", "武州住", ""), ("agreed", "嶺曉作", "嶺曉作")]),
        (
            "嶺［　　］作",
            "嶺曉暁作",
            [("agreed", "嶺", "嶺"), ("one legible", "□", "曉暁"), ("agreed", "作", "作")],
        ),
        ("□□", "□□", [("agreed", "□□", "□□")]),
    ],
)
def test_signs_are_held_against_each_other(
    a: str, b: str, found: list[tuple[str, str, str]]
) -> None:
    assert kinds(a, b) == found


def test_what_differs_is_listed_in_a_pipe(paths: tuple[Path, Path]) -> None:
    listed = run("merge", *paths)
    assert listed.exit_code == 1
    assert "column 2, sign 2" in listed.stdout
    assert "to choose: 1 different, 1 one legible" in listed.stdout
    assert paths[0].read_text("utf-8") == A
    same = run("merge", paths[0], paths[0])
    assert same.exit_code == 0
    assert "agreed throughout" in same.stdout


def test_the_list_for_programs_keeps_its_schema(paths: tuple[Path, Path]) -> None:
    found = json.loads(run("merge", *paths, "--format", "json").stdout)
    assert_keeps(found, "merge")
    place = found["inscriptions"][0]["places"][2]
    assert (place["kind"], place["a"], place["surer"]) == (
        "one legible",
        {"signs": [8, 8], "text": "□"},
        "b",
    )


@pytest.mark.parametrize(("side", "text"), [("a", "嶺曉彫(カ)之"), ("b", "嶺晩彫(カ)之")])
def test_a_side_is_preferred_and_each_choice_set_down(
    side: str, text: str, paths: tuple[Path, Path]
) -> None:
    done = run("merge", *paths, "--prefer", side, "--by", "C. Third", "--why", "raking light")
    assert done.exit_code == 0, done.exception
    each = record.load(paths[0]).inscriptions[0]
    assert each.text == f"行年六十八歳\n{text}"
    chosen = {d.first: (d.chosen, d.instead_of, d.how, d.by, d.reason) for d in each.decisions}
    told = ("merged", "C. Third", "raking light")
    assert chosen[7] == (("曉", "晩", *told) if side == "a" else ("晩", "曉", *told))
    assert chosen[8] == ("彫(カ)", "□", *told)
    assert {r.by: r.text for r in each.readers} == {
        "H. Quist": "行年六十八歳\n嶺曉□之",
        "T. Amberley": "行年六十八歳\n嶺晩彫(カ)之" if side == "a" else "",
    }
    assert paths[0].read_text("utf-8").startswith("# first reading, by lamp light\n")
    undo(paths[0])
    assert paths[0].read_text("utf-8") == A


def test_a_new_record_may_be_written_instead(paths: tuple[Path, Path]) -> None:
    new = paths[0].with_name("c.toml")
    assert run("merge", *paths, "--prefer", "b", "-o", new).exit_code == 0
    assert paths[0].read_text("utf-8") == A
    assert record.load(new).inscriptions[0].text == "行年六十八歳\n嶺晩彫(カ)之"
    assert "+嶺曉彫(カ)之" in run("merge", *paths, "--prefer", "a", "--dry-run").stdout
    assert paths[0].read_text("utf-8") == A


def test_an_inscription_that_only_one_has_is_taken_over(paths: tuple[Path, Path]) -> None:
    paths[1].write_text(B + '\n[[inscription]]\nplace = "butt"\ntext = "露岳"\n', "utf-8")
    assert run("merge", *paths, "--prefer", "a").exit_code == 0
    assert [e.place for e in record.load(paths[0]).inscriptions] == ["face", "butt"]


@pytest.mark.parametrize("write", [1, 2])
def test_a_stop_between_two_writes_leaves_the_old_or_the_new(
    write: int, paths: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    count = 0
    written = writing.write_bytes

    def stopping(*arguments: object, **named: object) -> None:
        nonlocal count
        count += 1
        if count == write:
            raise KeyboardInterrupt
        written(*arguments, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(writing, "write_bytes", stopping)
    run("merge", *paths, "--prefer", "b")
    monkeypatch.undo()
    assert paths[0].read_text("utf-8") == A


@pytest.mark.skipif(sys.platform == "win32", reason="there are no pseudo-terminals")
def test_one_chooses_at_each_place_and_may_stop_in_between(paths: tuple[Path, Path]) -> None:
    from terminals import CTRL_C, Terminal

    arguments = ["merge", *map(str, paths), "--by", "C. Third"]
    terminal = Terminal(arguments)
    terminal.answer("a, b, or what is carved there [a]", "ｂ")
    terminal.answer("why", "the stroke below")
    terminal.wait("a, b, or what is carved there [b]")
    terminal.type("鐫")
    terminal.type(CTRL_C)
    assert terminal.ended() == 130
    assert paths[0].read_text("utf-8") == A
    again = Terminal(arguments)
    again.wait("[b]: 鐫")
    again.type("\r")
    again.answer("why", "")
    assert again.ended() == 0
    each = record.load(paths[0]).inscriptions[0]
    assert each.text == "行年六十八歳\n嶺晩鐫之"
    assert [(d.chosen, d.instead_of, d.reason) for d in each.decisions] == [
        ("晩", "曉", "the stroke below"),
        ("鐫", "□ / 彫(カ)", ""),
    ]
    left = sorted(p.name for p in paths[0].parent.iterdir())
    assert left == [".a.toml.history", "a.toml", "b.toml"]


some = transcriptions.filter(lambda t: 0 < len(t.signs) <= 12)


@settings(max_examples=60, deadline=None)
@given(some, some)
def test_the_places_hold_all_signs_of_both_in_order(a, b) -> None:  # type: ignore[no-untyped-def]
    places = compared(a, b)
    assert [at for p in places for at in range(*p.a)] == list(range(len(a.signs)))
    assert sorted(at for p in places for at in range(*p.b)) == list(range(len(b.signs)))
    assert all(p.kind == "agreed" for p in compared(a, a))


@settings(max_examples=60, deadline=None)
@given(some, some, st.booleans())
def test_one_side_throughout_is_that_side(a, b, first: bool) -> None:  # type: ignore[no-untyped-def]
    ours, theirs = (Inscription("face", render(t, "japanese", "\n")) for t in (a, b))
    places = [p for p in compared(ours.transcription, theirs.transcription) if p.kind != "agreed"]
    made = merged(ours, theirs, [MergeChoice(p, "a" if first else "b") for p in places], WHO)
    wanted = ours if first else theirs
    told = [(s.text, s.kind) for s in made.transcription.signs]
    assert told == [(s.text, s.kind) for s in wanted.transcription.signs]
    assert len(made.decisions) == len(places)


def test_the_surer_side_reads_and_does_not_doubt() -> None:
    a, b = parse("嶺□作(カ)"), parse("嶺曉作")
    assert [surer_of(place, a) for place in compared(a, b)] == ["a", "b", "b"]
