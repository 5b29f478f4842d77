"""What the shell offers while a command line is typed: files, folders, ids, tables, chapters.

What an argument or option takes is told by the word its help shows for it (RECORD, FOLDER, ID ...).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import click
from click.shell_completion import CompletionItem

_MOST_IDS = 200


class Completed(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A text for which words, files or folders are offered."""

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
        if self.kind != "plain":
            return [CompletionItem(incomplete, type=self.kind)]
        found = (word for word in self.words() if word.startswith(incomplete))
        return [CompletionItem(word) for _, word in zip(range(_MOST_IDS), found, strict=False)]


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
    if "TABLE" in words:
        from inscribe.descriptions import described_tables

        return Completed("plain", described_tables)
    if "CHAPTER" in words:
        from inscribe.guide import CHAPTERS

        return Completed("plain", lambda: CHAPTERS)
    if words & {"RECORD", "FILE", "PATH", "TOML", "PHOTO", "COPY", "SOURCE", "MAP", "LIST"}:
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
