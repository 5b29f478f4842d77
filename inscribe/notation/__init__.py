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

``notation/segments.py`` cuts text into signs (UAX #29 as far as needed, description sequences,
〳〵); ``japanese.py`` and ``leiden.py`` are data; ``parser.py`` is one linear pass;
``renderer.py`` the way back. A new mark: add it to one of the two data modules *and* to
``special`` (what a carved sign must escape); the laws in ``tests/test_notation_laws.py`` find what
is forgotten. A ``Sign`` that contradicts itself cannot be made.

>>> from inscribe.notation import parse, render
>>> t = parse("花の色は(者)／うつりに□(けカ)り（花押）")
>>> t.text
'花の色𛂥うつりにけり'
>>> render(t)
'花の色𛂥／うつりにけ(カ)り（花押）'
>>> render(t, "leiden")
'花の色𛂥|うつりにけ(?)り((kao))'
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.notation.cutting import (
        MAX_MARKS as MAX_MARKS,
        SPACING_VOICING as SPACING_VOICING,
        excess as excess,
        is_description as is_description,
        is_mark as is_mark,
        is_selector as is_selector,
        refusal as refusal,
        segments as segments,
    )
    from inscribe.notation.hentaigana import printed as printed, written_out as written_out
    from inscribe.notation.located import extents_of_signs as extents_of_signs
    from inscribe.notation.parser import MAX_CHARACTERS as MAX_CHARACTERS
    from inscribe.notation.supplied import (
        bracketed as bracketed,
        supplied_stretches as supplied_stretches,
    )
    from inscribe.notation.text import (
        CONVENTIONS as CONVENTIONS,
        parse as parse,
        print_out as print_out,
        print_signs as print_signs,
        render as render,
        render_signs as render_signs,
        write_out as write_out,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "cutting": (
                "MAX_MARKS SPACING_VOICING excess is_description is_mark is_selector refusal "
                "segments"
            ),
            "hentaigana": "printed written_out",
            "located": "extents_of_signs",
            "parser": "MAX_CHARACTERS",
            "supplied": "bracketed supplied_stretches",
            "text": "CONVENTIONS parse print_out print_signs render render_signs write_out",
        },
    )
