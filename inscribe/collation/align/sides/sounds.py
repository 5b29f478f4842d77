"""The sounds of a text as it is likeliest read, sign by sign: rough, but the same for one word.

They show quickly where two long texts go together; what a difference is, they do not tell.

>>> from inscribe import notation
>>> from inscribe.collation.collating import prepared
>>> prepared(notation.parse("花の色は")).sounds.letters
'はなのひろは'
"""

from __future__ import annotations

from collections.abc import Sequence
from operator import attrgetter
from typing import NamedTuple
from zlib import crc32

from inscribe.collation.align.sides.readings import ByLetter

WORN = "□"
# Rough: letters that spelling exchanges fall together, は with わ wherever they stand.
_ROUGH = str.maketrans("わいうえおワイウエオジズぢづ", "はひふへほはひふへほしすしす")
_OWN, _OWNS = (
    0xF0000,
    0xFFFE,
)  # private characters, for signs that are no character and have no sound


class Sounds(NamedTuple):
    """The sounds of a text, as letters, and where its signs begin in them."""

    letters: str
    sign_at: dict[int, int]  # offset in the letters -> sign that begins there


def sounds_of(
    raw: Sequence[str],
    norm: Sequence[str],
    sort: Sequence[str],
    letters: Sequence[str],
    readings: Sequence[tuple[ByLetter, ...]],
) -> Sounds:
    """Return the sounds of a text that is given as by ``Side``.

    A sign that has no sound stands for itself, so that nothing else answers it.
    """
    found: list[str] = []
    sign_at: dict[int, int] = {}
    at = length = 0
    while at < len(raw):
        sign_at[length] = at
        signs = 1
        if letters[at]:
            sound = letters[at].translate(_ROUGH)
        elif sort[at] in ("stop", "unread"):
            sound = WORN if sort[at] == "unread" else ""
        elif known := [reading for part in readings[at] for reading in part[""]]:
            likeliest = max(known, key=attrgetter("length"))
            sound, signs = likeliest.pattern.translate(_ROUGH), likeliest.length
        else:
            sound = _own(norm[at] or raw[at])
        found.append(sound)
        length += len(sound)
        at += signs
    sign_at[length] = len(raw)
    return Sounds("".join(found), sign_at)


def _own(sign: str) -> str:
    return sign if len(sign) == 1 else chr(_OWN + crc32(sign.encode()) % _OWNS)
