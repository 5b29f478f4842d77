"""What every command shares: where a text comes from and where a result goes."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from inscribe import files
from inscribe.errors import InputError, Place

F = TypeVar("F", bound=Callable[..., Any])

STANDARD_INPUT = "-"


def example(*commands: str) -> str:
    """Return the end of a help text that shows commands as they are typed (``epilog=``)."""
    return "\b\nExample:\n" + "\n".join(f"  {line}" for line in commands)


def output_options(command: F) -> F:
    """Add ``-o FILE``, ``--force`` and ``--quiet`` to a command."""
    for option in (
        click.option("--quiet", "-q", is_flag=True, help="No remarks on standard error."),
        click.option("--force", is_flag=True, help="Let -o write over an existing file."),
        click.option("-o", "output", metavar="FILE", help="Write the result to FILE, whole."),
    ):
        command = option(command)
    return command


def read_standard_input(limit: int = files.MAX_BYTES) -> str:
    """Return all of standard input as text.

    Raises:
        InputError: it is not UTF-8, or longer than ``limit`` bytes.
    """
    data = sys.stdin.buffer.read(limit + 1)
    if len(data) > limit:
        raise InputError(
            f"the input is longer than the limit of {limit // 2**20} MiB",
            Place("standard input"),
            "use --lines or smaller pieces",
        )
    return files.decode(data, "standard input")


def write_result(text: str, output: str | None, *, force: bool) -> None:
    """Print ``text`` on standard output, or write it whole to the file ``output``."""
    if output is None:
        click.echo(text.encode("utf-8", "backslashreplace"), nl=False)
        if not text.endswith("\n"):
            click.echo()
    else:
        files.write_text(Path(output), text if text.endswith("\n") else text + "\n", force=force)
