"""``inscribe undo``: the last change of a record taken back."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import example, quiet_option
from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from inscribe.settling import PastChange


@click.command(epilog=example("inscribe undo records/A-0412.toml", "inscribe undo records"))
@click.argument("paths", nargs=-1, required=True, metavar="RECORD|FOLDER...")
@click.option("--dry-run", is_flag=True, help="Show what would change as a diff, write nothing.")
@click.option("--list", "listed", is_flag=True, help="Show the changes kept, the last one first.")
@click.option("--force", is_flag=True, help="Take it back even if the record was changed since.")
@quiet_option()
def command(paths: tuple[str, ...], dry_run: bool, listed: bool, force: bool, quiet: bool) -> None:
    """Take back the last change that settle, merge or new --again made to a record.

    Given again, it takes back the one before, up to fifty. Of a folder, the last command's changes
    to all its records are taken back. A record that was changed by other means since is left alone.
    """
    from inscribe.settling import undo

    found = [pair for path in paths for pair in _last_changes(Path(path))]
    if listed:
        for path, _ in found:
            _list(path)
        return
    if dry_run:
        _show(found)
        return
    for path, _ in found:
        gone = undo(path, force=force)
        if not quiet:
            by = f" by {gone.by}" if gone.by else ""
            click.echo(f"{path}: taken back: {gone.what} ({gone.when}{by})", err=True)


def _last_changes(path: Path) -> list[tuple[Path, PastChange]]:
    """Return a record and its last change; of a folder, those records that changed last, at once.

    Raises:
        InputError: there is no change to take back.
    """
    from inscribe.record import paths_in
    from inscribe.settling import history_of, last_change

    records = paths_in(path) if path.is_dir() else [path]
    if not path.exists():
        raise InputError("there is no such record", Place(str(path)), "name a record or a folder")
    changed = [
        (each, last)
        for each in records
        if history_of(each).exists() and (last := last_change(each)) is not None
    ]
    if not changed:
        hint = "only changes by inscribe settle, merge and new --again can be taken back"
        raise InputError("there is no change to take back", Place(str(path)), hint)
    newest = max(last.batch for _, last in changed)
    return [pair for pair in changed if pair[1].batch == newest]


def _list(path: Path) -> None:
    from inscribe.settling import past_changes

    for each in reversed(past_changes(path)):
        click.echo(f"{path}: {each.when}  {each.by or '-'}  {each.what}")


def _show(found: list[tuple[Path, PastChange]]) -> None:
    from inscribe import files
    from inscribe.report.terminal import diffs_as_text

    shown = [
        (str(path), files.read_text(path), files.decode(last.before.encode("utf-8"), str(path)))
        for path, last in found
    ]
    click.echo(diffs_as_text(shown), nl=False)
