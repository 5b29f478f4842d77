"""``inscribe next``: the record to do next, and why."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import example, format_option, library_option, library_path, output_options
from inscribe.cli.showing import progress_shown, write_result

if TYPE_CHECKING:
    from inscribe.keys import TaskKeys
    from inscribe.terms import Block

_BLOCKS = ("error", "contradiction", "unreadable", "name", "source", "other")


@click.command(
    epilog=example(
        "inscribe next examples",
        "inscribe next records --blocked-by name --open",
        "inscribe next records --all --format csv -o work.csv",
    )
)
@click.argument("folder", metavar="FOLDER")
@click.option(
    "--blocked-by", type=click.Choice(_BLOCKS),
    help="Only records that this blocks: name is a name that may be read in two ways, source a "
    "poem or saying of which no source is found yet.",
)  # fmt: skip
@click.option("--drawer", metavar="NAME", help="Only what lies in this drawer.")
@click.option("--count", type=click.IntRange(min=1), default=1, show_default=True,
    help="How many are shown.")  # fmt: skip
@click.option("--all", "every", is_flag=True, help="Show every record that is left to do.")
@click.option("--open", "opens", is_flag=True, help="Open the first in $EDITOR.")
@library_option("The library in which sources are looked up")
@format_option("text", "json", "csv")
@output_options
def command(
    folder: str,
    blocked_by: Block | None,
    drawer: str | None,
    count: int,
    every: bool,
    opens: bool,
    library_file: str | None,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Name the record of a folder to do next, what blocks it, and what to do.

    Records that cannot be used come first, then contradictions, signs that cannot be read, names
    that may be read in two ways, texts without a source, and other doubts; what lies in one drawer
    and box stands together. A record whose state is published, and that contradicts nothing, is
    done.
    """
    from inscribe.checking import check_folder, work_list

    with progress_shown("records", quiet=quiet) as progress:
        checked = check_folder(Path(folder), library_path(library_file), progress, keep=True)
    tasks = work_list(checked.looked, blocked_by)
    if drawer is not None:
        tasks = [task for task in tasks if task.drawer == drawer]
    shown = len(tasks) if every else count
    if form == "text":
        from inscribe.report.terminal import tasks_as_text

        made = tasks_as_text(tasks, shown)
    else:
        rows = [task.to_dict() for task in tasks[:shown]]
        if form == "json":
            left = {"left": len(tasks), "tasks": rows}
            made = json.dumps(left, ensure_ascii=False, indent=2)
        else:
            made = _csv(rows)
    write_result(made, output, force=force)
    if opens and tasks:
        click.edit(filename=str(tasks[0].file))


def _csv(rows: list[TaskKeys]) -> str:
    from inscribe.report.entries import csv_table

    columns = [
        "record", "file", "blocked_by", "why", "todo", "state", "drawer", "box", "with_whom",
    ]  # fmt: skip
    joined = [{**row, "why": "; ".join(row["why"])} for row in rows]
    return csv_table([{k: str(v) for k, v in row.items()} for row in joined], columns)
