"""``inscribe date``: a date expression resolved and checked."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from inscribe.cli.giving import (
    COUNTING,
    STANDARD_INPUT,
    example,
    expect_no_files,
    format_option,
    is_piped,
    output_options,
    read_standard_input,
    read_transcription,
)
from inscribe.cli.showing import (
    Show,
    Tally,
    lines_of,
    progress,
    refusal,
    terminal_bytes,
    write_result,
)
from inscribe.errors import InputError, InscribeError, Place

if TYPE_CHECKING:
    from inscribe.dates import Comparison

Between = tuple[int, int]
EARLIEST, LATEST = 645, 2100
TRANSCRIBERS_MARKS = "()（）[]［］〔〕〈〉"


@click.command(
    epilog=COUNTING
    + example(
        "inscribe date 嘉永六年癸丑仲秋",
        "inscribe date 癸丑 --between 1750 1870",
        "inscribe date --record examples/DEMO-008.toml",
    )
)
@click.argument("texts", nargs=-1, metavar="[TEXT|-]...")
@click.option(
    "--between",
    nargs=2,
    type=int,
    metavar="YEAR YEAR",
    help="Years a date without an era may mean, both included.",
)
@click.option(
    "--record", "record", metavar="FILE", help="Take the dates of a record's inscriptions."
)
@click.option("--lines", is_flag=True, help="Read one date a line, write one result a line.")
@format_option("text", "json", "jsonl", name="shape")
@output_options
def command(
    texts: tuple[str, ...],
    between: Between | None,
    record: str | None,
    lines: bool,
    shape: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Resolve a date or an age as carved, and check whether it agrees with itself.

    Several TEXTs are the inscriptions of one object: they are held against each other.
    """
    _check_range(between)
    if lines:
        _answer_lines(texts, record, between, shape, output, force, quiet)
    if not texts and record is None and is_piped():
        texts = (STANDARD_INPUT,)
    if bool(texts) == (record is not None):
        raise InputError("give a date to resolve", hint="a text, - or --record FILE")
    for each in texts:
        is_record = each.endswith(".toml")
        expect_no_files((each,), f"inscribe {'date --record' if is_record else 'read'} {{}}")
    if len(texts) == 1:
        result = _one_shown(_given(texts[0]), between, shape)
    elif record:
        result = _several_shown(_of_record(Path(record), between), shape)
    else:
        result = _several_shown(_of_texts(texts, between), shape)
    write_result(result, output, force=force)


def _check_range(between: Between | None) -> None:
    if between is not None and not EARLIEST <= between[0] <= between[1] <= LATEST:
        raise InputError(
            f"--between {between[0]} {between[1]} is no range of years",
            hint=f"the earlier year first, both from {EARLIEST} to {LATEST}",
        )


def _given(text: str) -> str:
    """Return the text of an argument, or standard input for ``-``."""
    return _unmarked(read_transcription() if text == STANDARD_INPUT else text)


def _unmarked(text: str) -> str:
    """Return the text without the marks of a transcriber, in current forms if it had any."""
    if not any(mark in text for mark in TRANSCRIBERS_MARKS):
        return text
    from inscribe import forms, notation

    try:
        return forms.normalise(notation.parse(text)).text
    except InscribeError:
        return text


def _of_texts(texts: tuple[str, ...], between: Between | None) -> Comparison:
    from inscribe.dates import compared, resolve

    return compared([resolve(_given(text), between) for text in texts])


def _of_record(path: Path, between: Between | None) -> Comparison:
    """Return every date of a record's inscriptions, held against each other and the maker.

    Raises:
        InputError: there is none.
    """
    from inscribe.record import dates_of, load

    found = dates_of(load(path), between)
    if not found.readings:
        raise InputError("no inscription of the record bears a date or an age", Place(str(path)))
    return found


def _one_shown(text: str, between: Between | None, shape: str) -> str:
    """Show the date of one text; further dates in it follow (in JSON under "others")."""
    from inscribe.dates import resolve_all

    first, *others = resolve_all(text, between)
    if shape == "text":
        from inscribe.report.terminal import date_as_text

        return "\n".join(date_as_text(reading) for reading in (first, *others))
    result = first.to_dict() | {"others": [each.to_dict() for each in others]}
    return _as_line(result) if shape == "jsonl" else _as_document(result)


def _several_shown(found: Comparison, shape: str) -> str:
    """Show the dates of one object's inscriptions, each and together."""
    if shape == "jsonl":
        return "".join(_as_line(reading.to_dict()) for reading in found.readings)
    if shape == "json":
        return _as_document(found.to_dict())
    from inscribe.report.terminal import comparison_as_text

    return comparison_as_text(found)


def _as_document(result: Mapping[str, object]) -> str:
    return json.dumps(result, ensure_ascii=False, indent=2) + "\n"


def _as_line(result: Mapping[str, object]) -> str:
    return json.dumps(result, ensure_ascii=False) + "\n"


def _answer_lines(
    texts: tuple[str, ...],
    record: str | None,
    between: Between | None,
    shape: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> NoReturn:
    """Resolve one date a line; a line that is none gives an error object, and the rest go on."""
    if shape != "jsonl" or record or texts not in ((), (STANDARD_INPUT,)):
        raise InputError(
            "--lines reads dates from standard input and writes JSON Lines",
            hint="use --lines --format jsonl < dates.txt",
        )

    tally = Tally()
    lines = lines_of(read_standard_input())
    with progress("lines", output, quiet=quiet) as show:
        answers = _answers(lines, between, tally, show)
        if output:
            write_result("".join(answers), output, force=force)
        else:
            for answer in answers:
                sys.stdout.buffer.write(terminal_bytes(answer))
            sys.stdout.buffer.flush()
    tally.end(output, quiet=quiet)


def _answers(lines: list[str], between: Between | None, tally: Tally, show: Show) -> Iterator[str]:
    from inscribe.dates import resolve

    for number, line in enumerate(lines, start=1):
        show(number, len(lines))
        tally.take(line)
        try:
            yield _as_line(resolve(_unmarked(line), between).to_dict())
        except InscribeError as error:
            tally.refuse(number)
            yield _as_line(refusal(number, error))
