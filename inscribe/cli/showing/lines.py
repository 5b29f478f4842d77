"""Runs over many lines: how far they are, and what is said of them at the end.

A line that cannot be used is answered with an error, and the rest go on; so the end tells how many
were refused, and the exit status is 1. An input without any text is told too.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from typing import TYPE_CHECKING, NoReturn

import click

from inscribe.cli.showing.bar import progress_shown

if TYPE_CHECKING:
    from inscribe.errors import InscribeError
    from inscribe.keys import RefusedKeys


def refusal(number: int, error: InscribeError) -> RefusedKeys:
    """Return what stands in place of the answer to a line that cannot be used."""
    return {"line": number, "error": error.within_line()}


class Tally:
    """How many lines there were, how many of them held a text, and which were refused."""

    def __init__(self, what: str = "line", holding: str = "text") -> None:
        self._what = what
        self._holding = holding
        self.given = 0
        self.filled = 0
        self.refused = 0
        self.first_refused = 0

    def take(self, text: str | bytes) -> None:
        """Count a line."""
        self.given += 1
        self.filled += bool(text.strip())

    def refuse(self, number: int) -> None:
        """Count a line that was answered with an error."""
        self.refused += 1
        self.first_refused = self.first_refused or number

    def summary(self, output: str | None = None) -> str:
        """Return what is to be said at the end; nothing where all went well.

        >>> tally = Tally()
        >>> for number, line in enumerate(("花", "（", "鳥"), start=1):
        ...     tally.take(line)
        >>> tally.refuse(2)
        >>> tally.summary()
        '1 of 3 lines was refused (line 2); see “error” in the result'
        >>> Tally().summary()
        'there was no text in the input; give one text a line'
        """
        if self.refused:
            were = "was" if self.refused == 1 else "were"
            what = self._what + "s" * (self.given != 1)
            first = "" if self.refused == 1 else "the first is "
            where = f"({first}line {self.first_refused}); see “error” in {output or 'the result'}"
            return f"{self.refused} of {self.given} {what} {were} refused {where}"
        missing = f"there was no {self._holding} in the input; give one {self._holding} a line"
        return "" if self.filled else missing

    def end(self, output: str | None, *, quiet: bool, otherwise: int = 0) -> NoReturn:
        """Say what is to be said, and end with status 1 if that was anything."""
        said = self.summary(output)
        if said and not quiet:
            click.echo(said, err=True)
        click.get_current_context().exit(1 if said else otherwise)


Show = Callable[[int, int | None], None]


def progress(what: str, output: str | None, *, quiet: bool) -> AbstractContextManager[Show]:
    """Give what shows how many lines are done, unless the answers themselves can be seen coming."""
    if output is None and sys.stdout.isatty():
        return nullcontext(_show_nothing)
    return progress_shown(what, quiet=quiet)


def _show_nothing(done: int, count: int | None) -> None:
    pass


def lines_of(text: str) -> list[str]:
    r"""Return the lines of a text, each of which wants an answer; blank ones too.

    >>> lines_of("花\n\n鳥\n"), lines_of("")
    (['花', '', '鳥'], [])
    """
    return text.removesuffix("\n").split("\n") if text else []
