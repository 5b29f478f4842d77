"""The command line: one module a command, loaded only when that command runs."""

from __future__ import annotations

import errno
import gc
import importlib
import os
import sys
from typing import NoReturn

import click

from inscribe import __version__
from inscribe.errors import InscribeError, harmless

COMMANDS = {
    "new": "ask for an object and its inscription, and write a record",
    "read": "what an inscription says",
    "collate": "a copy against its source",
    "source": "the library of source texts, and which text this is",
    "measure": "where the signs stand, proposed from a photograph",
    "restore": "ranked candidates for signs that cannot be read",
    "settle": "write what a person decides into records",
    "undo": "take the last change of a record back",
    "sign": "one character: forms, readings, parts, look-alikes",
    "date": "a date expression resolved and checked",
    "name": "ranked readings of a name",
    "check": "every problem in a folder of records",
    "concord": "every place where a word or sign occurs",
    "entry": "the catalogue entry",
    "people": "your own list of persons whom inscriptions may name",
    "glossary": "the tables of what is known, and tables of your own",
    "schema": "the JSON Schema of records and outputs",
}


class LazyGroup(click.Group):
    """A group that knows its commands by name and imports each only when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the names of the commands, in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Return the command, or None if there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"inscribe.cli.{cmd_name}")
        command: click.Command = module.command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without importing them."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.command(cls=LazyGroup, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, message="inscribe %(version)s")
@click.option(
    "--glossary",
    "glossaries",
    multiple=True,
    metavar="FOLDER",
    help="Read tables from FOLDER too, before the packaged ones.",
)
def cli(glossaries: tuple[str, ...]) -> None:
    """Record, read and collate the inscriptions on Japanese sword fittings."""
    if glossaries:
        from inscribe.descriptions import add_glossary

        for folder in glossaries:
            add_glossary(folder)


def main() -> None:
    """Run the program; bad input ends with one message on standard error and exit status 2."""
    gc.set_threshold(400_000)  # a short run makes many objects and hardly any garbage
    closed = _closed_streams()
    try:
        _run(closed)
    finally:
        gc.freeze()  # nor need the last collections look through them all


def _closed_streams() -> list[str]:
    """Return what is to be said of standard input and output that the caller closed; stand in.

    Without this a file opened later would get their number, and what is printed would go into it.
    Whatever reads or writes a stand-in fails with EBADF; what is said on a closed standard error
    is lost.
    """
    closed = []
    if sys.stdin is None:
        closed.append("standard input is closed; name a file, or give it something to read")
        _stand_in(0, "stdin", os.O_WRONLY)
    if sys.stdout is None:
        closed.append("standard output is closed; write to a file with -o, or leave it open")
        _stand_in(1, "stdout", os.O_RDONLY)
    if sys.stderr is None:
        _stand_in(2, "stderr", os.O_WRONLY)
    return closed


def _stand_in(number: int, name: str, way: int) -> None:
    opened = os.open(os.devnull, way)
    if opened != number:
        os.dup2(opened, number)
        os.close(opened)
    stream = open(number, "r" if number == 0 else "w", encoding="utf-8", closefd=False)  # noqa: SIM115
    setattr(sys, name, stream)


def _run(closed: list[str]) -> NoReturn:
    try:
        status = cli.main(prog_name="inscribe", standalone_mode=False)
    except click.exceptions.Abort:
        click.echo("interrupted; no file was left half-written", err=True)
        sys.exit(130)
    except click.ClickException as error:
        _fail(_shown(error))
    except InscribeError as error:
        _fail(str(error))
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(0)
    except OSError as error:
        _close_output()
        if error.errno == errno.EBADF and closed:
            _fail("; ".join(closed))
        where = f"{error.filename}: " if isinstance(error.filename, str) else ""
        _fail(
            harmless(f"{where}{error.strerror or error}; check the path and the room on the disk")
        )
    except MemoryError:
        _fail("the input needs more memory than there is; divide it into smaller pieces")
    except UnicodeEncodeError as error:
        code = f"U+{ord(error.object[error.start]):04X}"
        _fail(f"an argument or the input holds half of a character ({code}); write it as UTF-8")
    except RecursionError:
        _fail("the input is nested too deeply; flatten it")
    sys.exit(status if isinstance(status, int) else 0)


def _fail(sentence: str) -> NoReturn:
    click.echo(sentence, err=True)
    sys.exit(2)


def _shown(error: click.ClickException) -> str:
    """Return what click has to say, its quotations of the command line made harmless."""
    import io

    said = io.StringIO()
    error.show(file=said)
    return harmless(said.getvalue()).rstrip("\n")


def _close_output() -> None:
    """Give up what could not be written to standard output, or Python complains once more."""
    try:
        sys.stdout.flush()
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
