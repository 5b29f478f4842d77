"""What a check found, for a terminal: errors first, then contradictions, then the work list."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from inscribe.report import width
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import room, wrapped

if TYPE_CHECKING:
    from inscribe.checking import Checked, Finding, ProgressTally, Severity, Task

INDENT = 30
BAR = 30  # characters of the longest bar
TODO_SHOWN = 3  # reasons shown of one record
HEADINGS: dict[Severity, str] = {
    "error": "Errors: these records cannot be used",
    "contradiction": "Contradictions: two statements cannot both be true",
    "doubt": "Open doubts: work for a reader",
}


def check_as_text(checked: Checked, *, bars: bool = False) -> str:
    """Return the findings grouped by severity, how far the work is, and a summary.

    ``bars``: whether counts are drawn as bars, for a terminal; else they are plain figures.
    """
    from inscribe.checking import tallies

    records, found = checked.records, checked.findings
    counted = tallies(checked.looked)
    lines: list[str] = []
    for severity, heading in HEADINGS.items():
        some = [each for each in found if each.severity == severity]
        if some:
            lines += [heading, *_listed(some), ""]
    for tally in counted:
        lines += [*tally_lines(tally, bars=bars), ""]
    counts = Counter(each.severity for each in found)
    summary = ", ".join(
        f"{counts[severity]} {severity}{'' if counts[severity] == 1 else 's'}"
        for severity in HEADINGS
    )
    none = "; no file in the folder ends in .toml" if not records else ""
    lines.append(f"{records} record{'' if records == 1 else 's'}: {summary}{none}")
    return "\n".join(lines) + "\n"


def _listed(found: Sequence[Finding]) -> list[str]:
    lines = []
    for file, some in groupby(found, key=lambda each: each.file):
        lines.append(f"  {printable(file)}")
        for each in some:
            line = f"line {each.line}" if each.line else ""
            said = f"    {line:9} {each.code:15} {printable(each.message)}"
            lines.append(wrapped(said, room(), INDENT))
    todos = dict.fromkeys(f"    {each.code}: {each.todo}" for each in found)
    return [*lines, "  What to do:", *(wrapped(todo, room(), 6) for todo in todos)]


def tally_lines(tally: ProgressTally, *, bars: bool) -> list[str]:
    """Return the records by one key, a line each, with bars or with figures alone.

    >>> from inscribe.checking import ProgressTally
    >>> tally_lines(ProgressTally("state", (("drafted", 3), ("read", 1))), bars=False)
    ['Records by state', '  drafted  3', '  read     1']
    """
    names = [printable(name) for name, _ in tally.counts]
    across = max(map(width, names))
    most = max(count for _, count in tally.counts)
    figures = len(str(most))
    lines = [f"Records by {tally.of}"]
    for name, (_, count) in zip(names, tally.counts, strict=True):
        gap = " " * (across - width(name))
        bar = f"  {'█' * max(1, round(BAR * count / most))}" if bars else ""
        lines.append(f"  {name}{gap}  {count:{figures}}{bar}")
    return lines


def tasks_as_text(tasks: Sequence[Task], shown: int) -> str:
    """Return the records to do first, with what blocks them and what to do."""
    if not tasks:
        return "Nothing is left to do.\n"
    lines: list[str] = []
    for task in tasks[:shown]:
        lies = ", ".join(
            f"{key} {printable(value)}"
            for key, value in (("drawer", task.drawer), ("box", task.box))
            if value
        )
        whose = f"with {printable(task.with_whom)}" if task.with_whom else ""
        about = "; ".join(filter(None, (task.state, lies, whose)))
        lines.append(f"{printable(task.record or str(task.file))}  {task.said}")
        lines.append(f"  {printable(str(task.file))}" + (f"  ({about})" if about else ""))
        reasons = [f"  - {printable(why)}" for why in task.why[:TODO_SHOWN]]
        lines += [wrapped(reason, room(), 4) for reason in reasons]
        if len(task.why) > TODO_SHOWN:
            lines.append(f"  - and {len(task.why) - TODO_SHOWN} more")
        lines.append(wrapped(f"  What to do: {task.todo}", room(), 4))
    if len(tasks) > shown:
        lines.append(f"{len(tasks) - shown} more records are left to do.")
    return "\n".join(lines) + "\n"
