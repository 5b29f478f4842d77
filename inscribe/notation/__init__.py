r"""Text to transcription and back, in the conventions of the trade.

A transcription is written with one character for each carved sign. What it says beyond that:

====================  ======================  =================================
meaning               ``japanese``            ``leiden``
====================  ======================  =================================
unreadable sign       □                       ``.`` (or □)
struck out, illegible ■                       ⟦.⟧ (or ■)
struck out, legible   花(抹)                  ⟦花⟧
damaged but legible   花(損)                  花 with a dot below (U+0323)
doubtful              花(カ)                  花(?)
sic                   花(ママ)                花(!)
restored              ［花］                  [花]
supplied omission     〔花〕                  <花>
superfluous           花(衍)                  {花}
expanded              〈花〉                  (花)
gap, length unknown   ［　　］                [---]
kao                   （花押）                ((kao))
seal                  （印「山」） （印）     ((seal: 山)) ((seal))
column ends           ／ or a line break      ``|`` or a line break
face ends             」                      ``||``
kana and its parent   は(者)                  (write the hentaigana itself)
carved mark           ``\□``                  ``\.``
====================  ======================  =================================

(抹), (損), (衍), 〔 〕 and 〈 〉 are this program's choice among the notes of Japanese practice;
``.``, ``|`` and ``||`` its choice among Western ones; the rest is common practice or Leiden.
Full- and half-width brackets are both read, and ``/`` and ``|`` for ／. □(花カ) is read as a
doubtful 花, □(花) as a restored one, ■(花) as one struck out. Brackets may run over several signs
and columns, and one pair that says how sure a sign is may stand inside or around one that says
what the editor did. Spaces are not signs; a sign may be an ideographic description sequence
(⿰木黑, or ⿰木□ where a part cannot be read).

>>> t = parse("花の色は(者)／うつりに□(けカ)り（花押）")
>>> t.text
'花の色𛂥うつりにけり'
>>> render(t)
'花の色𛂥／うつりにけ(カ)り（花押）'
>>> render(t, "leiden")
'花の色𛂥|うつりにけ(?)り((kao))'
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from inscribe.late import names
from inscribe.notation.conventions import convention as _convention
from inscribe.notation.parser import MAX_CHARACTERS, Parser
from inscribe.signs import Transcription

if TYPE_CHECKING:
    from inscribe.notation.hentaigana import printed, written_out
    from inscribe.notation.renderer import Renderer

__all__ = [
    "CONVENTIONS",
    "MAX_CHARACTERS",
    "parse",
    "print_out",
    "printed",
    "render",
    "written_out",
]

CONVENTIONS = ("japanese", "leiden")


def parse(text: str, convention: str = "japanese", file: str | None = None) -> Transcription:
    """Return the transcription that ``text`` writes; ``file`` is only named in messages.

    The time grows with the length of the text. ``parse(render(t)) == t`` for every transcription
    without boxes.

    Raises:
        NotationError: the text breaks the convention or is longer than 200,000 characters;
            line and column are named, and what was expected.
        InputError: there is no such convention.
    """
    return Parser(text, _convention(convention), file).parse()


def render(t: Transcription, convention: str = "japanese", column_end: str | None = None) -> str:
    """Return ``t`` written in a convention; ``column_end`` may be a line break instead of its mark.

    Boxes are not written: they belong to a record.

    Raises:
        NotationError: a sign's text is not one sign, or holds a control character.
        InputError: there is no such convention.
    """
    return _renderer(convention, column_end).transcription(t)


def print_out(t: Transcription, column_end: str | None = None) -> str:
    """Return ``t`` in Japanese conventions as an edition prints it, kana with their parent kanji.

    Few fonts have hentaigana. The parent is the one the transcriber wrote, where he wrote one.

    >>> print_out(parse("に(尓)は(者)𛂋"))
    'に(尓)は(者)に(爾)'
    """
    return _renderer("japanese", column_end, printed=True).transcription(t)


@cache
def _renderer(name: str, column_end: str | None, *, printed: bool = False) -> Renderer:
    from inscribe.notation.renderer import Renderer

    return Renderer(_convention(name), column_end, printed=printed)


__getattr__ = names(
    __name__,
    dict.fromkeys(("printed", "written_out"), "inscribe.notation.hentaigana"),
)
