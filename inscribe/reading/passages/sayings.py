"""What is known of Chinese sayings: the seam to ``inscribe.reading.chinese``."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from inscribe import tables
from inscribe.reading.chinese import known_saying
from inscribe.reading.words import words_from, words_of

_INVOCATION = "invocation"
_WISHES = frozenset({_INVOCATION, "remark"})  # 長寿万年, 子孫可伝
_LEAST_OF_SEVERAL = 3  # signs of a saying that is part of a longer text
_SURE_LENGTH = 4
_PARALLELS = frozenset({4, 8})
_NOUN, _ADJECTIVES = "名詞", frozenset({"ク", "シク", "ナリ"})
_COMPOSED = range(4, 9)  # signs of invocations and wishes put together of parts
_CONTINUING = ("り", "て", "で", "ば", "ども")
_MOST_WORN, _MOST_WORN_OF_SEVERAL = 0.34, 0.5  # of one saying; of one beside others


def is_known_saying(text: str) -> bool:
    """Whether a normalised text is a saying, or several, or lines of verse, that the tables have.

    >>> is_known_saying("南無妙法蓮華経"), is_known_saying("苅部棟澄")
    (True, False)
    """
    return bool(text) and (_is_known(text) or _is_of_several(text))


def _is_known(text: str, most_worn: float = _MOST_WORN) -> bool:
    if text in _sayings():
        return True
    if "□" in text:
        return text.count("□") <= most_worn * len(text) and _is_worn(text)
    if len(text) in _COMPOSED:
        return any(word.kind in _WISHES for word in words_of(text))
    return any(word.kind == _INVOCATION for word in words_from(text[0]).get(text, ()))


def _is_worn(text: str) -> bool:
    """Whether what is left of a text is left of a known saying."""
    return any(
        all(one in ("□", two) for one, two in zip(text, known, strict=True))
        for known in _sayings_of(len(text))
    )


def _is_of_several(text: str) -> bool:
    """Whether a text is nothing but known sayings, one after the other."""
    if text.count("□") > _MOST_WORN * len(text):
        return False
    reached = {0}
    for first in range(len(text)):
        if first in reached:
            for length in known_lengths(text, first, _MOST_WORN_OF_SEVERAL):
                if length >= _LEAST_OF_SEVERAL:
                    reached.add(first + length)
    return len(text) in reached


def known_lengths(text: str, first: int, most_worn: float = _MOST_WORN) -> tuple[int, ...]:
    """Return the lengths of the known sayings that begin at a place of a text.

    Args:
        text: a normalised text.
        first: where they begin.
        most_worn: the share of the signs of a saying that may be lost.
    """
    longest = min(len(text) - first, _longest())
    return tuple(n for n in range(2, longest + 1) if _is_known(text[first : first + n], most_worn))


def are_sayings_apart(text: str, faces: Iterable[int]) -> bool:
    """Whether each face has a saying of its own, and all together are none.

    >>> are_sayings_apart("明鏡止水温故知新", [4]), are_sayings_apart("明鏡止水", [2])
    (True, False)
    """
    edges = (0, *sorted(faces), len(text))
    parts = [text[one:two] for one, two in pairwise(edges)]
    if len(parts) < 2 or _is_known(text) or not all(map(is_known_saying, parts)):
        return False
    return not any(map(_goes_on, parts[:-1]))


def _goes_on(part: str) -> bool:
    """Whether a saying is a line of verse, or ends as a sentence does that goes on: 竜吟雲起."""
    saying = known_saying(part)
    return saying is None or saying.kind == "verse" or saying.kana.endswith(_CONTINUING)


def holds_saying(text: str) -> bool:
    """Whether a saying of four signs or more stands somewhere in a text.

    >>> holds_saying("南無妙法蓮華経綾国刻"), holds_saying("武州住綾国刻")
    (True, False)
    """
    places = range(len(text))
    return is_parallel(text) or any(
        max(known_lengths(text, at), default=0) >= _SURE_LENGTH for at in places
    )


def is_parallel(plain: str) -> bool:
    """Whether a text of four or eight signs says of each thing what it is like: 山高水長."""
    if len(plain) not in _PARALLELS:
        return False
    things, qualities = _things(), _qualities()
    pairs = zip(plain[::2], plain[1::2], strict=True)
    return all(one in things and two in qualities for one, two in pairs)


@tables.cached()
def _things() -> frozenset[str]:
    return frozenset(r["written"] for r in tables.rows("chinese_words") if r["class"] == _NOUN)


@tables.cached()
def _qualities() -> frozenset[str]:
    rows = tables.rows("chinese_words")
    return frozenset(r["written"] for r in rows if r["class"] in _ADJECTIVES)


@tables.cached()
def _sayings() -> frozenset[str]:
    """Return the texts of the tables of sayings and set phrases."""
    return frozenset((*tables.first_cells("sayings"), *tables.first_cells("compounds")))


@tables.cached()
def _sayings_of(length: int) -> tuple[str, ...]:
    return tuple(saying for saying in _sayings() if len(saying) == length)


@tables.cached()
def _longest() -> int:
    return max(map(len, _sayings()), default=10)
