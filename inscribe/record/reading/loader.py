"""A record file to a Record, or all its problems at once."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inscribe import files
from inscribe.errors import InscribeError, Place, RecordError, did_you_mean
from inscribe.record import model
from inscribe.record.fields import RECORD, Field, RecordTable, ValueRefused, checked
from inscribe.record.reading import checks
from inscribe.record.reading.inside import inside
from inscribe.record.reading.problems import MAX_TOLD, Problems
from inscribe.record.reading.surveying import survey

if TYPE_CHECKING:
    from inscribe.record.reading.locate import KeyPath

MAX_RECORD = 400_000  # characters; a record of a hundred inscriptions has less
MAX_SOURCE = 2**20  # bytes of a source file; the longest transcription takes less

# A key of so many parts that the parser's memory, which grows with their square, may run out.
ENDLESS_KEY = r"""(?:\.[ \t]*+(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+){32}"""
_SYNTAX_PLACE = r" \(at (?:line (\d+), column (\d+)|end of document)\)$"


def load(path: files.StrPath) -> model.Record:
    """Return the record in the file ``path``.

    Raises:
        InputError: the file is missing or not UTF-8.
        RecordError: it is not TOML; line and column are named.
        ProblemsError: keys or values are wrong; every problem is named with its line.

    >>> from inscribe import load_record
    >>> record = load_record("examples/DEMO-003.toml")
    >>> record.kind, record.measurements.length
    ('kozuka', 96.5)
    """
    path = Path(path)
    return loads(files.read_text(path), str(path), path.parent)


def loads(text: str, file: str | None = None, folder: Path | None = None) -> model.Record:
    """Return the record written in ``text``; source files are looked for in ``folder``.

    Raises:
        RecordError: it is not TOML; line and column are named.
        ProblemsError: keys or values are wrong; every problem is named with its line.
    """
    data = _toml(text, file)
    problems = Problems(file, text)
    record = _Builder(problems, folder).record(data)
    problems.raise_any()
    assert isinstance(record, model.Record)
    return record


def paths_in(folder: Path) -> list[Path]:
    """Return the record files in ``folder`` and the folders in it, in the order of their names.

    What is passed over is told by :func:`inscribe.record.survey`.

    Raises:
        InputError: there is no such folder.
    """
    return survey(folder).records


def _toml(text: str, file: str | None) -> dict[str, Any]:
    if len(text) > MAX_RECORD:
        limit = f"the record is longer than the limit of {MAX_RECORD:,} characters"
        raise RecordError(limit, Place(file), "keep long texts in files of their own")
    if re.search(ENDLESS_KEY, text):
        raise RecordError("a key has too many parts", Place(file), "use keys of the schema")
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise RecordError("the record is nested too deeply", Place(file), "flatten it") from None
    except tomllib.TOMLDecodeError as error:
        raise _not_toml(str(error), text, file) from None
    except ValueError:
        raise RecordError("a number has too many digits", Place(file), "shorten it") from None


def _not_toml(message: str, text: str, file: str | None) -> RecordError:
    found = re.search(_SYNTAX_PLACE, message)
    line = column = None
    if found:
        message = message[: found.start()]
        line = int(found[1]) if found[1] else text.rstrip("\n").count("\n") + 1
        column = int(found[2]) if found[2] else None
    message = f"the file is not TOML: {message[:1].lower()}{message[1:]}"
    hint = "write ''' around a text with \\" if "\\" in message else "correct the line"
    if comma := re.search(r"=\s*(\d+),(\d+)\s*$", text.split("\n")[line - 1] if line else ""):
        hint = f"write a point in a number: {comma[1]}.{comma[2]}"
    return RecordError(message, Place(file, line, column), hint)


class _Builder:
    """Turns the tables of one file into the types of the model."""

    def __init__(self, problems: Problems, folder: Path | None) -> None:
        self.problems = problems
        self.folder = folder

    def record(self, data: dict[str, Any]) -> model.Record | None:
        """Return the record, or None where something required is missing."""
        record = self._table(RECORD, data, ())
        if isinstance(record, model.Record):
            for index, inscription in enumerate(record.inscriptions):
                path = ("inscription", index)
                checks.plate_on_object(inscription, record.measurements, path, self.problems)
            return record
        return None

    def _table(self, table: RecordTable, data: Any, path: KeyPath) -> Any:
        if not isinstance(data, dict):
            self.problems.add(path, f"{table.name} is not a table", f"expected {table.about}")
            return None
        fields = {field.key: field for field in table.fields}
        wanted = [each.key for each in table.fields if each.required and each.key not in data]
        meant = {self._unknown(key, table, wanted, path) for key in data if key not in fields}
        values: dict[str, Any] = {}
        missing = False
        for field in table.fields:
            here = (*path, field.key)
            if field.key not in data:
                missing |= field.required
                if field.required and field.key not in meant:
                    self.problems.add(path, f"{field.key} is missing", f"expected {field.about}")
                continue
            value = self._value(field, data[field.key], here)
            if value is None:
                missing |= field.required
            elif field.holds == "version":
                continue  # checked, and nothing to keep
            elif field.holds == "signs":
                values["first"], values["last"] = value
            elif field.holds == "sources":
                values["source"], *others = value
                values["other_sources"] = tuple(others)
            else:
                values[field.name] = value
        return None if missing else self._made(table, values, path)

    def _value(self, field: Field, value: Any, path: KeyPath) -> Any:
        if field.table is None:
            return self._checked(field, value, path)
        if field.holds == "table":
            return self._table(field.table, value, path)
        if field.holds == "sources" and not isinstance(value, list):
            made = self._table(field.table, value, path)
            return None if made is None else (made,)
        if not isinstance(value, list):
            hint = f"write [[{'.'.join(str(p) for p in path if isinstance(p, str))}]]"
            self.problems.add(path, f"{field.key} is not a list of tables", hint)
            return None
        if not value and (field.required or field.holds == "sources"):
            self.problems.add(path, f"there is no {field.key}", f"expected {field.about}")
        items = [self._table(field.table, item, (*path, i)) for i, item in enumerate(value)]
        return None if None in items or (not items and field.holds == "sources") else tuple(items)

    def _checked(self, field: Field, value: Any, path: KeyPath) -> Any:
        try:
            return checked(field, value)
        except ValueRefused as refused:
            self.problems.add(path, refused.message, refused.hint)
            return None

    def _made(self, table: RecordTable, values: dict[str, Any], path: KeyPath) -> Any:
        if table.make is model.CopiedText and values.get("file"):
            if values.get("text"):
                self.problems.add(path, "the source has both text and file", "keep one of them")
            values["text"] = self._source_file(values["file"], (*path, "file"))
            if values["text"] is None:
                return None
        made = table.make(**values)
        if isinstance(made, model.Inscription):
            checks.inscription(made, path, self.problems)
            for index, reader in enumerate(made.readers):
                here = (*path, "reading", index)
                checks.reader_text(reader.text, made.notation, here, self.problems)
        elif isinstance(made, model.CopiedText):
            checks.source(made, path, self.problems)
        elif isinstance(made, model.RecordImage):
            checks.image(made, path, self.problems)
        elif isinstance(made, model.Maker):
            checks.maker(made, path, self.problems)
        return made

    def _unknown(self, key: str, table: RecordTable, wanted: list[str], path: KeyPath) -> str:
        """Note a key that is not known; return the missing one that it may be, or nothing."""
        known = [field.key for field in table.fields]
        few = len(self.problems.found) < MAX_TOLD
        meant = next((name for name in wanted if few and did_you_mean(key, [name])), "")
        question = did_you_mean(key, [meant] if meant else known) if few else ""
        hint = question or f"known keys: {', '.join(known)}"
        shown = key if key.isprintable() and len(key) <= 40 else ascii(key[:40])
        self.problems.add((*path, key), f"{table.name} has no key {shown}", hint)
        return meant

    def _source_file(self, name: str, path: KeyPath) -> str | None:
        """Return the words of a source file."""
        try:
            text = files.read_text(inside(name, self.folder), MAX_SOURCE)
        except InscribeError as error:
            self.problems.add(path, f"the source file {name}: {error.message}", error.hint)
            return None
        return text.strip("\n")
