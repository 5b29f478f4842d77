"""What a check found, as plain data."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inscribe.checking import Finding, ProgressTally, Task


def check_as_json(
    records: int, found: list[Finding], counted: Sequence[ProgressTally] = ()
) -> dict[str, Any]:
    """Return the findings and their counts, and the records by state, kind and drawer."""
    return {
        "records": records,
        "findings": [finding_row(each) for each in found],
        "counts": dict(Counter(each.severity for each in found)),
        "progress": {tally.of: dict(tally.counts) for tally in counted},
    }


def finding_row(found: Finding) -> dict[str, Any]:
    """Return one finding."""
    return {
        "severity": found.severity,
        "code": found.code,
        "record": found.record,
        "file": found.file,
        "line": found.line,
        "message": found.message,
        "todo": found.todo,
    }


def task_row(task: Task) -> dict[str, Any]:
    """Return one record that is left to do, and what blocks it."""
    return {
        "record": task.record,
        "file": str(task.file),
        "blocked_by": task.blocked_by,
        "why": list(task.why),
        "todo": task.todo,
        "state": task.state,
        "drawer": task.drawer,
        "box": task.box,
        "with_whom": task.with_whom,
    }
