"""What is the matter with the rows of an imported list, as CSV, with all cells of rows left out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe.report.entries.table import csv_table

if TYPE_CHECKING:
    from inscribe.importing import ImportPlan

TROUBLES = ["row", "column", "cell", "said", "todo", "left_out"]


def troubles_as_csv(plan: ImportPlan) -> str:
    """Return a row a trouble; where the row made no record, its cells follow under their headings.

    The headings of the list are marked with a colon, so that none is taken for one of the table.
    """
    left_out = {each.row: each.cells for each in plan.outcomes if each.cells}
    left_out |= {each.number: each.cells for each in plan.list.above}
    rows = []
    for trouble in plan.troubles:
        row = {
            "row": str(trouble.row),
            "column": trouble.heading,
            "cell": trouble.cell,
            "said": trouble.said,
            "todo": trouble.todo,
            "left_out": "yes" if trouble.left_out else "no",
        }
        cells = left_out.pop(trouble.row, ()) if trouble.left_out else ()
        rows.append({**dict.fromkeys(_marked(plan), ""), **row, **{f"{h}:": c for h, c in cells}})
    return csv_table(rows, [*TROUBLES, *_marked(plan)])


def _marked(plan: ImportPlan) -> list[str]:
    return [f"{heading}:" for heading in plan.list.headings]
