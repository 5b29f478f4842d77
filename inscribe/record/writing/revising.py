r"""A record's file made to say what a Record says: only what differs is touched.

Comments, order and layout stay. What comes out is read again, and nothing is handed back that
does not say exactly what was meant.

>>> from inscribe.record.reading import loads
>>> place = '[[inscription]]\nplace = "front"\ntext = "花"\n'
>>> text = 'id = "A-1"  # on the label\nkind = "tsuba"\n' + place
>>> print(revised(text, "A-1.toml", loads(text)._replace(title="Plum")), end="")
id = "A-1"  # on the label
kind = "tsuba"
title = "Plum"
[[inscription]]
place = "front"
text = "花"
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any

from inscribe.errors import InputError, Place, ProblemsError
from inscribe.record.fields import RECORD, Field, RecordTable, ValueRefused, checked
from inscribe.record.model import CopiedText, Record
from inscribe.record.reading import loads
from inscribe.record.writing.writer import literal, nothing

_COMMENT_OR_TEXT = re.compile(
    r"""#[^\n]*|'''.*?'''|\"{3}(?:\\.|[^\\])*?\"{3}|"(?:\\.|[^"\\\n])*"|'[^'\n]*'""", re.DOTALL
)
_HEAD = re.compile(r"\[\[?[a-z_.]+\]\]?")
_LAYOUT = "the record's layout cannot be amended"
_LAYOUT_HINT = "write [[inscription]] tables, and one key a line"


def revised(text: str, file: str, record: Record) -> str:
    """Return the text of a record's file, changed as little as makes it say ``record``.

    Raises:
        InputError: the file is laid out so that it cannot be amended, a comment would be lost, or
            what it is to say contradicts itself.
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        document = tomlkit.parse(text)
        _say(document, RECORD, record)
        changed = _with_room(tomlkit.dumps(document), text)
    except (TOMLKitError, ValueError, TypeError, AttributeError) as error:
        raise InputError(_LAYOUT, Place(file), _LAYOUT_HINT) from error
    _check(changed, file, record)
    _check_comments(changed, text, file)
    return changed


def _say(container: Any, table: RecordTable, value: Any) -> None:
    """Make one table of the document say a value of the model."""
    for field in table.fields:
        if field.table is None:
            _say_key(container, field, value)
        elif field.holds == "tables":
            _say_tables(container, field, field.table, getattr(value, field.name))
        elif field.holds == "sources":
            _say_sources(container, field, field.table, value.sources)
        else:
            _say_table(container, field, field.table, getattr(value, field.name))


def _say_key(container: Any, field: Field, value: Any) -> None:
    if isinstance(value, CopiedText) and value.file and field.key == "text":
        return  # the words stand in a file of their own
    wanted = literal(field, value)
    if field.key not in container:
        if wanted is not None:
            container[field.key] = _item(wanted)
    elif not _says(container[field.key], field, value):
        if wanted is None:
            container.remove(field.key)
        else:
            container[field.key] = _item(_in_style_of(container[field.key], wanted))


def _item(written: str) -> Any:
    import tomlkit

    return tomlkit.value(written)


def _in_style_of(before: Any, wanted: str) -> str:
    """Return a text of several lines between the quotation marks that stood there before."""
    raw = before.as_string() if hasattr(before, "as_string") else ""
    inside = wanted[3:-3]
    plain = wanted.startswith("'''") and not set(inside) & set('"\\')
    return f'"""{inside}"""' if raw.startswith('"""') and plain else wanted


def _says(item: Any, field: Field, value: Any) -> bool:
    """Whether what stands in the document is what the model has."""
    try:
        held = checked(field, item.unwrap() if hasattr(item, "unwrap") else item)
    except ValueRefused:
        return False
    if field.holds == "version":
        return True  # it stays as it is written
    if field.holds == "signs":
        return bool(held == (value.first, value.last))
    return bool(held == getattr(value, field.name))


def _say_table(container: Any, field: Field, table: RecordTable, value: Any) -> None:
    import tomlkit

    if value is None or value == nothing(table):
        if value is None and field.key in container:
            container.remove(field.key)
        elif field.key in container:
            _say(container[field.key], table, value)
        return
    if field.key not in container:
        container[field.key] = tomlkit.table()
    _say(container[field.key], table, value)


def _say_tables(container: Any, field: Field, table: RecordTable, values: Sequence[Any]) -> None:
    """Change, insert and remove tables of a list so that those left alone stay where they are."""
    import tomlkit

    if field.key not in container:
        if not values:
            return
        container[field.key] = tomlkit.aot()
    held = container[field.key]
    same_before = _alike(held, table, values)
    same_after = min(
        _alike([*reversed(held)], table, [*reversed(values)]),
        len(held) - same_before,
        len(values) - same_before,
    )
    changed = len(held) - same_before - same_after
    wanted = values[same_before : len(values) - same_after]
    for place, value in enumerate(wanted[:changed], start=same_before):
        _say(held[place], table, value)
    for _ in range(changed - len(wanted)):
        del held[same_before + len(wanted)]
    for place, value in enumerate(wanted[changed:], start=same_before + changed):
        held.insert(place, _new(held, table, value))
    if not values:
        container.remove(field.key)


def _say_sources(container: Any, field: Field, table: RecordTable, values: Sequence[Any]) -> None:
    """Say one source as a table, several as a list of which what stood there is the first."""
    import tomlkit

    held = container.get(field.key)
    if isinstance(held, list) or (held is None and len(values) > 1):
        _say_tables(container, field, table, values)
    elif len(values) < 2:
        _say_table(container, field, table, values[0] if values else None)
    else:
        container.remove(field.key)
        container[field.key] = tomlkit.aot()
        container[field.key].append(held)
        _say_tables(container, field, table, values)


def _new(held: Any, table: RecordTable, value: Any) -> Any:
    """Return a new table of the kind that the list is made of."""
    import tomlkit
    from tomlkit.items import AoT

    made = tomlkit.table() if isinstance(held, AoT) else tomlkit.inline_table()
    _say(made, table, value)
    if isinstance(held, AoT):
        made.trivia.indent = ""
    return made


def _alike(held: Sequence[Any], table: RecordTable, values: Sequence[Any]) -> int:
    """Return how many tables at the beginning of a list say what the values say."""
    count = 0
    for one, value in zip(held, values, strict=False):
        if not _all_said(one, table, value):
            break
        count += 1
    return count


def _all_said(one: Any, table: RecordTable, value: Any) -> bool:
    for field in table.fields:
        if field.table is not None:
            inner = value.sources if field.holds == "sources" else getattr(value, field.name)
            if field.holds in ("tables", "sources"):
                held = one.get(field.key, [])
                held = held if isinstance(held, list) else [held]
                if len(held) != len(inner) or _alike(held, field.table, inner) != len(inner):
                    return False
            elif inner is not None and inner != nothing(field.table):
                if field.key not in one or not _all_said(one[field.key], field.table, inner):
                    return False
            elif field.key in one and inner is None:
                return False
        elif isinstance(value, CopiedText) and value.file and field.key == "text":
            continue
        elif field.key in one:
            if not _says(one[field.key], field, value):
                return False
        elif literal(field, value) is not None:
            return False
    return True


def _with_room(changed: str, text: str) -> str:
    """Return the changed text with an empty line before each new table, where others have one."""
    lines = text.splitlines()
    heads = [line for before, line in pairwise(lines) if _HEAD.fullmatch(line) and not before]
    if not heads:
        return changed
    known = set(pairwise(lines))
    made: list[str] = []
    for line in changed.split("\n"):
        before = made[-1] if made else ""
        if _HEAD.fullmatch(line) and before.strip() and (before, line) not in known:
            made += [] if before.startswith("#") else [""]
        made.append(line)
    return "\n".join(made)


def _check(changed: str, file: str, record: Record) -> None:
    """Raise unless the changed text says what was meant."""
    try:
        said = loads(changed, file, Path(file).parent)
    except ProblemsError as problems:
        first = problems.errors[0]
        raise InputError(
            f"what is to be written contradicts the record: {first.message}",
            Place(file),
            first.hint,
        ) from problems
    if said != record:
        raise InputError(_LAYOUT, Place(file), _LAYOUT_HINT)


def _check_comments(changed: str, text: str, file: str) -> None:
    """Raise where a comment stood within what was replaced, and would be lost."""
    kept = Counter(said for _, said in _comments(changed))
    for line, said in _comments(text):
        kept[said] -= 1
        if kept[said] < 0:
            raise InputError(
                "the comment would be lost with what it stands among",
                Place(file, line),
                "move it above the inscription",
            )


def _comments(text: str) -> Iterator[tuple[int, str]]:
    """Yield line and words of each comment; # within a text is none."""
    for found in _COMMENT_OR_TEXT.finditer(text):
        if found[0].startswith("#"):
            yield text.count("\n", 0, found.start()) + 1, found[0].strip()
