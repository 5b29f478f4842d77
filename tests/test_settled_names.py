"""Readings that a person settled in a record win over every other, wherever the name stands."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.errors import InputError
from inscribe.keeping import Work, names_settled
from inscribe.reading import read_text
from inscribe.reading.names import settle, settled_readings, settling
from inscribe.record.reading.settled import settled_names

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
    settled_readings().clear()
    settle([])


def test_a_settled_name_is_found_in_current_forms(folder: Path) -> None:
    (found,) = settled_names(folder)
    assert (found.written, found.kana) == ("嶺暁", "みねあき")
    assert found.why == f"settled by T. Amberley in {folder / 'A-1.toml'}"


def test_the_signs_themselves_count_where_the_override_does_not_repeat_them(folder: Path) -> None:
    path = folder / "A-1.toml"
    path.write_text(RECORD.replace('of = "嶺曉"\n', ""), "utf-8")
    assert settled_names(folder)[0].written == "嶺暁"


def test_nothing_is_done_yet_while_settled_names_are_looked_for(folder: Path) -> None:
    heard: list[tuple[int, int]] = []
    paths = sorted(folder.glob("*.toml"))
    nothing = Work((), lambda path: ())
    with names_settled(folder, paths, nothing, None, lambda *told: heard.append(told)):
        assert heard == [(0, 2), (0, 2)]


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
    with settling([("帆蹊", "ほのみち", "settled")]):
        after = read_text("江戸住帆蹊彫之").proposals[0].romaji
    assert "Honomichi" in after
    assert read_text("江戸住帆蹊彫之").proposals[0].romaji == before != after


def test_without_the_records_it_is_not(folder: Path) -> None:
    result = CliRunner().invoke(cli, ["name", "嶺曉", "--format", "json"])
    assert json.loads(result.stdout)["readings"][0]["romaji"] != "Mineaki"


def test_a_folder_that_is_not_there_is_an_error() -> None:
    result = CliRunner().invoke(cli, ["name", "嶺曉", "--records", "nowhere"])
    assert isinstance(result.exception, InputError)


HOUSE = Path(__file__).parent / "data" / "people" / "records"  # ten invented records


@pytest.fixture
def collection(tmp_path: Path) -> Path:
    for path in HOUSE.glob("*.toml"):
        (tmp_path / path.name).write_bytes(path.read_bytes())
    return tmp_path


def shown(*arguments: str) -> str:
    result = CliRunner().invoke(cli, arguments, catch_exceptions=False)
    return result.stdout


def test_a_name_settled_in_one_record_is_read_so_in_all_of_the_folder(collection: Path) -> None:
    for record in ("P-009", "P-010"):
        out = shown("read", str(collection / f"{record}.toml"))
        assert "Oborodani" in out.partition("register")[0]
        assert "settled by T. Amberley in" in out
    for record in (collection / "P-010.toml", collection):
        found = json.loads(shown("entry", str(record), "--format", "json"))
        entries = found if isinstance(found, list) else [found]
        romaji = [each["inscriptions"][0]["reading"]["romaji"] for each in entries]
        assert "Oborodani horu" in romaji
        assert not any("Rōkei" in text for text in romaji)
    hits = json.loads(shown("concord", str(collection), "朧渓", "--format", "json"))["hits"]
    assert {hit["carver_romaji"] for hit in hits} == {"Oborodani"}


def test_without_it_they_are_read_by_their_signs(collection: Path) -> None:
    (collection / "P-008.toml").unlink()
    assert "Rōkei horu" in shown("read", str(collection / "P-010.toml")).partition("register")[0]


def test_what_is_settled_for_a_folder_is_so_for_that_folder_only(collection: Path) -> None:
    shown("entry", str(collection), "--format", "csv")
    shown("check", str(collection))
    assert read_text("朧渓彫").proposals[0].romaji == "Rōkei horu"


def test_what_is_kept_is_made_anew_when_another_record_settles_a_name(collection: Path) -> None:
    before = shown("concord", str(collection), "朧渓", "--format", "json")
    path = collection / "P-008.toml"
    path.write_text(path.read_text("utf-8").replace("おぼろだに", "おぼろや"), "utf-8")
    after = shown("concord", str(collection), "朧渓", "--format", "json")
    assert before.count("Oborodani") == 3
    assert after.count("Oboroya") == 3


def test_a_record_may_settle_it_otherwise_for_itself_and_check_tells(collection: Path) -> None:
    def told() -> list[str]:
        findings = json.loads(shown("check", str(collection), "--format", "json"))["findings"]
        return [f["record"] for f in findings if f["code"] == "read-two-ways"]

    assert told() == []
    path = collection / "P-010.toml"
    settled = '[[inscription.override]]\nsigns = [1, 2]\nkana = "ろうけい"\nkind = "name"\n'
    path.write_text(path.read_text("utf-8") + settled, "utf-8")
    assert told() == ["P-008", "P-009", "P-010"]
    findings = json.loads(shown("check", str(collection), "--format", "json"))["findings"]
    message = next(f["message"] for f in findings if f["record"] == "P-010")
    assert message == "朧渓 is read Rōkei here, and Oborodani in P-008, P-009"
