"""What ``inscribe source find`` looks for: a record, a file, a literal text, or lines of them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import files
from inscribe.cli.common import STANDARD_INPUT, read_standard_input, read_transcription
from inscribe.cli.lines import lines_of
from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from inscribe.signs import Transcription

Asked = tuple[int, str, "Callable[[], Transcription]"]


def queries(path: str | None, literal: str | None) -> Iterator[Asked]:
    """Yield number, text and transcription of each query: one, or a record's inscriptions.

    Raises:
        InputError: neither or both of a path and a literal text are given.
    """
    if (path is None) == (literal is None):
        raise InputError("give one text to look for", hint="a record, a file, - or --text TEXT")
    if literal is not None:
        yield _asked(1, literal)
    elif path == STANDARD_INPUT:
        yield _asked(1, read_transcription())
    elif str(path).endswith(".toml"):
        from inscribe.record import load
        from inscribe.sources import copied_signs

        for number, inscription in enumerate(load(Path(str(path))).inscriptions, start=1):
            yield number, inscription.text.strip(), partial(copied_signs, inscription)
    elif not Path(str(path)).exists():
        raise InputError(
            "there is no such file", Place(str(path)), "for a literal text, use --text"
        )
    else:
        text = files.transcribed(files.read_text(Path(str(path))), str(path))
        yield _asked(1, text.strip("\n"))


def line_queries(path: str | None, literal: str | None) -> Iterator[Asked]:
    """Yield one query a line."""
    if literal is not None:
        lines: Iterable[str] = literal.split("\n")
    elif path is None or path == STANDARD_INPUT:
        lines = lines_of(read_standard_input())
    else:
        lines = files.read_lines(Path(path))
    for number, line in enumerate(lines, start=1):
        yield _asked(number, line.strip(), checked=True)


def _asked(number: int, text: str, *, checked: bool = False) -> Asked:
    def transcription() -> Transcription:
        if checked:
            files.transcribed(text, "")
        from inscribe import notation
        from inscribe.sources import is_romanised, kana_of_romanised

        return notation.parse(kana_of_romanised(text) if is_romanised(text) else text)

    return number, text, transcription
