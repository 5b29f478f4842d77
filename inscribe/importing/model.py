"""What an import is made of: a list, what is to become of each row, and what troubles there are."""

from __future__ import annotations

from pathlib import Path
from typing import Literal, NamedTuple

Cells = tuple[tuple[str, str], ...]  # heading and cell, in the order of the list
What = Literal["new", "changed", "same", "not ours", "left out"]


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


class MarkStep(NamedTuple):
    """One change that a transcription went through, and why."""

    row: int
    heading: str
    before: str
    after: str
    why: str


class RowOutcome(NamedTuple):
    """What becomes of a row: the record's file, and its text where it is to be written.

    ``told`` are sentences about what a person changed in the record and the list says otherwise.
    """

    row: int
    id: str
    what: What
    file: Path | None = None
    text: str = ""
    changed: tuple[str, ...] = ()
    told: tuple[str, ...] = ()


class ImportPlan(NamedTuple):
    """What an import would do, and all that is to be said of it, before anything is written."""

    list: CatalogueList
    outcomes: tuple[RowOutcome, ...]
    troubles: tuple[Trouble, ...]
    steps: tuple[MarkStep, ...]
    gone: tuple[str, ...] = ()  # ids of records that came from the list and stand in it no more

    def count(self, what: What) -> int:
        """Return how many rows have this outcome."""
        return sum(outcome.what == what for outcome in self.outcomes)
