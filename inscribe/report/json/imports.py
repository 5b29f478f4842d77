"""What an import did, as plain data; its troubles as CSV, a row each."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from inscribe.report.entries import csv_table

if TYPE_CHECKING:
    from inscribe.importing import ImportPlan, Trouble

TROUBLES = ["row", "heading", "cell", "said", "todo", "left_out"]


def import_as_json(plan: ImportPlan, *, written: bool) -> dict[str, Any]:
    """Return what became of every row, the troubles, and what transcriptions went through."""
    return {
        "list": plan.list.name,
        "encoding": plan.list.encoding,
        "written": written,
        "rows": [
            {
                "row": each.row,
                "id": each.id,
                "what": each.what,
                "file": str(each.file or ""),
                "changed": list(each.changed),
                "told": list(each.told),
            }
            for each in plan.outcomes
        ],
        "troubles": [each._asdict() for each in plan.troubles],
        "marks": [each._asdict() for each in plan.steps],
        "gone": list(plan.gone),
    }


def troubles_as_csv(troubles: Sequence[Trouble]) -> str:
    """Return a row a trouble; left_out says whether the row made no record."""
    rows = [
        {key: str(value) for key, value in each._asdict().items()}
        | {"left_out": "yes" if each.left_out else "no"}
        for each in troubles
    ]
    return csv_table(rows, TROUBLES)
