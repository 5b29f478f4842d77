"""Measured signs from tables and annotations: what they say, and what cannot be used."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from hypothesis import given, strategies as st

from inscribe.cli import cli
from inscribe.entry import entry_of
from inscribe.errors import InputError, InscribeError
from inscribe.record import SignBox, load
from inscribe.record.boxes import boxes_of, with_boxes
from inscribe.report.entries.annotation import PIXELS_PER_MM, entries_as_annotations

EXAMPLES = Path(__file__).parent.parent / "examples"
HEAD = "sign,x,y,width,height\n"


def page(*boxes: tuple[str, str]) -> str:
    items = [
        {"type": "Annotation", "body": {"type": "TextualBody", "value": said}, "target": target}
        for said, target in boxes
    ]
    return json.dumps({"type": "AnnotationPage", "items": items})


def test_a_table_is_in_mm_and_counts_signs_from_1() -> None:
    found = boxes_of(HEAD + "2,2,9.5,4.2,4\n1,2,5,4.2,4\n", "b.csv")
    assert found == (SignBox(0, 2, 5, 4.2, 4), SignBox(1, 2, 9.5, 4.2, 4))


def test_further_columns_of_a_table_do_not_matter() -> None:
    found = boxes_of("text,height,width,y,x,sign\n花,4,4.2,5,2,1\n", "b.csv")
    assert found == (SignBox(0, 2, 5, 4.2, 4),)


def test_boxes_of_a_iiif_canvas_are_taken_in_their_order() -> None:
    canvas = "https://example.org/canvas/1#xywh="
    found = boxes_of(page(("花", canvas + "20,50,42,40"), ("の", canvas + "20,95,42,40")), "b", 10)
    assert found == (SignBox(0, 2, 5, 4.2, 4), SignBox(1, 2, 9.5, 4.2, 4))


def test_a_box_of_the_plate_moves_the_others() -> None:
    found = boxes_of(
        page(("Plate", "c#xywh=100,200,145,960"), ("花", "c#xywh=120,250,42,40")), "b", 10
    )
    assert found == (SignBox(0, 2, 5, 4.2, 4),)


def test_a_fragment_selector_says_the_same() -> None:
    selector = {"type": "FragmentSelector", "value": "xywh=pixel:20,50,42,40"}
    other = {"type": "SvgSelector", "value": "<svg/>"}
    target: Any = {"source": "c", "selector": [selector, other]}
    assert boxes_of(page(("花", target)), "b", 10) == (SignBox(0, 2, 5, 4.2, 4),)


def test_what_the_program_exports_comes_back() -> None:
    record = load(EXAMPLES / "DEMO-002.toml")
    exported = entries_as_annotations([entry_of(record)])
    inscription = record.inscriptions[0]
    found = boxes_of(exported, "b", PIXELS_PER_MM)
    assert found == tuple(sorted(inscription.boxes, key=lambda box: box.sign))
    assert with_boxes(inscription, found, "b").transcription == inscription.transcription


@pytest.mark.parametrize(
    ("text", "scale", "said"),
    [
        ("", None, "no column sign"),
        (HEAD, None, "no box"),
        ("sign,x,y,width\n", None, "no column height"),
        (HEAD + "1,2,5,4.2,\n", None, "no number"),
        (HEAD + "1,2,5\n", None, "has 3 cells"),
        (HEAD + "0,2,5,4,4\n", None, "impossible"),
        (HEAD + "1,2,5,-4,4\n", None, "impossible"),
        (HEAD + "1,2,nan,4,4\n", None, "impossible"),
        (HEAD + "1,2,1e9,4,4\n", None, "impossible"),
        (HEAD + "1,2,5,4,4\n1,2,5,4,4\n", None, "two boxes"),
        ("{", 10, "not JSON"),
        ("{}", 10, "no list"),
        ("[]", 10, "no box"),
        (page(("花", "c")), 10, "no box"),
        (page(("花", "c#xywh=1,2,3,4")), None, "pixels"),
        (page(("花", "c#xywh=1,2,3,4")), 0, "pixels"),
        (page(("花", "c#xywh=percent:1,2,3,4")), 10, "percent"),
        ("[" * 100_000, 10, "nested too deeply"),
    ],
)
def test_what_cannot_be_used_is_said(text: str, scale: float | None, said: str) -> None:
    with pytest.raises(InputError, match=said):
        boxes_of(text, "boxes", scale)


@given(
    st.text() | st.text(alphabet='{}[]":,xywh=#0123456789.items target\n'), st.floats() | st.none()
)
def test_any_text_gives_boxes_or_says_why_not(text: str, scale: float | None) -> None:
    try:
        found = boxes_of(text, "boxes", scale)
    except InscribeError:
        return
    assert found


def test_measured_signs_decide_what_space_explains(tmp_path: Path) -> None:
    # DEMO-001 has measured columns only; signs set half as far apart leave room for the kana.
    record = EXAMPLES / "DEMO-001.toml"
    signs = load(record).inscriptions[0].transcription.columns
    rows = [
        f"{sign.index + 1},{8.4 if column.index == 0 else 2.0},{5 + 2 * place},2,2"
        for column in signs
        for place, sign in enumerate(column.signs)
    ]
    table = tmp_path / "boxes.csv"
    table.write_text(HEAD + "\n".join(rows), encoding="utf-8")

    def verdicts(*more: str) -> list[str]:
        arguments = ["collate", str(record), "--format", "json", *more]
        answer = json.loads(CliRunner().invoke(cli, arguments, catch_exceptions=False).stdout)
        return [each["verdict"] for each in answer["space"]["verdicts"]]

    assert verdicts() == ["forced"]
    assert verdicts("--boxes", str(table)) == ["unexplained"]


def test_boxes_need_one_inscription(tmp_path: Path) -> None:
    table = tmp_path / "boxes.csv"
    table.write_text(HEAD + "99,2,5,4,4\n", encoding="utf-8")
    record = str(EXAMPLES / "DEMO-001.toml")
    for arguments in (["--text", "夢", "ゆめ"], [record]):
        result = CliRunner().invoke(cli, ["collate", *arguments, "--boxes", str(table)])
        assert isinstance(result.exception, InputError)
