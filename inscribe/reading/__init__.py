"""Reading: what an inscription says, word by word, in kana and in Latin letters.

>>> interpretation = read_text("はるすぎて／なつきにけらし")
>>> interpretation.proposals[0].romaji
'haru sugite natsu kinikerashi'
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache
from typing import TYPE_CHECKING, Literal

from inscribe.reading.tokens import (
    Doubt,
    Interpretation,
    Part,
    Proposal,
    Register,
    Token,
)

if TYPE_CHECKING:
    from inscribe.forms.normal import NormalText
    from inscribe.reading.interpretation import Text
    from inscribe.signs import Transcription

__all__ = [
    "Doubt",
    "Interpretation",
    "Part",
    "Proposal",
    "Register",
    "Token",
    "read",
    "read_text",
]

Choice = Literal["auto", "verse", "signature", "prose"]

# What makes a literal text more than signs and column ends: the transcriber's notation.
_NOTATION = re.compile(r"[^\u3005-\u3007\u3021-\u3035\u3041-\u30ff\u3400-\u4dbf\u4e00-\u9fff／]")


def read(
    t: Transcription, register: Choice = "auto", overrides: Sequence[object] = ()
) -> Interpretation:
    """Return what an inscription says, its readings ranked, its doubts named.

    ``register`` chooses verse, signature or prose, or lets the text decide. ``overrides`` are
    readings a person has settled (see ``inscribe.record.Override``).
    """
    from inscribe.forms import normalise
    from inscribe.reading.interpretation import Text

    normal = normalise(t)
    carved = tuple(sign.text or "□" for sign in t.signs)
    columns = [t.signs[index].column for index in normal.origin]
    breaks = frozenset(i for i in range(1, len(columns)) if columns[i] != columns[i - 1])
    return _interpreted(Text(normal, carved, breaks), register, overrides)


def read_text(
    text: str, register: Choice = "auto", overrides: Sequence[object] = ()
) -> Interpretation:
    """Return what a literal text says; it may use the Japanese transcription conventions.

    Raises:
        NotationError: brackets or marks that cannot be understood.
    """
    if _NOTATION.search(text):
        from inscribe.notation import parse

        return read(parse(text), register, overrides)
    from inscribe.reading.interpretation import Text

    columns = text.split("／")
    plain = "".join(columns) if len(columns) > 1 else text
    normal = _normalise_text()(plain)
    breaks: frozenset[int] = frozenset()
    if len(columns) > 1:
        breaks = _breaks(columns, normal)
    return _interpreted(Text(normal, plain, breaks), register, overrides)


@cache
def _normalise_text() -> Callable[[str], NormalText]:
    from inscribe.forms import normalise_text

    return normalise_text


def _breaks(columns: list[str], normal: NormalText) -> frozenset[int]:
    signs, breaks = 0, set()
    for column in columns[:-1]:
        signs += len(column)
        breaks.add(signs)
    if len(normal.text) == len(normal.origin) and normal.origin[-1:] == (len(normal.text) - 1,):
        return frozenset(breaks)
    return frozenset(normal.origin.index(sign) for sign in breaks if sign in normal.origin)


def _interpreted(text: Text, register: Choice, overrides: Sequence[object]) -> Interpretation:
    from inscribe.reading.interpretation import interpretation_of
    from inscribe.reading.register import register_of

    if register == "auto":
        return interpretation_of(text, register_of(text.normal.text), certain=False)
    return interpretation_of(text, register, certain=True)
