"""What is the matter with the rows of an imported list, as CSV."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.report.entries.table import csv_table

if TYPE_CHECKING:
    from inscribe.importing import Trouble

TROUBLES = ["row", "heading", "cell", "said", "todo", "left_out"]


def troubles_as_csv(troubles: Sequence[Trouble]) -> str:
    """Return a row a trouble; left_out says whether the row made no record."""
    rows = [
        {key: str(value) for key, value in each.to_dict().items()}
        | {"left_out": "yes" if each.left_out else "no"}
        for each in troubles
    ]
    return csv_table(rows, TROUBLES)
