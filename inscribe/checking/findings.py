"""What a check finds; codes and severities stand in ``glossary/catalogue/findings.tsv``."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from shlex import quote
from typing import TYPE_CHECKING, get_args

from inscribe import notebook, tables
from inscribe.checking.progress import tallies
from inscribe.terms import Severity as Severity

if TYPE_CHECKING:
    from pathlib import Path

    from inscribe.checking.examined import About
    from inscribe.keys import CheckKeys, FindingKeys

SEVERITIES: tuple[Severity, ...] = get_args(Severity)


@dataclass(frozen=True, slots=True)
class Finding:
    """One problem: its code, the record and line, what is the matter, and what to do.

    >>> from inscribe import check_folder
    >>> found = check_folder("examples/DEMO-004.toml").findings[0]
    >>> found.code, found.line, found.message
    ('unreadable', 18, 'column 1, signs 8-9: □□')
    """

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

    def to_dict(self) -> FindingKeys:
        """Return it as printed in JSON."""
        return {
            "severity": self.severity,
            "code": self.code,
            "record": self.record,
            "file": self.file,
            "line": self.line,
            "message": self.message,
            "todo": self.todo,
        }


@dataclass(frozen=True, slots=True)
class Looked:
    """One record of a folder: its file, what it is (None where it cannot be read), the findings."""

    file: Path
    about: About | None
    findings: list[Finding]


@dataclass(frozen=True, slots=True)
class Checked:
    """What was found in a folder of records, how many records there are, and each of them.

    >>> from inscribe import check_folder
    >>> check_folder("examples/DEMO-004.toml")
    <Checked: 1 record, 5 findings>
    """

    records: int
    findings: tuple[Finding, ...]
    looked: tuple[Looked, ...] = ()

    def __repr__(self) -> str:
        records = notebook.counted(self.records, "record")
        return f"<Checked: {records}, {notebook.counted(len(self.findings), 'finding')}>"

    @property
    def is_sound(self) -> bool:
        """Whether there is no error and no contradiction; doubts may be left."""
        return all(each.severity == "doubt" for each in self.findings)

    def to_dict(self) -> CheckKeys:
        """Return it as ``inscribe check --format json`` prints it."""
        return {
            "records": self.records,
            "findings": [each.to_dict() for each in self.findings],
            "counts": dict(Counter(each.severity for each in self.findings)),
            "progress": {tally.of: dict(tally.counts) for tally in tallies(self.looked)},
        }


def finding(code: str, file: str, line: int | None, message: str, record: str = "") -> Finding:
    """Return a finding with the advice of its code, RECORD in which stands for the file."""
    return Finding(
        code, file, line, message, kinds()[code][1].replace("RECORD", quote(file)), record
    )


@tables.cached()
def kinds() -> dict[str, tuple[Severity, str]]:
    """Return severity and advice of each code."""
    named: dict[str, Severity] = {severity: severity for severity in SEVERITIES}
    found: dict[str, tuple[Severity, str]] = {}
    for row in tables.rows("findings"):
        found.setdefault(row["key"], (named[row["kind"]], row["todo"]))
    return found
