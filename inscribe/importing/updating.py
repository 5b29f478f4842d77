"""What changed in the list since the last import, brought into its records.

The record keeps the row as it stood (``[imported]``). A key of which the list says the same as then
is left alone. One of which it says something else is changed where the record still says what the
list said then; where a person changed it, that person's word stays, and it is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, NamedTuple

from inscribe.importing.building import RowSays, Value
from inscribe.importing.mapping import TARGETS, inscription_of, plain_key
from inscribe.record import CopiedText, Inscription, Maker, Reader, Record

_MADE = {"maker": Maker}


class Updated(NamedTuple):
    """A record as it is to be: the keys that were changed, and what a person's word kept."""

    record: Record
    changed: tuple[str, ...]
    told: tuple[str, ...]


def updated(record: Record, then: RowSays, now: RowSays) -> Updated:
    """Return a record with what the list says now and did not say then.

    Args:
        record: the record as it stands.
        then: what the row said when it was last imported.
        now: what it says today.
    """
    changed, told = [], []
    for key in dict.fromkeys((*then.values, *now.values)):
        before, after = then.values.get(key), now.values.get(key)
        if before == after:
            continue
        stands = value_of(record, key)
        if stands == after:
            continue
        if stands != before and not (stands is None and before is None):
            told.append(
                f"{key}: the list now says {_shown(after)}, a person changed the record from "
                f"{_shown(before)} to {_shown(stands)}; the record's word stays"
            )
            continue
        made = with_value(record, key, after)
        if made is None:
            told.append(
                f"{key}: the list now says {_shown(after)}, which the record has no place for"
            )
        else:
            record = made
            changed.append(key)
    return Updated(record, tuple(changed), tuple(told))


def _shown(value: Value | None) -> str:
    said = "nothing" if value is None else f"“{value}”"
    return said if len(said) <= 60 else f"{said[:59]}…"


def value_of(record: Record, key: str) -> Value | None:
    """Return what a record says under a key of a mapping; None where it says nothing.

    >>> record = Record("A", "tsuba", (Inscription("front", "花"),))
    >>> value_of(record, "inscription.text"), value_of(record, "inscription 2.text")
    ('花', None)
    """
    held: Any = record
    number = inscription_of(key)
    parts = key.split(".")
    if number is not None:
        if number >= len(record.inscriptions):
            return None
        held, parts = record.inscriptions[number], parts[1:]
    for part in parts[:-1]:
        held = _inner(held, part)
        if held is None:
            return None
    value: Value | None = getattr(held, TARGETS[plain_key(key)].name)
    return None if value == "" else value


def _inner(held: Any, part: str) -> Any:
    if part == "reading":
        return held.readers[0] if held.readers else None
    return getattr(held, part)


def with_value(record: Record, key: str, value: Value | None) -> Record | None:
    """Return a record that says something else under a key; None where it has no place for it."""
    number = inscription_of(key)
    name = TARGETS[plain_key(key)].name
    parts = key.split(".")
    if number is None:
        return _with_record_value(record, parts, name, value)
    if number >= len(record.inscriptions):
        return None
    made = _with_inscription_value(record.inscriptions[number], parts[1:], name, value)
    if made is None:
        return None
    held: Sequence[Inscription] = record.inscriptions
    return record._replace(inscriptions=(*held[:number], made, *held[number + 1 :]))


def _with_record_value(
    record: Record, parts: Sequence[str], name: str, value: Value | None
) -> Record | None:
    field = TARGETS[".".join(parts)]
    if len(parts) == 1:
        if field.required and value is None:
            return None
        return record._replace(**{name: _or_nothing(value, field.holds)})
    inner = getattr(record, parts[0]) or _MADE[parts[0]]()
    changed: dict[str, Any] = {parts[0]: inner._replace(**{name: _or_nothing(value, field.holds)})}
    return record._replace(**changed)


def _with_inscription_value(
    held: Inscription, parts: Sequence[str], name: str, value: Value | None
) -> Inscription | None:
    field = TARGETS[".".join(("inscription", *parts))]
    said = _or_nothing(value, field.holds)
    if parts[0] == "reading":
        if not held.readers or (field.required and value is None):
            return None
        first: Reader = held.readers[0]._replace(**{name: said})
        return replace(held, readers=(first, *held.readers[1:]))
    if parts[0] == "source":
        source = replace(held.source or CopiedText(), **{name: said})
        return replace(held, source=source) if source.text or source.id else None
    if field.required and value is None:
        return None
    return replace(held, **{name: said})


def _or_nothing(value: Value | None, holds: str) -> Any:
    if value is None:
        return "" if holds in ("line", "text") else None
    return value
