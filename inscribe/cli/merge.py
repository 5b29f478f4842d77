"""``inscribe merge``: two transcriptions of one object, sign by sign."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import COUNTING, by_option, example, format_option, quiet_option
from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from inscribe.cli.asking import LineReader
    from inscribe.keys import MergeKeys
    from inscribe.record import Record
    from inscribe.recording import Draft
    from inscribe.settling import ComparedPlace, MergeChoice, Merging, Who

INTERRUPTED = 130  # exit status, as shells have it


@click.command(
    epilog=COUNTING
    + example(
        "inscribe merge records/A-0412.toml second/A-0412.toml --by 'A. Reader'",
        "inscribe merge records/A-0412.toml second/A-0412.toml --prefer a --why 'raking light'",
        "inscribe merge records/A-0412.toml second/A-0412.toml --format json",
    )
)
@click.argument("a", metavar="A")
@click.argument("b", metavar="B")
@click.option(
    "--prefer",
    type=click.Choice(["a", "b"]),
    help="Take this side where both read something else; else whichever reads or is surer.",
)
@click.option("--list", "listed", is_flag=True, help="Only show what differs, as in a pipe.")
@by_option
@click.option("--why", default="", metavar="REASON", help="The reason where none is given.")
@click.option("-o", "output", metavar="FILE", help="Write a new record instead of changing A.")
@click.option("--force", is_flag=True, help="Let -o write over an existing file.")
@click.option("--dry-run", is_flag=True, help="Show the change as a diff, and write nothing.")
@format_option("text", "json", by_ending=False)
@quiet_option()
def command(
    a: str,
    b: str,
    prefer: str | None,
    listed: bool,
    by: str,
    why: str,
    output: str | None,
    force: bool,
    dry_run: bool,
    form: str,
    quiet: bool,
) -> None:
    """Hold two transcriptions of one object against each other, and make one of them.

    Sign by sign they are agreed, legible to one only, doubted by one only, or different. On a
    terminal one chooses at each place and says why; --prefer chooses; else what differs is listed
    and the exit status is 1. The choices are set down in record A with who and when, the other
    reader's transcription stays as a reading, and inscribe undo takes it all back.
    """
    from inscribe.record import load
    from inscribe.settling import Who, mergings

    paths = Path(a), Path(b)
    records = load(paths[0]), load(paths[1])
    found = list(mergings(*records))
    live = sys.stdin.isatty() and sys.stderr.isatty() and sys.stdout.isatty() and form == "text"
    if listed or (prefer is None and not live):
        _list(paths, records, found, form)
        sys.exit(1 if any(each.open for each in found) else 0)
    who = Who(by, date.today(), why)
    if prefer is not None:
        choices = {each.number: _preferred(each, prefer) for each in found}
    else:
        choices = _chosen(paths, found)
    record = _merged(records, found, choices, who)
    _write(paths[0], record, who, output, force=force, dry_run=dry_run, quiet=quiet)


def _list(
    paths: tuple[Path, Path], records: tuple[Record, Record], found: list[Merging], form: str
) -> None:
    from inscribe.settling import told_otherwise

    also = told_otherwise(*records)
    names = str(paths[0]), str(paths[1])
    if form == "json":
        import json

        shown: MergeKeys = {
            "a": names[0],
            "b": names[1],
            "inscriptions": [each.to_dict() for each in found],
            "also_different": list(also),
        }
        click.echo(json.dumps(shown, ensure_ascii=False, indent=2))
    else:
        from inscribe.report.terminal import merging_as_text

        click.echo(merging_as_text(*names, found, also))


def _preferred(each: Merging, prefer: str) -> list[MergeChoice]:
    from inscribe.settling import MergeChoice, surer_of

    a = each.a.transcription
    return [
        MergeChoice(
            place,
            "b" if (prefer if place.kind == "different" else surer_of(place, a)) == "b" else "a",
        )
        for place in each.open
    ]


def _chosen(paths: tuple[Path, Path], found: list[Merging]) -> dict[int, list[MergeChoice]]:
    """Ask at each place; what was chosen before a stop is kept, and taken up again."""
    from inscribe.cli.asking import line_reader
    from inscribe.recording import Draft

    draft = Draft.of(paths[0].with_name(f"{paths[0].name}.merge"))
    with draft.alone():
        if draft.taken_up:
            click.echo(f"taken up again after {draft.taken_up} answers", err=True)
        lines = line_reader()
        try:
            choices = {
                each.number: [_choice(each, place, draft, lines) for place in each.open]
                for each in found
            }
        except (click.Abort, KeyboardInterrupt) as error:
            said = f"\nstopped, nothing was merged; the answers are kept in {draft.path}"
            click.echo(said, err=True)
            raise click.exceptions.Exit(INTERRUPTED) from error
        draft.path.unlink(missing_ok=True)
    return choices


def _choice(each: Merging, place: ComparedPlace, draft: Draft, lines: LineReader) -> MergeChoice:
    """Return what one person chose in one place, and why."""
    from inscribe.report.terminal import merged_place_as_text
    from inscribe.settling import MergeChoice, surer_of, written_in

    surer = surer_of(place, each.a.transcription)
    sides = written_in(each.a, place.a), written_in(each.b, place.b)
    key = f"{each.number}.{place.a[0]}-{place.a[1]}.{'|'.join(sides)}"
    if key not in draft.answers:
        click.echo(merged_place_as_text(each, place), err=True)
    question = f"  a, b, or what is carved there [{surer}]"
    said = draft.answer(key, lambda: _line(lines, question, draft, key) or surer, _carved_problem)
    why = draft.answer(
        f"{key}.why", lambda: _line(lines, "  why (may stay empty)", draft, f"{key}.why"), _no_check
    )
    side = said.lower()
    if side in ("a", "b"):
        return MergeChoice(place, "a" if side == "a" else "b", why)
    return MergeChoice(place, "other", why, "" if said == "-" else said)


def _line(lines: LineReader, question: str, draft: Draft, key: str) -> str:
    from inscribe.cli.asking import TypingStopped
    from inscribe.recording import plain

    begun = draft.typed_for(key)
    while True:
        try:
            said = lines.line(question, begun).strip()
        except TypingStopped as stopped:
            draft.keep_typing(key, stopped.typed)
            raise click.Abort from stopped
        said = plain(said) if plain(said).lower() in ("a", "b", "-") else said
        problem = "" if key.endswith(".why") or not said else _carved_problem(said)
        if not problem:
            return said
        click.echo(f"  {problem}", err=True)
        begun = said


def _carved_problem(said: str) -> str:
    from inscribe.recording import column_problem

    return "" if said.lower() in ("a", "b", "-") else column_problem(said)


def _no_check(_answer: str) -> str:
    return ""


def _merged(
    records: tuple[Record, Record],
    found: Sequence[Merging],
    choices: dict[int, list[MergeChoice]],
    who: Who,
) -> Record:
    from inscribe.settling import merged, pairs_of

    inscriptions = list(records[0].inscriptions)
    for each in found:
        inscriptions[each.number] = merged(each.a, each.b, choices[each.number], who)
    for number, other in pairs_of(*records):
        if number is None and other is not None:  # only the second has it
            inscriptions.append(records[1].inscriptions[other])
    return records[0]._replace(inscriptions=tuple(inscriptions))


def _write(
    path: Path,
    record: Record,
    who: Who,
    output: str | None,
    *,
    force: bool,
    dry_run: bool,
    quiet: bool,
) -> None:
    from inscribe import files, writing
    from inscribe.record import revised
    from inscribe.settling import change, new_batch

    before = files.read_text(path)
    after = revised(before, str(path), record)
    if dry_run:
        from inscribe.report.terminal import diffs_as_text

        click.echo(diffs_as_text([(str(path), before, after)]), nl=False)
        return
    made = sum(len(each.decisions) for each in record.inscriptions)
    if output is not None:
        if Path(output).suffix != ".toml":
            raise InputError("a record is a .toml file", Place(output), "name it so")
        writing.write_text(Path(output), after, force=force)
        told = f"written: {output}"
    elif before == after:
        told = f"unchanged: {path}"
    else:
        what = f"merged with another transcription, {made} places decided"
        change(path, before, after, what=what, by=who.by, batch=new_batch())
        told = f"written: {path}; take it back: inscribe undo {path}"
    if not quiet:
        nobody = "" if who.by else "; nobody is named: give --by NAME, or set INSCRIBE_READER"
        click.echo(told + nobody, err=True)
