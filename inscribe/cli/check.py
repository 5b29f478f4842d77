"""``inscribe check``: every problem in a folder of records."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import example, format_option, library_option, library_path, output_options
from inscribe.cli.showing import progress_shown, write_result

if TYPE_CHECKING:
    from inscribe.checking import Checked


@click.command(
    epilog=example("inscribe check examples", "inscribe check records --format csv -o work.csv")
)
@click.argument("folder", metavar="FOLDER|RECORD")
@format_option("text", "json", "csv")
@click.option("--no-cache", is_flag=True, help="Read every record anew and keep nothing.")
@library_option("The library in which sources are looked up")
@output_options
@click.pass_context
def command(
    ctx: click.Context,
    folder: str,
    no_cache: bool,
    form: str,
    library_file: str | None,
    output: str | None,
    force: bool,
    quiet: bool,
) -> int:
    """Check every record of a folder: errors, contradictions, and the doubts still open.

    Every .toml file in the folder and the folders in it is taken for a record, but in hidden
    folders and those named styles. Exit status 1 if there is an error or a contradiction; open
    doubts alone are no failure. What was found in a record is kept until it, the program or a table
    changes. How far the work is, by state, kind and drawer, stands at the end.
    """
    from inscribe.checking import check_folder

    with progress_shown("records", quiet=quiet) as progress:
        checked = check_folder(
            Path(folder), library_path(library_file), progress, keep=not no_cache
        )
    bars = output is None and sys.stdout.isatty()
    write_result(_shown(checked, form, bars=bars), output, force=force)
    return int(not checked.is_sound)


def _shown(checked: Checked, form: str, *, bars: bool) -> str:
    if form == "json":
        return json.dumps(checked.to_dict(), ensure_ascii=False, indent=2)
    if form == "csv":
        from inscribe.report.entries import csv_table

        rows = [{k: str(v or "") for k, v in each.to_dict().items()} for each in checked.findings]
        columns = ["severity", "code", "record", "file", "line", "message", "todo"]
        return csv_table(rows, columns)
    from inscribe.report.terminal import check_as_text

    return check_as_text(checked, bars=bars)
