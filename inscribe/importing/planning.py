"""A whole list against the folder its records go to: what is new, what changed, what cannot be."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import NamedTuple
from unicodedata import normalize

from inscribe import files
from inscribe.errors import InscribeError
from inscribe.importing.building import RowSays, problems_of, record_of, said_by
from inscribe.importing.mapping import ListMapping
from inscribe.importing.model import (
    CatalogueList,
    ImportPlan,
    ListRow,
    MarkStep,
    RowOutcome,
    Trouble,
)
from inscribe.importing.updating import updated
from inscribe.record import Imported, Record, dump, loads, revised, survey

LONGEST_NAME = 80  # characters of a file's name
Progress = Callable[[int, int], None]


class RecordThere(NamedTuple):
    """A record that is in the folder already."""

    path: Path
    text: str
    record: Record


def import_plan(
    found: CatalogueList,
    mapping: ListMapping,
    folder: Path | None = None,
    progress: Progress = lambda done, count: None,
) -> ImportPlan:
    """Return what becomes of every row of a list.

    Args:
        found: the list.
        mapping: which column becomes which key.
        folder: where records go, and where those of an earlier import lie.
        progress: hears how many of how many rows are done.
    """
    planning = _Planning(found, mapping, folder)
    for done, row in enumerate(found.rows, start=1):
        planning.row(row)
        progress(done, len(found.rows))
    return planning.plan()


class _Planning:
    def __init__(self, found: CatalogueList, mapping: ListMapping, folder: Path | None) -> None:
        self.list = found
        self.mapping = mapping
        self.folder = folder
        self.there, self.names = records_in(folder) if folder and folder.is_dir() else ({}, set())
        self.outcomes: list[RowOutcome] = []
        self.troubles: list[Trouble] = [_above(row) for row in found.above]
        self.steps: list[MarkStep] = []
        self.row_of: dict[str, int] = {}

    def row(self, row: ListRow) -> None:
        """Say what becomes of one row."""
        says = said_by(row, self.mapping)
        identity = str(says.values.get("id", ""))
        if identity in self.row_of:
            said = f"row {self.row_of[identity]} has the same number, {identity}"
            trouble = Trouble(row.number, "", identity, said, "give each object its own", True)
            says = says._replace(troubles=(*says.troubles, trouble))
        elif identity:
            self.row_of[identity] = row.number
        self.troubles += says.troubles
        if says.is_left_out:
            self.outcomes.append(_left_out(row, identity))
            return
        self.steps += says.steps
        try:
            there = self.there.get(identity)
            made = self._brought_up(row, says, there) if there else self._new(row, says, identity)
        except InscribeError as error:
            self.troubles += problems_of(error, row)
            made = _left_out(row, identity)
        self.outcomes.append(made)

    def _new(self, row: ListRow, says: RowSays, identity: str) -> RowOutcome:
        text = dump(record_of(says, row, self.list.name))
        loads(text)  # what is written can be read
        file = (self.folder or Path()) / free_name(identity, self.names)
        return RowOutcome(row.number, identity, "new", file, text, tuple(says.values))

    def _brought_up(self, row: ListRow, says: RowSays, there: RecordThere) -> RowOutcome:
        imported = there.record.imported
        if imported is None or imported.source_list != self.list.name:
            whose = (
                "was not made from this list"
                if imported is None
                else f"is of {imported.source_list}"
            )
            told = (f"the record {whose}; it is left as it is",)
            return RowOutcome(row.number, there.record.id, "not ours", there.path, told=told)
        if imported.cells == row.cells:
            return RowOutcome(row.number, there.record.id, "same", there.path)
        then = said_by(ListRow(row.number, imported.cells), self.mapping)
        made = updated(there.record, then, says)
        record = made.record._replace(imported=Imported(self.list.name, row.number - 1, row.cells))
        text = revised(there.text, str(there.path), record)
        changed = made.changed or _other_cells(imported, row)
        return RowOutcome(row.number, record.id, "changed", there.path, text, changed, made.told)

    def plan(self) -> ImportPlan:
        """Return the whole plan."""
        gone = tuple(
            identity
            for identity, there in self.there.items()
            if there.record.imported
            and there.record.imported.source_list == self.list.name
            and identity not in self.row_of
        )
        return ImportPlan(
            self.list, tuple(self.outcomes), tuple(self.troubles), tuple(self.steps), gone
        )


def _left_out(row: ListRow, identity: str) -> RowOutcome:
    return RowOutcome(row.number, identity, "left out", cells=row.cells)


def _above(row: ListRow) -> Trouble:
    cells = "; ".join(cell for _, cell in row.cells if cell.strip())
    said = "the row stands above the headings"
    return Trouble(row.number, "", cells, said, "nothing, if it is the list's title", True)


def _other_cells(imported: Imported, row: ListRow) -> tuple[str, ...]:
    """Return the headings of cells that changed and are only kept with the row."""
    before = dict(imported.cells)
    return tuple(heading for heading, cell in row.cells if before.get(heading) != cell)


def free_name(identity: str, taken: set[str]) -> str:
    """Return a free file name for an id, the same on disks that know no capitals, and take it.

    >>> free_name("A/1", {"a_1.toml"})
    'A_1-2.toml'
    """
    safe = re.sub(r'[\x00-\x20/\\:*?"<>|]+', "_", normalize("NFC", identity))
    safe = safe.strip("._")[:LONGEST_NAME] or "object"
    number, name = 1, f"{safe}.toml"
    while normalize("NFKC", name).casefold() in taken:
        number += 1
        name = f"{safe}-{number}.toml"
    taken.add(normalize("NFKC", name).casefold())
    return name


def records_in(folder: Path) -> tuple[dict[str, RecordThere], set[str]]:
    """Return the records of a folder by id, and the names of its files, folded."""
    found: dict[str, RecordThere] = {}
    for path in survey(folder).records:
        try:
            text = files.read_text(path)
            record = loads(text, str(path), path.parent)
        except InscribeError:
            continue  # inscribe check tells of it; its file is never written over
        found.setdefault(record.id, RecordThere(path, text, record))
    return found, set(_folded(path.name for path in folder.iterdir()))


def _folded(names: Iterable[str]) -> Iterable[str]:
    return (normalize("NFKC", name).casefold() for name in names)
