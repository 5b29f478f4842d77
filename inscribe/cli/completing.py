"""What the shell offers while a command line is typed: files, folders, ids, tables, chapters.

What an argument or option takes is told by the word its help shows for it (RECORD, FOLDER, ID ...).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from glob import escape
from pathlib import Path
from typing import Any

import click
from click.shell_completion import (
    BashComplete,
    CompletionItem,
    FishComplete,
    ShellComplete,
    ZshComplete,
    add_completion_class,
)

_MOST_IDS = 200


class _AfterEqualsSign(ShellComplete):
    """Completes the value of ``--option=value`` too, however the shell divides the line."""

    def get_completion_args(self) -> tuple[list[str], str]:
        """Return the words before the one at hand, and that; bash makes = a word of its own."""
        before, incomplete = super().get_completion_args()
        return [word for word in before if word != "="], incomplete

    def get_completions(self, args: list[str], incomplete: str) -> list[CompletionItem]:
        """Return what is offered; to a shell that takes option and value as one word, both."""
        found = super().get_completions(args, incomplete)
        option, sign, _ = incomplete.partition("=")
        if option[:2] == "--" and sign:
            for item in found:
                item.value = f"{option}={item.value}"
        return found


class _Bash(_AfterEqualsSign, BashComplete):
    """Completion in bash."""


class _Zsh(_AfterEqualsSign, ZshComplete):
    """Completion in zsh."""


class _Fish(_AfterEqualsSign, FishComplete):
    """Completion in fish."""


def prepare(program: click.Command) -> None:
    """Let the options of the program itself be completed, and values that follow a = sign."""
    complete(program)
    for shell in (_Bash, _Zsh, _Fish):
        add_completion_class(shell)


class Completed(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A text for which words, files or folders are offered, or files beside words."""

    name = "text"

    def __init__(self, kind: str, words: Callable[[], Iterable[str]] = tuple) -> None:
        self.kind = kind
        self.words = words

    def convert(self, value: Any, _param: object, _context: object) -> Any:
        """Return the text as it is."""
        return value

    def shell_complete(
        self, _context: click.Context, _param: click.Parameter, incomplete: str
    ) -> list[CompletionItem]:
        """Return the words that begin so, or tell the shell to look for files or folders."""
        found = (word for word in self.words() if word.startswith(incomplete))
        items = [CompletionItem(word) for _, word in zip(range(_MOST_IDS), found, strict=False)]
        if self.kind == "plain":
            return items
        if not (items and incomplete):
            return [CompletionItem(incomplete, type=self.kind)]
        typed = Path(incomplete)
        files = sorted(map(str, typed.parent.glob(f"{escape(typed.name)}*")))
        return items + [CompletionItem(file) for file in files]


def complete(command: click.Command) -> None:
    """Let the arguments and options of a command, and of its own commands, be completed."""
    for parameter in command.params:
        shown = parameter.make_metavar(click.Context(command))
        if isinstance(parameter.type, click.types.StringParamType):
            parameter.type = _by_word(set(re.findall(r"[A-Z]+", shown)), parameter.type)
    if isinstance(command, click.Group):
        for inner in command.commands.values():
            complete(inner)


def _by_word(words: set[str], otherwise: Any) -> Any:
    if words & {"ID", "IDS"}:
        return Completed("plain", _ids)
    if "SOURCE" in words:
        return Completed("file", _ids)
    if "TABLE" in words:
        from inscribe.descriptions import described_tables

        return Completed("plain", described_tables)
    if "CHAPTER" in words:
        from inscribe.guide import CHAPTERS

        return Completed("plain", lambda: CHAPTERS)
    if words & {"RECORD", "FILE", "PATH", "TOML", "PHOTO", "COPY", "MAP", "LIST"}:
        return Completed("file")
    return Completed("dir") if "FOLDER" in words else otherwise


def _ids() -> Iterable[str]:
    """Yield the ids of the user's library, if there is one."""
    from inscribe.cli.giving import library_path
    from inscribe.errors import InscribeError
    from inscribe.settings import settings
    from inscribe.sources import Library

    named = (str(setting.value) for setting in settings() if setting.key == "library")
    path: Path = library_path(next(named, None))
    if not path.is_file():
        return
    try:
        with Library(path) as library:
            yield from (text.id for text in library.texts())
    except InscribeError:
        return
