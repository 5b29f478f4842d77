"""The one family of errors a user ever sees: what is wrong; where; what to do.

Every stage raises :class:`InscribeError` (or a subclass) for bad input and nothing else; the
command line turns it into one message on standard error and exit status 2, in one spot
(``inscribe.cli.main``).

>>> error = NotationError("a bracket is opened and never closed", Place("a.txt", 3, 7), "close it")
>>> str(error)
'a bracket is opened and never closed; a.txt, line 3, column 7; close it'
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

_OBEYED = ("Cc", "Cf", "Cs", "Zl", "Zp")  # controls, unseen marks, half characters, line breaks


def harmless(text: str, *, lines: bool = True) -> str:
    r"""Return ``text`` with every character that a terminal might obey named by its code point.

    Line breaks stay where ``lines`` are wanted, and so do spaces, and characters that this Python
    does not know yet.

    >>> harmless("a\x1b[31m"), harmless("a\nb", lines=False)
    ('a<U+001B>[31m', 'a<U+000A>b')
    """
    if text.isprintable():
        return text
    from unicodedata import category

    return "".join(
        sign
        if category(sign) not in _OBEYED or (lines and sign == "\n")
        else f"<U+{ord(sign):04X}>"
        for sign in text
    )


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return a question whether the nearest of the ``known`` words was meant, if one is near.

    >>> did_you_mean("raed", ["read", "collate"]), did_you_mean("xyz", ["read"])
    ('did you mean read?', '')
    >>> did_you_mean("READ", ["read", "collate"])
    'did you mean read?'
    """
    from difflib import get_close_matches

    words = tuple(known)
    near = get_close_matches(word, words, n=1) or get_close_matches(word.casefold(), words, n=1)
    return f"did you mean {near[0]}?" if near else ""


def reason_of(error: OSError, otherwise: str) -> str:
    """Return why the system refused a file, written as messages are, or what is said ``otherwise``.

    >>> reason_of(FileNotFoundError(2, "No such file or directory"), "it cannot be read")
    'no such file or directory'
    """
    said = error.strerror or otherwise
    return said[:1].lower() + said[1:]


class Place(NamedTuple):
    """Where in the input a problem lies; lines and columns count from 1, columns in characters.

    Every row of every table has one, so making it must cost next to nothing.
    """

    file: str | None = None
    line: int | None = None
    column: int | None = None

    def __str__(self) -> str:
        parts = [harmless(self.file)] if self.file else []
        parts += [f"line {self.line}"] if self.line is not None else []
        parts += [f"column {self.column}"] if self.column is not None else []
        return ", ".join(parts)


class InscribeError(Exception):
    """Bad input: what is wrong, where, and what to do about it."""

    def __init__(self, message: str, place: Place | None = None, hint: str = "") -> None:
        super().__init__(message)
        self.message = harmless(message)
        self.place = place or Place()
        self.hint = harmless(hint)

    def __reduce__(self) -> tuple[object, ...]:
        # Without this the place and the hint are lost on the way from a worker process.
        return type(self), (self.message, self.place, self.hint)

    def __str__(self) -> str:
        return "; ".join(filter(None, (self.message, str(self.place), self.hint)))

    def within_line(self) -> str:
        """Return the sentence where the line is told beside it, for input of a text a line.

        >>> NotationError("this is odd", Place(None, 1, 7)).within_line()
        'this is odd; column 7'
        """
        return str(type(self)(self.message, self.place._replace(line=None), self.hint))

    def in_file(self, file: str, first_line: int | None = 1) -> InscribeError:
        """Return the same error placed in ``file``, its lines counted from ``first_line``.

        With None it names no line: it speaks of a text that stands somewhere in the file.
        """
        line = self.place.line
        if line is not None:
            line = None if first_line is None else line + first_line - 1
        return type(self)(self.message, self.place._replace(file=file, line=line), self.hint)


class InputError(InscribeError):
    """A file, an encoding, an option or an argument that cannot be used.

    >>> from inscribe import parse
    >>> parse("花", convention="none")
    Traceback (most recent call last):
    inscribe.errors.InputError: ...
    """


class NotationError(InscribeError):
    """A transcription that breaks the conventions it is written in.

    >>> from inscribe import parse
    >>> parse("花［色")
    Traceback (most recent call last):
    inscribe.errors.NotationError: ...
    """


class RecordError(InscribeError):
    """A record with an unknown key, a wrong type or an impossible value."""


class TableError(InscribeError):
    """A row of a glossary table that cannot be used."""


class ProblemsError(InscribeError):
    """Several problems found in one input, reported together, one a line."""

    def __init__(self, errors: Sequence[InscribeError]) -> None:
        super().__init__("\n".join(str(error) for error in errors))
        self.errors = tuple(errors)

    def __reduce__(self) -> tuple[object, ...]:
        return type(self), (self.errors,)

    def within_line(self) -> str:
        """Return the sentences where the line is told beside them."""
        return "\n".join(error.within_line() for error in self.errors)

    def in_file(self, file: str, first_line: int | None = 1) -> ProblemsError:
        """Return the same problems; those that name no file are placed in ``file``."""
        placed = (e if e.place.file else e.in_file(file, first_line) for e in self.errors)
        return ProblemsError(tuple(placed))
