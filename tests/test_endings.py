"""The format of a file that is written: as its name ends, the same for every command."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import cli
from inscribe.cli.giving import format_for

EXAMPLES = Path("examples")
ONE, TWO = str(EXAMPLES / "DEMO-003.toml"), str(EXAMPLES / "DEMO-011.toml")
JSON_OF = {
    "read": ("read", "花の色は"),
    "collate": ("collate", ONE),
    "date": ("date", "嘉永六年"),
    "name": ("name", "嶺暁"),
    "sign": ("sign", "花"),
    "restore": ("restore", "花の□は", "--alone"),
    "check": ("check", str(EXAMPLES)),
    "next": ("next", str(EXAMPLES)),
    "index": ("index", str(EXAMPLES)),
    "concord": ("concord", str(EXAMPLES), "人"),
    "settings": ("settings",),
    "entry": ("entry", ONE),
}


def ran(*arguments: str) -> Result:
    return CliRunner().invoke(cli, arguments)


@pytest.mark.parametrize("arguments", JSON_OF.values(), ids=JSON_OF)
def test_a_file_that_ends_in_json_is_json(arguments: tuple[str, ...], tmp_path: Path) -> None:
    file = tmp_path / "result.json"
    ran(*arguments, "-o", str(file))
    json.loads(file.read_text("utf-8"))


@pytest.mark.parametrize("arguments", JSON_OF.values(), ids=JSON_OF)
def test_an_ending_that_no_format_has_is_refused(
    arguments: tuple[str, ...], tmp_path: Path
) -> None:
    file = tmp_path / "result.foo"
    found = ran(*arguments, "-o", str(file))
    assert "no format is written into files that end in .foo; use ." in str(found.exception)
    assert not file.exists()


def test_a_format_that_is_named_goes_into_a_file_of_any_unknown_ending(tmp_path: Path) -> None:
    assert ran("read", "花", "--format", "json", "-o", str(tmp_path / "a.foo")).exit_code == 0


@pytest.mark.parametrize(
    ("form", "name", "hint"),
    [("text", "a.json", "name it .txt"), ("json", "a.txt", "name it .json")],
)
def test_a_format_and_an_ending_that_contradict_are_refused(
    form: str, name: str, hint: str, tmp_path: Path
) -> None:
    found = ran("read", "花", "--format", form, "-o", str(tmp_path / name))
    assert hint in str(found.exception)


@pytest.mark.parametrize(
    ("form", "name"), [("linked", "a.json"), ("annotation", "a.jsonld"), ("iiif", "a.jsonld")]
)
def test_linked_data_may_be_called_json_and_json_linked(form: str, name: str) -> None:
    ends = {"json": "json", "linked": "jsonld", "annotation": "json", "iiif": "json"}
    assert format_for(form, name, ends, "json") == form


def test_the_beginning_of_an_ending_is_guessed(tmp_path: Path) -> None:
    found = ran("entry", ONE, "-o", str(tmp_path / "page.htm"))
    assert "did you mean .html?" in str(found.exception)


def test_drawings_of_several_inscriptions_want_a_folder(tmp_path: Path) -> None:
    found = ran("entry", TWO, "-o", str(tmp_path / "a.svg"))
    assert "a drawing shows one inscription, and there are 2" in str(found.exception).replace(
        "an svg", "a"
    )
    assert "-o FOLDER/" in str(found.exception)
