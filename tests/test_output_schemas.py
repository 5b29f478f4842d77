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


COUNTING_KEYS = {"sign", "signs", "column", "start", "end", "difference", "inscription", "line"}


def counted_in(schema: Any, path: str = "") -> list[tuple[str, str]]:
    """Return every key of a schema that holds a sign, a column or the like, with what is said."""
    found = []
    for key, inner in schema.get("properties", {}).items():
        counts = inner.get("type") == "integer" or inner.get("prefixItems")
        if key in COUNTING_KEYS and counts and not (key == "signs" and "prefixItems" not in inner):
            found.append((f"{path}.{key}", inner.get("description", "")))
        found += counted_in(inner, f"{path}.{key}")
    for key in ("items", "additionalProperties"):
        if isinstance(schema.get(key), dict):
            found += counted_in(schema[key], path)
    for inner in schema.get("anyOf", []):
        found += counted_in(inner, path)
    return found


@pytest.mark.parametrize("what", schemas.OUTPUTS)
def test_a_schema_says_from_where_it_counts(what: str) -> None:
    published = printed("schema", what)
    counted = counted_in(published)
    assert [path for path, said in counted if "from 0" not in said and "from 1" not in said] == []
    from_zero = any("from 0" in said for _, said in counted)
    assert ("from 0" in published.get("description", "")) == from_zero


@pytest.mark.parametrize("what", sorted(schemas.COUNTS_SIGNS))
def test_the_help_of_a_command_says_that_its_json_counts_otherwise(what: str) -> None:
    shown = " ".join(CliRunner().invoke(cli, [what, "--help"]).output.split())
    assert "counted from 1" in shown
    assert "in JSON from 0" in shown


def test_the_help_of_schema_says_both() -> None:
    shown = " ".join(CliRunner().invoke(cli, ["schema", "--help"]).output.split())
    assert "columns from 1" in shown
    assert "JSON counts them from 0" in shown


def test_a_record_says_that_it_counts_signs_from_1() -> None:
    inscription = printed("schema", "record")["properties"]["inscription"]["items"]["properties"]
    for table, key in (("box", "sign"), ("override", "signs")):
        assert "from 1" in inscription[table]["items"]["properties"][key]["description"]


def test_json_counts_as_the_schema_says() -> None:
    read = printed("read", "--text", "國の花", "--format", "json")
    assert read["changes"][0]["sign"] == 0
    assert read["tokens"][0]["signs"][0] == 0
    worn = printed("restore", "--text", "武州住□親作", "--sign", "4", "--format", "json")
    assert [(each["sign"], each["column"]) for each in worn["lacunae"]] == [(3, 0)]
    held = printed("collate", f"{EXAMPLES}/DEMO-003.toml", "--format", "json")
    assert held["groups"][0]["copy"]["start"] == 0
    assert [each["column"] for each in held["space"]["crowding"]] == [0, 1]
    assert min(each["difference"] for each in held["space"]["verdicts"]) == 0
