"""What a check finds; codes and severities stand in ``glossary/catalogue/findings.tsv``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from inscribe import tables

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


@tables.cached()
def kinds() -> dict[str, tuple[Severity, str]]:
    """Return severity and advice of each code."""
    named: dict[str, Severity] = {severity: severity for severity in SEVERITIES}
    found: dict[str, tuple[Severity, str]] = {}
    for row in tables.rows("findings"):
        found.setdefault(row["key"], (named[row["kind"]], row["todo"]))
    return found
