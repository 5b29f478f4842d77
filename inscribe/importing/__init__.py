"""An old catalogue list becomes records, and a later state of the list brings them up to date.

In reading order: ``lists`` (a CSV file or a spreadsheet as rows of cells), ``mapping`` (which
column becomes which key of a record) and ``proposing`` (a mapping from the headings), ``cells``
(what a cell says: sizes, days, usual words), ``marks`` (a transcription in whatever mark-up as the
conventions have it), ``building`` (a row as a record), ``updating`` (what changed in the list, and
what a person changed in the record), ``planning`` (the whole list against the folder),
``documents`` (TEI instead of a list), ``manifests`` and ``manifest_pictures`` (a manifest of IIIF
as a list of one row, and its pictures), ``writing``.

Nothing is lost: every cell of a row stands as it was in the record's ``[imported]`` table, and a
row that makes no record stands in the list of troubles with all its cells.

``importing/``: a list (``lists.py``) and a mapping (``mapping.py``, proposed by ``proposing.py``
from ``import_headings.tsv``) give the values of each row (``building.py``; ``cells.py``,
``marks.py`` with ``import_marks.tsv``). The record keeps the row as it stood (``[imported]``), so
that a later import knows what changed in the list and what in the record (``updating.py``): of a
key of which the list says something else, the record is changed only where it still says what the
list said. ``planning.py`` decides on all rows before ``writing.py`` writes any. A heading, a mark:
a row in the table, a case in ``tests/test_import.py``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.importing.documents import document_plan as document_plan
    from inscribe.importing.lists import read_list as read_list
    from inscribe.importing.manifests import (
        ForeignManifest as ForeignManifest,
        read_manifest as read_manifest,
        with_pictures as with_pictures,
    )
    from inscribe.importing.mapping import (
        TARGETS as TARGETS,
        ListMapping as ListMapping,
        load_mapping as load_mapping,
        mapping_as_toml as mapping_as_toml,
    )
    from inscribe.importing.model import (
        CatalogueList as CatalogueList,
        ImportPlan as ImportPlan,
        ListRow as ListRow,
        MarkStep as MarkStep,
        RowOutcome as RowOutcome,
        Trouble as Trouble,
    )
    from inscribe.importing.planning import import_plan as import_plan
    from inscribe.importing.proposing import proposed_mapping as proposed_mapping
    from inscribe.importing.writing import write_plan as write_plan
else:
    __getattr__ = late.door(
        __name__,
        {
            "documents": "document_plan",
            "lists": "read_list",
            "manifests": "ForeignManifest read_manifest with_pictures",
            "mapping": "ListMapping TARGETS load_mapping mapping_as_toml",
            "model": "CatalogueList ImportPlan ListRow MarkStep RowOutcome Trouble",
            "planning": "import_plan",
            "proposing": "proposed_mapping",
            "writing": "write_plan",
        },
    )
