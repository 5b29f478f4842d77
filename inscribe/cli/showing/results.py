"""Where a result goes: to standard output, or whole into a file."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path

import click

from inscribe import writing

_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]")  # all but tab and line ends
_STYLE = r"(?!\x1b\[[0-9;]*m)"  # what follows is no change of weight or colour


def status_of(broken: Sequence[str]) -> int:
    """Say what is wrong with each of the records left out; return the exit status that tells it."""
    if not broken:
        return 0
    for problem in broken:
        click.echo("\n".join(f"inscribe: {line}" for line in problem.splitlines()), err=True)
    click.echo(f"left out, as said above: {len(broken):,}", err=True)
    return 1


def terminal_bytes(text: str, *, styled: bool = False) -> bytes:
    r"""Return ``text`` as bytes for standard output, without what a terminal might obey.

    Control characters that JSON lets through are written as JSON escapes them, so that the value
    stays the same; so is half of a character. Text that was ``styled`` for a terminal, its data
    already made printable, keeps its weights and colours.

    >>> terminal_bytes('"\x9b1m"')
    b'"\\u009b1m"'
    """
    if not text.isascii() or not text.isprintable():
        control = re.compile(_STYLE + _CONTROL.pattern) if styled else _CONTROL
        text = control.sub(lambda found: f"\\u{ord(found[0]):04x}", text)
    return text.encode("utf-8", "backslashreplace")


def write_result(text: str, output: str | None, *, force: bool, styled: bool = False) -> None:
    """Print ``text`` on standard output, or write it whole to the file ``output``.

    ``styled``: as in :func:`terminal_bytes`.
    """
    if output is None:
        end = "" if text.endswith("\n") else "\n"
        click.echo(terminal_bytes(text + end, styled=styled), nl=False)
    else:
        writing.write_text(Path(output), text if text.endswith("\n") else text + "\n", force=force)


def write_pieces(pieces: Iterator[str], output: str | None, *, force: bool) -> None:
    """Write a text that comes in pieces, as :func:`write_result` does; none is kept."""
    ended = _Ended(pieces)
    if output is None:
        for piece in ended:
            click.echo(terminal_bytes(piece), nl=False)
        if not ended.with_a_newline:
            click.echo()
        return
    with writing.written(Path(output), force=force) as file:
        for piece in ended:
            file.write(piece.encode("utf-8", "backslashreplace"))
        if not ended.with_a_newline:
            file.write(b"\n")


class _Ended:
    """Pieces of a text, of which one knows afterwards whether they ended with a newline."""

    def __init__(self, pieces: Iterator[str]) -> None:
        self._pieces = pieces
        self.with_a_newline = False

    def __iter__(self) -> Iterator[str]:
        for piece in self._pieces:
            if piece:
                self.with_a_newline = piece.endswith("\n")
                yield piece
