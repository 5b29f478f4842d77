"""``inscribe import``: an old catalogue list, a TEI document or a manifest becomes records."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import example, format_option, output_options
from inscribe.cli.showing import progress_shown, write_result
from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from inscribe.importing import CatalogueList, ForeignManifest, ImportPlan, ListMapping

SAMPLE = 3  # rows shown of a list that is not imported yet


def _show_keys(context: click.Context, _option: click.Parameter, asked: bool) -> None:
    if asked:
        from inscribe.importing import TARGETS

        for key, field in TARGETS.items():
            choices = f" ({', '.join(field.choices)})" if field.choices else ""
            click.echo(f"{key:32} {field.about}{choices}")
        click.echo(f"{'measurements':32} length x width x thickness in one cell")
        click.echo(f"{'inscription 2.text':32} as inscription.text, of a second inscription")
        context.exit()


@click.command(
    epilog=example(
        "inscribe import old-list.csv --map list.toml",
        "inscribe import old-list.csv --map list.toml --to records --errors left-out.csv",
        "inscribe import edition.xml --to records",
        "inscribe import manifest.json --to records",
    )
)
@click.argument("list_file", metavar="LIST")
@click.option("--map", "map_file", metavar="FILE", help="Which column becomes which key (TOML).")
@click.option("--to", "folder", metavar="FOLDER", help="Where the records go.")
@click.option("--errors", metavar="FILE", help="Write what is the matter with rows to FILE (CSV).")
@click.option("--dry-run", is_flag=True, help="Say what would be done, and write nothing.")
@click.option("--rows", type=click.IntRange(min=0), default=SAMPLE, show_default=True,
    help="How many rows are shown as records before there is a folder.")  # fmt: skip
@click.option("--keys", is_flag=True, is_eager=True, expose_value=False, callback=_show_keys,
    help="List the keys a column may become, and stop.")  # fmt: skip
@format_option(
    "text",
    "json",
    "csv",
    help="How it is told: text, json, or csv (troubles alone).",
    by_ending=False,  # without --map the proposed mapping is written
)
@output_options
def command(
    list_file: str,
    map_file: str | None,
    folder: str | None,
    errors: str | None,
    dry_run: bool,
    rows: int,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> int:
    """Turn a catalogue list (CSV, or .xlsx with the extra excel), TEI or IIIF into records.

    First give --map with a file that does not exist: a mapping is proposed from the headings and
    written there. Correct it; without --to the first rows are shown as records. With --to the
    records are written, all or none. Every cell is kept in its record as it stands, also where no
    key takes it; rows that make no record are listed with their row numbers, with exit status 1.

    A TEI document that inscribe entry wrote (LIST ends in .xml) becomes records without a mapping;
    a record of the same id that is there already is left as it is.

    A manifest of IIIF Presentation 3 made anywhere (LIST ends in .json) becomes a record: title,
    summary, transcription, translation and the pictures at their image service; its metadata is
    kept, and --map says which of it becomes a key. Nothing is fetched. See: inscribe guide imports

    Importing a later state of the list changes only what changed in the list. What a person has
    changed in a record stays and is told; a changed mapping alone changes no record that is there.
    """
    if list_file.lower().endswith(".toml"):
        raise InputError(
            "it is a record, and a list is wanted", Place(list_file), "give a CSV file"
        )
    to = Path(folder) if folder else None
    if list_file.lower().endswith(".xml"):
        return _import_document(list_file, map_file, to, form, output, dry_run=dry_run, force=force)
    held = _manifest(list_file)
    if folder is not None and map_file is None and held is None:
        raise InputError("say which column becomes which key", hint="give --map FILE")
    map_path = Path(map_file) if map_file else None
    found, mapping, proposed = _read(Path(list_file), map_path, held.list if held else None)
    if proposed and (map_file or held is None):
        return _propose(found, mapping, map_file, rows, output, force=force, quiet=quiet)
    if to is None:
        found = found._replace(rows=found.rows[:rows])
    plan = _plan(found, mapping, held, to, quiet=quiet)
    written = to is not None and not dry_run
    if to is not None and written:
        from inscribe.importing import write_plan

        write_plan(plan, to)
    if errors:
        _write_errors(plan, errors, force=force)
    shown = _shown(plan, form, written=written)
    if to is None and form == "text":
        shown += _sample(plan)
    write_result(shown, output, force=force)
    return int(any(each.left_out for each in plan.troubles))


def _plan(
    found: CatalogueList,
    mapping: ListMapping,
    held: ForeignManifest | None,
    to: Path | None,
    *,
    quiet: bool,
) -> ImportPlan:
    """Return what becomes of each row; of a manifest with its pictures."""
    from inscribe.importing import import_plan, with_pictures

    with progress_shown("rows", quiet=quiet) as progress:
        plan = import_plan(found, mapping, to, progress)
    return with_pictures(plan, held) if held else plan


def _write_errors(plan: ImportPlan, errors: str, *, force: bool) -> None:
    from inscribe import writing
    from inscribe.report.entries import troubles_as_csv

    writing.write_text(Path(errors), troubles_as_csv(plan), force=force)


def _import_document(
    file: str,
    map_file: str | None,
    to: Path | None,
    form: str,
    output: str | None,
    *,
    dry_run: bool,
    force: bool,
) -> int:
    """Turn a TEI document into records: shown where there is no folder for them."""
    from inscribe.importing import document_plan, write_plan

    if map_file is not None:
        raise InputError("a TEI document has no columns", hint="leave --map away")
    plan = document_plan(Path(file), to)
    if to is not None and not dry_run:
        write_plan(plan, to)
    shown = _shown(plan, form, written=to is not None and not dry_run)
    write_result(
        shown + (_sample(plan) if to is None and form == "text" else ""), output, force=force
    )
    return int(plan.count("not ours") > 0)


def _manifest(file: str) -> ForeignManifest | None:
    """Return the manifest that is to be imported, if it is one."""
    from inscribe.importing import read_manifest

    return read_manifest(Path(file)) if file.lower().endswith((".json", ".jsonld")) else None


def _read(
    path: Path, map_file: Path | None, held: CatalogueList | None
) -> tuple[CatalogueList, ListMapping, bool]:
    """Return the list (that of a manifest is ``held``), its mapping, and whether it is proposed."""
    from inscribe.importing import load_mapping, proposed_mapping, read_list

    if map_file is None or not map_file.exists():
        found = held or read_list(path)
        return found, proposed_mapping(found), True
    mapping = load_mapping(map_file)
    found = held or read_list(
        path,
        encoding=mapping.encoding,
        separator=mapping.separator,
        heading_row=mapping.heading_row,
        sheet=mapping.sheet,
    )
    if missing := [heading for heading in mapping.columns if heading not in found.headings]:
        hint = f"its headings are {', '.join(found.headings)}"
        raise InputError(f"the list has no column {missing[0]}", Place(str(map_file)), hint)
    return found, mapping, False


def _propose(
    found: CatalogueList,
    mapping: ListMapping,
    map_file: str | None,
    rows: int,
    output: str | None,
    *,
    force: bool,
    quiet: bool,
) -> int:
    from inscribe import writing
    from inscribe.importing import import_plan, mapping_as_toml

    text = mapping_as_toml(mapping, found.name)
    if map_file is None:
        write_result(text, output, force=force)
        return 0
    writing.write_text(Path(map_file), text)
    plan = import_plan(found._replace(rows=found.rows[:rows]), mapping)
    if not quiet:
        click.echo(f"{map_file}: a mapping is proposed; correct it", err=True)
    write_result(_shown(plan, "text", written=False) + _sample(plan), output, force=force)
    return 0


def _shown(plan: ImportPlan, form: str, *, written: bool) -> str:
    if form == "json":
        return json.dumps(plan.to_dict(written=written), ensure_ascii=False, indent=2)
    if form == "csv":
        from inscribe.report.entries import troubles_as_csv

        return troubles_as_csv(plan)
    from inscribe.report.terminal import import_as_text

    return import_as_text(plan, written=written)


def _sample(plan: ImportPlan) -> str:
    """Return the first rows as the records they would become, without their cells."""
    from inscribe.report.terminal import printable

    shown = []
    for each in plan.outcomes:
        lines = each.text.partition("\n[imported]")[0].splitlines()
        shown += [f"\n— row {each.row}: {each.what}", *map(printable, lines)]
    return "\n".join(shown) + "\n" if shown else ""
