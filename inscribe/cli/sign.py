"""``inscribe sign``: one character, or the character one cannot type."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import (
    STANDARD_INPUT,
    example,
    expect_no_files,
    format_option,
    is_piped,
    output_options,
    words_given,
)
from inscribe.cli.showing import write_result
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.forms import Description

MOST_STROKES = 84
MOST_LISTED = 60  # one line each; a screen or two


@click.command(
    epilog=example(
        "inscribe sign 舩",
        "inscribe sign U+8229 辨",
        "inscribe sign --parts 舟+公",
        "inscribe sign --reading ふね --strokes 9-11",
    )
)
@click.argument("signs", nargs=-1, metavar="[SIGN|U+XXXX|-]...")
@click.option("--parts", metavar="A+B", help="Find characters by their parts.")
@click.option("--reading", metavar="KANA", help="Find characters by a reading.")
@click.option("--strokes", metavar="N[-M]", help="Find characters by the number of strokes.")
@click.option(
    "--limit",
    type=click.IntRange(1),
    help=f"The most characters a search shows.  [default: {MOST_LISTED} as text, all as JSON]",
)
@format_option("text", "json", "jsonl", name="shape")
@output_options
def command(
    signs: tuple[str, ...],
    parts: str | None,
    reading: str | None,
    strokes: str | None,
    limit: int | None,
    shape: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Show what is known of a sign: its forms, readings, parts and look-alikes.

    Several signs, also written together, are shown one after the other. With --parts, --reading
    or --strokes, find the characters that meet all of them; a radical may be given in its full
    shape (水 finds 氵).
    """
    searching = parts is not None or reading is not None or strokes is not None
    if not signs and not searching and is_piped():
        signs = (STANDARD_INPUT,)
    if searching == bool(signs):
        raise InputError(
            "give signs to look up, or --parts, --reading or --strokes to search by",
            hint="as in: inscribe sign 舩",
        )
    expect_no_files(signs, "inscribe read {}")
    found = _searched(parts, reading, strokes) if searching else _named(signs)
    if not found and not quiet:
        click.echo("no character meets these conditions; try fewer or smaller parts", err=True)
    if limit is None and shape == "text":
        limit = MOST_LISTED
    shown = _described(found[:limit] if searching else found)
    write_result(_written(shown, shape, searching, len(found) - len(shown)), output, force=force)


def _named(arguments: tuple[str, ...]) -> tuple[str, ...]:
    """Return the signs that the arguments name, each once."""
    from inscribe.forms import code_point, signs_of

    found: list[str] = []
    for argument in words_given(arguments):
        for word in argument.split():
            if re.match(r"[Uu]\+", word):
                found.append(code_point(word))
            else:
                found += signs_of(word)
    if not found:
        raise InputError("there is no sign to look up", hint="as in: inscribe sign 舩")
    return tuple(dict.fromkeys(found))


def _searched(parts: str | None, reading: str | None, strokes: str | None) -> tuple[str, ...]:
    """Return the characters that meet the conditions, which may be none."""
    from inscribe.forms import found, signs_of

    wanted = [sign for word in re.split(r"[+＋\s]+", parts or "") for sign in signs_of(word)]
    if parts is not None and not wanted:
        raise InputError("--parts names no part", hint="as in: --parts 舟+公")
    if reading is not None and not re.fullmatch(r"[ぁ-ゖァ-ヺー]+", reading):
        raise InputError(f"--reading {reading} is not kana", hint="as in: --reading ふね")
    return found(wanted, reading or "", _range(strokes) if strokes is not None else None)


def _range(strokes: str) -> tuple[int, int]:
    match = re.fullmatch(r"(\d{1,3})(?:-(\d{1,3}))?", strokes, re.ASCII)
    fewest, most = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if not 1 <= fewest <= most <= MOST_STROKES:
        raise InputError(
            f"--strokes {strokes} is no number of strokes",
            hint=f"as in: --strokes 11 or --strokes 9-11, from 1 to {MOST_STROKES}",
        )
    return fewest, most


def _described(signs: tuple[str, ...]) -> list[Description]:
    from inscribe.forms import describe

    return [describe(sign) for sign in signs]


def _written(found: list[Description], shape: str, searching: bool, left_out: int) -> str:
    if shape == "text":
        from inscribe.report.terminal import list_as_text, signs_as_text

        return list_as_text(found, left_out) if searching else signs_as_text(found)
    plain = [each.to_dict() for each in found]
    if shape == "json":
        return json.dumps(plain, ensure_ascii=False, indent=2) + "\n"
    return "".join(json.dumps(each, ensure_ascii=False) + "\n" for each in plain)
