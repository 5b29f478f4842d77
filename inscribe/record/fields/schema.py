"""The JSON Schema of records, made from the same description the loader reads."""

from __future__ import annotations

from typing import Any

from inscribe.record.fields.describing import (
    FIRST_YEAR,
    LAST_YEAR,
    MAX_CELLS,
    MAX_LINE,
    MAX_MM,
    MAX_PIXELS,
    MAX_TEXT,
    PIXELS,
    VERSION,
    Field,
    RecordTable,
)
from inscribe.record.fields.keys import RECORD
from inscribe.record.fields.vocabulary import suggested

DIALECT = "https://json-schema.org/draft/2020-12/schema"
# As in values.py, without lone surrogates, which JSON cannot hold.
_CONTROLS = (
    "\\u0000-\\u0008\\u000b-\\u001f\\u007f-\\u009f\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069"
    "\\ufdd0-\\ufdef\\ufffe\\uffff"
)

Schema = dict[str, Any]


def record_schema() -> Schema:
    """Return the JSON Schema (draft 2020-12) that a record, read from TOML, keeps.

    The schema says what single values may be; what they must say together (a column inside its
    plate, an override within the text) only the loader knows.

    >>> record_schema()["required"]
    ['id', 'kind', 'inscription']
    """
    return {
        "$schema": DIALECT,
        "$id": "urn:inscribe:schema:record",
        "title": "inscribe record",
        **_table(RECORD),
        "$defs": {"line": _string(MAX_LINE, "\\n"), "text": _string(MAX_TEXT)},
    }


def _table(table: RecordTable) -> Schema:
    schema: Schema = {
        "type": "object",
        "description": table.about,
        "properties": {field.key: _field(field) for field in table.fields},
        "additionalProperties": False,
    }
    if required := [field.key for field in table.fields if field.required]:
        schema["required"] = required
    return schema


def _field(field: Field) -> Schema:
    if field.table is None:
        return {"description": field.about, **_value(field)}
    inner = _table(field.table)
    if field.holds == "table":
        return inner
    if field.holds == "sources":
        several: Schema = {"type": "array", "items": inner, "minItems": 1}
        return {"description": field.about, "anyOf": [inner, several]}
    schema: Schema = {"type": "array", "items": inner}
    return schema | ({"minItems": 1} if field.required else {})


def _value(field: Field) -> Schema:
    match field.holds:
        case "line" | "text":
            return _text(field)
        case "size":
            return {"type": "number", "exclusiveMinimum": 0, "maximum": MAX_MM}
        case "offset":
            return {"type": "number", "minimum": 0, "maximum": MAX_MM}
        case "sign" | "column":
            return _sign()
        case "signs":
            return {"type": "array", "items": _sign(), "minItems": 2, "maxItems": 2}
        case "share":
            return {"type": "number", "minimum": -1, "maximum": 1}
        case "corners" | "crop" | "point":
            number = {"type": "number", "minimum": -MAX_PIXELS, "maximum": MAX_PIXELS}
            count = PIXELS[field.holds]
            return {"type": "array", "items": number, "minItems": count, "maxItems": count}
        case "cells":
            text = {"$ref": "#/$defs/text"}
            pair = {"type": "array", "items": text, "minItems": 2, "maxItems": 2}
            return {"type": "array", "items": pair, "maxItems": MAX_CELLS}
        case "version":
            return {"const": VERSION, "default": VERSION}
        case "year":
            return {"type": "integer", "minimum": FIRST_YEAR, "maximum": LAST_YEAR}
        case _:
            return {"type": "string", "format": "date"}


def _sign() -> Schema:
    return {"type": "integer", "minimum": 1, "maximum": MAX_TEXT}


def _text(field: Field) -> Schema:
    if field.choices:
        default = {"default": field.choices[0]} if field.defaults else {}
        return {"enum": list(field.choices), **default}
    schema: Schema = {"$ref": f"#/$defs/{field.holds}"}
    if field.required:
        schema["pattern"] = "\\S"
    if words := suggested(field.vocabulary):
        schema["examples"] = [word.word for word in words]
    return schema


def _string(limit: int, excluded: str = "") -> Schema:
    pattern = f"^(?![\\s\\S]*[{_CONTROLS}{excluded}])"
    return {"type": "string", "maxLength": limit, "pattern": pattern}
