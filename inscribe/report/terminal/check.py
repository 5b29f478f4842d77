"""What a check found, for a terminal: errors first, then contradictions, then the work list."""

from __future__ import annotations

from collections import Counter
from itertools import groupby
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import room, wrapped

if TYPE_CHECKING:
    from inscribe.checking import Checked, Finding, Severity

INDENT = 30
HEADINGS: dict[Severity, str] = {
    "error": "Errors: these records cannot be used",
    "contradiction": "Contradictions: two statements cannot both be true",
    "doubt": "Open doubts: work for a reader",
}


def check_as_text(checked: Checked) -> str:
    """Return the findings grouped by severity, and a summary."""
    records, found = checked.records, checked.findings
    lines: list[str] = []
    for severity, heading in HEADINGS.items():
        some = [each for each in found if each.severity == severity]
        if some:
            lines += [heading, *_listed(some), ""]
    counts = Counter(each.severity for each in found)
    summary = ", ".join(
        f"{counts[severity]} {severity}{'' if counts[severity] == 1 else 's'}"
        for severity in HEADINGS
    )
    none = "; no file in the folder ends in .toml" if not records else ""
    lines.append(f"{records} record{'' if records == 1 else 's'}: {summary}{none}")
    return "\n".join(lines) + "\n"


def _listed(found: list[Finding]) -> list[str]:
    lines = []
    for file, some in groupby(found, key=lambda each: each.file):
        lines.append(f"  {printable(file)}")
        for each in some:
            line = f"line {each.line}" if each.line else ""
            said = f"    {line:9} {each.code:15} {printable(each.message)}"
            lines.append(wrapped(said, room(), INDENT))
    todos = dict.fromkeys(f"    {each.code}: {each.todo}" for each in found)
    return [*lines, "  What to do:", *(wrapped(todo, room(), 6) for todo in todos)]
