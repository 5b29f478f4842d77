"""``inscribe restore``: ranked candidates for signs that cannot be read."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from inscribe.cli.giving import (
    COUNTING,
    example,
    expected_names,
    format_option,
    library_option,
    opened_library,
    output_options,
    places_in,
    register_option,
    seen_in,
)
from inscribe.cli.showing import Show, Tally, progress, refusal, write_result
from inscribe.errors import InputError, InscribeError

if TYPE_CHECKING:
    from inscribe.cli.giving import Asked
    from inscribe.keys import RefusedKeys
    from inscribe.reading import Choice
    from inscribe.record import Inscription
    from inscribe.restoring import Restoration
    from inscribe.signs import Transcription
    from inscribe.sources import Library


@click.command(
    epilog=COUNTING
    + example(
        "inscribe restore --text 武州住□親作",
        "inscribe restore worn.toml --column 2 --sign 3 --parts 氵 --strokes 8-11",
        "inscribe restore --text 春過て夏来に□らし --library sources.sqlite",
    )
)
@click.argument("path", required=False, metavar="[RECORD|FILE|-]")
@click.option("--text", "literal", metavar="TEXT", help="Restore TEXT itself.")
@click.option("--lines", is_flag=True, help="One transcription a line, one result a line.")
@click.option(
    "--inscription",
    type=click.IntRange(1),
    metavar="N",
    help="Only the N-th inscription of a record.",
)
@click.option(
    "--sign",
    type=click.IntRange(1),
    metavar="N",
    help="Only sign N of the inscription, even if read; with --column, sign N of that column.",
)
@click.option(
    "--column",
    type=click.IntRange(1),
    metavar="N",
    help="The column in which --sign counts, as in the places that check names.",
)
@click.option(
    "--places",
    metavar="N[-M]",
    help="Only worn places N to M, counted from 1; the first 20 where none are named.",
)
@click.option("--parts", metavar="A+B", help="Parts of the sign that can still be seen.")
@click.option("--strokes", metavar="N[-M]", help="How many strokes it seems to have.")
@click.option("--like", metavar="SIGN", help="A sign that it looks like.")
@register_option
@click.option(
    "--most",
    type=click.IntRange(1, 200),
    default=10,
    show_default=True,
    help="Candidates shown for each sign.",
)
@click.option(
    "--records",
    metavar="FOLDER",
    help="Expect the carvers' names that are read in these records (of a record: in its folder).",
)
@click.option("--alone", is_flag=True, help="Expect no names of the records beside a record.")
@library_option("The library of source texts")
@format_option("text", "json", "jsonl")
@output_options
def command(
    path: str | None,
    literal: str | None,
    lines: bool,
    inscription: int | None,
    sign: int | None,
    column: int | None,
    places: str | None,
    parts: str | None,
    strokes: str | None,
    like: str | None,
    register: Choice,
    most: int,
    records: str | None,
    alone: bool,
    library_file: str | None,
    form: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Propose what stood where a sign cannot be read (□, ■) or is lost (［　　］).

    Candidates are ranked by the source text, if the library has it, by the formula of signatures
    and their dates, by metre, words and spelling, and by what can still be seen. They are
    suggestions: no record is changed. One run looks at 20 worn places of an inscription at the
    most, so that it stays quick.

    What is worn in the name of a carver the rest of a collection tells best: the names read in the
    records of the same folder are expected, each as often as it is read.
    """
    seen = seen_in(parts, strokes, like)
    chosen = places_in(places, sign) if places is not None else None
    if column is not None and sign is None:
        raise InputError("--column says where --sign counts", hint="name the sign with --sign N")
    asked = list(_asked(path, literal, lines, inscription, sign))
    texts = [text for *_, text in asked]
    names = expected_names(records, alone, path, texts, register, library_file, quiet=quiet)
    tally = Tally()
    with opened_library(library_file) as library, progress("texts", output, quiet=quiet) as show:
        restored = partial(
            _restored,
            column=column,
            sign=sign,
            library=library,
            seen_of_it=seen,
            places=chosen,
            most=most,
            register=register,
            names=names,
        )
        results = list(_answers(asked, restored, tally if lines else None, show, _recorded(path)))
    if results or output:
        write_result(_shown(results, form, lines), output, force=force)
    if lines:
        tally.end(output, quiet=quiet)


def _restored(
    text: Transcription,
    recorded: Inscription | None,
    *,
    column: int | None,
    sign: int | None,
    library: Library | None,
    **wishes: Any,
) -> Restoration:
    """Return what is proposed for a text, or for a record's inscription; of one sign if named."""
    from inscribe.restoring import restore, restore_inscription

    index = _index(text, column, sign)
    if recorded:
        return restore_inscription(recorded, library, sign=index, **wishes)
    return restore(text, library, sign=index, **wishes)


def _answers(
    asked: Sequence[Asked],
    restored: Callable[..., Restoration],
    tally: Tally | None,
    show: Show,
    recorded: Mapping[int, Inscription],
) -> Iterator[Restoration | RefusedKeys]:
    """Yield what is proposed for each text; where lines are counted, a bad one gives its error."""
    for done, (number, written, text) in enumerate(asked):
        show(done, len(asked))
        if tally:
            tally.take(written)
        try:
            yield restored(text(), recorded.get(number))
        except InscribeError as error:
            if tally is None:
                raise
            tally.refuse(number)
            yield refusal(number, error)


def _recorded(path: str | None) -> dict[int, Inscription]:
    """Return the inscriptions of a record by number; of anything else none."""
    if path is None or not path.endswith(".toml"):
        return {}
    from inscribe.record import load

    return dict(enumerate(load(Path(path)).inscriptions, start=1))


def _asked(
    path: str | None, literal: str | None, lines: bool, inscription: int | None, sign: int | None
) -> Iterator[Asked]:
    from inscribe.cli.giving import line_queries, queries

    asked = list((line_queries if lines else queries)(path, literal, copied=False))
    if inscription is not None:
        if inscription > len(asked):
            raise InputError(f"there is no inscription {inscription}", hint=f"of {len(asked)}")
        asked = [asked[inscription - 1]]
    if sign is not None and len(asked) > 1:
        raise InputError(
            f"there are {len(asked)} inscriptions, and sign {sign} may be of any",
            hint="choose one with --inscription",
        )
    if not lines and not any(written.strip() for _, written, _ in asked):
        raise InputError("there is no text to restore", hint="write □ for unreadable signs")
    yield from asked


def _index(text: Transcription, column: int | None, sign: int | None) -> int | None:
    """Return the index of a sign that was counted from 1, in a column or the whole inscription."""
    if sign is None or column is None:
        return None if sign is None else sign - 1
    if column > len(text.columns):
        raise InputError(f"there is no column {column}", hint=f"of {len(text.columns)}")
    signs = text.columns[column - 1].signs
    if sign > len(signs):
        raise InputError(f"column {column} has no sign {sign}", hint=f"of {len(signs)}")
    return signs[sign - 1].index


def _shown(results: list[Restoration | RefusedKeys], form: str, lines: bool) -> str:
    if form == "text":
        from inscribe.report.terminal import restorations_as_text

        return restorations_as_text(results)
    plain = [each if isinstance(each, dict) else each.to_dict() for each in results]
    if form == "jsonl" or lines:
        return "".join(json.dumps(each, ensure_ascii=False) + "\n" for each in plain)
    made = plain[0] if len(plain) == 1 else plain
    return json.dumps(made, ensure_ascii=False, indent=2)
