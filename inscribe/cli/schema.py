"""``inscribe schema``: the JSON Schemas of records and of what the commands print."""

from __future__ import annotations

import json

import click

from inscribe.cli.giving import example, output_options
from inscribe.cli.showing import write_result

RECORD = "record"
# Named here so that --help loads nothing; a test holds them against the schemas that there are.
OUTPUTS = (
    "read",
    "collate",
    "collate-several",
    "source-find",
    "source-list",
    "date",
    "dates",
    "sign",
    "name",
    "check",
    "next",
    "import",
    "index",
    "entry",
    "restore",
    "measure",
    "merge",
    "concord",
    "concord-clusters",
    "concord-translations",
    "refused-line",
)


@click.command(epilog=example("inscribe schema -o record.schema.json", "inscribe schema collate"))
@click.argument("what", type=click.Choice((RECORD, *OUTPUTS)), default=RECORD, metavar="[WHAT]")
@output_options
def command(what: str, output: str | None, force: bool, quiet: bool) -> None:
    """Print a JSON Schema (draft 2020-12): of records, or of what a command prints as JSON.

    WHAT is record (without WHAT), read, collate, collate-several (with several sources),
    source-find, source-list (each text), date, dates (several of one object), sign, name, check,
    next, import, index, entry, restore, measure, merge, concord, concord-clusters,
    concord-translations or refused-line (what stands in place of the
    answer to a line that cannot be used). Editors that know JSON Schema check records and offer
    keys and words while you type.

    Records count signs and columns from 1, as one does on the metal; JSON counts them from 0. Each
    key that counts says from where.
    """
    if what == RECORD:
        from inscribe.record import record_schema

        schema = record_schema()
    else:
        from inscribe.keys import schema_of

        schema = schema_of(what)
    write_result(json.dumps(schema, ensure_ascii=False, indent=2), output, force=force)
