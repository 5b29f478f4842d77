"""Source texts out of files: plain text, TOML, CSV and TSV, JSON Lines, TEI.

Fields named id, text, title, provenance and licence fill those of the text; all others are kept
beside it. A text without an id gets the file's name with its number (a field ``number``, else its
line). In TOML, texts are an array of tables ``[[text]]``.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from inscribe import files, strict
from inscribe.errors import InputError, Place
from inscribe.record import ENDLESS_KEY
from inscribe.settings import FILE as SETTINGS
from inscribe.sources.tei import tei_texts
from inscribe.sources.texts import SourceText, source_text

SUFFIXES = {
    ".txt": "text",
    ".toml": "toml",
    ".csv": "csv",
    ".tsv": "tsv",
    ".jsonl": "jsonl",
    ".xml": "tei",
    ".tei": "tei",
}
FORMATS = tuple(sorted(set(SUFFIXES.values())))
UNITS = ("file", "paragraph", "line")
_OWN = ("id", "text", "title", "provenance", "licence")


def files_in(paths: Iterable[Path]) -> list[Path]:
    """Return the files to read: those named, and those in named folders that can be read.

    Raises:
        InputError: a path does not exist.
    """
    found: list[Path] = []
    for path in paths:
        if path.is_dir():
            found += sorted(inside for inside in path.rglob("*") if _may_hold_texts(inside))
        elif path.exists():
            found.append(path)
        else:
            raise InputError("there is no such file or folder", Place(str(path)), "check the path")
    return list({path.resolve(): path for path in found}.values())


def _may_hold_texts(path: Path) -> bool:
    return path.suffix.lower() in SUFFIXES and path.name != SETTINGS and path.is_file()


def stems_of(paths: Sequence[Path]) -> list[str]:
    """Return what begins the ids made for texts of each file: its name, whole where two share it.

    >>> stems_of([Path("a/poems.csv"), Path("a/poems.txt"), Path("a/songs.txt")])
    ['poems.csv', 'poems.txt', 'songs']
    """
    stems, names = Counter(p.stem for p in paths), Counter(p.name for p in paths)
    return [
        p.stem if stems[p.stem] == 1 else p.name if names[p.name] == 1 else p.as_posix()
        for p in paths
    ]


def texts_in(
    path: Path, *, kind: str | None = None, unit: str = "file", stem: str | None = None
) -> Iterator[SourceText]:
    """Yield the texts of a file; ``unit`` says what one text is in a plain text file.

    ``stem`` begins the ids made here, by default the file's name without its ending.

    Raises:
        InputError: the file cannot be read as what it is; file and line are named.
    """
    chosen = kind or SUFFIXES.get(path.suffix.lower())
    if chosen is None:
        raise InputError(
            "the kind of file is not known",
            Place(str(path)),
            "name it with --from " + "|".join(FORMATS),
        )
    return texts_of(files.read_text(path), str(path), stem or path.stem, kind=chosen, unit=unit)


def texts_of(
    content: str, name: str, stem: str, *, kind: str, unit: str = "file"
) -> Iterator[SourceText]:
    """Yield the texts in ``content``; ``name`` stands in errors, ``stem`` begins ids made here."""
    if kind == "text":
        yield from _plain_texts(files.transcribed(content, name), name, stem, unit)
    elif kind == "jsonl":
        yield from _json_texts(content.split("\n"), name, stem)
    elif kind in ("csv", "tsv"):
        yield from _table_texts(content, name, stem, "," if kind == "csv" else "\t")
    elif kind == "toml":
        yield from _toml_texts(content, name, stem)
    else:
        yield from tei_texts(content, name, stem)


def _plain_texts(content: str, name: str, stem: str, unit: str) -> Iterator[SourceText]:
    if unit == "file":
        yield source_text(stem, content, Place(name), title=stem)
        return
    start, block = 0, list[str]()
    for number, line in enumerate([*content.split("\n"), ""], start=1):
        if line.strip():
            start = start if block else number
            block.append(line)
        if block and (unit == "line" or not line.strip()):
            yield source_text(f"{stem}:{start}", "\n".join(block), Place(name, start))
            block = []


def _json_texts(lines: Iterable[str], name: str, stem: str) -> Iterator[SourceText]:
    for number, line in enumerate(lines, start=1):
        if not line.strip():
            continue
        try:
            fields = strict.json_value(line, Place(name, number))
        except (ValueError, RecursionError) as error:
            column = getattr(error, "colno", None)
            raise InputError(
                "the line is not JSON", Place(name, number, column), "one object a line"
            ) from error
        yield _text_of_fields(fields, Place(name, number), f"{stem}:{number}")


def _table_texts(content: str, name: str, stem: str, delimiter: str) -> Iterator[SourceText]:
    if "text" not in strict.columns_of(content, name, delimiter, _OWN):
        raise InputError(
            "the first line must name the columns, text among them",
            Place(name, 1),
            "call the column of the words text; columns are divided by commas or tabs",
        )
    for number, fields in strict.table_rows(content, name, delimiter, _OWN):
        yield _text_of_fields(fields, Place(name, number), f"{stem}:{number}")


def _toml_texts(content: str, name: str, stem: str) -> Iterator[SourceText]:
    if re.search(ENDLESS_KEY, content):
        raise InputError("a key has too many parts", Place(name), "use id, text, title and such")
    try:
        data = tomllib.loads(content)
    except tomllib.TOMLDecodeError as error:
        raise InputError(f"the file is not TOML ({error})", Place(name)) from error
    except (ValueError, RecursionError) as error:
        said = "the file is nested too deeply, or has a number of too many digits"
        raise InputError(said, Place(name)) from error
    entries = data.get("text", [])
    if not isinstance(entries, list):
        entries = [data]
    elif entries and (outside := [key for key in data if key != "text"]):
        raise InputError(
            f"the key “{outside[0]}” stands outside [[text]]",
            Place(name),
            "write each text as [[text]] with its own keys",
        )
    for number, entry in enumerate(entries, start=1):
        yield _text_of_fields(entry, Place(name), f"{stem}:{number}")


def _text_of_fields(fields: Any, place: Place, by_place: str) -> SourceText:
    """Return a text; one without an id is called by its number, or ``by_place``."""
    if not isinstance(fields, Mapping):
        raise InputError("a text must be an object with a text, and an id or number", place)
    if "text" not in fields:
        raise InputError("the text has no text", place, "every entry needs a field text")
    if "id" not in fields:
        stem, number = by_place.rpartition(":")[0], fields.get("number")
        fields = {**fields, "id": f"{stem}:{number}" if number else by_place}
    own = {key: _string(fields[key], key, place) for key in _OWN if fields.get(key) is not None}
    extra = tuple(
        (
            key,
            value if isinstance(value, str) else json.dumps(value, ensure_ascii=False, default=str),
        )
        for key, value in fields.items()
        if key not in _OWN
    )
    identity, text = own.pop("id", ""), own.pop("text", "")
    return source_text(identity, text, place, extra=extra, **own)


def _string(value: Any, key: str, place: Place) -> str:
    if isinstance(value, str):
        return value
    if key == "id" and isinstance(value, int) and not isinstance(value, bool):
        return str(value)
    if key == "text" and isinstance(value, list) and all(isinstance(v, str) for v in value):
        return "\n".join(value)
    raise InputError(f"the {key} of a text must be a string", place)
