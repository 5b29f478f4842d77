"""What the commands print keeps the schemas they publish."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator

from inscribe.cli import cli, schema as command
from inscribe.keys import COUNTS_SIGNS, OUTPUTS

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
    assert tuple(OUTPUTS) == command.OUTPUTS


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
    for what in OUTPUTS:
        assert not schema(what).is_valid({})


COUNTING_KEYS = {"sign", "signs", "column", "start", "end", "difference", "inscription", "line"}
Objects = dict[str, Any]


def objects_of(published: Any) -> Objects:
    """Return every object that a schema describes, by name; the whole is named ""."""
    return {"": published, **published.get("$defs", {})}


def described(published: Any) -> list[tuple[str, str, Any]]:
    """Return every key of a schema: the object's name, the key, and its schema."""
    return [
        (name, key, inner)
        for name, described in objects_of(published).items()
        for key, inner in described["properties"].items()
    ]


def counts(inner: Any) -> bool:
    """Whether a key holds the number of a sign, a column, a line, or two of them."""
    return inner.get("type") == "integer" or inner.get("minItems") == 2


@pytest.mark.parametrize("what", OUTPUTS)
def test_every_key_and_object_is_described(what: str) -> None:
    published = printed("schema", what)
    assert published["$id"] == f"urn:inscribe:schema:{what}"
    assert [
        f"{name}.{key}" for name, key, inner in described(published) if not inner.get("description")
    ] == []
    assert [name for name, each in objects_of(published).items() if not each["description"]] == []


@pytest.mark.parametrize("what", OUTPUTS)
def test_only_the_texts_of_a_library_may_have_keys_of_their_own(what: str) -> None:
    allowed = [
        each["additionalProperties"] for each in objects_of(printed("schema", what)).values()
    ]
    assert allowed == [what == "source-list"] * len(allowed)


@pytest.mark.parametrize("what", OUTPUTS)
def test_a_schema_says_from_where_it_counts(what: str) -> None:
    published = printed("schema", what)
    counted = [
        (f"{name}.{key}", inner.get("description", ""))
        for name, key, inner in described(published)
        if key in COUNTING_KEYS and counts(inner)
    ]
    number_of_signs = {"Level.signs", "ColumnSpace.signs", "MeasuredColumn.signs"}
    assert [
        path
        for path, said in counted
        if "from 0" not in said and "from 1" not in said and path not in number_of_signs
    ] == []
    from_zero = any("from 0" in said for _, said in counted)
    assert ("from 0" in published.get("description", "")) == from_zero


@pytest.mark.parametrize("what", sorted(COUNTS_SIGNS - {"dates", "collate-several"}))
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


def keys_printed(value: Any, inner: Any, objects: Objects, name: str) -> set[tuple[str, str]]:
    """Return the keys of a printed value, each with the name of the object it belongs to."""
    if "$ref" in inner:
        name = inner["$ref"].rpartition("/")[2]
        return keys_printed(value, objects[name], objects, name)
    if "anyOf" in inner:
        return set() if value is None else keys_printed(value, inner["anyOf"][0], objects, name)
    if isinstance(value, list):
        return {key for each in value for key in keys_printed(each, inner["items"], objects, name)}
    if not isinstance(value, dict):
        return set()
    known, other = inner.get("properties", {}), inner.get("additionalProperties")
    found = {(name, key) for key in known.keys() & value.keys()}
    for key, each in value.items():
        found |= keys_printed(each, known.get(key, other), objects, name)
    return found


WITH_A_WRITER = """id = "X"
kind = "kozuka"
measurements = { diameter = 70.0 }
[[inscription]]
place = "back plate"
text = "見渡せは花も紅葉もなかりけり／浦のとまやの秋の夕暮菰江書鯉沼穂足彫之"
"""
PRINTED = (
    ("read", "read", f"{EXAMPLES}/DEMO-004.toml"),
    ("read", "read", "--text", "春過て夏来にけらし白妙の衣ほすてふ天の香具山／露岳刻之"),
    ("read", "read", "--text", "嘉永六年甲寅行年七十三歳露岳"),
    ("read", "read", "--text", "甲寅仲秋國"),
    ("read", "read", "--text", "□花"),
    *(("collate", "collate", f"{EXAMPLES}/DEMO-00{number}.toml") for number in (1, 2, 3, 4)),
    ("collate", "collate", "--text", "應需造之", "需に応じて之を造る"),
    ("collate", "collate", "--text", "夢の浮橋露岳刻之", "夢の浮橋"),
    ("collate-several", "collate", "--text", "風の音に", "風の音にぞ", "風の声に"),
    ("date", "date", "甲寅"),
    ("date", "date", "天保三年 嘉永五年"),
    ("dates", "date", "嘉永六年行年七十", "甲寅 行年七十一"),
    ("merge", "merge", f"{EXAMPLES}/DEMO-010.toml", f"{EXAMPLES}/DEMO-008.toml"),
    *(("sign", "sign", sign) for sign in ("舩", "𛂥", "々", "処", "弁", "三", "裡")),
    ("name", "name", "露岳"),
    ("check", "check", str(EXAMPLES)),
    *(("entry", "entry", str(path)) for path in sorted(EXAMPLES.glob("DEMO-*.toml"))),
    ("restore", "restore", "--text", "武州住□国作"),
    ("concord", "concord", str(EXAMPLES), "--no-cache", "夢"),
    ("concord-clusters", "concord", str(EXAMPLES), "--no-cache", "--clusters"),
    ("concord-translations", "concord", str(EXAMPLES), "--no-cache", "--translations"),
    ("next", "next", str(EXAMPLES)),
    ("index", "index", str(EXAMPLES), "--no-cache"),
)
# Keys that other tests print: of searches in a library, of pictures, of collate --pairs.
ELSEWHERE = {"Hit", "SourceLikely", "MeasuredSign", "MeasuredColumn", "Plate", "measure"}
ELSEWHERE |= {"MayName", "MayNameShort"}  # of a list people.tsv
ELSEWHERE |= {"source-find", "source-list", "refused-line"}


def test_every_key_of_the_schemas_is_printed_by_some_example(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_text(WITH_A_WRITER, encoding="utf-8")
    several = WITH_A_WRITER + "".join(
        f'[[inscription.source]]\ntext = "{text}"\n' for text in ("見渡せば花も", "見渡せば月も")
    )
    (tmp_path / "several.toml").write_text(several, encoding="utf-8")
    seen: set[tuple[str, str]] = set()
    of_record = (
        ("concord", "concord", str(tmp_path), "--no-cache", "花"),
        ("entry", "entry", str(tmp_path / "x.toml")),
        ("entry", "entry", str(tmp_path / "several.toml")),
        ("import", "import", str(tmp_path / "x.csv"), "--map", str(tmp_path / "map")),
    )
    (tmp_path / "x.csv").write_text("No,Inscription\n1,武州[住]◯作\n,花\n", encoding="utf-8")
    CliRunner().invoke(cli, ["import", str(tmp_path / "x.csv"), "--map", str(tmp_path / "map")])
    for what, *arguments in (*PRINTED, *of_record):
        published = printed("schema", what)
        found = printed(*arguments, "--format", "json")
        assert_keeps(found, what)
        for each in found if isinstance(found, list) else [found]:
            seen |= keys_printed(each, published, objects_of(published), what)
    promised = {
        (name or what, key)
        for what in OUTPUTS
        for name, key, _ in described(printed("schema", what))
    }
    left = promised - seen - {("collate", "id")}
    assert {f"{name}.{key}" for name, key in left if name not in ELSEWHERE} == set()
