"""What every command shares: where a text comes from and where a result goes."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING, Any, TypeVar

import click

from inscribe import files, remarks, writing
from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from rich.progress import Progress

F = TypeVar("F", bound=Callable[..., Any])

STANDARD_INPUT = "-"
BAR_AFTER = 1.0  # seconds of work before a progress bar is worth its while
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]")  # all but tab and line ends
_STYLE = r"(?!\x1b\[[0-9;]*m)"  # what follows is no change of weight or colour


EXIT_STATUS = (
    "\n\nExit status: 0 done; 1 done, and something was left out, found or differs as asked;"
    " 2 not done, the message says why."
)


def example(*commands: str) -> str:
    """Return the end of a help text that shows commands as they are typed (``epilog=``)."""
    return "\b\nExample:\n" + "\n".join(f"  {line}" for line in commands) + EXIT_STATUS


# The end of the help of commands that take or show signs by number and write JSON too.
COUNTING = "Signs and columns are counted from 1, in records too; in JSON from 0.\n\n"


def format_option(*formats: str, name: str = "form", help: str = "") -> Callable[[F], F]:
    """Return the option ``--format``; the first of ``formats`` is the default."""
    return click.option(
        "--format",
        name,
        type=click.Choice(formats),
        default=formats[0],
        show_default=True,
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


def library_path(given: str | None) -> Path:
    """Return the library file to use: that of the option or the settings, or the user's own."""
    if given:
        return Path(given)
    from platformdirs import user_data_path

    return user_data_path("inscribe", appauthor=False) / "sources.sqlite"


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


def output_options(command: F) -> F:
    """Add ``-o FILE``, ``--force`` and ``--quiet`` to a command."""
    for option in (
        quiet_option(),
        click.option("--force", is_flag=True, help="Let -o write over an existing file."),
        click.option("-o", "output", metavar="FILE", help="Write the result to FILE, whole."),
    ):
        command = option(command)
    return command


@contextmanager
def progress_shown(what: str, *, quiet: bool) -> Iterator[Callable[[int, int | None], None]]:
    """Give a function that hears how many of how many are done, and shows a bar for it.

    Where it is not known how many there are (None), the bar tells how many are done.
    The bar stands on standard error, once the work has taken a second and if that is a terminal.
    """
    if quiet or not sys.stderr.isatty():
        yield lambda done, count: None
        return
    bar = _Bar(what)
    try:
        yield bar.show
    finally:
        bar.close()


class _Bar:
    """A bar that appears only when the work turns out to take a while."""

    def __init__(self, what: str) -> None:
        self._what = what
        self._begun = monotonic()
        self._progress: Progress | None = None

    def show(self, done: int, count: int | None) -> None:
        if self._progress is None:
            if monotonic() - self._begun < BAR_AFTER:
                return
            from rich.console import Console
            from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

            columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
            self._progress = Progress(*columns, console=Console(stderr=True), transient=True)
            self._progress.start()
            self._progress.add_task(self._what, total=None)
        self._progress.update(self._progress.task_ids[0], completed=done, total=count)

    def close(self) -> None:
        if self._progress is not None:
            self._progress.stop()


def status_of(broken: Sequence[str]) -> int:
    """Say what is wrong with each of the records left out; return the exit status that tells it."""
    if not broken:
        return 0
    for problem in broken:
        click.echo("\n".join(f"inscribe: {line}" for line in problem.splitlines()), err=True)
    click.echo(f"left out, as said above: {len(broken):,}", err=True)
    return 1


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


def read_transcription() -> str:
    """Return all of standard input, which is to be a transcription.

    Raises:
        InputError: it is not UTF-8, too long, or a document of another kind.
    """
    return files.transcribed(read_standard_input(), "standard input").strip("\n")


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
