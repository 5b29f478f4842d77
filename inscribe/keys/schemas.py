"""JSON Schemas (draft 2020-12) made from the keys that results are typed with.

Every object names all its keys; those that are not always printed are not required. What is
counted in JSON is counted from 0, as programs do, where commands and records count from 1, as one
counts on the metal; the description of each such key says so.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import NoneType, UnionType
from typing import (
    Annotated,
    Any,
    Literal,
    NotRequired,
    Union,
    get_args,
    get_origin,
    get_type_hints,
    is_typeddict,
)

from inscribe.keys.base import Keyword
from inscribe.keys.checking import CheckKeys, WorkKeys
from inscribe.keys.collation import CollationAnswerKeys, SeveralCollationsKeys
from inscribe.keys.concordance import ClustersKeys, ConcordanceKeys
from inscribe.keys.dates import DateAnswerKeys, DatesKeys
from inscribe.keys.entry import EntryKeys
from inscribe.keys.forms import SignKeys
from inscribe.keys.importing import ImportKeys
from inscribe.keys.indexing import IndexesKeys, TranslationsKeys
from inscribe.keys.measuring import MeasuredKeys
from inscribe.keys.merging import MergeKeys
from inscribe.keys.reading import NameKeys, ReadingKeys
from inscribe.keys.restoring import RestorationKeys
from inscribe.keys.sources import HitsKeys, RefusedKeys, SourceTextKeys

Schema = dict[str, Any]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
COUNTING = (
    "Signs, columns and differences are counted from 0; command line, records and texts for people"
    " count from 1."
)
OUTPUTS: dict[str, type] = {
    "read": ReadingKeys,
    "collate": CollationAnswerKeys,
    "collate-several": SeveralCollationsKeys,
    "source-find": HitsKeys,
    "source-list": SourceTextKeys,
    "date": DateAnswerKeys,
    "dates": DatesKeys,
    "sign": SignKeys,
    "name": NameKeys,
    "check": CheckKeys,
    "next": WorkKeys,
    "import": ImportKeys,
    "index": IndexesKeys,
    "entry": EntryKeys,
    "restore": RestorationKeys,
    "measure": MeasuredKeys,
    "merge": MergeKeys,
    "concord": ConcordanceKeys,
    "concord-clusters": ClustersKeys,
    "concord-translations": TranslationsKeys,
    "refused-line": RefusedKeys,
}
COUNTS_SIGNS = frozenset(
    (
        "read",
        "collate",
        "collate-several",
        "date",
        "dates",
        "entry",
        "restore",
        "measure",
        "merge",
        "concord",
    )
)
_OPEN = (SourceTextKeys,)  # keeps whatever else the file said that it was read from
_PLAIN: dict[Any, Schema] = {
    str: {"type": "string"},
    bool: {"type": "boolean"},
    int: {"type": "integer"},
    float: {"type": "number"},
    NoneType: {"type": "null"},
    Any: {},
}


def schema_of(output: str) -> Schema:
    """Return the schema of one output, as named in ``OUTPUTS``.

    >>> schema = schema_of("name")
    >>> schema["$defs"]["NameReading"]["properties"]["kana"]
    {'type': 'string', 'description': 'in kana'}
    """
    keys = OUTPUTS[output]
    whole = _object(keys)
    about = f"{whole['description']} {COUNTING}" if output in COUNTS_SIGNS else whole["description"]
    used = {each for each in _used(keys) if each is not keys or _refers_to(keys, keys)}
    defs = {_name(each): _object(each) for each in sorted(used, key=_name)}
    return {
        "$schema": DIALECT,
        "$id": f"urn:inscribe:schema:{output}",
        "title": f"inscribe {output.replace('-', ' ')}",
        **whole,
        "description": about,
        **({"$defs": defs} if defs else {}),
    }


def _name(keys: type) -> str:
    return keys.__name__.removesuffix("Keys")


def _object(keys: type) -> Schema:
    """Return the schema of an object with just these keys."""
    hints = get_type_hints(keys, include_extras=True)
    properties = {key: _schema(hint) for key, hint in hints.items()}
    required = [key for key, hint in hints.items() if get_origin(hint) is not NotRequired]
    schema: Schema = {"type": "object", "description": _about(keys), "properties": properties}
    return {**schema, "required": required, "additionalProperties": keys in _OPEN}


def _about(keys: type) -> str:
    return " ".join((keys.__doc__ or "").split())


def _schema(hint: Any) -> Schema:
    """Return the schema of the values of one type."""
    origin, inner = get_origin(hint), get_args(hint)
    if origin is NotRequired:
        return _schema(inner[0])
    if origin is Annotated:
        return _annotated(*inner)
    if origin is Literal:
        return {"enum": list(inner)}
    if origin in (Union, UnionType):
        return {"anyOf": [_schema(each) for each in inner]}
    if origin is list:
        return {"type": "array", "items": _schema(inner[0])}
    if origin is dict:
        return {"type": "object", "additionalProperties": _schema(inner[1])}
    if is_typeddict(hint):
        return {"$ref": f"#/$defs/{_name(hint)}"}
    return dict(_PLAIN[hint])


def _annotated(hint: Any, *said: Any) -> Schema:
    """Return a schema with what is said of it; of ``X | None`` keywords belong to the X."""
    schema = _schema(hint)
    target = schema["anyOf"][0] if "anyOf" in schema else schema
    target |= {each.name: each.value for each in said if isinstance(each, Keyword)}
    texts = [each for each in said if isinstance(each, str)]
    return schema | ({"description": "; ".join(reversed(texts))} if texts else {})


def _used(keys: type) -> set[type]:
    """Return all objects inside an object, at any depth, and itself."""
    found, waiting = {keys}, [keys]
    while waiting:
        new = set(_inside(waiting.pop())) - found
        found |= new
        waiting += new
    return found


def _inside(keys: type) -> Iterator[type]:
    for hint in get_type_hints(keys).values():
        yield from _objects(hint)


def _objects(hint: Any) -> Iterator[type]:
    if is_typeddict(hint):
        yield hint
    for inner in get_args(hint):
        yield from _objects(inner)


def _refers_to(keys: type, other: type) -> bool:
    return other in {inner for each in _used(keys) for inner in _inside(each)}
