"""Old kana in what is told: with the kanji each is written from, as few fonts have the signs."""

from __future__ import annotations

from inscribe.notation import written_out
from inscribe.signs import Transcription


def with_parents(text: str, *of: Transcription) -> str:
    """Return ``text`` with each hentaigana as its kana and parent kanji.

    The parent is the one that the transcriber of one of the texts ``of`` wrote for that sign,
    else the one Unicode names.

    >>> from inscribe import parse
    >>> with_parents("𛂋 or 𛂥", parse("に(尓)"))
    'に(尓) or は(者)'
    """
    for t in of:
        for sign in t.signs:
            if sign.noted and sign.text:
                text = text.replace(sign.text, sign.noted)
    return written_out(text)
