"""``inscribe glossary``: the tables of what the program knows, and those of the user's own."""

from __future__ import annotations

from pathlib import Path

import click

from inscribe.cli.giving import example, output_options
from inscribe.cli.showing import write_result
from inscribe.errors import InputError, Place


@click.group(epilog=example("inscribe glossary show names", "inscribe glossary check my-glossary"))
def command() -> None:
    """Show the tables of what the program knows, and check tables of your own.

    A table of your own has the name and the columns of one of them, and lies in a folder that you
    name with inscribe --glossary FOLDER; its rows come first and so win.
    """


@command.command(epilog=example("inscribe glossary show", "inscribe glossary show names"))
@click.argument("table", required=False, metavar="[TABLE]")
@output_options
def show(table: str | None, output: str | None, force: bool, quiet: bool) -> None:
    """List the tables, or show one: what it is, its columns, its source and licence."""
    from inscribe.descriptions import described, described_tables
    from inscribe.report.terminal import table_as_text, tables_as_text

    every = list(described_tables().values())
    text = table_as_text(described(table)) if table else tables_as_text(every)
    write_result(text, output, force=force)


@command.command(epilog=example("inscribe glossary check my-glossary"))
@click.argument("folder", metavar="FOLDER")
@output_options
def check(folder: str, output: str | None, force: bool, quiet: bool) -> int:
    """Check the tables of a folder: unknown files and columns, and cells that cannot stand there.

    Exit status 1 if there is a problem.
    """
    from inscribe import tables
    from inscribe.descriptions import problems_in
    from inscribe.report.terminal import problems_as_text

    path = Path(folder)
    if not path.is_dir():
        raise InputError("there is no such glossary folder", Place(folder), "check the path")
    found = list(problems_in(path))
    count = len(tables.tables_in(path))
    write_result(problems_as_text(found, count), output, force=force)
    return int(bool(found))
