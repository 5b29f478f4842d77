"""The command line: one module a command, loaded only when that command runs."""

from __future__ import annotations

import errno
import gc
import importlib
import os
import sys
from itertools import takewhile
from pathlib import Path
from typing import Any, NoReturn

import click

from inscribe import __version__
from inscribe.errors import InputError, InscribeError, did_you_mean, harmless, reason_of
from inscribe.settings import defaults, settings as settings_beside

COMMANDS = {
    "new": "ask for an object and its inscription, and write a record",
    "read": "what an inscription says",
    "collate": "a copy against its source",
    "source": "the library of source texts, and which text this is",
    "measure": "where the signs stand, proposed from a photograph",
    "restore": "ranked candidates for signs that cannot be read",
    "settle": "write what a person decides into records",
    "merge": "two transcriptions of one object, sign by sign",
    "undo": "take the last change of a record back",
    "sign": "one character: forms, readings, parts, look-alikes",
    "date": "a date expression resolved and checked",
    "name": "ranked readings of a name",
    "check": "every problem in a folder of records",
    "next": "the record to do next, and why",
    "import": "a catalogue list or a TEI document becomes records",
    "index": "persons, places, dates, works, formulas, hands",
    "concord": "every place where a word or sign occurs",
    "entry": "the catalogue entry",
    "people": "your own list of persons whom inscriptions may name",
    "glossary": "the tables of what is known, and tables of your own",
    "settings": "what holds for every command, and from where",
    "guide": "how the work is done, chapter by chapter",
    "example": "lay down the invented collection to try things on",
    "schema": "the JSON Schema of records and outputs",
}


_LONGEST_PATH = 4096  # characters
FIRST_STEPS = """\
inscribe records, reads and collates inscriptions on Japanese sword fittings.

First, try it on a text, then on the invented collection that comes with it:

  inscribe read 於東都應需造之        what an inscription says
  inscribe example collection        lay the collection down in a folder
  inscribe read collection/DEMO-001.toml
  inscribe collate collection/DEMO-001.toml
  inscribe new collection/           record an object of your own

inscribe guide first-day tells the rest; inscribe --help lists every command."""


class LazyGroup(click.Group):
    """A group that knows its commands by name and imports each only when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the names of the commands, in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Return the command, or None if there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        from inscribe.cli.giving import guard

        file = "importing" if cmd_name == "import" else cmd_name  # a word of Python names no module
        module = importlib.import_module(f"inscribe.cli.{file}")
        command: click.Command = module.command
        guard(command)
        if "_INSCRIBE_COMPLETE" in os.environ:
            from inscribe.cli.completing import complete

            complete(command)
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Return the command that the first argument names.

        Raises:
            InputError: there is none of that name.
        """
        if args[0] not in COMMANDS and not args[0].startswith("-"):
            hint = did_you_mean(args[0], COMMANDS) or "see inscribe --help"
            raise InputError(f"there is no command {args[0]}", hint=hint)
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without importing them."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


def _show_credits(context: click.Context, _option: click.Parameter, asked: bool) -> None:
    if asked:
        from inscribe.credits import credits_as_text
        from inscribe.report.terminal import fitted

        for line in credits_as_text().split("\n"):
            click.echo(fitted(line, 11 if line.startswith(" ") else 0))
        context.exit()


@click.command(
    cls=LazyGroup,
    invoke_without_command=True,
    context_settings={"help_option_names": ["-h", "--help"]},
)
@click.version_option(__version__, message="inscribe %(version)s")
@click.option(
    "--glossary",
    "glossaries",
    multiple=True,
    metavar="FOLDER",
    help="Read tables from FOLDER too, before the packaged ones.",
)
@click.option(
    "--sources",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_show_credits,
    help="Show from whose works the tables are built, and the licences.",
)
@click.option("--debug", is_flag=True, help="Show where in the program a message comes from.")
@click.pass_context
def cli(context: click.Context, glossaries: tuple[str, ...], debug: bool) -> None:
    """Record, read and collate the inscriptions on Japanese sword fittings.

    Exit status: 0 done; 1 done, and something was left out or found; 2 not done, the message says
    why; 3 a fault of the program.
    """
    if context.invoked_subcommand is None:
        click.echo(FIRST_STEPS)
    if glossaries:
        from inscribe.descriptions import add_glossary

        for folder in glossaries:
            add_glossary(folder)


def main() -> None:
    """Run the program; bad input ends with one message on standard error and exit status 2."""
    gc.set_threshold(400_000)  # a short run makes many objects and hardly any garbage
    closed = _closed_streams()
    if "_INSCRIBE_COMPLETE" in os.environ:
        from inscribe.cli.completing import prepare

        prepare(cli)
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
        held = _defaults_held(sys.argv[1:])
        status = cli.main(prog_name="inscribe", standalone_mode=False, default_map=held)
    except click.exceptions.Abort:
        click.echo("inscribe: interrupted; no file was left half-written", err=True)
        sys.exit(130)
    except click.ClickException as error:
        from inscribe.cli.showing import told_of_usage

        if isinstance(error, click.UsageError) and error.ctx is None:
            error.ctx = _context_of(sys.argv[1:])
        _fail(told_of_usage(error))
    except InscribeError as error:
        from inscribe.cli.showing import told

        _fail(told(error))
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(0)
    except OSError as error:
        _close_output()
        if error.errno == errno.EBADF and closed:
            _fail(f"inscribe: {'; '.join(closed)}")
        where = f"{error.filename}: " if isinstance(error.filename, str) else ""
        what = f"inscribe: {where}{reason_of(error, str(error))}"
        _fail(harmless(f"{what}; check the path and the room on the disk"))
    except MemoryError:
        _fail("inscribe: the input needs more memory than there is; divide it into smaller pieces")
    except UnicodeEncodeError as error:
        code = f"U+{ord(error.object[error.start]):04X}"
        _fail(
            f"inscribe: half of a character ({code}) in an argument or the input; write it as UTF-8"
        )
    except RecursionError:
        _fail("inscribe: the input is nested too deeply; flatten it")
    except Exception as error:
        _fail_of_itself(error)
    sys.exit(status if isinstance(status, int) else 0)


def _defaults_held(arguments: list[str]) -> dict[str, Any]:
    """Return what the settings say; nothing where they are broken and only help is asked for."""
    try:
        return defaults(settings_beside(_beside(arguments)))
    except InscribeError:
        asked = next((word for word in arguments if word in COMMANDS), "guide")
        if asked == "guide" or not {"-h", "--help"}.isdisjoint(arguments):
            return {}
        raise


def _context_of(arguments: list[str]) -> click.Context:
    """Return the innermost command that the command line names, as a context."""
    context = click.Context(cli, info_name="inscribe")
    for word in arguments:
        group = context.command
        if isinstance(group, click.Group) and (inner := group.get_command(context, word)):
            context = click.Context(inner, info_name=word, parent=context)
    return context


def _beside(arguments: list[str]) -> Path | None:
    """Return the folder of the first file or folder that the command line names."""
    for argument in arguments:
        if argument[:1] != "-" and len(argument) < _LONGEST_PATH and os.path.lexists(argument):
            path = Path(argument)
            return path if path.is_dir() else path.parent
    return None


def _fail(sentence: str) -> NoReturn:
    _show_where()
    click.echo(sentence, err=True)
    sys.exit(2)


def _fail_of_itself(error: Exception) -> NoReturn:
    """Say that the program itself is at fault, and how to report it."""
    _show_where()
    what = harmless(f"the program failed: {type(error).__name__}: {error}")
    to_do = f"run inscribe {__version__} again with --debug before the command, and report it"
    click.echo(f"inscribe: {what}; {to_do}", err=True)
    sys.exit(3)


def _show_where() -> None:
    """Show the way through the program to the error at hand, where --debug asks for it."""
    before = list(takewhile(lambda word: word not in COMMANDS, sys.argv[1:]))
    if "--debug" in before:
        import traceback

        click.echo(f"inscribe {__version__}, Python {sys.version}\n", err=True)
        traceback.print_exc()


def _close_output() -> None:
    """Give up what could not be written to standard output, or Python complains once more."""
    try:
        sys.stdout.flush()
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
