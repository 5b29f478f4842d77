"""Lines asked for on the terminal: edited as everywhere where it can be, plain where it cannot."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from io import TextIOWrapper
from typing import Any, Protocol

import click


class TypingStopped(Exception):  # noqa: N818 - no error: somebody stops
    """Ctrl-C or the end of the input; ``typed`` stands on the line so far."""

    def __init__(self, typed: str) -> None:
        super().__init__(typed)
        self.typed = typed


class LineReader(Protocol):
    """Whoever gives a line for a question."""

    def line(self, question: str, begun: str = "", words: Sequence[str] = ()) -> str:
        """Return a line; ``begun`` stands there already, ``words`` are offered at Tab.

        Raises:
            TypingStopped: Ctrl-C, or no more input.
        """


def line_reader() -> LineReader:
    """Return how lines are read: edited on a terminal that can, else plainly."""
    if isinstance(sys.stdin, TextIOWrapper):  # bytes that are no text are asked for again
        sys.stdin.reconfigure(errors="surrogateescape")
    can_edit = is_live() and sys.stderr.isatty() and os.environ.get("TERM", "") not in ("", "dumb")
    return EditedLines() if can_edit else PlainLines()


def is_live() -> bool:
    """Whether a person types the answers, and not a file or a program."""
    return sys.stdin.isatty()


class PlainLines:
    """Lines as they come: from a pipe, or a terminal that can move no cursor."""

    def line(self, question: str, begun: str = "", words: Sequence[str] = ()) -> str:
        """Return the next line; an empty one takes what was begun."""
        shown = f"{question} [{begun}]" if begun else question
        try:
            said = str(click.prompt(shown, default="", show_default=False, err=True))
        except (click.Abort, KeyboardInterrupt) as error:
            raise TypingStopped(begun) from error
        return said or begun


class EditedLines:
    """Lines with arrows, Home and End, history and Tab, in which wide characters count once."""

    def __init__(self) -> None:
        from prompt_toolkit import PromptSession

        self._session: Any = PromptSession(output=_output(), complete_while_typing=False)

    def line(self, question: str, begun: str = "", words: Sequence[str] = ()) -> str:
        """Return what is typed, put right and sent with Enter."""
        from prompt_toolkit.completion import WordCompleter

        words_offered = WordCompleter(list(words), sentence=True) if words else None
        self._session.completer = words_offered
        try:
            return str(self._session.prompt(f"{question}: ", default=begun))
        except (KeyboardInterrupt, EOFError) as error:
            raise TypingStopped(self._session.default_buffer.text) from error


def _output() -> Any:
    """Return standard error as the place for prompts, asked nothing that it may not answer."""
    from prompt_toolkit.output import create_output

    if os.name != "posix":
        return create_output(stdout=sys.stderr)
    from prompt_toolkit.data_structures import Size
    from prompt_toolkit.output.vt100 import Vt100_Output

    def size() -> Size:
        columns, rows = os.get_terminal_size(sys.stderr.fileno())
        return Size(rows=rows or 24, columns=columns or 80)

    return Vt100_Output(sys.stderr, size, term=os.environ.get("TERM"), enable_cpr=False)
