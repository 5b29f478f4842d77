r"""Which column of a list becomes which key of a record: a TOML file that is proposed and reused.

>>> mapping = loads_mapping('[columns]\n"Nr." = "id"\n"銘" = "inscription.text"\n')
>>> mapping.columns["銘"]
MappedTo(key='inscription.text', unit='')
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from inscribe import files
from inscribe.errors import InputError, Place, did_you_mean
from inscribe.importing.cells import UNITS
from inscribe.record import RECORD, Field, RecordTable

HELD = frozenset(("line", "text", "size", "year", "date"))
MEASURES = "measurements"  # a column of several sizes: 97 x 14.2 mm
INSCRIPTION = "inscription"
_TABLES = ("measurements", "maker", INSCRIPTION, "source", "reading")
_SETTINGS = ("encoding", "separator", "heading_row", "sheet")


def _targets(table: RecordTable, path: str = "") -> Iterator[tuple[str, Field]]:
    for field in table.fields:
        name = f"{path}.{field.key}" if path else field.key
        if field.holds in HELD:
            yield name, field
        elif field.table and field.key in (
            "measurements",
            "maker",
            INSCRIPTION,
            "source",
            "reading",
        ):
            yield from _targets(field.table, name)


TARGETS: dict[str, Field] = dict(_targets(RECORD))


class MappedTo(NamedTuple):
    """The key that a column becomes (empty: it is only kept with the row), and its unit."""

    key: str
    unit: str = ""


class ListMapping(NamedTuple):
    """How the rows of a list become records.

    ``columns`` gives the key of each heading; ``always`` what holds where the list says nothing;
    ``words`` for a key what its words in the list are in records. The others say how the list is
    read, where that is not to be found out.
    """

    columns: Mapping[str, MappedTo]
    always: Mapping[str, str] = {}
    words: Mapping[str, Mapping[str, str]] = {}
    encoding: str = ""
    separator: str = ""
    heading_row: int = 0
    sheet: str = ""

    def headings_of(self, key: str) -> list[str]:
        """Return the headings whose columns become a key."""
        return [heading for heading, to in self.columns.items() if to.key == key]


def plain_key(key: str) -> str:
    """Return a key without the number of its inscription.

    >>> plain_key("inscription 2.text"), plain_key("title")
    ('inscription.text', 'title')
    """
    head, dot, rest = key.partition(".")
    return f"{head.split(' ')[0]}{dot}{rest}"


def inscription_of(key: str) -> int | None:
    """Return the number of the inscription that a key belongs to, from 0; None for the object."""
    head, _, _ = key.partition(".")
    name, _, number = head.partition(" ")
    if name != INSCRIPTION:
        return None
    return int(number) - 1 if number else 0


def is_target(key: str) -> bool:
    """Whether a column may become this key."""
    head, _, number = key.partition(".")[0].partition(" ")
    if number and (head != INSCRIPTION or not number.isdigit() or not 0 < int(number) < 100):
        return False
    return key in ("", MEASURES) or plain_key(key) in TARGETS


def load_mapping(path: Path) -> ListMapping:
    """Return the mapping in a file.

    Raises:
        InputError: it cannot be read, or says what no mapping says.
    """
    return loads_mapping(files.read_text(path), str(path))


def loads_mapping(text: str, name: str = "") -> ListMapping:
    """Return the mapping that a TOML text says.

    Raises:
        InputError: it says what no mapping says.
    """
    try:
        data = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as error:
        raise InputError(f"the mapping is not TOML ({error})", Place(name), "correct it") from None
    if unknown := data.keys() - {"list", "columns", "always", "words", *_SETTINGS}:
        known = f"known are columns, always, words, {', '.join(_SETTINGS)}"
        raise InputError(f"a mapping has no {sorted(unknown)[0]}", Place(name), known)
    columns = {
        heading: _to(value, heading, name) for heading, value in _table(data, "columns", name)
    }
    if not columns:
        raise InputError("the mapping names no column", Place(name), "write [columns]")
    always = {key: str(value) for key, value in _table(data, "always", name)}
    for key in always:
        if not key or not is_target(key):
            raise _no_key(key, name)
    words = {
        key: {str(word): str(meant) for word, meant in value.items()}
        for key, value in _table(data, "words", name)
        if isinstance(value, dict)
    }
    return ListMapping(columns, always, words, **_settings(data, name))


def _settings(data: Mapping[str, Any], name: str) -> dict[str, Any]:
    found = {key: data[key] for key in _SETTINGS if key in data}
    for key, value in found.items():
        wanted = int if key == "heading_row" else str
        if not isinstance(value, wanted) or isinstance(value, bool):
            raise InputError(f"{key} is not {_KINDS[wanted]}", Place(name), "correct it")
    return found


_KINDS = {int: "a number", str: "a text"}


def _table(data: Mapping[str, Any], key: str, name: str) -> list[tuple[str, Any]]:
    found = data.get(key, {})
    if not isinstance(found, dict):
        raise InputError(f"{key} is no table", Place(name), f"write [{key}] above its lines")
    return list(found.items())


def _to(value: Any, heading: str, name: str) -> MappedTo:
    if not isinstance(value, str):
        raise InputError(
            f"the column {heading} is given no key", Place(name), '"" keeps it as it is'
        )
    words = value.split()
    unit = words.pop() if len(words) > 1 and words[-1] in UNITS else ""
    key = " ".join(words)
    if not is_target(key):
        raise _no_key(key, name)
    return MappedTo(key, unit)


def _no_key(key: str, name: str) -> InputError:
    hint = did_you_mean(plain_key(key), TARGETS) or "see: inscribe import --keys"
    return InputError(f"a column cannot become {key or 'nothing'}", Place(name), hint)


def mapping_as_toml(mapping: ListMapping, list_name: str) -> str:
    """Return the text of a mapping's file."""
    lines = [
        f"# How the columns of {list_name} become records.",
        "# Put it right, look at the first rows with",
        "#   inscribe import LIST --map THIS_FILE",
        "# and import with",
        "#   inscribe import LIST --map THIS_FILE --to FOLDER",
        '# "" makes no key of a column; it is kept with the row, as every cell is.',
        "# The keys are told by: inscribe import --keys",
    ]
    for key in _SETTINGS:
        if value := getattr(mapping, key):
            lines.append(f"{key} = {_quoted(value) if isinstance(value, str) else value}")
    lines += ["", "[columns]"]
    for heading, to in mapping.columns.items():
        lines.append(f"{_quoted(heading)} = {_quoted(f'{to.key} {to.unit}'.strip())}")
    if mapping.always:
        lines += ["", "# what holds where the list says nothing", "[always]"]
        lines += [f"{_quoted(key)} = {_quoted(value)}" for key, value in mapping.always.items()]
    for key, words in mapping.words.items():
        lines += ["", '# what the words of the list are in records; "" leaves a word as it is']
        lines.append(f"[words.{_quoted(key)}]")
        lines += [f"{_quoted(word)} = {_quoted(meant)}" for word, meant in words.items()]
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    from inscribe.record import basic_string

    return basic_string(text)
