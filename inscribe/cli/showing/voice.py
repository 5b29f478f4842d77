"""How the program speaks when it cannot go on: what is wrong; where; what to do.

So do errors everywhere (in lists of records left out, in JSON, in Python). Messages of the library
that parses the command line are put into the same form.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

import click

from inscribe.errors import InscribeError, ProblemsError, did_you_mean, harmless

_POSSIBLE = re.compile(r" \(Did you mean [^)]*\?\)|\n?\s*Did you mean [^?]*\?")


def told(error: InscribeError) -> str:
    """Return what an error says, a line for each problem it holds.

    >>> told(InscribeError("there is no text to read", hint="write □ for unreadable signs"))
    'inscribe: there is no text to read; write □ for unreadable signs'
    """
    if isinstance(error, ProblemsError):
        return "\n".join(map(told, error.errors))
    return f"inscribe: {error}"


def told_of_usage(error: click.ClickException) -> str:
    """Return what is wrong with a command line, how the command is used, and what to do."""
    what = _POSSIBLE.sub("", error.format_message()).strip().rstrip(".")
    context = getattr(error, "ctx", None)
    if isinstance(error, click.NoSuchOption):
        what = f"there is no option {error.option_name}"
    if choice := _choice_refused(error) or _no_command(error):
        what, given, choices = choice
        use = did_you_mean(given, choices) or f"use one of {', '.join(choices)}"
        return harmless(f"inscribe: {what}; {use}")
    usage, to_do = "", "see inscribe --help"
    if isinstance(error, click.exceptions.NoArgsIsHelpError):
        what = "missing command"
    if isinstance(context, click.Context):
        usage = " ".join(context.get_usage().replace("Usage:", "usage:").split())
        to_do = (
            _meant(error, context)
            or _commands_of(error, context)
            or f"see {context.command_path} --help"
        )
    what = what[:1].lower() + what[1:]
    return harmless("inscribe: " + "; ".join(filter(None, (what, usage, to_do))))


def _choice_refused(error: click.ClickException) -> tuple[str, str, Sequence[str]] | None:
    """Return what is wrong, what was given, and what is taken, where that is one of several words.

    So it is told of commands within a command too (:func:`_no_command`).
    """
    if not isinstance(error, click.BadParameter) or error.param is None:
        return None
    given = re.match(r"'(.*)' is not one of ", error.message, re.DOTALL)
    if not isinstance(error.param.type, click.Choice) or given is None:
        return None
    is_option = isinstance(error.param, click.Option)
    what = f"{error.param.opts[0]} takes no {given[1]}" if is_option else f"there is no {given[1]}"
    return what, given[1], tuple(map(str, error.param.type.choices))


def _no_command(error: click.ClickException) -> tuple[str, str, Sequence[str]] | None:
    context = getattr(error, "ctx", None)
    given = re.match(r"No such command '(.*?)'", error.message, re.DOTALL)
    if given is None or context is None or not isinstance(context.command, click.Group):
        return None
    within = context.command_path.partition(" ")[2]
    what = f"there is no command {within} {given[1]}"
    return what, given[1], context.command.list_commands(context)


def _commands_of(error: click.ClickException, context: click.Context) -> str:
    group = context.command
    if not isinstance(error, click.exceptions.NoArgsIsHelpError):
        return ""
    assert isinstance(group, click.Group)
    return f"use one of {', '.join(group.list_commands(context))}"


def _meant(error: click.ClickException, context: click.Context) -> str:
    if not isinstance(error, click.NoSuchOption):
        return ""
    options = [name for parameter in context.command.get_params(context) for name in parameter.opts]
    return did_you_mean(error.option_name, (name for name in options if name[:2] == "--"))
