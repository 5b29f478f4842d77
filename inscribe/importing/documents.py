"""TEI documents of this program's own making become records again."""

from __future__ import annotations

from pathlib import Path

from inscribe import files
from inscribe.importing.model import CatalogueList, ImportPlan, RowOutcome
from inscribe.importing.planning import free_name, records_in
from inscribe.record import dump, records_of_tei

_KEPT = "a record of this id is there and says something else; it is left as it is"


def document_plan(path: Path, folder: Path | None = None) -> ImportPlan:
    """Return what becomes of each record of a TEI document, in its order.

    One whose id is in the ``folder`` already is left as it is.

    Raises:
        InputError: the document cannot be read, or holds no edition of an inscription.
    """
    there, names = records_in(folder) if folder and folder.is_dir() else ({}, set())
    outcomes = []
    for number, record in enumerate(records_of_tei(files.read_text(path), str(path)), start=1):
        if known := there.get(record.id):
            same = known.record == record
            told = () if same else (_KEPT,)
            outcomes.append(
                RowOutcome(number, record.id, "same" if same else "not ours", known.path, told=told)
            )
            continue
        file = (folder or Path()) / free_name(record.id, names)
        outcomes.append(RowOutcome(number, record.id, "new", file, dump(record)))
    return ImportPlan(CatalogueList(path.name, (), ()), tuple(outcomes), (), ())
