"""The options that several commands share, and how the help of a command ends."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click
from click.core import ParameterSource

from inscribe import remarks
from inscribe.cli.giving.endings import endings_of, format_for
from inscribe.cli.giving.guarding import option_named
from inscribe.cli.giving.piped import STANDARD_INPUT

F = TypeVar("F", bound=Callable[..., Any])

EXIT_STATUS = (
    "\n\nExit status: 0 done; 1 done, and something was left out, found or differs as asked;"
    " 2 not done, the message says why; 3 a fault of the program."
)


def example(*commands: str) -> str:
    """Return the end of a help text that shows commands as they are typed (``epilog=``)."""
    return "\b\nExample:\n" + "\n".join(f"  {line}" for line in commands) + EXIT_STATUS


# The end of the help of commands that take or show signs by number and write JSON too.
COUNTING = "Signs and columns are counted from 1, in records too; in JSON from 0.\n\n"


def format_option(
    *formats: str, name: str = "form", help: str = "", by_ending: bool = True
) -> Callable[[F], F]:
    """Return the option ``--format``: by default as the file of -o ends, else the first.

    ``by_ending`` is false where -o names another file than that of the result.
    """

    def asked(context: click.Context, _option: click.Parameter, form: str) -> str:
        source = context.get_parameter_source(name)
        by_name = None if source is ParameterSource.DEFAULT else form
        output = context.params.get("output")
        return format_for(by_name, output, endings_of(formats), formats[0])

    return click.option(
        "--format",
        name,
        type=click.Choice(formats),
        default=formats[0],
        show_default=f"as the file of -o ends, else {formats[0]}" if by_ending else True,
        callback=asked if by_ending else None,
        help=help or "How the result is written: text for people, the others for programs.",
    )


def library_option(help: str) -> Callable[[F], F]:
    """Return the option ``--library``, which names a file of source texts."""
    return click.option(
        "--library",
        "library_file",
        metavar="PATH",
        envvar="INSCRIBE_LIBRARY",
        help=f"{help} (default: INSCRIBE_LIBRARY, or a file in the user's data folder).",
    )


register_option = click.option(
    "--register",
    type=click.Choice(["auto", "verse", "signature", "prose"]),
    default="auto",
    show_default=True,
    help="What kind of text it is.",
)


settled_option = click.option(
    "--records",
    metavar="FOLDER",
    help="Read names as they were settled (override, kind name) in these records.",
)


def expect_settled_names(folder: str | None) -> None:
    """Let the names settled in the records of a folder be read so.

    Raises:
        InputError: there is no such folder.
    """
    if folder is None:
        return
    from inscribe.reading.names import settle
    from inscribe.record import settled_names

    settle(settled_names(Path(folder)))


def _show_conventions(context: click.Context, _option: click.Parameter, asked: bool) -> None:
    if asked:
        from inscribe.report.terminal import conventions_as_text

        click.echo(conventions_as_text())
        context.exit()


conventions_option = click.option(
    "--conventions",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_show_conventions,
    help="Show how a transcription is written, and stop.",
)


def _heed_quiet(_context: click.Context, _option: click.Parameter, quiet: bool) -> bool:
    remarks.want(not quiet)
    return quiet


def quiet_option(help: str = "No remarks on standard error.") -> Callable[[F], F]:
    """Return the option ``--quiet``, which also silences what the stages would remark."""
    return click.option("--quiet", "-q", is_flag=True, callback=_heed_quiet, help=help)


def _file_of(context: click.Context, option: click.Parameter, output: str | None) -> str | None:
    return None if output == STANDARD_INPUT else option_named(context, option, output)


def output_options(command: F) -> F:
    """Add ``-o FILE``, ``--force`` and ``--quiet`` to a command."""
    for option in (
        quiet_option(),
        click.option("--force", is_flag=True, help="Let -o write over an existing file."),
        click.option(
            "-o",
            "output",
            metavar="FILE",
            is_eager=True,  # --format asks how it ends
            callback=_file_of,
            help="Write the result to FILE, whole.",
        ),
    ):
        command = option(command)
    return command


by_option = click.option(
    "--by",
    default="",
    metavar="NAME",
    help="Who says so (the reader of the settings if not given).",
)
