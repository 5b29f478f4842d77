"""The schema and the loader, fed from one description, agree value by value."""

from __future__ import annotations

import datetime
import json
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from hypothesis import given, strategies as st
from jsonschema import Draft202012Validator

from inscribe.cli import cli
from inscribe.errors import ProblemsError
from inscribe.record import fields, loads
from inscribe.record.fields.describing import Field, RecordTable
from inscribe.record.fields.schema import record_schema
from inscribe.record.fields.values import ValueRefused, checked

SCHEMA = record_schema()
EXAMPLES = sorted((Path(__file__).parent.parent / "examples").glob("*.toml"))
VALIDATOR = Draft202012Validator(SCHEMA, format_checker=Draft202012Validator.FORMAT_CHECKER)


def _tables(table: RecordTable, schema: Any) -> Iterator[tuple[RecordTable, Any]]:
    yield table, schema
    for field in table.fields:
        if field.table is not None:
            inner = schema["properties"][field.key]
            inner = inner.get("anyOf", [inner])[0]  # one source, or several
            yield from _tables(field.table, inner.get("items", inner))


TABLES = list(_tables(fields.RECORD, SCHEMA))
VALUES = [(f, s["properties"][f.key]) for t, s in TABLES for f in t.fields if f.table is None]

anything = st.one_of(
    st.text(st.sampled_from(list("花a\n\x00\x1b\u202e\ufffe 's𛂥\ufdd0\r\u2028")), max_size=5),
    st.sampled_from(
        ["", " ", "japanese", "verse", "word", "2026-01-31", "2026-02-30", "20260131", "x" * 1001]
    ),
    st.integers(-5, 2300),
    st.sampled_from([10**400, -1, 0, 200_000, 200_001]),
    st.floats(-5, 1100),
    st.booleans(),
    st.lists(st.integers(-1, 9), max_size=3),
    st.lists(st.lists(st.sampled_from(["花", "\x1b", 3]), max_size=3), max_size=2),
    st.just({}),
)


def _accepted(field: Field, value: Any) -> bool:
    try:
        checked(field, value)
    except ValueRefused:
        return False
    return True


def _can_be_compared(field: Field, value: Any) -> bool:
    """JSON takes 3.0 for a whole number; no schema can say that the last sign follows the first."""
    if field.holds in ("year", "sign", "column"):
        return not isinstance(value, float)
    if field.holds != "signs" or not isinstance(value, list):
        return True
    return not all(isinstance(each, int) for each in value) or value == sorted(value)


@pytest.mark.parametrize(("field", "schema"), VALUES, ids=lambda x: getattr(x, "key", ""))
@given(value=anything)
def test_schema_and_loader_agree_on_values(field: Field, schema: Any, value: Any) -> None:
    if _can_be_compared(field, value):
        full = {**schema, "$defs": SCHEMA["$defs"]}
        valid = Draft202012Validator(
            full, format_checker=Draft202012Validator.FORMAT_CHECKER
        ).is_valid(value)
        assert _accepted(field, value) == valid


def test_days_of_toml_are_days_of_json() -> None:
    for on in (f for f, _ in VALUES if f.holds == "date"):
        assert checked(on, "2026-01-31") == checked(on, datetime.date(2026, 1, 31))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_keeps_the_schema(path: Path) -> None:
    data = json.loads(json.dumps(tomllib.loads(path.read_text("utf-8")), default=str))
    assert list(VALIDATOR.iter_errors(data)) == []


@pytest.mark.parametrize(("table", "schema"), TABLES, ids=lambda x: getattr(x, "name", ""))
def test_tables_agree_on_keys(table: RecordTable, schema: Any) -> None:
    assert list(schema["properties"]) == [field.key for field in table.fields]
    assert schema.get("required", []) == [f.key for f in table.fields if f.required]
    assert schema["additionalProperties"] is False


MINIMAL: dict[str, Any] = {
    "id": "X",
    "kind": "tsuba",
    "inscription": [{"place": "front", "text": "花"}],
}


@pytest.mark.parametrize(
    "change", [{"id": None}, {"inscription": []}, {"inscription": {}}, {"x": 1}]
)
def test_what_the_loader_refuses_the_schema_refuses(change: dict[str, Any]) -> None:
    data = {key: value for key, value in {**MINIMAL, **change}.items() if value is not None}
    assert VALIDATOR.is_valid(MINIMAL)
    assert not VALIDATOR.is_valid(data)
    lines = [f"{key} = {json.dumps(data[key])}" for key in data if key != "inscription"]
    if data["inscription"] == MINIMAL["inscription"]:
        lines += ["[[inscription]]", "place = 'front'", "text = '花'"]
    else:
        lines += [f"inscription = {json.dumps(data['inscription'])}"]
    with pytest.raises(ProblemsError):
        loads("\n".join(lines))


def test_the_command_prints_the_schema() -> None:
    result = CliRunner().invoke(cli, ["schema"])
    assert result.exit_code == 0
    assert json.loads(result.output) == SCHEMA
