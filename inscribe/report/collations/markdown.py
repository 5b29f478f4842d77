"""A collation as Markdown (CommonMark with pipe tables)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.report import (
    WITNESS_COLUMNS,
    apparatus_lines,
    followed,
    place_row,
    plate_said,
    printed_lines,
    witness_row,
)
from inscribe.report.collations import layout
from inscribe.report.entries import escaped

if TYPE_CHECKING:
    from inscribe.collation import Collation, SpaceAccount, Testimony


def collation_as_markdown(result: Collation, copy: str, source: str) -> str:
    """Return the collation of ``copy`` with ``source`` (their titles)."""
    return "\n\n".join(_parts(result, copy, source)) + "\n"


def witnesses_as_markdown(found: Testimony, copy: str) -> str:
    """Return which source the copy follows, each place with what every source has, and entries."""
    rows = [witness_row(witness, found.places) for witness in found.witnesses]
    parts = [
        f"## {escaped(copy)} and its sources",
        escaped(followed(found)),
        table(WITNESS_COLUMNS, rows),
    ]
    if found.places:
        held = found.witnesses[0].collation.copy
        sigla = [witness.siglum for witness in found.witnesses if witness.has_text]
        places = [place_row(place, sigla, held) for place in found.places]
        parts.append(table(("where", "copy", *sigla), places))
        lines = apparatus_lines(found, held)
        parts.append("\n".join(f"- {escaped(line)}" for line in lines))
    return "\n\n".join(parts) + "\n"


def _parts(result: Collation, copy: str, source: str) -> Iterator[str]:
    yield f"## {escaped(copy)} held against {escaped(source)}"
    yield escaped(layout.verdict(result))
    if sentence := layout.standing_beside(result):
        yield escaped(sentence)
    for number, cells in enumerate(layout.columns(result), start=1):
        header = [f"column {number}", *(str(cell.number or "") for cell in cells)]
        rows = [("copy", *(c.copy for c in cells)), ("source", *(c.source for c in cells))]
        yield table(header, rows)
    for substantive, title in ((True, "Differences in wording"), (False, "In writing only")):
        found = layout.rows(result, substantive=substantive)
        if found:
            yield f"### {title}"
            yield table(
                ("no.", "kind", "copy", "source", "where", "why"),
                [(str(r.number), r.kind, r.copy, r.source, r.where, r.why) for r in found],
            )
        if substantive and (lines := printed_lines(result)):
            yield "As an edition prints them (source \\] copy):"
            yield "\n".join(f"- {escaped(line)}" for line in lines)
    if result.fidelity.signs_in_source:
        yield "### Fidelity"
        yield table(("level", "signs", "share of the source"), layout.levels(result))
    if sentence := layout.relineation(result):
        yield escaped(sentence)
    yield from map(escaped, result.notes)
    if result.space is not None:
        yield from _space(result, result.space)


def _space(result: Collation, account: SpaceAccount) -> Iterator[str]:
    yield "### Space"
    rows = []
    for column in account.columns:
        figures = (column.length, column.pitch, column.crowding)
        cells = ("-" if figure is None else f"{figure:.2f}" for figure in figures)
        rows.append((str(column.index + 1), str(column.signs), *cells))
    yield table(("column", "signs", "length (mm)", "pitch (mm)", "crowding"), rows)
    if said := plate_said(account):
        yield escaped(said)
    if account.judgements:
        yield "\n".join(_judged(result, account))
    if account.wanted:
        yield "\n".join(f"- To decide, measure the {escaped(item)}." for item in account.wanted)


def _judged(result: Collation, account: SpaceAccount) -> Iterator[str]:
    for said, reasons in layout.judgements(account, result):
        yield f"- {escaped(said)}"
        yield from (f"  - {escaped(reason)}" for reason in reasons)


def table(header: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Return a pipe table."""
    lines = [header, ["---"] * len(header), *rows]
    return "\n".join(
        f"| {' | '.join(cell if cell == '---' else escaped(cell) for cell in line)} |"
        for line in lines
    )
