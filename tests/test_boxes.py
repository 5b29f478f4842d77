"""Measured signs from tables and annotations: what they say, and what cannot be used."""

from __future__ import annotations

import json
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from hypothesis import given, strategies as st

from inscribe.cli import cli
from inscribe.collation.space.measures import measures_of
from inscribe.entry import entry_of
from inscribe.errors import InputError, InscribeError
from inscribe.record import Inscription, Plate, SignBox, load, loads
from inscribe.record.boxes.tables import boxes_of, with_boxes
from inscribe.report.drawing.plate import plate_drawing
from inscribe.report.entries.annotation import PIXELS_PER_MM, entries_as_annotations
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.style import Style

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
    assert found.signs == (SignBox(0, 2, 5, 4.2, 4), SignBox(1, 2, 9.5, 4.2, 4))


@pytest.mark.parametrize(
    "table",
    [
        "sign;x;y;width;height\n1;2,0;5;4,2;4\n2;2;9,5;4,2;4\n",
        "sign\tx\ty\twidth\theight\n1\t2\t5\t4,2\t4\n2\t2\t9.5\t4.2\t4\n",
        'sign,x,y,width,height\n1,2,5,"4,2",4\n2,2,"9,5",4.2,4\n',
    ],
)
def test_a_table_may_have_semicolons_or_tabs_and_decimal_commas(table: str) -> None:
    found = boxes_of(table, "b.csv")
    assert found.signs == (SignBox(0, 2, 5, 4.2, 4), SignBox(1, 2, 9.5, 4.2, 4))


def test_further_columns_of_a_table_do_not_matter() -> None:
    found = boxes_of("text,height,width,y,x,sign\n花,4,4.2,5,2,1\n", "b.csv")
    assert found.signs == (SignBox(0, 2, 5, 4.2, 4),)


def test_boxes_of_a_iiif_canvas_are_taken_in_their_order() -> None:
    canvas = "https://example.org/canvas/1#xywh="
    found = boxes_of(page(("花", canvas + "20,50,42,40"), ("の", canvas + "20,95,42,40")), "b", 10)
    assert found.signs == (SignBox(0, 2, 5, 4.2, 4), SignBox(1, 2, 9.5, 4.2, 4))


def test_a_box_of_the_plate_moves_the_others() -> None:
    found = boxes_of(
        page(("Plate", "c#xywh=100,200,145,960"), ("花", "c#xywh=120,250,42,40")), "b", 10
    )
    assert found.signs == (SignBox(0, 2, 5, 4.2, 4),)


def test_a_fragment_selector_says_the_same() -> None:
    selector = {"type": "FragmentSelector", "value": "xywh=pixel:20,50,42,40"}
    other = {"type": "SvgSelector", "value": "<svg/>"}
    target: Any = {"source": "c", "selector": [selector, other]}
    assert boxes_of(page(("花", target)), "b", 10).signs == (SignBox(0, 2, 5, 4.2, 4),)


def test_what_the_program_exports_comes_back() -> None:
    record = load(EXAMPLES / "DEMO-002.toml")
    exported = entries_as_annotations([entry_of(record)])
    inscription = record.inscriptions[0]
    found = boxes_of(exported, "b", PIXELS_PER_MM)
    assert found.signs == tuple(sorted(inscription.boxes, key=lambda box: box.sign))
    assert with_boxes(inscription, found.signs, "b").transcription == inscription.transcription


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
    assert found.signs


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

    def chance(*more: str) -> float:
        arguments = ["collate", str(record), "--format", "json", *more]
        answer = json.loads(CliRunner().invoke(cli, arguments, catch_exceptions=False).stdout)
        (verdict,) = answer["space"]["verdicts"]
        return float(verdict["chance"])

    assert 0.2 < chance() < 0.35
    assert chance("--boxes", str(table)) < 0.1


def test_boxes_need_one_inscription(tmp_path: Path) -> None:
    table = tmp_path / "boxes.csv"
    table.write_text(HEAD + "99,2,5,4,4\n", encoding="utf-8")
    record = str(EXAMPLES / "DEMO-001.toml")
    for arguments in (["--text", "夢", "ゆめ"], [record]):
        result = CliRunner().invoke(cli, ["collate", *arguments, "--boxes", str(table)])
        assert isinstance(result.exception, InputError)


SIGNS = "春のよの夢／うき橋とたえ"
MEASURED = "\n".join(
    f"[[inscription.column]]\ntop = 5\nbottom = {end}\nx = 4\nwidth = 4" for end in (30, 35)
)
RECORD = f"""
id = "A-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
text = "{SIGNS}"
[inscription.plate]
width = 14.5
height = 96.0
[inscription.source]
text = "春の夜の夢のうき橋とたえして"
"""


def boxed(*signs: int, left: float = 2.0, top: float = 5.0) -> str:
    """Return a table of boxes of 4 mm, 5 mm apart, the second column's to the left."""
    return HEAD + "\n".join(
        f"{n},{left + 6 * (n <= 5)},{top + 5 * ((n - 1) % 5 if n <= 5 else n - 6)},4,4"
        for n in signs
    )


def collated(tmp_path: Path, boxes: str, record: str = RECORD, *more: str) -> Any:
    (tmp_path / "a.toml").write_text(record, "utf-8")
    table = tmp_path / "boxes.json"
    table.write_text(boxes, "utf-8")
    arguments = ["collate", str(tmp_path / "a.toml"), "--format", "json", "--boxes", str(table)]
    result = CliRunner().invoke(cli, [*arguments, *more], catch_exceptions=False)
    return json.loads(result.stdout)


def notes_on_boxes(answer: Any) -> list[str]:
    return [note for note in answer["notes"] if "box" in note or "plate" in note]


def test_boxes_of_all_signs_need_no_remark(tmp_path: Path) -> None:
    answer = collated(tmp_path, boxed(*range(1, 12)))
    assert notes_on_boxes(answer) == []
    assert [column["length"] for column in answer["space"]["crowding"]] == [24, 29]


def test_the_ends_of_a_column_are_enough_and_the_signs_without_a_box_are_named(
    tmp_path: Path,
) -> None:
    answer = collated(tmp_path, boxed(1, 2, 5, *range(6, 12)))
    assert [column["length"] for column in answer["space"]["crowding"]] == [24, 29]
    (note,) = notes_on_boxes(answer)
    assert "2 of 5 signs have no box (column 1, signs 3-4)" in note
    assert "first and last box" in note


def test_the_end_of_a_column_is_reckoned_from_the_boxes_there_are(tmp_path: Path) -> None:
    answer = collated(tmp_path, boxed(*range(1, 10)))
    (note,) = notes_on_boxes(answer)
    assert "column 2, signs 5-6" in note
    assert "reckoned" in note
    assert [column["length"] for column in answer["space"]["crowding"]] == [24, 29]


def test_two_boxes_of_a_column_do_not_measure_it_and_that_is_said(tmp_path: Path) -> None:
    answer = collated(tmp_path, boxed(*range(1, 8)))
    (note,) = notes_on_boxes(answer)
    assert "not known" in note
    assert answer["space"]["capacity"] is None


def test_boxes_go_before_the_record_column_by_column(tmp_path: Path) -> None:
    record = RECORD.replace("[inscription.source]", f"{MEASURED}\n[inscription.source]")
    answer = collated(tmp_path, boxed(*range(1, 6)), record)
    assert [column["length"] for column in answer["space"]["crowding"]] == [24, 30]
    assert notes_on_boxes(answer) == [
        "no sign of column 2 has a box: its ends are those of the record"
    ]


def test_all_boxes_leave_room_for_further_columns_as_measured_columns_do(tmp_path: Path) -> None:
    wide = RECORD.replace("width = 14.5", "width = 40")
    by_boxes = collated(tmp_path, boxed(*range(1, 12), left=24), wide)["space"]
    columns = "\n".join(
        f"[[inscription.column]]\ntop = 5\nbottom = {end}\nx = {x}\nwidth = 4"
        for end, x in ((29, 30), (34, 24))
    )
    (tmp_path / "b.toml").write_text(
        wide.replace("[inscription.source]", f"{columns}\n[inscription.source]"), "utf-8"
    )
    arguments = ["collate", str(tmp_path / "b.toml"), "--format", "json"]
    by_columns = json.loads(CliRunner().invoke(cli, arguments).stdout)["space"]
    assert by_boxes["capacity"] == by_columns["capacity"]


def annotated(*, plate: str = "", ids: bool = False, offset: int = 0) -> str:
    """Return annotations at 10 pixels a mm; ``plate`` is the fragment of the plate's own box."""
    items = [
        {
            "type": "Annotation",
            "id": f"urn:x:sign:{n}" if ids else f"urn:y:{n}",
            "body": {"type": "TextualBody", "value": sign},
            "target": f"c#xywh={20 + 60 * (n <= 5) + offset},"
            f"{50 + 50 * ((n - 1) % 5 if n <= 5 else n - 6) + offset},40,40",
        }
        for n, sign in enumerate(SIGNS.replace("／", ""), start=1)
    ]
    if plate:
        items.append({"type": "Annotation", "body": {"value": "plate"}, "target": f"c{plate}"})
    return json.dumps({"type": "AnnotationPage", "items": items})


def test_annotations_without_the_plate_say_that_the_capacity_hangs_on_it(tmp_path: Path) -> None:
    with_plate = collated(
        tmp_path, annotated(plate="#xywh=20,20,145,960", offset=20), RECORD, "--scale", "10"
    )
    without = collated(tmp_path, annotated(offset=20), RECORD, "--scale", "10")
    own = collated(tmp_path, annotated(ids=True), RECORD, "--scale", "10")
    assert notes_on_boxes(with_plate) == notes_on_boxes(own) == []
    assert with_plate["space"] == own["space"]
    (note,) = notes_on_boxes(without)
    assert "where the plate is" in note
    assert "capacity" in note


def test_a_plate_of_another_size_than_the_records_is_refused() -> None:
    with pytest.raises(InputError, match="20 x 96 mm at this scale"):
        boxes_of(annotated(plate="#xywh=0,0,200,960"), "b.json", 10, Plate(14.5, 96))


def outlined(text: str, *points: tuple[float, float]) -> dict[str, Any]:
    """Return an annotation with an outline and the box around it."""
    path = " ".join(f"{x},{y}" for x, y in points)
    left, top = (min(axis) for axis in zip(*points, strict=True))
    right, bottom = (max(axis) for axis in zip(*points, strict=True))
    box = f"xywh={left},{top},{right - left},{bottom - top}"
    svg = f'<svg><polygon points="{path}"/></svg>'
    selectors = [{"type": "FragmentSelector", "value": box}, {"type": "SvgSelector", "value": svg}]
    return {"body": {"value": text}, "target": {"source": "p.jpg", "selector": selectors}}


def test_a_plate_seen_askew_gives_its_boxes_right() -> None:
    """A sign in the middle of a plate lies where its diagonals cross, however it is seen."""
    plate = outlined("plate", (100, 50), (300, 90), (280, 1080), (60, 1000))
    middle = outlined("花", (183, 529), (185, 529), (185, 531), (183, 531))
    page = json.dumps({"items": [plate, middle]})
    for scale in (None, 10.0):
        (box,) = boxes_of(page, "b.json", scale, Plate(20, 96)).signs
        assert box.x + box.width / 2 == pytest.approx(10, abs=0.05)
        assert box.y + box.height / 2 == pytest.approx(48, abs=0.05)


def test_a_box_past_the_plate_is_refused(tmp_path: Path) -> None:
    table = tmp_path / "boxes.csv"
    table.write_text(boxed(*range(1, 12), left=6), "utf-8")
    (tmp_path / "a.toml").write_text(RECORD, "utf-8")
    arguments = ["collate", str(tmp_path / "a.toml"), "--boxes", str(table)]
    result = CliRunner().invoke(cli, arguments)
    assert isinstance(result.exception, InputError)
    assert "past the plate" in str(result.exception)


def test_a_drawing_says_it_on_standard_error(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text(RECORD, "utf-8")
    (tmp_path / "b.json").write_text(annotated(), "utf-8")
    arguments = ["collate", str(tmp_path / "a.toml"), "--boxes", str(tmp_path / "b.json")]
    drawing = [*arguments, "--scale", "10", "--format", "svg"]
    assert "where the plate is" in CliRunner().invoke(cli, drawing).stderr
    assert CliRunner().invoke(cli, [*drawing, "--quiet"]).stderr == ""


def test_a_missing_box_does_not_make_signs_crowd() -> None:
    rows = [f"{n},2,{5 + 5 * (n - 1)},4,4" for n in range(1, 21) if n not in (13, 14, 15)]
    inscription = with_boxes(
        Inscription("back plate", "字" * 20, plate=Plate(14, 120)),
        boxes_of(HEAD + "\n".join(rows), "b").signs,
        "b",
    )
    measures = measures_of(inscription.transcription, inscription)
    assert measures is not None
    assert measures.columns[0].trend == 0


def test_an_entry_and_its_drawing_go_by_the_same_boxes() -> None:
    rows = "".join(
        f"[[inscription.box]]\nsign = {n}\nx = 4\ny = {20 + 5 * n}\nwidth = 4\nheight = 4\n"
        for n in (1, 5)
    )
    made = loads(RECORD.replace("[inscription.source]", f"{rows}[inscription.source]"))
    assert "3 of 5 signs have no box" in entry_as_markdown(entry_of(made), Style())
    drawn = ET.fromstring(plate_drawing(made.inscriptions[0]))
    words = [e for e in drawn.iter("{http://www.w3.org/2000/svg}text") if e.get("class") == "sign"]
    heights = [float(e.get("y", 0)) for e in words[:5]]
    assert heights == sorted(heights)  # those without a box stand between those that have one
