"""What a check finds; codes and severities stand in ``glossary/findings.tsv``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from inscribe import tables
from inscribe.errors import TableError

Severity = Literal["error", "contradiction", "doubt"]
SEVERITIES: tuple[Severity, ...] = get_args(Severity)


@dataclass(frozen=True, slots=True)
class Finding:
    """One problem: its code, the record and line, what is the matter, and what to do."""

    code: str
    file: str
    line: int | None
    message: str
    todo: str
    record: str = ""  # the object's id, where it could be read

    @property
    def severity(self) -> Severity:
        """How grave it is."""
        return kinds()[self.code][0]


def finding(code: str, file: str, line: int | None, message: str, record: str = "") -> Finding:
    """Return a finding with the advice of its code."""
    return Finding(code, file, line, message, kinds()[code][1], record)


@tables.compiled
def kinds() -> dict[str, tuple[Severity, str]]:
    """Return severity and advice of each code.

    Raises:
        TableError: the table names a severity that does not exist.
    """
    found: dict[str, tuple[Severity, str]] = {}
    for (code, severity, _, todo), place in tables.rows(
        "findings", ("code", "severity", "meaning", "todo")
    ):
        if severity not in SEVERITIES:
            raise TableError(f"there is no severity {severity}", place, ", ".join(SEVERITIES))
        found.setdefault(code, (severity, todo))
    return found
