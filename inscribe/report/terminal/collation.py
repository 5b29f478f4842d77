"""A collation on a terminal: columns with the source beneath, differences, figures, space.

Nothing is said by colour alone: differences carry numbers, kinds are words, blanks are drawn.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from io import StringIO
from typing import TYPE_CHECKING

from inscribe.report import (
    WITNESS_COLUMNS,
    apparatus_lines,
    collations,
    followed,
    place_row,
    plate_said,
    printed_lines,
    width,
    witness_row,
)
from inscribe.report.terminal.reading import printable

if TYPE_CHECKING:
    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    from inscribe.collation import Collation, SpaceAccount, Testimony
    from inscribe.signs import Transcription

MARGIN = 4
# Differences in writing only that a terminal shows; thousands would take seconds to lay out.
MOST_ROWS = 500


def collation_as_text(
    result: Collation, copy: str, source: str, *, columns: int = 80, colour: bool = False
) -> str:
    """Return the collation of ``copy`` with ``source`` (their titles), ``columns`` wide."""
    console = _console(columns, colour)
    _heading(console, f"{copy} held against {source}")
    console.print(collations.verdict(result), style="bold" if colour else None)
    if sentence := collations.standing_beside(result):
        console.print(printable(sentence), markup=False)
    console.print()
    for number, cells in enumerate(collations.columns(result), start=1):
        for line in aligned_lines(cells, number, columns):
            console.print(printable(line), style=None, highlight=False, markup=False)
    for substantive, title in ((True, "Differences in wording"), (False, "In writing only")):
        found = collations.rows(result, substantive=substantive)
        if found:
            console.print(_differences(title, found, len(found) if substantive else MOST_ROWS))
        if substantive and (lines := printed_lines(result)):
            console.print("As an edition prints them (source ] copy)")
            for line in lines:
                console.print("  " + printable(line), markup=False, highlight=False)
            console.print()
    if result.fidelity.signs_in_source:
        console.print(_levels(result))
    remarks = [collations.relineation(result), *result.notes]
    for remark in filter(None, remarks):
        console.print(printable(remark), markup=False)
        console.print()
    if result.space is not None:
        _space(console, result, result.space)
    return _finished(console)


def witnesses_as_text(
    found: Testimony, copy: str, *, columns: int = 80, colour: bool = False
) -> str:
    """Return which source the copy follows, and the apparatus."""
    console = _console(columns, colour)
    _heading(console, f"{copy} and its sources")
    console.print(printable(followed(found)), markup=False)
    console.print()
    table = _table("Sources")
    for name in WITNESS_COLUMNS:
        table.add_column(name, overflow="fold")
    for witness in found.witnesses:
        table.add_row(*map(_plain, witness_row(witness, found.places)))
    console.print(table)
    if found.places:
        held = found.witnesses[0].collation.copy
        console.print(_places(found, held))
        console.print("Apparatus")
        for line in apparatus_lines(found, held):
            console.print("  " + printable(line), markup=False, highlight=False)
    return _finished(console)


def _places(found: Testimony, held: Transcription) -> Table:
    sigla = [witness.siglum for witness in found.witnesses if witness.has_text]
    table = _table("Places (=: the copy's wording, however spelled)")
    for name in ("where", "copy", *sigla):
        table.add_column(name, overflow="fold")
    for place in found.places:
        table.add_row(*map(_plain, place_row(place, sigla, held)))
    return table


def aligned_lines(
    cells: Sequence[collations.AlignedCell], number: int, columns: int
) -> Iterator[str]:
    """Yield the lines of one column: copy, source and numbers beneath each other, wrapped."""
    room = max(columns - MARGIN, 10)
    label = f"{number:>2}  "
    for part in _wrapped(cells, room):
        yield label + _joined((cell.copy, cell) for cell in part)
        yield " " * MARGIN + _joined((cell.source, cell) for cell in part)
        if any(cell.number for cell in part):
            numbers = ((str(cell.number or ""), cell) for cell in part)
            yield " " * MARGIN + _joined(numbers)
        yield ""
        label = " " * MARGIN


def _joined(texts: Iterable[tuple[str, collations.AlignedCell]]) -> str:
    line = "".join(text + " " * (_cell_width(cell) - width(text)) for text, cell in texts)
    return line.rstrip()


def _cell_width(cell: collations.AlignedCell) -> int:
    return max(width(cell.copy), width(cell.source), len(str(cell.number or ""))) + 1


def _wrapped(
    cells: Sequence[collations.AlignedCell], room: int
) -> Iterator[list[collations.AlignedCell]]:
    line: list[collations.AlignedCell] = []
    used = 0
    for cell in _narrow(cells, room):
        if line and used + _cell_width(cell) > room:
            yield line
            line, used = [], 0
        line.append(cell)
        used += _cell_width(cell)
    if line:
        yield line


def _narrow(cells: Sequence[collations.AlignedCell], room: int) -> Iterator[collations.AlignedCell]:
    """Yield the cells, those too wide for a line cut into several."""
    piece = max(room // 2 - 1, 1)
    for cell in cells:
        copy, source = cell.copy, cell.source
        while copy or source:
            yield collations.AlignedCell(copy[:piece], source[:piece], cell.number)
            copy, source = copy[piece:], source[piece:]


def _differences(title: str, found: Sequence[collations.DifferenceRow], most: int) -> Table:
    first = f", the first {most:,}; --format json has all" if len(found) > most else ""
    table = _table(f"{title} ({len(found)}{first})")
    table.add_column("no.", justify="right", no_wrap=True)
    table.add_column("kind", no_wrap=True)
    for name in ("copy", "source", "where", "why"):
        table.add_column(name, overflow="fold")
    for row in found[:most]:
        cells = (row.kind, row.copy or "-", row.source or "-", row.where, row.why)
        table.add_row(str(row.number), *map(_plain, cells))
    return table


def _levels(result: Collation) -> Table:
    table = _table("Fidelity, as a share of the source")
    for justify in ("left", "right", "right"):
        table.add_column(justify=justify)
    for row in collations.levels(result):
        table.add_row(*row)
    table.show_header = False
    return table


def _space(console: Console, result: Collation, account: SpaceAccount) -> None:
    from rich.padding import Padding

    table = _table("Space")
    for name in ("column", "signs", "length (mm)", "pitch (mm)", "crowding"):
        table.add_column(name, justify="right")
    for column in account.columns:
        figures = (column.length, column.pitch, column.crowding)
        cells = ("-" if figure is None else f"{figure:.2f}" for figure in figures)
        table.add_row(str(column.index + 1), str(column.signs), *cells)
    console.print(table)
    if said := plate_said(account):
        console.print(said)
    for said, reasons in collations.judgements(account, result):
        console.print(printable(said), markup=False)
        for reason in reasons:
            console.print(Padding(_plain(reason), (0, 0, 0, 2)))
    for measure in account.wanted:
        console.print(f"To decide, measure the {measure}.", markup=False)


def _console(columns: int, colour: bool) -> Console:
    from rich.console import Console

    return Console(
        file=StringIO(),
        width=columns,
        force_terminal=colour,
        color_system="standard" if colour else None,
        no_color=not colour,
        highlight=False,
    )


def _table(title: str) -> Table:
    from rich import box
    from rich.table import Table

    return Table(
        title=title, title_justify="left", title_style="bold", box=box.SIMPLE_HEAD, padding=(0, 1)
    )


def _heading(console: Console, text: str) -> None:
    console.print(printable(text), style="bold", markup=False)


def _plain(text: str) -> Text:
    from rich.text import Text

    return Text(printable(text))


def _finished(console: Console) -> str:
    assert isinstance(console.file, StringIO)
    lines = console.file.getvalue().split("\n")
    return "\n".join(line.rstrip() for line in lines).rstrip("\n") + "\n"
