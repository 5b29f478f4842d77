"""``inscribe read``: what an inscription says."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

from inscribe.cli.giving import (
    COUNTING,
    Given,
    Wished,
    conventions_option,
    example,
    expect_settled_names,
    format_option,
    given,
    interpretations,
    library_if_any,
    library_option,
    output_options,
    override_option,
    overrides_of,
    passage_option,
    passages_of,
    read_literal,
    refuse_beyond,
    register_option,
    settled_option,
)
from inscribe.cli.showing import Tally, progress, refusal, terminal_bytes, write_result
from inscribe.errors import InputError, InscribeError, Place, reason_of

if TYPE_CHECKING:
    from inscribe.reading import Choice, Interpretation


@click.command(
    epilog=COUNTING
    + example(
        "inscribe read examples/DEMO-001.toml",
        "inscribe read 於東都應需造之",
        "inscribe read 春の夜の夢 --gloss",
        "inscribe read --text 嶺曉作 --override 1-2=name:みねあき",
        "inscribe read --text 春の夜露岳書 --passage 4-6=signature:wrote",
        "inscribe read --watch records/A-0412.toml",
        "inscribe read --lines --format jsonl < transcriptions.txt",
    )
)
@click.argument("path", required=False, metavar="[RECORD|FILE|TEXT|-]")
@click.option("--text", "literal", metavar="TEXT", help="Read TEXT itself.")
@click.option("--lines", is_flag=True, help="Read one transcription a line, one result a line.")
@click.option("--watch", is_flag=True, help="Read again whenever the file is saved; Ctrl-C stops.")
@register_option
@override_option
@passage_option
@settled_option
@library_option("The library with the texts that records name by id")
@click.option(
    "--letters",
    type=click.Choice(["hepburn", "iso3602"]),
    default="hepburn",
    show_default=True,
    help="Modified Hepburn as in the ALA-LC table, or ISO 3602 (strict).",
)
@click.option("--second-opinion", is_flag=True, help="Ask pykakasi too; slow to load.")
@click.option("--gloss", is_flag=True, help="Show each word: signs, kana, letters, meaning.")
@click.option("--why", is_flag=True, help="Show every word, every change of form, and the reasons.")
@format_option("text", "json", "jsonl", name="shape")
@output_options
@conventions_option
def command(
    path: str | None,
    literal: str | None,
    lines: bool,
    watch: bool,
    register: Choice,
    settled: tuple[str, ...],
    divided: tuple[str, ...],
    records: str | None,
    library_file: str | None,
    letters: str,
    second_opinion: bool,
    gloss: bool,
    why: bool,
    shape: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Say what an inscription says: forms, words, kana, Latin letters, signature, dates, doubts.

    A record is read with the readings its cataloguer settled. The first reading is the likeliest
    and others follow with their reasons: a proposal, and a signature is not an attribution.
    """
    if lines and watch:
        raise InputError("--watch and --lines do not go together", hint="leave one of them out")
    expect_settled_names(records)
    overrides = overrides_of(settled) if settled else ()
    passages = passages_of(divided) if divided else ()
    if lines and (overrides or passages):
        key = "override" if overrides else "passage"
        raise InputError(f"--{key} and --lines do not go together", hint="read one text at a time")
    text = given(path, literal, lines=lines)
    if lines:
        wished = Wished(register, library_file=library_file)
        _read_lines(text, wished, letters, why, gloss, shape, output, force, quiet)

    from inscribe import tables

    wished = Wished(register, overrides, passages, library_file)

    def shown() -> str:
        found = list(interpretations(text, wished))
        refuse_beyond("override", overrides, found)
        refuse_beyond("passage", passages, found)
        if tables.has_own("people"):
            from inscribe.persons import with_persons

            found = with_persons(found)
        if second_opinion:
            from inscribe.reading.inscription import with_second_opinion

            found = [with_second_opinion(each) for each in found]
        found = [_in_letters(each, letters) for each in found]
        return _shown(_glossed(found) if gloss else found, shape, why, gloss)

    if watch:
        _watch(text, shown, output)
    else:
        write_result(shown(), output, force=force)


def _watch(text: Given, shown: Callable[[], str], output: str | None) -> None:
    from inscribe.cli.showing import watch

    if text.path is None or output is not None:
        raise InputError("--watch shows a file's reading on the terminal", hint="name a file only")
    watch(text.path, shown)


def _glossed(found: list[Interpretation]) -> list[Interpretation]:
    from inscribe.glossing import with_glosses

    return [with_glosses(each) for each in found]


def _in_letters(found: Interpretation, letters: str) -> Interpretation:
    if letters == "hepburn":
        return found
    from inscribe.reading.inscription import iso_reading

    return iso_reading(found)


def _shown(found: list[Interpretation], shape: str, why: bool, gloss: bool) -> str:
    if shape == "text":
        from inscribe.report.terminal import cautions_as_text, reading_as_text

        readings = "\n".join(reading_as_text(each, why=why, gloss=gloss) for each in found)
        return readings + cautions_as_text(found)
    import json

    objects = [each.to_dict() for each in found]
    if shape == "jsonl":
        return "".join(json.dumps(each, ensure_ascii=False) + "\n" for each in objects)
    result: Any = objects[0] if len(objects) == 1 else objects
    return json.dumps(result, ensure_ascii=False, indent=2)


def _read_lines(
    text: Given,
    wished: Wished,
    letters: str,
    why: bool,
    gloss: bool,
    shape: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> NoReturn:

    tally = Tally()
    count = _count_of(text.path)
    with (
        library_if_any(wished.library_file) as library,
        progress("lines", output, quiet=quiet) as show,
    ):
        given = _counted(_lines_of(text), tally, lambda done: show(done, count))
        read = partial(read_literal, wished=wished, library=library)
        results = _line_results(given, read, letters, why, gloss, shape, tally)
        if output is not None:
            write_result("".join(results), output, force=force)
        else:
            out = sys.stdout.buffer
            for result in results:
                out.write(terminal_bytes(result))
            out.flush()
    tally.end(output, quiet=quiet)


def _count_of(path: Path | None) -> int | None:
    """Return how many lines a file has, where that can be told before they are read."""
    if path is None or not path.is_file():
        return None
    with path.open("rb") as file:
        return sum(1 for _ in file)


def _counted(lines: Iterator[bytes], tally: Tally, show: Callable[[int], None]) -> Iterator[bytes]:
    for done, line in enumerate(lines):
        show(done)
        tally.take(line)
        yield line


def _lines_of(text: Given) -> Iterator[bytes]:
    from inscribe import files

    if text.kind == "text":
        yield from text.value.encode("utf-8", "surrogateescape").split(b"\n")
    elif text.path is None:
        yield from files.bounded_lines(sys.stdin.buffer, "standard input")
    else:
        try:
            with text.path.open("rb") as file:
                yield from files.bounded_lines(file, text.value)
        except OSError as error:
            reason = reason_of(error, "it cannot be read")
            hint = "check the path and its permissions"
            raise InputError(reason, Place(text.value), hint) from error


def _line_results(
    lines: Iterator[bytes],
    read: Callable[[str], Interpretation],
    letters: str,
    why: bool,
    gloss: bool,
    shape: str,
    tally: Tally,
) -> Iterator[str]:
    import json

    from inscribe import files, tables
    from inscribe.report.terminal import reading_as_text

    for number, line in enumerate(lines, start=1):
        try:
            text = files.transcribed(files.decode(line, "").rstrip("\n"), "")
            found = read(text)
            if tables.has_own("people"):
                from inscribe.persons import with_persons

                found = with_persons([found])[0]
            interpretation = _in_letters(found, letters)
            interpretation = _glossed([interpretation])[0] if gloss else interpretation
        except InscribeError as error:
            tally.refuse(number)
            problem = refusal(number, error)
            yield json.dumps(problem, ensure_ascii=False) + "\n"
            continue
        if shape == "text":
            yield reading_as_text(interpretation, why=why, gloss=gloss) + "\n"
        else:
            yield json.dumps(interpretation.to_dict(), ensure_ascii=False) + "\n"
