"""A Record to the text of its file: ``loads(dump(record)) == record``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Any

from inscribe.record.fields import RECORD, Field, RecordTable
from inscribe.record.model import CopiedText, Record

_ESCAPED = r'[\x00-\x1f"\\\x7f]'
_SHORT = {"\n": r"\n", '"': r"\"", "\\": r"\\"}


def dump(record: Record) -> str:
    r"""Return the TOML text of ``record``; keys that say nothing are left out.

    >>> from inscribe.record.model import Inscription
    >>> found = Inscription("tenjo-gane", "花の\n色は")
    >>> print(dump(Record("DEMO-000", "fuchi", (found,))), end="")
    id = "DEMO-000"
    kind = "fuchi"
    <BLANKLINE>
    [[inscription]]
    place = "tenjo-gane"
    text = '''
    花の
    色は
    '''
    """
    return "\n".join(_table_lines(RECORD, record, "")) + "\n"


def _table_lines(table: RecordTable, value: Any, header: str) -> Iterator[str]:
    own = [field for field in table.fields if field.table is None]
    for field in own:
        held = literal(field, value)
        if held is not None:
            yield f"{field.key} = {held}"
    for field in table.fields:
        if field.table is None:
            continue
        path = f"{header}.{field.key}" if header else field.key
        inner = value.sources if field.holds == "sources" else getattr(value, field.name)
        if field.holds == "sources" and len(inner) < 2:
            inner = inner[0] if inner else None
        if isinstance(inner, tuple) and field.holds in ("tables", "sources"):
            for item in inner:
                yield from ("", f"[[{path}]]")
                yield from _table_lines(field.table, item, path)
        elif inner is not None and inner != nothing(field.table):
            yield from ("", f"[{path}]")
            yield from _table_lines(field.table, inner, path)


def nothing(table: RecordTable) -> Any:
    """Return what the table says when it says nothing; None where it must say something."""
    if any(field.required for field in table.fields):
        return None
    return table.make()


def literal(field: Field, value: Any) -> str | None:
    """Return what stands behind a key, as TOML writes it; None where the key says nothing."""
    if field.holds == "version":
        return None  # a record is written in the keys that this program knows
    if field.holds == "signs":
        return f"[{value.first + 1}, {value.last + 1}]"
    if isinstance(value, CopiedText) and value.file and field.key == "text":
        return None
    held = getattr(value, field.name)
    if held is None or held in ("", ()) or _is_default(field, held):
        return None
    if isinstance(held, str):
        return _quoted(held)
    if field.holds == "cells":
        return "".join(
            ["[\n", *(f"  [{basic_string(h)}, {basic_string(c)}],\n" for h, c in held), "]"]
        )
    if isinstance(held, tuple):
        return f"[{', '.join(map(str, held))}]"
    if isinstance(held, date):
        return held.isoformat()
    return str(held + 1 if field.holds in ("sign", "column") else held)


def _is_default(field: Field, held: Any) -> bool:
    return bool(field.choices) and field.defaults and bool(held == field.choices[0])


def basic_string(text: str) -> str:
    """Return a text as TOML has it on one line."""
    return f'"{re.sub(_ESCAPED, _escape, text)}"'


def _quoted(text: str) -> str:
    if "\n" not in text:
        return basic_string(text)
    if "'''" in text:
        lines = "\n".join(re.sub(_ESCAPED, _escape, line) for line in text.split("\n"))
        return f'"""\n{lines}\n"""'
    return f"'''\n{text}\n'''"


def _escape(match: re.Match[str]) -> str:
    return _SHORT.get(match[0]) or f"\\u{ord(match[0]):04x}"
