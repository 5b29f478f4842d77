"""Manifests made elsewhere: what of each becomes a record, and what is said of the rest.

The shapes are those of the published API and its cookbook (one picture, image service, choice,
region, annotations embedded and referenced, books), typed here with invented content.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from hypothesis import given, strategies as st

from inscribe.cli import cli
from inscribe.entry import entry_of
from inscribe.errors import InputError, InscribeError
from inscribe.guide import chapter
from inscribe.importing import Trouble, import_plan, proposed_mapping, read_manifest, with_pictures
from inscribe.importing.manifests import _as_list
from inscribe.record import Record, load, loads
from inscribe.record.boxes.tables import boxes_of
from inscribe.report.linked.manifest import entry_as_manifest
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent / "examples"
BASE = "https://images.example.org/kz-9"
Json = dict[str, Any]
SERVICE = {"id": f"{BASE}/iiif", "type": "ImageService3", "profile": "level1"}


def image(**more: Any) -> Json:
    named = {"id": f"{BASE}/iiif/full/max/0/default.jpg", "type": "Image", "format": "image/jpeg"}
    return named | {"width": 600, "height": 4000, "service": [SERVICE]} | more


def text(value: str, language: str | None = "ja", place: str = "", **more: Any) -> Json:
    body = {"type": "TextualBody", "value": value, "format": "text/plain"}
    body |= {"language": language} if language else {}
    target = f"{BASE}/canvas/1{place}"
    made = {"type": "Annotation", "motivation": "supplementing", "body": body, "target": target}
    return made | more


def canvas(*bodies: Any, texts: list[Json] | None = None, target: str = "", **more: Any) -> Json:
    name = f"{BASE}/canvas/1"
    painted = [
        {"type": "Annotation", "motivation": "painting", "body": body, "target": name + target}
        for body in bodies
    ]
    made: Json = {"id": name, "type": "Canvas", "width": 600, "height": 4000}
    made["items"] = [{"type": "AnnotationPage", "items": painted}]
    if texts is not None:
        made["annotations"] = [{"type": "AnnotationPage", "items": texts}]
    return made | more


def manifest(*canvases: Json, **more: Any) -> Json:
    return {
        "@context": "http://iiif.io/api/presentation/3/context.json",
        "id": f"{BASE}/manifest.json",
        "type": "Manifest",
        "label": {"en": ["Handle"]},
        "items": list(canvases),
    } | more


def taken(made: Json) -> tuple[Record, list[Trouble]]:
    """Return the record that a manifest becomes, and what is told."""
    found = _as_list(made, "m.json")
    plan = with_pictures(import_plan(found.list, proposed_mapping(found.list)), found)
    (outcome,) = plan.outcomes
    assert outcome.what == "new", plan.troubles
    return loads(outcome.text), list(plan.troubles)


def run(*asked: str) -> Result:
    return CliRunner().invoke(cli, asked)


def test_one_picture_and_its_transcription() -> None:
    shown = canvas(image(), texts=[text("露の身は\n葦の")], label={"none": ["back plate"]})
    record, troubles = taken(manifest(shown, summary={"ja": ["裏板"], "fr": ["Plaque"]}))
    assert (record.id, record.title, record.remarks) == ("kz-9", "Handle", "裏板")
    (inscription,) = record.inscriptions
    assert (inscription.place, inscription.text) == ("back plate", "露の身は／葦の")
    (picture,) = inscription.images
    assert (picture.iiif, picture.service, picture.size) == (f"{BASE}/iiif", "3", (600, 4000))
    assert troubles == []


def test_what_the_metadata_says_becomes_keys_where_its_labels_are_known_and_is_kept() -> None:
    pairs = [("Kind", "tsuba"), ("Transcription", "花の色"), ("Shelf", "3 b"), ("Shelf", "4")]
    metadata = [{"label": {"en": [a]}, "value": {"none": [b]}} for a, b in pairs]
    record, troubles = taken(manifest(canvas(image()), metadata=metadata))
    assert (record.kind, record.inscriptions[0].text) == ("tsuba", "花の色")
    assert troubles == []
    assert record.imported
    assert [cell for cell in record.imported.cells if "Shelf" in cell[0]] == [
        ("Shelf", "3 b"),
        ("Shelf (2)", "4"),
    ]


def test_an_object_that_nobody_transcribed_has_a_gap_and_its_pictures() -> None:
    record, troubles = taken(manifest(canvas(image()), canvas(image())))
    assert [each.text for each in record.inscriptions] == ["［　　］"]
    assert len(record.images) == 2
    assert [each.todo for each in troubles] == ["write what is carved into the record"]


def test_each_canvas_with_a_text_is_an_inscription_with_its_own_translation() -> None:
    front = canvas(image(), texts=[text("武州住")], label={"en": ["front"]})
    back = canvas(image(), texts=[text("花"), text("A flower", "en")], label={"en": ["back"]})
    record, _ = taken(manifest(front, canvas(image()), back))
    told = [(each.place, each.text, each.translation) for each in record.inscriptions]
    assert told == [("front", "武州住", ""), ("back", "花", "A flower")]
    assert [len(each.images) for each in record.inscriptions] == [1, 1]
    assert len(record.images) == 1


@pytest.mark.parametrize(
    ("texts", "said"),
    [
        (
            [text("露の", place="#xywh=300,9,9,90"), text("身は", place="#xywh=9,9,9,90")],
            "露の／身は",
        ),
        (
            [
                text(sign, place=f"#xywh={x},{y},40,40")
                for sign, x, y in (("露", 90, 9), ("の", 90, 60), ("身", 9, 9), ("は", 9, 60))
            ],
            "露の／身は",
        ),
        ([text("Tsuyu no", "ja-Latn"), text("露の", None), text("Dew", "en")], "露の"),
        ([text("noise", motivation="commenting"), text("露", motivation=["supplementing"])], "露"),
        ([text("<p>露の<br>身</p>")], "露の身"),
        (
            [
                text("身")
                | {
                    "target": {
                        "type": "SpecificResource",
                        "source": {"id": f"{BASE}/canvas/1", "type": "Canvas"},
                        "selector": {"type": "FragmentSelector", "value": "xywh=1,2,3,4"},
                    }
                }
            ],
            "身",
        ),
    ],
)
def test_texts_become_columns(texts: list[Json], said: str) -> None:
    record, _ = taken(manifest(canvas(image(), texts=texts)))
    assert record.inscriptions[0].text == said


@pytest.mark.parametrize(
    ("body", "expected", "told"),
    [
        (image(), (f"{BASE}/iiif", "3", (600, 4000), ()), ""),
        (
            image(
                service={
                    "@context": "http://iiif.io/api/image/2/context.json",
                    "@id": f"{BASE}/iiif/",
                    "@type": "ImageService2",
                    "profile": "http://iiif.io/api/image/2/level2.json",
                }
            ),
            (f"{BASE}/iiif", "2", (600, 4000), ()),
            "",
        ),
        (image(service=[]), (f"{BASE}/iiif", "", (600, 4000), ()), ""),
        (
            image(id=f"{BASE}/iiif/10,20,30,40/max/0/default.jpg"),
            (f"{BASE}/iiif", "3", (), (10, 20, 30, 40)),
            "",
        ),
        (
            {
                "type": "SpecificResource",
                "source": image(),
                "selector": {"type": "ImageApiSelector", "region": "10,20,30,40"},
            },
            (f"{BASE}/iiif", "3", (600, 4000), (10, 20, 30, 40)),
            "",
        ),
        (
            {"type": "Choice", "items": [image(), image()]},
            (f"{BASE}/iiif", "3", (600, 4000), ()),
            "of 2 pictures to choose from the first is taken",
        ),
        ({"id": f"{BASE}/a.png", "type": "Image"}, None, "names no image service"),
        ({"id": f"{BASE}/a.mp4", "type": "Video"}, None, "of type Video"),
        (image(id="x", service={"@id": BASE, "profile": "http://x/image/1.1"}), None, "version 2"),
    ],
)
def test_what_is_painted(body: Json, expected: Any, told: str) -> None:
    record, troubles = taken(manifest(canvas(body, texts=[text("花")])))
    found = [(i.iiif, i.service, i.size, i.crop) for i in record.inscriptions[0].images]
    assert found == ([expected] if expected else [])
    said = [f"{each.said}; {each.todo}" for each in troubles]
    assert (told in said[0]) if told else said == []


def test_what_lies_elsewhere_or_fills_a_part_is_told() -> None:
    away = canvas(image(), target="#xywh=0,0,300,400")
    away["annotations"] = [{"id": f"{BASE}/page/1", "type": "AnnotationPage"}]
    _, troubles = taken(manifest(away))
    told = [each.said for each in troubles]
    assert told == [
        "the annotations lie in a file of their own, which is not fetched",
        "the picture fills a part of its canvas only; its place there is not kept",
        "no annotation transcribes it; ［　　］ stands for what is carved",
    ]
    assert troubles[0].cell == f"{BASE}/page/1"


@pytest.mark.parametrize(
    ("made", "said"),
    [
        ({"@type": "sc:Manifest", "sequences": []}, "a manifest of IIIF Presentation 2"),
        ({"@type": "sc:Collection", "manifests": []}, "a collection of IIIF Presentation 2"),
        ({"type": "Collection", "items": []}, "a collection of manifests"),
        ({"type": "AnnotationPage", "items": []}, "a page of annotations"),
        ({"id": "x"}, "no manifest of IIIF Presentation 3"),
        ([], "no manifest"),
    ],
)
def test_what_is_no_manifest_of_version_3_is_refused_with_a_sentence(
    tmp_path: Path, made: Any, said: str
) -> None:
    (tmp_path / "m.json").write_text(json.dumps(made), "utf-8")
    result = run("import", str(tmp_path / "m.json"))
    assert isinstance(result.exception, InputError)
    assert said in str(result.exception)
    assert result.exception.hint


@pytest.mark.parametrize(
    ("made", "said"),
    [
        ({"@type": "sc:Manifest", "sequences": []}, "Presentation 2"),
        ({"type": "Collection", "items": []}, "a collection of manifests"),
        (
            manifest(canvas(annotations=[{"id": f"{BASE}/p", "type": "AnnotationPage"}])),
            "lie in a file of their own, which is not fetched.*/kz-9/p",
        ),
        (
            manifest(canvas(texts=[text("露の身", place="#xywh=1,2,3,4")])),
            "each annotation is of several",
        ),
        (manifest(canvas()), "no list of annotations"),
    ],
)
def test_boxes_of_what_has_none_are_refused_with_a_sentence(made: Json, said: str) -> None:
    with pytest.raises(InputError) as refused:
        boxes_of(json.dumps(made), "m.json", 10)
    assert re.search(said, str(refused.value))


def test_a_column_among_boxes_of_signs_is_left_out_and_told(tmp_path: Path) -> None:
    placed = [("露の", "1,2,30,90"), ("露", "10,20,30,40"), ("は(者)", "10,70,30,40")]
    shown = canvas(texts=[text(said, place=f"#xywh={place}") for said, place in placed])
    found = boxes_of(json.dumps(manifest(shown)), "m.json", 10)
    assert [(box.sign, box.y) for box in found.signs] == [(0, 2), (1, 7)]
    assert found.left_out == 1
    (tmp_path / "a.toml").write_text(
        'id="A"\nkind="kozuka"\n[[inscription]]\nplace="back plate"\ntext="露は"\n'
        '[inscription.source]\ntext="露は"\n',
        "utf-8",
    )
    (tmp_path / "m.json").write_text(json.dumps(manifest(shown)), "utf-8")
    boxes = ("--boxes", str(tmp_path / "m.json"), "--scale", "10")
    said = " ".join(run("collate", str(tmp_path / "a.toml"), *boxes).stdout.split())
    assert "1 annotation is of more than one sign, as a column, and left out" in said


def test_our_own_manifests_come_in_too(tmp_path: Path) -> None:
    for path in sorted(EXAMPLES.glob("DEMO-*.toml")):
        record = load(path)
        made = json.loads(entry_as_manifest(entry_of(record, folder=EXAMPLES), Style()))
        back, _ = taken(made)
        assert back.id == record.id
        counts = [
            [len(each.transcription.signs) for each in held.inscriptions] for held in (back, record)
        ]
        assert counts[0] == counts[1]
        assert [e.translation.strip() for e in back.inscriptions] == [
            e.translation.strip() for e in record.inscriptions
        ]


KEYS = ["items", "annotations", "body", "type", "id", "label", "value", "target", "selector"]
json_values = st.recursive(
    st.none() | st.integers() | st.text(max_size=8) | st.just("花の色"),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(KEYS),
            inner,
            max_size=5,
        )
    ),
    max_leaves=25,
)


@given(st.dictionaries(st.sampled_from(["items", "label", "metadata", "id"]), json_values))
def test_any_json_of_a_manifest_is_taken_or_refused(made: Json) -> None:
    try:
        found = _as_list({"type": "Manifest", **made}, "m.json")
        with_pictures(import_plan(found.list, proposed_mapping(found.list)), found)
        boxes_of(json.dumps({"type": "Manifest", **made}), "m.json", 10)
    except InscribeError:
        return


def test_the_examples_of_the_guide_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    told = chapter("imports")
    first, second = re.findall(r"```json\n(.*?)```", told, re.DOTALL)
    Path("collection").symlink_to(EXAMPLES)
    Path("kz-204.json").write_text(first, "utf-8")
    Path("boxes.json").write_text(second, "utf-8")
    Path("poem.txt").write_text("露の身は\n葦のかりねの\n", "utf-8")
    commands = re.findall(r"^\$ inscribe (.*)\n((?:(?!\$|```).*\n)*)", told, re.MULTILINE)
    assert len(commands) == 5
    for command, shown in commands:
        result = run(*command.split())
        assert result.exit_code == 0, result.output
        assert shown.strip() in result.stdout
    assert load(Path("records/kz-204.toml")).inscriptions[0].images
    assert load(Path("back/DEMO-003.toml")).id == "DEMO-003"
    assert read_manifest(Path("kz-204.json")).list.name == "kz-204.json"
