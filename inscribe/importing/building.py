"""A row of a list as a record: what each key says, and the record that says it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any, NamedTuple

from inscribe.errors import InscribeError, NotationError, ProblemsError
from inscribe.importing.cells import day, millimetres, sizes, usual_word, year
from inscribe.importing.mapping import (
    MEASURES,
    TARGETS,
    ListMapping,
    MappedTo,
    inscription_of,
    plain_key,
)
from inscribe.importing.marks import in_conventions, says_nothing
from inscribe.importing.model import ListRow, MarkStep, Trouble
from inscribe.notation import parse
from inscribe.record import FORBIDDEN, MAX_LINE, MAX_TEXT, Imported, Record, loads

Value = str | float | int | date
# Objects are measured along, across, through: the order in which sizes stand in one cell.
IN_ORDER = ("measurements.length", "measurements.width", "measurements.thickness")
_AS_IT_STANDS = "it stands in the record as it was; write it into its key by hand"


class RowSays(NamedTuple):
    """What a row says: the value of each key, and what was the matter."""

    values: dict[str, Value]
    troubles: tuple[Trouble, ...]
    steps: tuple[MarkStep, ...]

    @property
    def is_left_out(self) -> bool:
        """Whether the row can make no record."""
        return any(trouble.left_out for trouble in self.troubles)


def said_by(row: ListRow, mapping: ListMapping) -> RowSays:
    """Return what a row of a list says in the keys of a record."""
    reading = _Row(row, mapping)
    for heading, cell in row.cells:
        if to := mapping.columns.get(heading):
            reading.cell(heading, cell, to)
        reading.forbidden(heading, cell)
    reading.fill()
    return RowSays(reading.values, tuple(reading.troubles), tuple(reading.steps))


class _Row:
    def __init__(self, row: ListRow, mapping: ListMapping) -> None:
        self.row = row
        self.mapping = mapping
        self.values: dict[str, Value] = {}
        self.troubles: list[Trouble] = []
        self.steps: list[MarkStep] = []

    def trouble(
        self, heading: str, cell: str, said: str, todo: str, *, left_out: bool = False
    ) -> None:
        self.troubles.append(Trouble(self.row.number, heading, cell, said, todo, left_out))

    def forbidden(self, heading: str, cell: str) -> None:
        """Note what no record may hold: control characters, half characters, endless cells."""
        import re

        if found := re.search(FORBIDDEN, cell):
            said = f"the cell holds U+{ord(found[0]):04X}, which no record may hold"
            self.trouble(heading, cell, said, "take it out of the list", left_out=True)
        elif "\\x" in cell and re.search(r"\\x[89a-f][0-9a-f]", cell):
            said = "the cell holds bytes that its encoding has not"
            self.trouble(heading, cell, said, "correct the cell in the list", left_out=True)
        elif len(cell) > MAX_TEXT:
            said = f"the cell has more than {MAX_TEXT:,} characters"
            self.trouble(heading, cell, said, "shorten it in the list", left_out=True)

    def cell(self, heading: str, cell: str, to: MappedTo) -> None:
        said = cell.strip()
        if not to.key or not said:
            return
        if to.key == MEASURES:
            self._measures(heading, said, to.unit)
            return
        key = plain_key(to.key)
        holds = TARGETS[key].holds
        if holds == "text" and key.endswith("remarks"):
            self._remark(heading, said, to.key)
        elif key == "inscription.text":
            self._transcription(heading, cell, to.key)
        elif holds == "size":
            self._put(to.key, millimetres(said, to.unit), heading, cell, "no size")
        elif holds == "year":
            self._put(to.key, year(said), heading, cell, "no year")
        elif holds == "date":
            self._put(to.key, day(said), heading, cell, "no day")
        else:
            self._words(heading, cell, to.key)

    def _put(self, key: str, value: Value | None, heading: str, cell: str, what: str) -> None:
        if value is None:
            self.trouble(heading, cell, f"{what} can be read in it", _AS_IT_STANDS)
        elif key in self.values and self.values[key] != value:
            said = f"two columns say {key}, and not the same"
            self.trouble(heading, cell, said, _AS_IT_STANDS)
        else:
            self.values[key] = value

    def _measures(self, heading: str, cell: str, unit: str) -> None:
        found = sizes(cell, unit)
        if not found or len(found) > len(IN_ORDER):
            self.trouble(heading, cell, "no sizes can be read in it", _AS_IT_STANDS)
            return
        for key, size in zip(IN_ORDER, found, strict=False):
            self._put(key, size, heading, cell, "no size")

    def _remark(self, heading: str, cell: str, key: str) -> None:
        several = len(self.mapping.headings_of(key)) > 1
        line = f"{heading}: {cell}" if several else cell
        before = self.values.get(key)
        self.values[key] = f"{before}\n{line}" if before else line

    def _transcription(self, heading: str, cell: str, key: str) -> None:
        if says_nothing(cell):
            return
        text, steps = in_conventions(cell)
        self.steps += [MarkStep(self.row.number, heading, *step) for step in steps]
        try:
            if not parse(text).signs:
                said = "the transcription has no sign"
                self.trouble(heading, cell, said, "write what is carved", left_out=True)
                return
        except NotationError as error:
            said = f"the transcription cannot be read: {error.message}"
            self.trouble(heading, cell, said, error.hint or "correct it in the list", left_out=True)
            return
        self._put(key, text, heading, cell, "no text")

    def _words(self, heading: str, cell: str, key: str) -> None:
        field = TARGETS[plain_key(key)]
        said = cell.strip()
        meant = self.mapping.words.get(plain_key(key), {}).get(said) or said
        value = usual_word(field.vocabulary, meant) if field.vocabulary else meant
        if field.holds == "line":
            value = " ".join(value.split())
            if len(value) > MAX_LINE:
                self.trouble(heading, cell, "it is too long for one line", _AS_IT_STANDS)
                return
        if field.choices and value.casefold() not in field.choices:
            choices = ", ".join(field.choices)
            said = f"{value} is none of {choices}"
            self.trouble(heading, cell, said, f"say in the mapping what it is: [words.{key}]")
            return
        self._put(key, value.casefold() if field.choices else value, heading, cell, "nothing")

    def fill(self) -> None:
        """Say what always holds, and look whether what a record must say is said."""
        numbers = sorted({n for key in self.values if (n := inscription_of(key)) is not None})
        with_text = [n for n in numbers if _key(n, "text") in self.values]
        for key, value in self.mapping.always.items():
            number = inscription_of(key)
            if number is None or number in with_text:
                self.values.setdefault(key, value)
        for number in with_text:
            if _key(number, "place") not in self.values:
                self.values[_key(number, "place")] = "not given"
        for number in set(numbers) - set(with_text):
            self._without_text(number)
        if "id" not in self.values:
            self.trouble("", "", "the row has no number of an object", "give it one", left_out=True)
        if "kind" not in self.values:
            todo = "say the kind, or in the mapping what always holds: [always]"
            self.trouble("", "", "the row says no kind of fitting", todo, left_out=True)
        if not with_text and not any(trouble.left_out for trouble in self.troubles):
            said = "the row has no transcription; a record is of an inscription"
            self.trouble("", "", said, "nothing, if the object bears none", left_out=True)

    def _without_text(self, number: int) -> None:
        """Take back what is said of an inscription that has no text; the cells are kept anyway."""
        for key in [key for key in self.values if inscription_of(key) == number]:
            del self.values[key]


def _key(number: int, rest: str) -> str:
    return f"inscription.{rest}" if number == 0 else f"inscription {number + 1}.{rest}"


def record_of(says: RowSays, row: ListRow, list_name: str) -> Record:
    """Return the record that a row makes.

    Raises:
        ProblemsError: what the row says contradicts itself.
    """
    import tomlkit

    record = loads(tomlkit.dumps(_nested(says.values, list_name)))
    return record._replace(imported=Imported(list_name, row.number - 1, row.cells))


def _nested(values: Mapping[str, Value], list_name: str) -> dict[str, Any]:
    made: dict[str, Any] = {}
    inscriptions: dict[int, dict[str, Any]] = {}
    for key, value in values.items():
        number = inscription_of(key)
        parts = key.split(".")
        table = made
        if number is not None:
            table, parts = inscriptions.setdefault(number, {}), parts[1:]
        for part in parts[:-1]:
            table = table.setdefault(part, {})
        table[parts[-1]] = value
    made["inscription"] = [_with_lists(each, list_name) for _, each in sorted(inscriptions.items())]
    return made


def _with_lists(inscription: dict[str, Any], list_name: str) -> dict[str, Any]:
    """Return an inscription whose reading has a reader, and whose source has words."""
    if reading := inscription.pop("reading", None):
        inscription["reading"] = [{"by": list_name, **reading}]
    source = inscription.get("source", {})
    if source and not source.keys() & {"text", "id"}:
        del inscription["source"]
        said = "; ".join(f"source, {key}: {value}" for key, value in source.items())
        remarks = inscription.get("remarks")
        inscription["remarks"] = f"{remarks}\n{said}" if remarks else said
    return inscription


def problems_of(error: InscribeError, row: ListRow) -> Iterator[Trouble]:
    """Yield why a row makes no record."""
    errors = error.errors if isinstance(error, ProblemsError) else (error,)
    for each in errors:
        yield Trouble(row.number, "", "", each.message, each.hint or "correct the row", True)
