"""What is suspicious in a transcription, and the text it is judged in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from inscribe.signs import Certainty, Kind, Sign

SuspicionKind = Literal["mark", "kana", "form", "simplified", "gloss", "look-alike"]


@dataclass(frozen=True, slots=True)
class Suspicion:
    """Signs that deserve a second look (by index, both counted), why, and what else they may be."""

    sign: int
    text: str
    why: str
    instead: tuple[str, ...] = ()
    kind: SuspicionKind = "mark"
    last: int = -1  # of several signs, such as the kana of a gloss

    @property
    def end(self) -> int:
        """The index of the last sign."""
        return max(self.sign, self.last)

    @property
    def said(self) -> str:
        """Why, and what else it may be.

        >>> Suspicion(2, "ハ", "a kana among kanji", ("八",)).said
        'a kana among kanji; perhaps 八'
        """
        return f"{self.why}; perhaps {' '.join(self.instead)}" if self.instead else self.why


@dataclass(frozen=True, slots=True)
class SuspectText:
    """A text in current forms, with the index of the sign that each character came from.

    What is no sign at all (△) stands in it as a sign that cannot be read.
    """

    text: str
    origin: tuple[int, ...]


def setting_of(signs: Sequence[Sign], unread: frozenset[int]) -> SuspectText:
    """Return the text of signs, those of the indexes ``unread`` as not read."""
    from inscribe.forms import normalise_signs

    kept = [
        replace(sign, text="", certainty=Certainty.UNREADABLE)
        if sign.index in unread and sign.kind is Kind.CHARACTER
        else sign
        for sign in signs
    ]
    normal = normalise_signs(kept)
    return SuspectText(normal.text, tuple(signs[at].index for at in normal.origin))
