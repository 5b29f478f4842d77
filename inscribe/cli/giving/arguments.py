"""What a command is given: a record, a file, a text as it is typed, or standard input.

All commands tell these apart by the same rules, which stand here once. What exists is a file; what
does not, and holds Japanese signs, is a text; ``-``, or nothing where something is piped in, is
standard input.
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from inscribe import files
from inscribe.cli.giving.piped import STANDARD_INPUT, read_standard_input, read_transcription
from inscribe.errors import InputError, Place, did_you_mean
from inscribe.scripts import is_written

_LIKE_A_FILE = re.compile(r"[/\\]|\.[A-Za-z]{2,5}$")
_SHOWN = 200  # characters of a long argument
_NOTHING = "give a record, a file, the text itself, or - for standard input"


@dataclass(frozen=True)
class Given:
    """One thing given: its kind, and the path or the text it is."""

    kind: Literal["record", "file", "text", "input"]
    value: str = ""

    @property
    def place(self) -> str | None:
        """What messages call it: the file's name, standard input, or nothing for a typed text."""
        return {"text": None, "input": "standard input"}.get(self.kind, self.value)

    @property
    def path(self) -> Path | None:
        """The file, where it is one."""
        return Path(self.value) if self.kind in ("record", "file") else None

    def transcription(self) -> str:
        """Return the text of what is no record, as it was transcribed.

        Raises:
            InputError: a file or the input cannot be read, is no UTF-8, or no transcription.
        """
        if self.kind == "text":
            return self.value
        if self.kind == "input":
            return read_transcription()
        text = files.read_text(Path(self.value))
        return files.transcribed(text, self.value).strip("\n")


def given(argument: str | None, literal: str | None = None, *, lines: bool = False) -> Given:
    """Return what an argument, or the text of ``--text``, is; without either, what is piped in.

    Where ``lines`` are taken, that is standard input even if they are typed there.

    Raises:
        InputError: there is nothing, or both, or the argument is neither a file nor Japanese.
    """
    if argument is not None and literal is not None:
        raise InputError("a text is given twice", hint="give either --text or one argument")
    if literal is not None:
        return Given("input") if literal == STANDARD_INPUT else Given("text", literal)
    if argument is None and (lines or is_piped()):
        return Given("input")
    if argument is None:
        raise InputError("a text is wanted", hint=_NOTHING)
    return told_apart(argument)


def told_apart(argument: str) -> Given:
    """Return what one argument is.

    Raises:
        InputError: it is a folder, or neither a file nor a Japanese text.
    """
    if argument == STANDARD_INPUT:
        return Given("input")
    if not argument.strip():
        raise InputError("the text is empty", hint=_NOTHING)
    path = Path(argument)
    if _exists(path):
        if path.is_dir():
            raise InputError(
                "it is a folder, and a file is wanted", Place(argument), "name a file in it"
            )
        return Given("record" if path.suffix == ".toml" else "file", argument)
    if any(map(is_written, argument)) and not _LIKE_A_FILE.search(argument):
        return Given("text", argument)
    hint = did_you_mean(path.name, _names_beside(path))
    shown = argument if len(argument) <= _SHOWN else f"{argument[:_SHOWN]}…"
    raise InputError(
        "there is no such file", Place(shown), hint or "for a text itself, use --text TEXT"
    )


def words_given(arguments: tuple[str, ...]) -> list[str]:
    """Return the arguments, each ``-`` among them, or nothing at all, as what is piped in.

    Raises:
        InputError: nothing is given.
    """
    if not arguments and not is_piped():
        raise InputError("nothing is given", hint="give what is asked about, or - and pipe it in")
    piped = STANDARD_INPUT in arguments or not arguments
    text = read_standard_input() if piped else ""
    return [text if each == STANDARD_INPUT else each for each in arguments or (STANDARD_INPUT,)]


def expect_no_files(arguments: tuple[str, ...], to_do: str) -> None:
    """Refuse, among words that are looked up themselves, the name of a file.

    Args:
        arguments: what was given; what holds Japanese is a word, even if a file is called so.
        to_do: the command that takes the file, with ``{}`` for its name.

    Raises:
        InputError: one of them is a file that is there.
    """
    for each in arguments:
        if each != STANDARD_INPUT and not any(map(is_written, each)) and _is_file(Path(each)):
            shown = f"'{each}'" if " " in each else each
            raise InputError(
                "it is a file, and the words themselves are wanted",
                Place(each),
                f"for what it holds, use: {to_do.format(shown)}",
            )


def is_piped() -> bool:
    """Whether something other than a terminal gives standard input."""
    return sys.stdin is not None and not sys.stdin.isatty()


def _is_file(path: Path) -> bool:
    return _exists(path) and path.is_file()


def _exists(path: Path) -> bool:
    try:
        return path.exists()
    except (OSError, ValueError):  # too long, or with characters that no file name has
        return False


def _names_beside(path: Path) -> list[str]:
    try:
        return [each.name for each in path.parent.iterdir()]
    except (OSError, ValueError):
        return []
