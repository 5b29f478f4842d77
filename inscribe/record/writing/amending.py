"""Amending a record's file: what was measured is put in, and all else stays, comments too.

The text is changed by a library that keeps its layout; what comes out is read again, and nothing
is handed back that does not say exactly what was meant.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from inscribe.errors import InputError, Place, ProblemsError
from inscribe.record.fields import BOX, COLUMN, PHOTOGRAPH, PLATE, Field, RecordTable
from inscribe.record.model import Inscription, Photograph, Record
from inscribe.record.reading import loads

KEYS = {"plate": PLATE, "column": COLUMN, "box": BOX}


def with_measurements(
    text: str, file: str, place: int, measured: Inscription, photograph: Photograph
) -> str:
    """Return a record's text with plate, columns, boxes and photograph of one inscription.

    Args:
        text: the record's file.
        file: its name, for messages.
        place: the inscription, from 0.
        measured: the inscription with what was measured.
        photograph: where that comes from; one of the same picture and face is replaced.

    Raises:
        InputError: the file is laid out so that it cannot be amended.
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    before = loads(text, file, Path(file).parent)
    try:
        document: Any = tomlkit.parse(text)
        table = document["inscription"][place]
        for key, described in KEYS.items():
            value = getattr(measured, _attribute(key))
            if value == getattr(before.inscriptions[place], _attribute(key)):
                continue
            table.pop(key, None)
            if value:
                make = _inline if key == "plate" else _listed
                table[key] = make(described, value)
        _add_photograph(table, photograph)
        amended = tomlkit.dumps(document)
    except (TOMLKitError, ValueError, TypeError, AttributeError) as error:
        raise InputError(
            "the record's layout cannot be amended", Place(file), "write [[inscription]] tables"
        ) from error
    _check(amended, before, file, place, measured, photograph)
    _check_comments(amended, text, file)
    return str(amended)


def _attribute(key: str) -> str:
    return {"column": "columns", "box": "boxes"}.get(key, key)


def _held(field: Field, value: Any) -> Any:
    """Return a value as the file has it, or None where it says nothing."""
    held = getattr(value, field.name)
    if field.holds == "sign" and held is not None:
        return held + 1
    if isinstance(held, tuple):
        return list(held)
    return None if held == "" else held


def _inline(table: RecordTable, value: Any) -> Any:
    import tomlkit

    made = tomlkit.inline_table()
    for field in table.fields:
        held = _held(field, value)
        if held is not None:
            made[field.key] = held
    return made


def _listed(table: RecordTable, values: Sequence[Any]) -> Any:
    """Return a list of inline tables, each on a line of its own."""
    import tomlkit

    made = tomlkit.array()
    for value in values:
        made.append(_inline(table, value))
    made.multiline(True)
    return made


def _add_photograph(table: Any, photograph: Photograph) -> None:
    import tomlkit

    made = tomlkit.table()
    for field in PHOTOGRAPH.fields:
        held = _held(field, photograph)
        if held is not None and held != []:
            made[field.key] = held
    others = [
        other
        for other in table.get("photograph", [])
        if (other.get("picture"), other.get("face")) != (made.get("picture"), made.get("face"))
    ]
    table.pop("photograph", None)
    listed = tomlkit.aot()
    for other in [*others, made]:
        listed.append(other)
    table["photograph"] = listed


def _check(
    amended: str,
    before: Record,
    file: str,
    place: int,
    measured: Inscription,
    photograph: Photograph,
) -> None:
    """Raise unless the amended text says what was meant, and nothing else has changed."""
    try:
        after = loads(amended, file, Path(file).parent)
    except ProblemsError as problems:
        raise InputError(
            f"what was measured contradicts the record: {problems.errors[0].message}",
            Place(file),
            problems.errors[0].hint,
        ) from problems
    found = after.inscriptions[place]
    same = _without(before, place) == _without(after, place)
    kept = found.plate == measured.plate and photograph in found.photographs
    if not (same and kept and _alike(found, measured)):
        raise InputError(
            "the record's layout cannot be amended", Place(file), "write [[inscription]] tables"
        )


def _check_comments(amended: str, text: str, file: str) -> None:
    """Raise where a comment stood within what was replaced, and would be lost."""
    kept = {line.strip() for line in amended.splitlines()}
    for number, line in enumerate(text.splitlines(), start=1):
        if line.lstrip().startswith("#") and line.strip() not in kept:
            raise InputError(
                "the comment would be lost with the measurements it stands among",
                Place(file, number),
                "move it above the inscription",
            )


def _without(record: Record, place: int) -> Record:
    """Return a record without what is measured of one inscription."""
    bare = replace(record.inscriptions[place], plate=None, columns=(), boxes=(), photographs=())
    inscriptions = (*record.inscriptions[:place], bare, *record.inscriptions[place + 1 :])
    return record._replace(inscriptions=inscriptions)


def _alike(one: Inscription, other: Inscription) -> bool:
    numbers = [
        [value for row in (*each.columns, *each.boxes) for value in row] for each in (one, other)
    ]
    return len(numbers[0]) == len(numbers[1]) and all(
        a == b or (a is not None and b is not None and math.isclose(a, b))
        for a, b in zip(*numbers, strict=True)
    )
