"""Which signs of an inscription are looked for: those that may be copied, not who signed them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.signs import Sign, Transcription, transcription

if TYPE_CHECKING:
    from inscribe.reading.words import Interpretation
    from inscribe.record import Inscription

COPIED = frozenset({"verse", "prose", "chinese"})
_SEVERAL = 2  # columns, in which somebody may have signed


def copied_signs(inscription: Inscription) -> Transcription:
    """Return the verse, prose and Chinese of an inscription as a transcription of its own.

    All of it where it has no such passage, or nothing else.
    """
    from inscribe import reading

    t = inscription.transcription
    found = reading.read(
        t,
        inscription.register,
        inscription.overrides,
        passages=inscription.passages,
        source=inscription.source.text if inscription.source else "",
    )
    return _part(t, found)


def copied_in(t: Transcription) -> Transcription:
    """Return the verse, prose and Chinese of a text in several columns; else the text itself.

    >>> from inscribe import parse
    >>> copied_in(parse("花の色はうつりにけりな／朧谷刻之")).text
    '花の色はうつりにけりな'
    """
    from inscribe import reading

    return t if len(t.columns) < _SEVERAL else _part(t, reading.read(t, doubts=False))


def _part(t: Transcription, found: Interpretation) -> Transcription:
    return copied_part(t, [(p.kind, p.first, p.last) for p in found.passages])


def copied_part(t: Transcription, passages: Sequence[tuple[str, int, int]]) -> Transcription:
    """Return the copied passages of ``t``, which are told by kind, first and last sign.

    All of it where there is no such passage, or nothing else.

    >>> from inscribe import parse
    >>> copied_part(parse("花の色は／朧谷刻之"), [("verse", 0, 3), ("signature", 4, 7)]).text
    '花の色は'
    """
    kept = [range(first, last + 1) for kind, first, last in passages if kind in COPIED]
    if not kept or len(kept) == len(passages):
        return t

    def copied(sign: Sign) -> bool:
        return any(sign.index in signs for signs in kept)

    return transcription(
        [[list(filter(copied, column.signs)) for column in face.columns] for face in t.faces]
    )
