"""What ``inscribe settle`` says it would change, and changes as a diff."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import unified_diff
from typing import TYPE_CHECKING

from inscribe.errors import harmless
from inscribe.report.terminal.wrapping import room, wrapped

if TYPE_CHECKING:
    from inscribe.settling import Revision

_MOST = 20  # records of which each is told


def revisions_as_text(found: Sequence[Revision], *, several: bool) -> str:
    """Return what would change in each record, and how many records that is."""
    lines: list[str] = []
    told = [each for each in found if each.changes or each.settled.kept or each.settled.already]
    for each in told[:_MOST]:
        lines.append(str(each.path))
        lines += [f"  {clause}" for clause in each.mended]
        lines += [f"  {clause}" for clause in each.settled.done]
        lines += [f"  so already: {clause}" for clause in each.settled.already]
        lines += [f"  left alone, --replace replaces it: {c}" for c in each.settled.kept]
    if len(told) > _MOST:
        lines.append(f"and {len(told) - _MOST} records more")
    if several or not told:
        lines.append(_summary(found))
    return "\n".join(wrapped(line, room(), 4) for line in map(harmless, lines))


def _summary(found: Sequence[Revision]) -> str:
    changed = sum(each.changes for each in found)
    places = sum(len(each.settled.done) for each in found)
    already = sum(bool(each.settled.already) for each in found)
    kept = sum(bool(each.settled.kept) for each in found)
    parts = [f"{len(found)} looked at", f"{changed} to change in {places} places"]
    parts += [f"{already} so already"] if already else []
    parts += [f"{kept} settled otherwise"] if kept else []
    return f"records: {', '.join(parts)}"


def diffs_as_text(changes: Sequence[tuple[str, str, str]]) -> str:
    """Return a unified diff of each file: its name, its text before and after."""
    lines = [
        line
        for name, before, after in changes
        for line in unified_diff(
            before.splitlines(), after.splitlines(), name, f"{name} (changed)", lineterm="", n=2
        )
    ]
    return "".join(f"{harmless(line)}\n" for line in lines)
