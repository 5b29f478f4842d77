"""``inscribe example``: the invented collection, laid down to try things on."""

from __future__ import annotations

from pathlib import Path

import click

from inscribe import writing
from inscribe.cli.giving import example, quiet_option
from inscribe.errors import InputError, Place

_INSTALLED = Path(__file__).parent.parent / "examples"
EXAMPLES = _INSTALLED if _INSTALLED.is_dir() else Path(__file__).parents[2] / "examples"


@click.command(epilog=example("inscribe example collection"))
@click.argument("folder", metavar="FOLDER")
@click.option("--force", is_flag=True, help="Write over files of the same names.")
@quiet_option()
def command(folder: str, force: bool, quiet: bool) -> None:
    """Lay down the invented collection in a folder: records, sources, a house style, a table.

    All objects, names and pictures of it are made up; nothing in it is to be looked for elsewhere.
    """
    target = Path(folder)
    copied = sorted(path for path in EXAMPLES.rglob("*") if path.is_file())
    there = [path for path in copied if (target / path.relative_to(EXAMPLES)).exists()]
    if there and not force:
        taken = f"{there[0].relative_to(EXAMPLES)} is there already"
        raise InputError(taken, Place(folder), "name another folder, or use --force")
    for path in copied:
        to = target / path.relative_to(EXAMPLES)
        to.parent.mkdir(parents=True, exist_ok=True)
        writing.write_bytes(to, path.read_bytes(), force=force)
    if not quiet:
        records = len(list(target.glob("*.toml")))
        click.echo(f"{records} records, with their sources, lie in {folder} now; look at one with")
        click.echo(f"  inscribe read {target / 'DEMO-001.toml'}")
