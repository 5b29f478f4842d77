"""What the commands print keeps the schemas they publish."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator

from inscribe.cli import cli, schema as command
from inscribe.report.json import schemas

EXAMPLES = Path(__file__).parent.parent / "examples"


def printed(*arguments: str) -> Any:
    result = CliRunner().invoke(cli, arguments, catch_exceptions=False)
    assert result.exit_code in (0, 1), result.output
    return json.loads(result.stdout)


def schema(what: str) -> Draft202012Validator:
    published = printed("schema", what)
    Draft202012Validator.check_schema(published)
    return Draft202012Validator(published, format_checker=Draft202012Validator.FORMAT_CHECKER)


def assert_keeps(found: Any, what: str) -> None:
    validator = schema(what)
    for each in found if isinstance(found, list) else [found]:
        problems = [f"{error.json_path}: {error.message}" for error in validator.iter_errors(each)]
        assert problems == []


def test_the_command_names_every_schema() -> None:
    assert command.OUTPUTS == schemas.OUTPUTS


@pytest.mark.parametrize("name", ["DEMO-001", "DEMO-004", "DEMO-005", "DEMO-008", "DEMO-011"])
def test_a_reading(name: str) -> None:
    assert_keeps(printed("read", f"{EXAMPLES}/{name}.toml", "--format", "json"), "read")


@pytest.mark.parametrize("name", ["DEMO-001", "DEMO-002", "DEMO-003", "DEMO-004"])
def test_a_collation(name: str) -> None:
    assert_keeps(printed("collate", f"{EXAMPLES}/{name}.toml", "--format", "json"), "collate")


def test_a_search(tmp_path: Path) -> None:
    library = ("--library", str(tmp_path / "library.sqlite"))
    sources = CliRunner().invoke(cli, ["source", "add", *library, f"{EXAMPLES}/sources"])
    assert sources.exit_code == 0, sources.output
    found = printed(
        "source", "find", *library, "--text", "世の中に桜のなかりせは", "--format", "json"
    )
    assert found["hits"]
    assert_keeps(found, "source-find")


def test_a_text_of_the_library(tmp_path: Path) -> None:
    library = ("--library", str(tmp_path / "library.sqlite"))
    CliRunner().invoke(cli, ["source", "add", *library, f"{EXAMPLES}/sources"])
    assert_keeps(printed("source", "list", *library, "--format", "json"), "source-list")


def test_a_check() -> None:
    found = printed("check", str(EXAMPLES), "--format", "json")
    assert found["findings"]
    assert_keeps(found, "check")


@pytest.mark.parametrize("text", ["嘉永五年壬子仲秋", "文政七年乙酉", "丙午仲春", "閏五月朔日"])
def test_a_date(text: str) -> None:
    assert_keeps(printed("date", text, "--format", "json"), "date")


@pytest.mark.parametrize("char", ["國", "𛂥", "々", "処"])
def test_a_sign(char: str) -> None:
    assert_keeps(printed("sign", char, "--format", "json"), "sign")


def test_a_name() -> None:
    assert_keeps(printed("name", "露岳", "--format", "json"), "name")


@pytest.mark.parametrize("name", ["DEMO-002", "DEMO-010"])
def test_an_entry(name: str) -> None:
    assert_keeps(printed("entry", f"{EXAMPLES}/{name}.toml", "--format", "json"), "entry")


@pytest.mark.parametrize("text", ["武州住□国作", "世の中に桜の□かりせば", "武州住［　　］作"])
def test_a_restoration(text: str) -> None:
    assert_keeps(printed("restore", "--text", text, "--format", "json"), "restore")


def test_a_concordance() -> None:
    folder = (str(EXAMPLES), "--no-cache", "--format", "json")
    found = printed("concord", *folder, "夢")
    assert found["hits"]
    assert_keeps(found, "concord")
    shared = printed("concord", *folder, "--clusters")
    assert shared["clusters"]
    assert_keeps(shared, "concord-clusters")


def test_a_schema_that_could_not_fail_would_be_useless() -> None:
    for what in schemas.OUTPUTS:
        assert not schema(what).is_valid({})
