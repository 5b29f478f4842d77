"""Checking a folder of records: errors, contradictions, and the doubts that are left as work.

In reading order: ``examine`` (one record by itself, with ``vocabulary``, ``readers`` and
``ages``;
what is kept of it: ``examined``),
``across`` (what records say against each other, with ``wording``), ``naming`` (ids, links, sources
that are not there), ``folder`` (all of it), ``progress`` (how far the work is), ``work`` (what to
do next).

``checking/``: a record by itself (``examine.py``), records against each other (``across.py``,
``wording.py``), ids, links and sources (``naming.py``), how far the work is (``progress.py``),
what to do next (``work.py``). A new finding: a row in ``findings.tsv``, a ``Remark`` where it is
found, a minimal bad record in ``tests/test_check.py`` or ``test_check_across.py``. ``indexing/``:
what of a document belongs into which index (``entries.py``), headings put together
(``gathering.py``). ``report/joined.py``: the documents of single entries put together to one, a
piece at a time; formats that number over all entries (TEI's ids, annotations) are still made of
all entries at once.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.checking.examined import About as About
    from inscribe.checking.findings import (
        SEVERITIES as SEVERITIES,
        Checked as Checked,
        Finding as Finding,
        Looked as Looked,
        Severity as Severity,
    )
    from inscribe.checking.folder import check_folder as check_folder
    from inscribe.checking.progress import ProgressTally as ProgressTally, tallies as tallies
    from inscribe.checking.work import BLOCKS as BLOCKS, Task as Task, work_list as work_list
else:
    __getattr__ = late.door(
        __name__,
        {
            "examined": "About",
            "findings": "Checked Finding Looked SEVERITIES Severity",
            "folder": "check_folder",
            "progress": "ProgressTally tallies",
            "work": "BLOCKS Task work_list",
        },
    )
