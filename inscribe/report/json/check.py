"""What a check found, as plain data."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inscribe.checking import Finding


def check_as_json(records: int, found: list[Finding]) -> dict[str, Any]:
    """Return the findings and their counts."""
    return {
        "records": records,
        "findings": [finding_row(each) for each in found],
        "counts": dict(Counter(each.severity for each in found)),
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
