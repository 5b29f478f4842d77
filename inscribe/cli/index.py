"""``inscribe index``: persons, places, dates, works, first lines, formulas, hands."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import (
    example,
    format_option,
    library_option,
    library_path,
    output_options,
)
from inscribe.cli.showing import progress_shown, status_of, write_result

if TYPE_CHECKING:
    from inscribe.indexing import IndexHeading, IndexKind

_KINDS = ("persons", "places", "dates", "works", "lines", "formulas", "hands")


@click.command(
    epilog=example(
        "inscribe index examples",
        "inscribe index records --of persons --of places --format csv -o index.csv",
        "inscribe index records --format html -o index.html",
    )
)
@click.argument("folder", metavar="FOLDER|RECORD")
@click.option(
    "--of", "kinds", type=click.Choice(_KINDS), multiple=True,
    help="What to index, several times for several indexes (default: all); lines are the first "
    "lines of poems and Chinese texts.",
)  # fmt: skip
@library_option("The library of sources named by id")
@click.option("--no-cache", is_flag=True, help="Read every record anew and keep nothing.")
@format_option("text", "csv", "json", "html", "md")
@output_options
def command(
    folder: str,
    kinds: tuple[IndexKind, ...],
    library_file: str | None,
    no_cache: bool,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> int:
    """Make the indexes of a folder of records: each heading, its forms as carved, the records.

    Persons are those who signed, under their names in current forms; that is no attribution.
    Records that cannot be read are left out and named, with exit status 1.
    """
    from inscribe.indexing import INDEXES, index_folder

    library = library_path(library_file)
    with progress_shown("records", quiet=quiet) as progress:
        found = index_folder(
            Path(folder), kinds or INDEXES, progress, library=library, keep=not no_cache
        )
    write_result(_shown(*found, form), output, force=force)
    return status_of(found.unread)


def _shown(
    found: dict[IndexKind, list[IndexHeading]], records: int, unread: tuple[str, ...], form: str
) -> str:
    from inscribe.report import indexes

    if form == "json":
        made = indexes.indexes_as_json(found, records, unread)
        return json.dumps(made, ensure_ascii=False, indent=2)
    if form == "csv":
        return indexes.indexes_as_csv(found)
    if form == "html":
        return indexes.indexes_as_html(found, records)
    if form == "md":
        return indexes.indexes_as_markdown(found)
    return indexes.indexes_as_text(found, records, unread)
