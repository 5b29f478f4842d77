"""The record's own text held against another reader's, sign by sign.

>>> from inscribe.notation import parse
>>> list(differences(parse("山の間"), parse("山のま"), "the second reader"))
['column 1, sign 3: 間, the second reader has ま']
"""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from inscribe.notation import printed
from inscribe.reading.words import shown
from inscribe.signs import Sign, Transcription, place_of

MOST = 12  # differences of one reader that are told one by one
_ORDINALS = ("first", "second", "third", "fourth", "fifth")


def called(number: int, name: str) -> str:
    """Return what to call a reader: by number, from 0, and by name.

    >>> called(1, "H. Quist")
    'the second reader (H. Quist)'
    """
    which = _ORDINALS[number] if number < len(_ORDINALS) else f"{number + 1}th"
    return f"the {which} reader ({name})"


def differences(own: Transcription, other: Transcription, reader: str) -> Iterator[str]:
    """Yield where another reader's text differs from the record's own, in words.

    Signs are compared as written: an old and a current form are different signs. Where all are the
    same, other columns are told.
    """
    here, there = [_sign(sign) for sign in own.signs], [_sign(sign) for sign in other.signs]
    found = [
        (a, b, c, d)
        for kind, a, b, c, d in SequenceMatcher(None, here, there, autojunk=False).get_opcodes()
        if kind != "equal"
    ]
    told = [said for span in found for said in _told(own, other, span, reader)]
    yield from told[:MOST]
    if len(told) > MOST:
        yield f"and {len(told) - MOST} more places where {reader} differs"
    if not told and _columns(own) != _columns(other):
        yield f"{reader} divides the same signs into other columns: {_columns(other)}"


def _told(
    own: Transcription, other: Transcription, span: tuple[int, int, int, int], reader: str
) -> Iterator[str]:
    a, b, c, d = span
    if b - a == d - c:
        for one, two in zip(range(a, b), range(c, d), strict=True):
            mine, theirs = _sign(own.signs[one]), _sign(other.signs[two])
            yield f"{place_of(own, one, one)}: {mine}, {reader} has {theirs}"
        return
    theirs = "".join(map(_sign, other.signs[c:d])) or "nothing"
    if a == b:
        if a:
            yield f"after {place_of(own, a - 1, a - 1)}: nothing, {reader} has {theirs}"
        else:
            yield f"before the first sign: nothing, {reader} has {theirs}"
    else:
        mine = "".join(map(_sign, own.signs[a:b]))
        yield f"{place_of(own, a, b - 1)}: {mine}, {reader} has {theirs}"


def _sign(sign: Sign) -> str:
    return printed(sign) if sign.text else shown(sign)


def _columns(text: Transcription) -> str:
    return "／".join("".join(map(_sign, column.signs)) for column in text.columns)
