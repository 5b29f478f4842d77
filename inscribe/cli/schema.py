"""``inscribe schema``: the JSON Schema of records."""

from __future__ import annotations

import json

import click

from inscribe.cli.common import example, output_options, write_result


@click.command(epilog=example("inscribe schema -o record.schema.json"))
@output_options
def command(output: str | None, force: bool, quiet: bool) -> None:
    """Print the JSON Schema (draft 2020-12) that a record keeps.

    Editors that know JSON Schema check records and offer keys and words while you type.
    """
    from inscribe.record.schema import record_schema

    text = json.dumps(record_schema(), ensure_ascii=False, indent=2)
    write_result(text, output, force=force)
