"""What ``glossary/tables.toml`` says of each table, and whether a table keeps to it.

The description is read only where it is asked for: when a user's folder is named, by ``inscribe
glossary``, by the scripts that make tables, and by the tests.

>>> described("numbers").columns["value"].says
'a whole number of zero or more'
>>> row = {"written": "廿", "value": "x"}
>>> [str(problem) for problem in problems_of_row(described("numbers"), row)]
['the value “x” cannot stand there; expected a whole number of zero or more']
"""

from __future__ import annotations

import itertools
import os
import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from typing import Any

from inscribe import tables
from inscribe.errors import InscribeError, Place, ProblemsError, TableError
from inscribe.files import read_text

DESCRIPTION = "tables.toml"
_MOST_TOLD = 20


@dataclass(frozen=True, slots=True)
class CellKind:
    """What a cell may hold: a pattern for one value, and the same in words."""

    pattern: re.Pattern[str]
    says: str


@dataclass(frozen=True, slots=True)
class TableColumn:
    """A column of a table: its name, what it means, and what its cells may hold.

    ``by`` is the column on which the kind depends, ``kinds`` the kind for what stands there;
    ``known`` are the only values there can be.
    """

    name: str
    about: str
    kind: CellKind | None = None
    by: str = ""
    kinds: Mapping[str, CellKind] = field(default_factory=dict)
    is_list: bool = False
    optional: bool = False
    known: tuple[str, ...] = ()

    @property
    def says(self) -> str:
        """What a cell may hold, in words."""
        if self.by:
            said = "; ".join(f"{kind}: {held.says}" for kind, held in self.kinds.items())
            return f"depends on the {self.by}: {said}"
        said = f"one of {', '.join(self.known)}" if self.known else ""
        said = said or (self.kind.says if self.kind else "text")
        return f"{said}; several separated by {tables.SEPARATOR}" if self.is_list else said

    def kind_in(self, row: Mapping[str, str]) -> CellKind | None:
        """Return what the cell of a row may hold; None where nothing is said."""
        return self.kinds.get(row.get(self.by, "")) if self.by else self.kind


@dataclass(frozen=True, slots=True)
class TableDescription:
    """What a table is; see the head of the description for each field."""

    name: str
    about: str
    key: tuple[str, ...]
    source: str
    licence: str
    columns: Mapping[str, TableColumn]
    rebuild: str = ""
    rule: CellKind | None = None
    alike: tuple[str, ...] = ()

    @property
    def file(self) -> Path:
        """The packaged file."""
        return tables.tables_in(tables.PACKAGED)[self.name]


@cache
def described_tables() -> dict[str, TableDescription]:
    """Return the description of every table, by name."""
    said = tomllib.loads(read_text(tables.PACKAGED / DESCRIPTION))
    kinds = {name: CellKind(re.compile(p), says) for name, (p, says) in said["kinds"].items()}
    return {
        name: _table(name, entry, said["columns"], kinds) for name, entry in said["tables"].items()
    }


def described(name: str) -> TableDescription:
    """Return the description of a table.

    Raises:
        TableError: there is no table of that name; those with a like name are told.
    """
    known = described_tables()
    if name not in known:
        like = get_close_matches(name, known, 3, 0.5)
        hint = f"did you mean {' or '.join(like)}?" if like else "see: inscribe glossary show"
        raise TableError(f"there is no table {name}", None, hint)
    return known[name]


def _table(
    name: str, entry: dict[str, Any], shared: dict[str, Any], kinds: Mapping[str, CellKind]
) -> TableDescription:
    columns = {
        column: _column(name, column, {**shared.get(column, {}), **own}, kinds)
        for column, own in entry["columns"].items()
    }
    rule = CellKind(re.compile(entry["rule"][0]), entry["rule"][1]) if "rule" in entry else None
    return TableDescription(
        name,
        entry["about"],
        tuple(entry["key"]),
        entry["source"],
        entry["licence"],
        columns,
        entry.get("rebuild", ""),
        rule,
        tuple(entry.get("alike", ())),
    )


def _column(
    table: str, name: str, said: dict[str, Any], kinds: Mapping[str, CellKind]
) -> TableColumn:
    one_of = said.get("of", ())
    kind = CellKind(re.compile("|".join(map(re.escape, one_of))), f"one of {', '.join(one_of)}")
    return TableColumn(
        name,
        said.get("about", ""),
        kind if one_of else kinds[said["kind"]] if "kind" in said else None,
        said.get("by", ""),
        {value: kinds[name] for value, name in said.get("kinds", {}).items()},
        said.get("list", False),
        said.get("optional", False),
        _packaged_values(table, name) if said.get("known") else (),
    )


def _packaged_values(table: str, column: str) -> tuple[str, ...]:
    """Return what stands in a column of the packaged table."""
    lines = read_text(tables.tables_in(tables.PACKAGED)[table]).splitlines()
    header, *rows = (line.split("\t") for line in lines if line and not line.startswith("#"))
    values = (value for row in rows for value in tables.listed(row[header.index(column)]))
    return tuple(dict.fromkeys(values))


def add_glossary(folder: str | os.PathLike[str]) -> None:
    """Read tables from ``folder`` too, once they are found to keep to their descriptions.

    Its rows come before those of all others, and so win.

    Raises:
        InputError: ``folder`` is not a folder.
        TableError: one of its tables is unknown or has an unknown column or a cell that cannot
            stand there; file, line and what is allowed are named.
        ProblemsError: there are several such problems; the first twenty are told.

    >>> from inscribe import add_glossary
    >>> add_glossary("no such folder")
    Traceback (most recent call last):
    inscribe.errors.InputError: ...
    """
    found = list(itertools.islice(problems_in(Path(folder)), _MOST_TOLD))
    if len(found) == 1:
        raise found[0]
    if found:
        raise ProblemsError(found)
    tables.add_folder(folder)


def problems_in(folder: Path) -> Iterator[InscribeError]:
    """Yield everything that is wrong with the tables of a folder."""
    for name, path in tables.tables_in(folder).items():
        try:
            table = described(name)
        except TableError as error:
            yield TableError(error.message, Place(str(path)), error.hint)
            continue
        try:
            yield from problems_of(table, path)
        except InscribeError as error:  # it cannot be read
            yield error


def problems_of(table: TableDescription, path: Path) -> Iterator[TableError]:
    """Yield what is wrong with a file that should be a table: its columns, cells and keys."""
    columns: list[str] = []
    seen: dict[tuple[str, ...], int] = {}
    for number, line in enumerate(tables.lines_of(path), start=1):
        if not line.strip() or line.startswith("#"):
            continue
        cells, place = line.split("\t"), Place(str(path), number)
        if not columns:
            columns = cells
            if wrong := _misfit(table, columns):
                yield TableError(*wrong[:1], place, wrong[1])
                return
        elif len(cells) != len(columns):
            expected = f"expected {len(columns)} cells separated by tabs, found {len(cells)}"
            yield TableError("the row does not fit the header", place, expected)
        else:
            row = dict(zip(columns, cells, strict=True))
            for problem in problems_of_row(table, row):
                yield TableError(problem.message, place, problem.hint)
            for key in _keys(table, row):
                if key in seen:
                    message = f"{' '.join(key)} stands in line {seen[key]} already"
                    yield TableError(message, place, "keep one of the two")
                seen.setdefault(key, number)
    if not columns:
        yield TableError("the table has no line of column names", Place(str(path)))


def _keys(table: TableDescription, row: Mapping[str, str]) -> Iterator[tuple[str, ...]]:
    """Yield the keys of a row: one for each value of a cell that holds several."""
    values = (
        row.get(name, "").split(tables.SEPARATOR) if table.columns[name].is_list else [row[name]]
        for name in table.key
    )
    return itertools.product(*values)


def _misfit(table: TableDescription, columns: list[str]) -> tuple[str, str] | None:
    """Return what is wrong with the names of the columns, and what to do; None if nothing is."""
    allowed = f"the columns are {', '.join(table.columns)}, separated by tabs"
    for name in columns:
        if name not in table.columns:
            return f"{table.name}.tsv has no column “{name}”", allowed
    missing = [c.name for c in table.columns.values() if not c.optional and c.name not in columns]
    if missing:
        return f"the column {missing[0]} is missing", allowed
    if columns != [name for name in table.columns if name in columns]:
        return "the columns stand in another order", allowed
    return None


def problems_of_row(table: TableDescription, row: Mapping[str, str]) -> Iterator[TableError]:
    """Yield what is wrong with the cells of a row."""
    for name, cell in row.items():
        if problem := _problem(table.columns[name], cell, row):
            yield problem
            return
    if table.rule and not table.rule.pattern.fullmatch("\t".join(row.values())):
        yield TableError("the cells do not agree", None, f"expected {table.rule.says}")
    counts = {len(row[column].split(" ")) for column in table.alike}
    if len(counts) > 1:
        hint = f"put a space between words in {', '.join(table.alike)}"
        yield TableError("the cells are not divided alike", None, hint)


def _problem(column: TableColumn, cell: str, row: Mapping[str, str]) -> TableError | None:
    kind = column.kind_in(row)
    if not cell:
        if column.optional or (column.by and kind is None):
            return None
        return TableError(f"the {column.name} is missing", None, f"expected {column.says}")
    for value in cell.split(tables.SEPARATOR) if column.is_list else [cell]:
        unknown = column.known and value not in column.known
        if unknown or (kind and not kind.pattern.fullmatch(value)):
            message = f"the {column.name} “{value}” cannot stand there"
            return TableError(message, None, f"expected {_expected(column, kind, row)}")
    return None


def _expected(column: TableColumn, kind: CellKind | None, row: Mapping[str, str]) -> str:
    return f"{kind.says} ({column.by}: {row[column.by]})" if column.by and kind else column.says
