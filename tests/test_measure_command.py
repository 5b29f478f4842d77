"""``inscribe measure``: from a picture and a record to a corrected, accepted record."""

from __future__ import annotations

import ast
import csv
import io
import json
import struct
from pathlib import Path
from typing import Any
from zlib import crc32

import pytest
from click.testing import CliRunner, Result
from drawn_plates import HEIGHT, TEXT, WIDTH, photographed
from hypothesis import given
from strategies import records

pytest.importorskip("cv2")
from jsonschema import Draft202012Validator
from PIL import Image

from inscribe.cli import cli
from inscribe.errors import InputError
from inscribe.record import Photograph, dump, load, loads
from inscribe.record.boxes.tables import boxes_of
from inscribe.record.model.measured import ColumnMeasure, Plate, SignBox
from inscribe.record.writing.amending import with_measurements

ROOT = Path(__file__).parent.parent
RECORD = f"""# a comment at the head
id = "X-1"
kind = "kozuka"  # beside a key

[[inscription]]
place = "back plate"
# above the text
text = '''
{TEXT}
'''

[[inscription.reading]]
by = "H. Quist"
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    Image.fromarray(photographed().pixels).save(tmp_path / "p.png")
    (tmp_path / "r.toml").write_text(RECORD, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*arguments: str, size: bool = True) -> Result:
    plate = ("--plate", f"{HEIGHT}x{WIDTH}") if size else ()
    return CliRunner().invoke(cli, ["measure", "p.png", "--record", "r.toml", *plate, *arguments])


def test_the_proposal_is_told(folder: Path) -> None:
    result = run()
    assert result.exit_code == 0, result.output
    assert "7 signs proposed" in result.stdout
    assert (folder / "r.toml").read_text("utf-8") == RECORD


def test_json_has_every_sign(folder: Path) -> None:
    found = json.loads(run("--format", "json").stdout)
    assert [sign["text"] for sign in found["signs"]] == list(TEXT.replace("\n", ""))
    published = json.loads(CliRunner().invoke(cli, ["schema", "measure"]).stdout)
    Draft202012Validator(published).validate(found)
    assert found["plate"] == {"width": WIDTH, "height": HEIGHT}
    assert len(found["corners"]) == 4


def test_a_table_that_is_corrected_comes_back(folder: Path) -> None:
    table = run("--format", "csv").stdout
    rows = list(csv.DictReader(io.StringIO(table)))
    assert [row["text"] for row in rows] == list(TEXT.replace("\n", ""))
    rows[4]["y"] = "9.87"
    edited = io.StringIO()
    writer = csv.DictWriter(edited, rows[0])
    writer.writeheader()
    writer.writerows(rows)
    (folder / "boxes.csv").write_text(edited.getvalue(), "utf-8")
    again = list(csv.DictReader(io.StringIO(run("--boxes", "boxes.csv", "--format", "csv").stdout)))
    keys = ("sign", "x", "y", "width", "height")
    assert [[r[k] for k in keys] for r in again] == [[r[k] for k in keys] for r in rows]


def test_an_accepted_proposal_is_in_the_record_and_comments_stay(folder: Path) -> None:
    result = run("--accept", "--by", "T. Amberley", "--cut", "2=9.2")
    assert "A proposal" not in result.stdout
    assert result.exit_code == 0, result.output
    text = (folder / "r.toml").read_text("utf-8")
    for comment in ("# a comment at the head", "# beside a key", "# above the text"):
        assert comment in text
    inscription = load(folder / "r.toml").inscriptions[0]
    assert inscription.plate == Plate(WIDTH, HEIGHT)
    assert len(inscription.boxes) == 7
    assert len(inscription.columns) == 2
    (photograph,) = inscription.photographs
    assert (photograph.picture, photograph.by) == ("p.png", "T. Amberley")
    assert photograph.on is not None
    assert len(photograph.corners) == 8
    assert photograph.scale == pytest.approx(14.0, abs=0.2)
    assert photograph.cuts == "2=9.2"


def test_what_was_accepted_can_be_repeated(folder: Path) -> None:
    run("--accept", "--by", "T. Amberley", "--cut", "2=9.2")
    kept = load(folder / "r.toml").inscriptions[0].boxes
    result = run("--format", "csv", size=False)
    assert "kept in the record" in result.stderr
    again = boxes_of(result.stdout, "again").signs
    for one, other in zip(kept, again, strict=True):
        assert one == other


def test_measurements_are_replaced_only_when_told_to(folder: Path) -> None:
    run("--accept", "--by", "T. Amberley")
    before = (folder / "r.toml").read_text("utf-8")
    assert "boxes of these signs already" in str(run("--accept", "--by", "H. Quist").exception)
    assert (folder / "r.toml").read_text("utf-8") == before
    result = run("--accept", "--by", "H. Quist", "--replace")
    assert result.exit_code == 0, result.output
    (photograph,) = load(folder / "r.toml").inscriptions[0].photographs
    assert photograph.by == "H. Quist"


def test_annotations_come_back_as_boxes(folder: Path) -> None:
    page = run("--format", "annotation").stdout
    targets = [item["target"]["source"] for item in json.loads(page)["items"]]
    assert set(targets) == {"p.png"}
    kept = boxes_of(run("--format", "csv").stdout, "b.csv").signs
    for one, other in zip(kept, boxes_of(page, "page", 14.0).signs, strict=True):
        assert one == pytest.approx(other, abs=0.1)
    other = json.loads(run("--format", "annotation", "--canvas", "https://e.org/c/1").stdout)
    assert other["items"][0]["target"]["source"] == "https://e.org/c/1"


def test_boxes_drawn_as_annotations_are_read_by_the_scale(folder: Path) -> None:
    corners = ("--corners", "56,56", "252,56", "252,616", "56,616", "--scale", "14")
    drawn = {"id": "x:sign:1", "target": "p.png#xywh=14,28,42,56"}
    (folder / "page.json").write_text(json.dumps({"items": [drawn]}), "utf-8")
    result = run(*corners, "--boxes", "page.json", "--format", "csv", size=False)
    assert result.exit_code == 0, result.exception
    (box, *_) = boxes_of(result.stdout, "b.csv").signs
    assert box == SignBox(0, 1, 2, 3, 4)


def test_the_overlay_marks_doubtful_signs_by_shape(folder: Path) -> None:
    (folder / "r.toml").write_text(RECORD.replace("山川", "□川"), "utf-8")
    sure = run("--format", "svg", "--boxes", _boxes(folder)).stdout
    unsure = run("--format", "svg").stdout
    assert "<polygon" not in sure
    assert 'class="dark doubtful"' not in sure
    signs = json.loads(run("--format", "json").stdout)["signs"]
    doubtful = [sign["sign"] + 1 for sign in signs if sign["doubtful"]]
    assert 4 in doubtful
    assert unsure.count("<polygon") == unsure.count('class="dark doubtful"') == len(doubtful)
    assert all(f">{sign}?<" in unsure for sign in doubtful)
    page = run("--format", "html").stdout
    assert "<script" not in page
    assert "data:image/jpeg;base64," in page


def _boxes(folder: Path) -> str:
    (folder / "given.csv").write_text(run("--format", "csv").stdout, "utf-8")
    return "given.csv"


WRONG = [
    (["--accept"], "needs a name"),
    (["--accept", "--by", " "], "needs a name"),
    (["--cut", "12"], "no cut"),
    (["--cut", "3=9-4"], "no cut"),
    (["--cut", "1=4", "--cut", "1=5"], "cut twice"),
    (["--cut", "99=4"], "no sign 99"),
    (["--corners", "1,1", "2,2", "x", "3,3"], "no point"),
    (["--scale", "0"], "scale is impossible"),
    (["--scale", "9", "--ruler", "1,1", "9,9", "5"], "do not go together"),
    (["--ruler", "1,1", "9,9", "0"], "no length"),
    (["--plate", "96"], "no size"),
    (["--inscription", "2"], "no inscription 2"),
    (["--face", "2"], "no face 2"),
    (["--boxes", "nothing.csv"], "no such file"),
]


@pytest.mark.parametrize(("arguments", "said"), WRONG)
def test_what_does_not_do_is_told_and_nothing_is_written(
    folder: Path, arguments: list[str], said: str
) -> None:
    error = run(*arguments).exception
    assert isinstance(error, InputError)
    assert said in str(error)
    assert (folder / "r.toml").read_text("utf-8") == RECORD


def test_a_file_that_is_no_picture_is_told(folder: Path) -> None:
    (folder / "p.png").write_text("no picture", "utf-8")
    assert "no picture" in str(run().exception)
    (folder / "p.png").unlink()
    assert "no such file" in str(run().exception)


def test_a_bad_picture_leaves_the_record_as_it_was(folder: Path) -> None:
    Image.fromarray(photographed(blur=0.8).pixels).save(folder / "p.png")
    error = run("--accept", "--by", "T. Amberley").exception
    assert "blurred" in str(error)
    assert (folder / "r.toml").read_text("utf-8") == RECORD


def test_without_the_libraries_they_are_named(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    assert "pip install opencv-python-headless pillow" in str(run().exception)


def test_a_ruler_gives_the_scale(folder: Path) -> None:
    corners = ("--corners", "56,56", "252,56", "252,616", "56,616")
    result = run(*corners, "--ruler", "10,10", "10,150", "10", "--format", "json", size=False)
    assert json.loads(result.stdout)["plate"] == {"width": WIDTH, "height": HEIGHT}


def test_libraries_for_pictures_are_imported_by_measuring_and_cropping_alone() -> None:
    cropping = ROOT / "inscribe" / "report" / "picturing.py"  # where pillow is installed
    for module in sorted((ROOT / "inscribe").rglob("*.py")):
        if module.is_relative_to(ROOT / "inscribe" / "measuring") or module == cropping:
            continue
        for node in ast.walk(ast.parse(module.read_text("utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom):
                names = [node.module or ""]
            assert not {name.split(".")[0] for name in names} & {"cv2", "PIL"}, module


@pytest.mark.parametrize("path", sorted((ROOT / "examples").glob("*.toml")), ids=lambda p: p.stem)
def test_amending_changes_only_what_was_measured(path: Path) -> None:
    text = path.read_text("utf-8")
    record = load(path)
    for place, inscription in enumerate(record.inscriptions):
        count = len(inscription.transcription.columns)
        measured = _measured(inscription, count)
        photograph = Photograph("p.png", "T. Amberley", corners=tuple(map(float, range(8))))
        amended = with_measurements(text, str(path), place, measured, photograph)
        kept = set(amended.splitlines())
        assert all(line in kept for line in text.splitlines() if line.startswith("#"))


def _measured(inscription: Any, columns: int) -> Any:
    from dataclasses import replace

    return replace(
        inscription,
        plate=inscription.plate or Plate(10.0, 30.0),
        columns=inscription.columns or tuple(ColumnMeasure(1.0, 2.5) for _ in range(columns)),
        boxes=(SignBox(0, 0.5, 1.0, 2.0, 1.5),),
    )


@given(records.filter(lambda record: record.inscriptions[0].plate is not None))
def test_amending_any_record_says_what_was_meant(record: Any) -> None:
    text = dump(record)
    columns = len(record.inscriptions[0].transcription.columns)
    measured = _measured(record.inscriptions[0], columns)
    photograph = Photograph("p.png", "T. Amberley", cuts="1=2")
    amended = with_measurements(text, "r.toml", 0, measured, photograph)
    found = loads(amended, "r.toml", Path())
    assert found.inscriptions[0].boxes == measured.boxes
    assert found._replace(inscriptions=()) == record._replace(inscriptions=())


def test_what_boxes_from_annotations_lack_is_said(folder: Path) -> None:
    def foreign(*also: dict[str, str]) -> str:
        items = [{"target": "c#xywh=40,60,40,40", "body": {"value": "花"}}, *also]
        return json.dumps({"type": "AnnotationPage", "items": items})

    def told(page: str, *more: str) -> str:
        (folder / "boxes.json").write_text(page, "utf-8")
        result = run("--boxes", "boxes.json", "--scale", "14", *more)
        assert result.exit_code == 0, result.output
        return result.stderr

    said = told(foreign())
    assert "boxes.json: no annotation says where the plate is" in said
    assert 'give the plate a box with the text "plate"' in said
    assert told(foreign(), "--quiet") == ""
    plate = {"target": f"c#xywh=20,20,{14 * WIDTH:g},{14 * HEIGHT:g}", "body": {"value": "plate"}}
    column = {"target": "c#xywh=40,60,40,80", "body": {"value": "花の"}}
    assert "no annotation says where the plate is" not in told(foreign(plate))
    assert "1 annotation is of more than one sign" in told(foreign(plate, column))


def test_annotations_of_a_tilted_picture_come_back_as_they_were(folder: Path) -> None:
    table = boxes_of(run("--format", "csv").stdout, "before").signs
    (folder / "a.json").write_text(run("--format", "annotation").stdout, "utf-8")
    again = boxes_of(run("--boxes", "a.json", "--format", "csv").stdout, "after").signs
    for one, other in zip(table, again, strict=True):
        assert one == pytest.approx(other, abs=0.1)


def test_a_cut_far_from_the_strokes_is_doubted_and_an_impossible_one_refused(folder: Path) -> None:
    begins = boxes_of(run("--format", "csv").stdout, "free").signs
    near = run("--cut", f"2={begins[1].y + 0.2:.2f}")
    assert "check it" not in near.stderr
    far = run("--cut", f"2={begins[2].y + 1:.2f}")
    assert "sign 2 is cut at" in far.stderr
    for impossible in (("2=39.9",), ("1=20", "2=10")):
        given = [word for cut in impossible for word in ("--cut", cut)]
        refused = run(*given)
        assert isinstance(refused.exception, InputError), refused.output
        assert "leave no room" in str(refused.exception)


def test_what_is_no_picture_of_a_usual_size_is_told_apart(folder: Path) -> None:
    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", crc32(name + data))

    size = struct.pack(">IIBBBBB", 60_000, 60_000, 8, 2, 0, 0, 0)
    huge = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", size) + chunk(b"IDAT", b"") + chunk(b"IEND", b"")
    (folder / "p.png").write_bytes(huge)
    assert "million pixels" in str(run().exception)
    (folder / "p.png").unlink()
    (folder / "p.png").mkdir()
    assert "this is a folder" in str(run().exception)


def test_a_scale_that_does_not_fit_the_plate_is_told(folder: Path) -> None:
    assert "one of them is wrong" not in run("--scale", "14").stderr
    assert "one of them is wrong" in run("--scale", "20").stderr


def test_a_worn_sign_cut_at_both_ends_is_doubtful_no_more(folder: Path) -> None:
    worn = RECORD.replace(TEXT, TEXT.replace("見", "□"))
    (folder / "r.toml").write_text(worn, "utf-8")
    begins = boxes_of(run("--format", "csv").stdout, "free").signs[1]
    given = f"2={begins.y:.2f}-{begins.y + begins.height:.2f}"
    before, after = (
        json.loads(run(*cut, "--format", "json").stdout)["signs"][1]["certainty"]
        for cut in ((), ("--cut", given))
    )
    assert before < 0.4 < 0.9 < after
