"""What is looked for or restored: a record, a file, a literal text, or lines of them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import files
from inscribe.cli.giving.arguments import given
from inscribe.cli.giving.piped import read_standard_input
from inscribe.cli.showing import lines_of

if TYPE_CHECKING:
    from inscribe.record import Inscription
    from inscribe.signs import Transcription

Asked = tuple[int, str, "Callable[[], Transcription]"]


def queries(path: str | None, literal: str | None, *, copied: bool = True) -> Iterator[Asked]:
    """Yield number, text and transcription of each query: one, or a record's inscriptions.

    Args:
        path: a record, a file of text, "-", or None.
        literal: the text itself, or None.
        copied: of inscriptions only what may be copied, not who signed them.

    Raises:
        InputError: there is no text, or two, or no such file.
    """
    text = given(path, literal)
    if text.kind != "record":
        yield _asked(1, text.transcription(), copied=copied)
        return
    from inscribe.record import load
    from inscribe.sources import copied_signs

    for number, inscription in enumerate(load(Path(text.value)).inscriptions, start=1):
        made = partial(copied_signs if copied else _whole, inscription)
        yield number, inscription.text.strip(), made


def _whole(inscription: Inscription) -> Transcription:
    return inscription.transcription


def line_queries(path: str | None, literal: str | None, *, copied: bool = True) -> Iterator[Asked]:
    """Yield one query a line, of which only what may be copied is taken if ``copied``."""
    text = given(path, literal, lines=True)
    if text.kind == "text":
        lines: Iterable[str] = text.value.split("\n")
    elif text.path is None:
        lines = lines_of(read_standard_input())
    else:
        lines = files.read_lines(text.path)
    for number, line in enumerate(lines, start=1):
        yield _asked(number, line.strip(), checked=True, copied=copied)


def _asked(number: int, text: str, *, checked: bool = False, copied: bool = True) -> Asked:
    def transcription() -> Transcription:
        if checked:
            files.transcribed(text, "")
        from inscribe import notation
        from inscribe.sources import copied_in, is_romanised, kana_of_romanised

        t = notation.parse(kana_of_romanised(text) if is_romanised(text) else text)
        return copied_in(t) if copied else t

    return number, text, transcription
