"""What names a file, as argument or option: an empty one, as of an unset variable, names none."""

from __future__ import annotations

from typing import Any

import click

from inscribe.cli.giving.piped import STANDARD_INPUT
from inscribe.errors import InputError


def guard(command: click.Command) -> None:
    """Let names of files be refused that are empty, and ``-`` where their help does not show it.

    Without it an empty name would mean the folder one stands in, and ``-`` a file of that name.
    """
    for parameter in command.params:
        shown = _shown(parameter)
        if isinstance(parameter, click.Argument):
            if STANDARD_INPUT not in shown or "FOLDER" in shown:
                parameter.callback = _named
        elif parameter.callback is None and ("FILE" in shown or "FOLDER" in shown):
            parameter.callback = option_named
    if isinstance(command, click.Group):
        for inner in command.commands.values():
            guard(inner)


def _shown(parameter: click.Parameter) -> str:
    shown = (parameter.metavar or str(parameter.name).upper()).removesuffix("...")
    return shown[1:-1] if shown[0] == "[" and shown.find("]") == len(shown) - 1 else shown


def _named(_context: click.Context, argument: click.Parameter, value: Any) -> Any:
    given, shown = _each(value), _shown(argument)
    if "" in given:
        raise InputError("an argument is empty", hint=f"name it: {shown}")
    if STANDARD_INPUT in given and STANDARD_INPUT not in shown:
        raise InputError("standard input is not taken here", hint=f"name it: {shown}")
    return value


def option_named(_context: click.Context, option: click.Parameter, value: Any) -> Any:
    """Return the file that an option names.

    Raises:
        InputError: it is empty, or ``-`` where that means nothing.
    """
    given, shown = _each(value), _shown(option)
    hint = f"name it: {option.opts[0]} {shown}"
    if "" in given:
        raise InputError(f"{option.opts[0]} is empty", hint=hint)
    if STANDARD_INPUT in given and STANDARD_INPUT not in shown:
        raise InputError(f"{option.opts[0]} names a file, and - is none", hint=hint)
    return value


def _each(value: Any) -> tuple[Any, ...]:
    return value if isinstance(value, tuple) else (value,)
