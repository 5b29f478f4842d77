"""A text in one of the conventions to a transcription, and back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.notation.hentaigana import printed
from inscribe.notation.known import convention as _convention
from inscribe.notation.parser import Parser
from inscribe.signs import Sign, Transcription, transcription

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from inscribe.notation.renderer import Renderer

CONVENTIONS = ("japanese", "leiden")


def parse(text: str, convention: str = "japanese", file: str | None = None) -> Transcription:
    """Return the transcription that ``text`` writes; ``file`` is only named in messages.

    The time grows with the length of the text. ``parse(render(t)) == t`` for every transcription
    without boxes.

    Raises:
        NotationError: the text breaks the convention or is longer than 200,000 characters;
            line and column are named, and what was expected.
        InputError: there is no such convention.

    >>> [sign.text for sign in parse("應需／造□").signs]
    ['應', '需', '造', '']
    """
    return Parser(text, _convention(convention), file).parse()


def render(t: Transcription, convention: str = "japanese", column_end: str | None = None) -> str:
    """Return ``t`` written in a convention; ``column_end`` may be a line break instead of its mark.

    Boxes are not written: they belong to a record.

    Raises:
        NotationError: a sign's text is not one sign, or holds a control character.
        InputError: there is no such convention.

    >>> from inscribe import parse
    >>> render(parse("應需／造□"), "leiden")
    '應需|造.'
    """
    return _renderer(convention, column_end).transcription(t)


def render_signs(signs: Sequence[Sign]) -> str:
    """Return signs of one inscription in Japanese conventions, in one line.

    >>> render_signs(parse("應需／造□").signs[1:])
    '需造□'
    """
    return "".join(_renderer("japanese", None).signs(signs))


def print_out(t: Transcription, column_end: str | None = None) -> str:
    """Return ``t`` in Japanese conventions as an edition prints it, kana with their parent kanji.

    Few fonts have hentaigana. The parent is the one the transcriber wrote, where he wrote one.

    >>> print_out(parse("に(尓)は(者)𛂋"))
    'に(尓)は(者)に(爾)'
    """
    return _renderer("japanese", column_end, printed).transcription(t)


def print_signs(signs: Sequence[Sign]) -> str:
    """Return signs in Japanese conventions as an edition prints them, in one line.

    >>> print_signs(parse("作（印「山」）").signs[1:])
    '（印「山」）'
    """
    return print_out(transcription([[signs]]))


def write_out(t: Transcription, column_end: str | None = None) -> str:
    """Return ``t`` in Japanese conventions as its transcriber wrote it.

    A kana that he noted with its parent kanji has it, one that he wrote as the sign is the sign.

    >>> write_out(parse("に(尓)は(者)𛂋"))
    'に(尓)は(者)𛂋'
    """
    return _renderer("japanese", column_end, _as_noted).transcription(t)


def _as_noted(sign: Sign) -> str:
    return sign.noted


@tables.cached()
def _renderer(
    name: str, column_end: str | None, shown: Callable[[Sign], str] | None = None
) -> Renderer:
    from inscribe.notation.renderer import Renderer

    return Renderer(_convention(name), column_end, shown)
