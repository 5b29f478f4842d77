"""What an import is made of: a list, what is to become of each row, and what troubles there are."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from inscribe.terms import RowFate

if TYPE_CHECKING:
    from inscribe.keys import ImportedRowKeys, ImportKeys, MarkStepKeys, TroubleKeys

Cells = tuple[tuple[str, str], ...]  # heading and cell, in the order of the list


class ListRow(NamedTuple):
    """One row of a list; ``number`` is its row in the file, counted from 1."""

    number: int
    cells: Cells

    @property
    def is_empty(self) -> bool:
        """Whether nothing stands in it."""
        return not any(cell.strip() for _, cell in self.cells)


class CatalogueList(NamedTuple):
    """A list as it was read: its headings, the rows below them, and how it was written.

    ``above`` are rows that stand above the headings.
    """

    name: str
    headings: tuple[str, ...]
    rows: tuple[ListRow, ...]
    encoding: str = ""
    heading_row: int = 1
    above: tuple[ListRow, ...] = ()
    others: tuple[str, ...] = ()  # sheets of the workbook that were not read


class Trouble(NamedTuple):
    """Something that is the matter with a row.

    ``left_out`` tells whether the row made no record, or was not brought up to date; otherwise
    only the cell could not be understood, and it stands in the record as it was.
    """

    row: int
    heading: str
    cell: str
    said: str
    todo: str
    left_out: bool = False

    def to_dict(self) -> TroubleKeys:
        """Return it as printed in JSON."""
        return {
            "row": self.row,
            "heading": self.heading,
            "cell": self.cell,
            "said": self.said,
            "todo": self.todo,
            "left_out": self.left_out,
        }


class MarkStep(NamedTuple):
    """One change that a transcription went through, and why."""

    row: int
    heading: str
    before: str
    after: str
    why: str

    def to_dict(self) -> MarkStepKeys:
        """Return it as printed in JSON."""
        return {
            "row": self.row,
            "heading": self.heading,
            "before": self.before,
            "after": self.after,
            "why": self.why,
        }


class RowOutcome(NamedTuple):
    """What becomes of a row: the record's file, and its text where it is to be written.

    ``told`` are sentences about what a person changed in the record and the list says otherwise;
    ``cells`` are those of a row that is left out, for no record holds them.
    """

    row: int
    id: str
    what: RowFate
    file: Path | None = None
    text: str = ""
    changed: tuple[str, ...] = ()
    told: tuple[str, ...] = ()
    cells: Cells = ()

    def to_dict(self) -> ImportedRowKeys:
        """Return it as printed in JSON."""
        return {
            "row": self.row,
            "id": self.id,
            "what": self.what,
            "file": str(self.file or ""),
            "changed": list(self.changed),
            "told": list(self.told),
            "cells": list(map(list, self.cells)),
        }


class ImportPlan(NamedTuple):
    """What an import would do, and all that is to be said of it, before anything is written."""

    list: CatalogueList
    outcomes: tuple[RowOutcome, ...]
    troubles: tuple[Trouble, ...]
    steps: tuple[MarkStep, ...]
    gone: tuple[str, ...] = ()  # ids of records that came from the list and stand in it no more

    def count(self, what: RowFate) -> int:
        """Return how many rows have this outcome."""
        return sum(outcome.what == what for outcome in self.outcomes)

    def to_dict(self, *, written: bool) -> ImportKeys:
        """Return it as ``inscribe import --format json`` prints it; ``written``: whether it was."""
        return {
            "list": self.list.name,
            "encoding": self.list.encoding,
            "written": written,
            "rows": [each.to_dict() for each in self.outcomes],
            "troubles": [each.to_dict() for each in self.troubles],
            "marks": [each.to_dict() for each in self.steps],
            "gone": [*self.gone],
        }
