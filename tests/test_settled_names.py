"""Readings that a person settled in a record win over every other, wherever the name stands."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.errors import InputError
from inscribe.reading import read_text
from inscribe.reading.names import ranking as names
from inscribe.record.settled import settled_names

RECORD = """id = "A-1"
kind = "tsuba"
[[inscription]]
place = "front"
text = "武州住嶺曉作"
[[inscription.override]]
signs = [4, 5]
of = "嶺曉"
kana = "みねあき"
kind = "name"
by = "T. Amberley"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    (tmp_path / "A-1.toml").write_text(RECORD, "utf-8")
    (tmp_path / "A-2.toml").write_text('id = "A-2"\nkind = "name"\nbroken', "utf-8")
    yield tmp_path
    names._settled.clear()
    names.settle([])


def test_a_settled_name_is_found_in_current_forms(folder: Path) -> None:
    (found,) = settled_names(folder)
    assert (found.written, found.kana) == ("嶺暁", "みねあき")
    assert found.why == f"settled by T. Amberley in {folder / 'A-1.toml'}"


def test_the_signs_themselves_count_where_the_override_does_not_repeat_them(folder: Path) -> None:
    path = folder / "A-1.toml"
    path.write_text(RECORD.replace('of = "嶺曉"\n', ""), "utf-8")
    assert settled_names(folder)[0].written == "嶺暁"


def test_name_puts_it_first(folder: Path) -> None:
    arguments = ["name", "嶺曉", "--records", str(folder), "--format", "json"]
    result = CliRunner().invoke(cli, arguments)
    first = json.loads(result.stdout)["readings"][0]
    assert first["romaji"] == "Mineaki"
    assert "settled by T. Amberley" in first["reason"]


def test_another_signature_with_the_name_is_read_so(folder: Path) -> None:
    arguments = ["read", "--text", "江戸住嶺暁彫之", "--records", str(folder), "--format", "json"]
    result = CliRunner().invoke(cli, arguments)
    assert json.loads(result.stdout)["signature"]["name"]["romaji"] == "Mineaki"


def test_what_was_read_before_is_read_anew() -> None:
    before = read_text("江戸住帆蹊彫之").proposals[0].romaji
    names.settle([("帆蹊", "ほのみち", "settled")])
    after = read_text("江戸住帆蹊彫之").proposals[0].romaji
    names._settled.clear()
    names.settle([])
    assert "Honomichi" in after
    assert read_text("江戸住帆蹊彫之").proposals[0].romaji == before != after


def test_without_the_records_it_is_not(folder: Path) -> None:
    result = CliRunner().invoke(cli, ["name", "嶺曉", "--format", "json"])
    assert json.loads(result.stdout)["readings"][0]["romaji"] != "Mineaki"


def test_a_folder_that_is_not_there_is_an_error() -> None:
    result = CliRunner().invoke(cli, ["name", "嶺曉", "--records", "nowhere"])
    assert isinstance(result.exception, InputError)
