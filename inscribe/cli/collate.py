"""``inscribe collate``: a copy held against its source."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, NoReturn

import click

from inscribe.cli.giving import (
    COUNTING,
    example,
    format_option,
    library_option,
    output_options,
)
from inscribe.cli.showing import write_result
from inscribe.errors import InputError, InscribeError

if TYPE_CHECKING:
    from inscribe.cli.giving import CollationTask
    from inscribe.collation import Collation, Testimony
    from inscribe.collation.align import Extent

FORMATS = ("text", "md", "json", "jsonl", "svg")


@click.command(
    epilog=COUNTING
    + example(
        "inscribe collate examples/DEMO-001.toml",
        "inscribe collate --text ゆめかうつゝか 夢か現か",
        "inscribe collate examples/DEMO-003.toml --format svg -o plate.svg",
        "inscribe collate examples/DEMO-004.toml --boxes photograph.json --scale 20",
    )
)
@click.argument("texts", nargs=-1, metavar="[RECORD | COPY SOURCE... | -]")
@click.option("--text", "literal", is_flag=True, help="The arguments are the texts themselves.")
@click.option(
    "--pairs",
    metavar="FILE|-",
    help='Collate each line {"id", "copy", "source"} of a JSON Lines file.',
)
@format_option(*FORMATS, name="shape", help="svg: the plate drawn to scale.")
@click.option(
    "--boxes",
    metavar="FILE",
    help="Measured signs: CSV (sign,x,y,width,height in mm; or ; and decimal commas) or a Web"
    " Annotation page.",
)
@click.option("--scale", type=float, metavar="N", help="Pixels per mm of the annotations.")
@click.option(
    "--excerpt/--whole",
    "excerpt",
    default=None,
    help="The copy is a part of the source, or meant to be all of it. By default: as it seems.",
)
@click.option(
    "--notation", "convention", default="japanese", show_default=True, help="japanese or leiden."
)
@library_option("The library with the texts that records name by id")
@click.option("--strict", is_flag=True, help="Exit with status 1 if the wording differs.")
@output_options
@click.pass_context
def command(
    context: click.Context,
    texts: tuple[str, ...],
    literal: bool,
    pairs: str | None,
    shape: str,
    boxes: str | None,
    scale: float | None,
    excerpt: bool | None,
    convention: str,
    library_file: str | None,
    strict: bool,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Hold a copy against its source, and say what differs and why.

    A record is held against the source it names; a SOURCE may also be the id of a text of the
    library. With several sources, the copy is held against
    each, and the one it follows is named.

    With --boxes, the space account goes by the measured place of every sign, counted from 1; a
    column ends where the boxes of its first and last sign do. Annotations are boxes (xywh) in
    pixels, in the order of the signs; one more annotation with the text "plate" gives the plate's
    box. Without it the picture's corner is taken for the plate's, and the result says so.
    """
    extent: Extent = "auto" if excerpt is None else "excerpt" if excerpt else "whole"
    if pairs is not None:
        if texts:
            raise InputError("give either --pairs or texts, not both")
        _answer_pairs(pairs, extent, output, strict=strict, force=force, quiet=quiet)
    from inscribe.cli.giving import collation_tasks, with_measured_copy

    found = collation_tasks(texts, library_file, literal=literal, convention=convention)
    if boxes is not None:
        found = [with_measured_copy(found, boxes, scale)]
        if shape == "svg" and not quiet:  # a drawing has no place for remarks
            for remark in found[0].copy.remarks:
                click.echo(remark, err=True)
    results = [_collated(task, extent=extent) for task in found]
    shown = _shown(found, results, shape, to_file=bool(output))
    write_result(shown, output, force=force, styled=shape == "text")
    differs = not all(results[0].is_faithful_in_wording for results in results)
    context.exit(1 if strict and differs else 0)


def _collated(task: CollationTask, *, extent: Extent) -> list[Collation]:
    from dataclasses import replace

    from inscribe.collation import collate

    copy = task.copy
    found = [
        collate(
            copy.transcription,
            source.transcription,
            copy.inscription,
            extent=extent,
            kind=source.kind,
        )
        for source in task.sources
    ]
    if not copy.remarks:
        return found
    return [replace(each, notes=(*each.notes, *copy.remarks)) for each in found]


def _answer_pairs(
    file: str, extent: Extent, output: str | None, *, strict: bool, force: bool, quiet: bool
) -> NoReturn:
    """Write an answer for each pair of a file, and end with the status they add up to."""
    from inscribe.cli.giving import pair_lines
    from inscribe.cli.showing import Tally, progress

    tally, differs = Tally("pair", "pair"), False
    lines: list[str] = []
    asked = pair_lines(file)
    with progress("pairs", output, quiet=quiet) as show:
        for number, answer, faithful in _answers(asked, extent=extent):
            tally.take("pair")
            differs |= not faithful
            if "error" in answer:
                tally.refuse(number)
            lines.append(json.dumps(answer, ensure_ascii=False))
            show(tally.given, len(asked))
    if lines or output:
        write_result("\n".join(lines), output, force=force)
    tally.end(output, quiet=quiet, otherwise=int(strict and differs))


def _answers(
    lines: list[tuple[int, str]], *, extent: Extent
) -> Iterator[tuple[int, dict[str, Any], bool]]:
    """Yield the number of each line, its answer, and whether the wording is the source's."""
    from inscribe.cli.giving import paired_tasks

    for number, identifier, task in paired_tasks(lines):
        answer: dict[str, Any] = {} if identifier is None else {"id": identifier}
        if isinstance(task, str):
            yield number, {"line": number, **answer, "error": task}, True
            continue
        try:
            result = _collated(task, extent=extent)[0]
        except InscribeError as error:
            yield number, {"line": number, **answer, "error": str(error)}, True
            continue
        yield number, {**answer, **result.to_dict()}, result.is_faithful_in_wording


def _shown(
    tasks: list[CollationTask], results: list[list[Collation]], shape: str, *, to_file: bool
) -> str:
    if shape in ("json", "jsonl"):
        return _as_json(tasks, results, shape)
    if shape == "svg":
        return _drawing(tasks, results)
    parts = []
    for task, found in zip(tasks, results, strict=True):
        show = _as_markdown if shape == "md" else _as_text
        parts += show(task, found, to_file)
    return "\n".join(parts)


def _drawing(tasks: list[CollationTask], results: list[list[Collation]]) -> str:
    from inscribe import notation
    from inscribe.record import Inscription
    from inscribe.report.drawing import plate_drawing

    if len(tasks) > 1 or len(results[0]) > 1:
        raise InputError(
            "a drawing shows one copy with one source",
            hint="for all of a record, use inscribe entry --format svg -o FOLDER/",
        )
    copy = tasks[0].copy
    drawn = copy.inscription or Inscription(copy.title, notation.render(copy.transcription))
    return plate_drawing(drawn, results[0][0])


def _as_markdown(task: CollationTask, found: list[Collation], to_file: bool) -> list[str]:
    from inscribe.report.collations import collation_as_markdown, witnesses_as_markdown

    parts = [
        collation_as_markdown(result, task.copy.title, source.title)
        for result, source in zip(found, task.sources, strict=True)
        if result.is_of_same_text or len(found) == 1
    ]
    if len(found) > 1:
        parts.insert(0, witnesses_as_markdown(_testimony(task, found), task.copy.title))
    return parts


def _as_text(task: CollationTask, found: list[Collation], to_file: bool) -> list[str]:
    import os
    import shutil
    import sys

    from inscribe.report.terminal import collation_as_text, witnesses_as_text

    columns = shutil.get_terminal_size((80, 24)).columns
    plain = to_file or os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    colour = sys.stdout.isatty() and not plain
    title = task.copy.title
    parts = [
        collation_as_text(result, title, source.title, columns=columns, colour=colour)
        for result, source in zip(found, task.sources, strict=True)
        if result.is_of_same_text or len(found) == 1
    ]
    if len(found) > 1:
        testimony = _testimony(task, found)
        parts.insert(0, witnesses_as_text(testimony, title, columns=columns, colour=colour))
    return parts


def _testimony(task: CollationTask, found: list[Collation]) -> Testimony:
    from inscribe.collation import WitnessSource, testimony

    sources = [WitnessSource(each.siglum, each.title, each.kind) for each in task.sources]
    return testimony(found, sources)


def _answers_of(task: CollationTask, found: list[Collation]) -> Any:
    """Return the collation with the one source, or what several say together."""
    if len(found) == 1:
        return found[0].to_dict()
    return {
        **_testimony(task, found).to_dict(),
        "collations": [result.to_dict() for result in found],
    }


def _as_json(tasks: list[CollationTask], results: list[list[Collation]], shape: str) -> str:
    answers = [_answers_of(task, found) for task, found in zip(tasks, results, strict=True)]
    if shape == "jsonl":
        return "\n".join(json.dumps(answer, ensure_ascii=False) for answer in answers)
    return json.dumps(answers[0] if len(answers) == 1 else answers, ensure_ascii=False, indent=2)
