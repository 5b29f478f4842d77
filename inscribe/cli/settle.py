"""``inscribe settle``: what a person decides, written into the record."""

from __future__ import annotations

import sys
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import by_option, example, library_option, library_path, quiet_option
from inscribe.cli.showing import progress_shown, told
from inscribe.errors import InputError, InscribeError, Place

if TYPE_CHECKING:
    from inscribe.record import Record
    from inscribe.settling import Revision, Settled, Settlement, Who


@click.command(
    epilog="Signs are counted from 1, marks included; what is written is found in any form.\n\n"
    + example(
        "inscribe settle records/A-0412.toml 浅霧軒=あさぎりけん --name --by 'A. Reader'",
        "inscribe settle records/A-0412.toml 29-34=signature:carved --why 'another hand'",
        "inscribe settle records/A-0412.toml --accept 1 --from restore --sign 9",
        "inscribe settle records --where kind=kozuka 浅霧軒=あさぎりけん --name",
    )
)
@click.argument("given", nargs=-1, required=True, metavar="RECORD|FOLDER... [SIGNS=READING]...")
@click.option("--name", "names", is_flag=True, help="What is given a reading is a name.")
@click.option(
    "--accept", type=click.IntRange(1), metavar="N", help="Take what was offered, by its number."
)
@click.option(
    "--from",
    "offerer",
    type=click.Choice(["read", "restore", "source"]),
    help="Who offered it: read (a reading), restore (a worn sign), source find (a text).",
)
@click.option(
    "--inscription", type=click.IntRange(1), metavar="N", help="Only the N-th inscription."
)
@click.option("--sign", type=click.IntRange(1), metavar="N", help="The worn sign that is restored.")
@click.option(
    "--where",
    "conditions",
    multiple=True,
    metavar="KEY=PATTERN",
    help="Only records whose id, kind, title, place, hand, execution, register, text or reader is "
    "so (* and ? stand for anything); may be given again.",
)
@click.option("--replace", "replaces", is_flag=True, help="Replace what was settled otherwise.")
@by_option
@click.option("--why", default="", metavar="REASON", help="The reason, kept with it.")
@click.option("--dry-run", is_flag=True, help="Show the change as a diff, and write nothing.")
@click.option("--yes", "-y", is_flag=True, help="Do not ask before several records are changed.")
@library_option("The library of source texts")
@quiet_option()
def command(
    given: tuple[str, ...],
    names: bool,
    accept: int | None,
    offerer: str | None,
    inscription: int | None,
    sign: int | None,
    conditions: tuple[str, ...],
    replaces: bool,
    by: str,
    why: str,
    dry_run: bool,
    yes: bool,
    library_file: str | None,
    quiet: bool,
) -> None:
    """Write what a person decides into records: how signs are read, and what is a passage.

    SIGNS are the signs themselves (浅霧軒=あさぎりけん) or their numbers (4-5=みねあき); the
    reading is kana, or a kind of passage and what its person did (29-34=signature:carved). It wins
    over whatever the program proposes. What was settled of signs that only moved is put right on
    the way. Comments and layout of the file stay; inscribe undo takes the change back.
    """
    from inscribe.settling import Who, is_said, settlement

    sayings = [settlement(each, names=names) for each in given if is_said(each)]
    paths = [_existing(each) for each in given if not is_said(each)]
    if not paths:
        raise InputError("no record is named", hint="inscribe settle RECORD 浅霧軒=あさぎりけん")
    who = Who(by, date.today(), why)
    several = len(paths) > 1 or paths[0].is_dir()
    if accept is not None or offerer is not None:
        number, asked = _one_offered(accept, offerer, several, bool(sayings))
        settle: Callable[[Record], Settled] = partial(
            _taken, paths[0], number, asked, inscription, sign, who, library_file
        )
    else:
        settle = partial(
            _settled,
            sayings=sayings,
            who=who,
            inscription=inscription - 1 if inscription else None,
            replaces=replaces,
        )
    broken: list[InscribeError] = []
    found = _revisions(paths, conditions, settle, several, broken, quiet)
    _tell(found, several, sayings, broken)
    _write(found, who, several=several, dry_run=dry_run, yes=yes, quiet=quiet)
    if broken or any(each.settled.kept for each in found):
        sys.exit(1)


def _existing(given: str) -> Path:
    path = Path(given)
    if not path.exists():
        raise InputError("there is no such record", Place(given), "name a record or a folder")
    return path


def _one_offered(
    accept: int | None, offerer: str | None, several: bool, said: bool
) -> tuple[int, str]:
    if accept is None or offerer is None:
        said_so = "--accept and --from go together"
        raise InputError(said_so, hint="as in: --accept 1 --from restore")
    if several or said:
        raise InputError(
            "--accept is for one record alone", hint="name one record and nothing else"
        )
    return accept, offerer


def _settled(
    record: Record, *, sayings: list[Settlement], who: Who, inscription: int | None, replaces: bool
) -> Settled:
    from inscribe.settling import settle

    return settle(record, sayings, who, inscription=inscription, replace_settled=replaces)


def _taken(
    path: Path,
    accept: int,
    offerer: str,
    inscription: int | None,
    sign: int | None,
    who: Who,
    library_file: str | None,
    record: Record,
) -> Settled:
    from inscribe.settling import reading_taken, restoration_taken, source_taken

    number = _place(record, inscription)
    if offerer == "read":
        return reading_taken(record, accept, number, who, library_file=library_path(library_file))
    if offerer == "source":
        from inscribe.sources import Library

        with Library(library_path(library_file)) as library:
            return source_taken(record, accept, number, who, library)
    from inscribe.cli.giving import expected_names, opened_library

    text = record.inscriptions[number]
    texts = [lambda: text.transcription]
    names = expected_names(None, False, str(path), texts, "auto", library_file, quiet=True)
    with opened_library(library_file) as library:
        return restoration_taken(
            record,
            accept,
            number,
            who,
            sign=None if sign is None else sign - 1,
            library=library,
            names=names,
        )


def _place(record: Record, inscription: int | None) -> int:
    count = len(record.inscriptions)
    if inscription is None and count > 1:
        raise InputError("the record has several inscriptions", hint="say which: --inscription N")
    if inscription is not None and inscription > count:
        raise InputError(f"there is no inscription {inscription}", hint=f"the record has {count}")
    return (inscription or 1) - 1


def _revisions(
    paths: list[Path],
    conditions: tuple[str, ...],
    settle: Callable[[Record], Settled],
    several: bool,
    broken: list[InscribeError],
    quiet: bool,
) -> list[Revision]:
    from inscribe.settling import chosen, revision

    found: list[Revision] = []
    meant = list(chosen(paths, conditions))
    with progress_shown("records", quiet=quiet) as show:
        for done, path in enumerate(meant):
            show(done, len(meant))
            try:
                if isinstance(path, InscribeError):
                    raise path
                found.append(revision(path, settle))
            except InscribeError as error:
                if not several:
                    raise (error if error.place.file else error.in_file(str(path))) from error
                broken.append(error)
    return found


def _tell(
    found: list[Revision], several: bool, sayings: list[Settlement], broken: list[InscribeError]
) -> None:
    from inscribe.report.terminal import revisions_as_text

    for problem in broken:
        click.echo(told(problem), err=True)
    unfound = [
        saying.written
        for saying in sayings
        if not any(saying in each.settled.found for each in found)
    ]
    if unfound:
        where = "the records" if several else str(found[0].path) if found else "the record"
        said = f"{', '.join(unfound)} does not stand in {where}"
        raise InputError(
            said, hint="write it as it is carved, or give signs by number: 4-5=みねあき"
        )
    click.echo(revisions_as_text(found, several=several), err=True)


def _write(
    found: list[Revision], who: Who, *, several: bool, dry_run: bool, yes: bool, quiet: bool
) -> None:
    changed = [each for each in found if each.changes]
    if dry_run:
        from inscribe.report.terminal import diffs_as_text

        click.echo(diffs_as_text([(str(e.path), e.before, e.after) for e in changed]), nl=False)
        return
    if not changed:
        return
    if several and not yes and not _agreed(len(changed)):
        click.echo("nothing was written", err=True)
        return
    from inscribe.settling import change, new_batch

    batch = new_batch()
    for each in changed:
        what = "; ".join([*each.settled.done, *each.mended])
        change(each.path, each.before, each.after, what=what, by=who.by, batch=batch)
    if not quiet:
        _tell_written(changed, who, several)


def _agreed(count: int) -> bool:
    if not sys.stdin.isatty():
        hint = "look at it with --dry-run, then give --yes"
        raise InputError(f"{count} records would be changed, and nobody can be asked", hint=hint)
    return click.confirm(f"change {count} records?", default=False, err=True)


def _tell_written(changed: list[Revision], who: Who, several: bool) -> None:
    nobody = "" if who.by else "; nobody is named: give --by NAME, or set INSCRIBE_READER"
    paths = sorted({str(each.path.parent) for each in changed}) if several else [changed[0].path]
    back = f"inscribe undo {paths[0]}"
    click.echo(f"written: {len(changed)} changed; take it back: {back}{nobody}", err=True)
