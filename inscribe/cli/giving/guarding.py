"""Arguments that name files: an empty one, as of a shell's unset variable, names none."""

from __future__ import annotations

from typing import Any

import click

from inscribe.cli.giving.piped import STANDARD_INPUT
from inscribe.errors import InputError


def guard(command: click.Command) -> None:
    """Let arguments be refused that are empty, and ``-`` where their help does not show it.

    Without it an empty name would mean the folder one stands in, and ``-`` a file of that name.
    """
    for parameter in command.params:
        if isinstance(parameter, click.Argument) and STANDARD_INPUT not in _shown(parameter):
            parameter.callback = _named
    if isinstance(command, click.Group):
        for inner in command.commands.values():
            guard(inner)


def _shown(argument: click.Parameter) -> str:
    shown = (argument.metavar or str(argument.name).upper()).removesuffix("...")
    return shown[1:-1] if shown[0] == "[" and shown.find("]") == len(shown) - 1 else shown


def _named(_context: click.Context, argument: click.Parameter, value: Any) -> Any:
    given = value if isinstance(value, tuple) else (value,)
    if "" in given:
        raise InputError("an argument is empty", hint=f"name it: {_shown(argument)}")
    if STANDARD_INPUT in given:
        raise InputError("standard input is not taken here", hint=f"name it: {_shown(argument)}")
    return value
