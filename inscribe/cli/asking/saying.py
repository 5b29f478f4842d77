"""What is shown between the questions of ``inscribe new``."""

from __future__ import annotations

from collections.abc import Sequence

import click

HELP = "?舟+公 (by parts), ?ふね (by reading), ?11 (by strokes)"
SHOWN = 20  # characters of a search
MOST_DIGITS = 3  # of a number of strokes


def say(text: str, indent: int = 4) -> None:
    """Say something on the terminal, broken between words to fit it."""
    from inscribe.report.terminal import room, wrapped

    click.echo(wrapped(text, room(), indent), err=True)


def show_column(column: str, before: str, readings: Sequence[str]) -> None:
    """Show what the text reads so far, and the signs of the column that deserve a second look."""
    from inscribe.recording import seen

    found = seen(column, before, readings)
    say(f"  reads: {found.kana}")
    say(f"         {found.romaji}", indent=9)
    for remark in found.remarks:
        say(f"  {remark}")


def show_found(wanted: str) -> None:
    """Show the characters with this reading, number of strokes, or these parts."""
    from inscribe.forms import describe, found
    from inscribe.reading.spelling import is_kana
    from inscribe.report.terminal import list_as_text

    words = wanted.replace(" ", "")
    if not words.strip("?"):
        say(f"  look for a sign with {HELP}")
        return
    if words.isdecimal() and len(words) <= MOST_DIGITS:
        signs = found(strokes=(int(words), int(words)))
    elif words and all(map(is_kana, words)):
        signs = found(reading=words)
    else:
        signs = found(parts=[part for part in words.split("+") if part])
    shown = [describe(sign) for sign in signs[:SHOWN]]
    click.echo(list_as_text(shown, 0) if shown else "  none found", err=True)
    if more := len(signs) - len(shown):
        say(f"  and {more} more: name another part, or the strokes")
