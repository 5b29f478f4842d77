"""``inscribe source``: the library of source texts, and which of them an inscription is from."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import (
    STANDARD_INPUT,
    example,
    format_for,
    format_option,
    library_option,
    library_path,
    output_options,
    quiet_option,
    read_standard_input,
)
from inscribe.cli.showing import Tally, progress, progress_shown, refusal, write_result
from inscribe.errors import InputError, InscribeError, harmless

if TYPE_CHECKING:
    from inscribe.sources import Added, SourceText

MOST_NAMED = 20  # ids of replaced texts

_library = library_option("The library file")


@click.group(
    epilog=example(
        "inscribe source add examples/sources", "inscribe source find --text 春過て夏来に"
    )
)
def command() -> None:
    """Keep a library of source texts, and find which of them an inscription is from."""


@command.command(
    short_help="add texts from files, folders or standard input",
    epilog=example(
        "inscribe source add anthology.jsonl notes/ --each paragraph",
        "inscribe source add --starter",
    ),
)
@click.argument("paths", nargs=-1, metavar="[FILE|FOLDER|-]...")
@click.option(
    "--starter",
    is_flag=True,
    help="Texts that plates copy most often, from before 1600; typed from memory.",
)
@click.option("--from", "kind", help="The kind of file: csv, jsonl, tei, text, toml or tsv.")
@click.option(
    "--each",
    "unit",
    type=click.Choice(["file", "paragraph", "line"]),
    default="file",
    show_default=True,
    help="What one text is in a plain text file.",
)
@_library
@quiet_option("No progress and no remarks.")
def add(
    paths: tuple[str, ...],
    starter: bool,
    kind: str | None,
    unit: str,
    library_file: str | None,
    quiet: bool,
) -> None:
    """Add texts from files, folders or standard input; adding the same again changes nothing.

    Nothing is added unless every text of the input can be used. Tables, JSON Lines and TOML name
    their fields: text, and as far as there are any id (else the number is taken, or the line),
    title, provenance and licence; others are kept.
    """
    from inscribe import sources
    from inscribe.sources import Library

    if not (paths or starter):
        raise InputError("give texts to add", hint="files, folders, - or --starter")
    if kind is not None and kind not in sources.FORMATS:
        raise InputError(
            f"there is no kind of file {kind!r}", hint="use one of " + ", ".join(sources.FORMATS)
        )
    piped = read_standard_input() if STANDARD_INPUT in paths else ""
    named = sources.files_in(Path(path) for path in paths if path != STANDARD_INPUT)

    reading = [""]  # the file at hand

    def texts() -> Iterator[SourceText]:
        if starter:
            yield from sources.starter_texts()
        for path, stem in zip(named, sources.stems_of(named), strict=True):
            reading[0] = str(path)
            yield from _some(sources.texts_in(path, kind=kind, unit=unit, stem=stem))
        if STANDARD_INPUT in paths:
            reading[0] = "standard input"
            yield from _some(
                sources.texts_of(piped, "standard input", "input", kind=kind or "jsonl", unit=unit)
            )

    try:
        with progress_shown("checking", quiet=quiet) as show:
            count = sources.checked(texts(), lambda done: show(done, None))
    except InscribeError as error:
        raise error.in_file(reading[0]) from error
    with Library(library_path(library_file), create=True) as library:
        with progress_shown("adding", quiet=quiet) as show:
            added = sources.add_texts(library, texts(), count, lambda done: show(done, count))
        held = len(library)
    if not quiet:
        _tell(added, held)


def _some(texts: Iterator[SourceText]) -> Iterator[SourceText]:
    """Yield the texts of one file, which must have one."""
    first = next(texts, None)
    if first is None:
        raise InputError(
            "there is no text in it",
            hint="give .txt, .toml, .csv, .tsv, .jsonl or .xml files; a TOML file has [[text]]",
        )
    yield first
    yield from texts


def _tell(added: Added, held: int) -> None:
    counts = f"{added.new} added, {added.changed} replaced, {added.unchanged} already there"
    click.echo(f"{counts}; the library holds {held} texts", err=True)
    if added.replaced:
        more = f" and {added.changed - MOST_NAMED} more" if added.changed > MOST_NAMED else ""
        named = ", ".join(added.replaced[:MOST_NAMED])
        click.echo(harmless(f"replaced, the words before are gone: {named}{more}"), err=True)


@command.command(
    "list", short_help="list the texts", epilog=example("inscribe source list --format json")
)
@_library
@format_option("text", "json")
@output_options
def list_texts(
    library_file: str | None, form: str, output: str | None, force: bool, quiet: bool
) -> None:
    """List the texts of the library."""
    from inscribe.report.terminal import listing
    from inscribe.sources import Library

    with Library(library_path(library_file)) as library:
        if form == "json":
            result = json.dumps([t.to_dict() for t in library.texts()], ensure_ascii=False)
        else:
            result = listing(library.texts())
    write_result(result, output, force=force)


@command.command(short_help="remove texts", epilog=example("inscribe source remove kokin-0009"))
@click.argument("ids", nargs=-1, required=True, metavar="ID...")
@_library
@quiet_option("No remarks.")
def remove(ids: tuple[str, ...], library_file: str | None, quiet: bool) -> None:
    """Remove texts from the library by id, all of them or none."""
    from inscribe.sources import Library

    with Library(library_path(library_file)) as library:
        library.remove(ids)
    if not quiet:
        click.echo(f"{len(set(ids))} removed", err=True)


@command.command(
    short_help="write texts out", epilog=example("inscribe source export -o sources.jsonl")
)
@click.argument("ids", nargs=-1, metavar="[ID]...")
@_library
@output_options
def export(
    ids: tuple[str, ...], library_file: str | None, output: str | None, force: bool, quiet: bool
) -> None:
    """Write texts as JSON Lines, in the form that inscribe source add reads."""
    from inscribe import sources

    format_for(None, output, {"jsonl": "jsonl"}, "jsonl")
    with sources.Library(library_path(library_file), texts_only=True) as library:
        texts = list(library.texts(ids or None))
        held = {text.id for text in texts}
        for identity in ids:
            if identity not in held:
                raise sources.no_text(identity, library.ids(), library.path)
    lines = [json.dumps(text.to_dict(), ensure_ascii=False) for text in texts]
    write_result("\n".join(lines), output, force=force)


@command.command(
    short_help="which text an inscription is from",
    epilog=example("inscribe source find --text 春過て夏来に", "inscribe source find worn.toml"),
)
@click.argument("path", required=False, metavar="[RECORD|FILE|-]")
@click.option(
    "--text", "literal", metavar="TEXT", help="Look for TEXT: signs, kana or Latin letters."
)
@click.option("--lines", is_flag=True, help="One query a line, one answer a line, in order.")
@click.option(
    "--most", type=click.IntRange(1, 100), default=5, show_default=True, help="Hits shown."
)
@_library
@format_option("text", "json", "jsonl")
@output_options
def find(
    path: str | None,
    literal: str | None,
    lines: bool,
    most: int,
    library_file: str | None,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Find which text of the library an inscription is from, by its sounds and signs.

    Old forms, missing voicing marks, unreadable signs (□), gaps and missing ends do no harm. The
    score is the probability that the text is the source: 1 at the most in all, but for texts of
    nearly the same words, which are one answer. A search can also end with none.
    """
    from inscribe.cli.giving import line_queries, queries
    from inscribe.report.terminal import hits_as_text
    from inscribe.sources import Library, answer, find as find_text

    asked = list(line_queries(path, literal) if lines else queries(path, literal))
    answers: list[str] = []
    tally = Tally()
    with (
        Library(library_path(library_file)) as library,
        progress("texts", output, quiet=quiet) as show,
    ):
        for done, (number, text, transcription) in enumerate(asked):
            show(done, len(asked))
            tally.take(text)
            try:
                hits = find_text(library, transcription(), most)
            except InscribeError as error:
                if not lines:
                    raise
                tally.refuse(number)
                answers.append(json.dumps(refusal(number, error), ensure_ascii=False))
                continue
            if form == "text":
                answers.append(hits_as_text(text, transcription(), hits))
            else:
                indent = 2 if form == "json" and not lines else None
                found = answer(text, hits)
                answers.append(json.dumps(found, ensure_ascii=False, indent=indent))
    if answers or output:
        write_result("\n".join(answers), output, force=force)
    if lines:
        tally.end(output, quiet=quiet)
