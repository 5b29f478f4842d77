"""Which signs of an inscription are looked for: those that may be copied, not who signed them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.signs import Sign, Transcription, transcription

if TYPE_CHECKING:
    from inscribe.record import Inscription

COPIED = frozenset({"verse", "prose", "chinese"})


def copied_signs(inscription: Inscription) -> Transcription:
    """Return the verse, prose and Chinese of an inscription as a transcription of its own.

    All of it where it has no such passage, or nothing else.
    """
    from inscribe import reading

    t = inscription.transcription
    passages = reading.read(
        t,
        inscription.register,
        inscription.overrides,
        passages=inscription.passages,
        source=inscription.source.text if inscription.source else "",
    ).passages
    return copied_part(t, [(p.kind, p.first, p.last) for p in passages])


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
