"""What an import did, for a terminal: the counts, what was changed in mark-up, the troubles."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import room, wrapped

if TYPE_CHECKING:
    from inscribe.importing import ImportPlan

MOST_SHOWN = 40  # troubles, and sorts of mark-up
_WHAT = {
    "new": "new records",
    "changed": "records brought up to date",
    "same": "unchanged",
    "not ours": "records that were there before, left as they are",
    "left out": "rows left out",
}


def import_as_text(plan: ImportPlan, *, written: bool) -> str:
    """Return what became of the rows of a list."""
    found = plan.list
    encoding = f", {found.encoding}" if found.encoding else ""
    rows = f"{len(found.rows)} rows below row {found.heading_row}{encoding}"
    if not found.heading_row:
        rows = "a manifest of IIIF"
    lines = [f"{printable(found.name)}: {rows if found.headings else 'a document of TEI'}"]
    if found.others:
        lines.append(f"  not read: {', '.join(map(printable, found.others))}")
    lines += _marks(plan)
    lines += _told(plan)
    lines += _troubles(plan)
    for what, said in _WHAT.items():
        if count := plan.count(what):  # type: ignore[arg-type]
            lines.append(f"  {count:6}  {said}")
    if plan.gone:
        ids = ", ".join(map(printable, plan.gone[:MOST_SHOWN]))
        lines.append(wrapped(f"  no longer in the list, records kept: {ids}", room(), 4))
    if not written:
        lines.append("Nothing was written.")
    return "\n".join(lines) + "\n"


def _marks(plan: ImportPlan) -> list[str]:
    counted = Counter(
        (step.before.strip() or step.before, step.after, step.why) for step in plan.steps
    )
    first = {(s.before.strip() or s.before, s.after, s.why): s.row for s in reversed(plan.steps)}
    lines = ["Mark-up of transcriptions, as the conventions have it:"] if counted else []
    for step, count in counted.most_common(MOST_SHOWN):
        before, after, why = (part.replace("\n", "⏎") for part in step)
        times = f"{count} times, first in row {first[step]}" if count > 1 else f"row {first[step]}"
        said = f"  {before[:30]} → {after[:30] or 'nothing'}  ({times}): {why}"
        lines.append(wrapped(printable(said), room(), 4))
    return lines


def _told(plan: ImportPlan) -> list[str]:
    told = [(each, said) for each in plan.outcomes for said in each.told]
    lines = ["Changed by a person, and kept:"] if told else []
    for each, said in told[:MOST_SHOWN]:
        lines.append(wrapped(printable(f"  row {each.row}, {each.id}: {said}"), room(), 4))
    if len(told) > MOST_SHOWN:
        lines.append(f"  and {len(told) - MOST_SHOWN} more; see --format json")
    return lines


def _troubles(plan: ImportPlan) -> list[str]:
    lines = []
    for left_out, title in ((True, "Left out:"), (False, "Not understood, kept with the row:")):
        some = [each for each in plan.troubles if each.left_out == left_out]
        lines += [title] if some else []
        for each in some[:MOST_SHOWN]:
            where = f", {each.heading}" if each.heading else ""
            cell = f" “{each.cell[:40]}”" if each.cell else ""
            said = f"  row {each.row}{where}{cell}: {each.said}; {each.todo}"
            lines.append(wrapped(printable(said.replace("\n", "⏎")), room(), 4))
        if len(some) > MOST_SHOWN:
            lines.append(f"  and {len(some) - MOST_SHOWN} more; see --errors FILE")
    return lines
