"""The tables of the glossary, for a terminal: which there are, what one of them holds."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted, in_columns

if TYPE_CHECKING:
    from inscribe.descriptions import TableDescription
    from inscribe.errors import InscribeError

_INDENT = 10
_SHOWN = 3  # rows of a table, as examples


def tables_as_text(described: Sequence[TableDescription]) -> str:
    """Return the name of each table with the first sentence of what it is, by subject."""
    lines: list[str] = []
    ordered = sorted(described, key=lambda table: (table.file.parent.name, table.name))
    for subject, some in groupby(ordered, key=lambda table: table.file.parent.name):
        rows = [(f"  {table.name}", _first_sentence(table.about)) for table in some]
        lines += [subject, *in_columns(rows), ""]
    return "\n".join([*lines, "inscribe glossary show TABLE shows the columns of one of them."])


def _first_sentence(text: str) -> str:
    return text.partition(". ")[0].rstrip(".")


def table_as_text(table: TableDescription) -> str:
    """Return what a table is, its columns, and how it begins."""
    facts = (
        ("table", table.name),
        ("about", table.about),
        ("key", " ".join(table.key)),
        ("source", table.source),
        ("licence", table.licence),
        ("rebuilt", f"python glossary/build {table.rebuild}" if table.rebuild else "kept by hand"),
        ("file", printable(str(table.file))),
    )
    columns = [
        (f"  {column.name}", _about(column.about, column.says, optional=column.optional))
        for column in table.columns.values()
    ]
    begins = [row for row, _ in zip(tables.rows(table.name), range(_SHOWN), strict=False)]
    rows = [printable("  " + "  ".join(filter(None, row.values()))) for row in begins]
    lines = [fitted(f"{name:{_INDENT}}{said}", _INDENT) for name, said in facts]
    lines += ["columns", *in_columns(columns)]
    return "\n".join([*lines, "begins", *(row[:120] for row in rows)] if rows else lines)


def _about(about: str, says: str, *, optional: bool) -> str:
    said = f"{about} ({says})" if about else says
    return f"{said}; may be empty" if optional else said


def problems_as_text(found: Sequence[InscribeError], count: int) -> str:
    """Return what is wrong with the tables of a folder, and how many tables it has."""
    said = f"{count} table{'' if count == 1 else 's'}"
    problems = f"{len(found)} problem{'' if len(found) == 1 else 's'}"
    return "\n".join([*(printable(str(each)) for each in found), f"{said}: {problems}"])
