"""What he copies: invented verse as words, with what a word may become.

A line of ``texts.txt`` is a poem. A word is its kana, ``=`` its shorter writing, ``~`` what another
print or a bad memory has in its place; ``-`` stands before a particle.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

_WORD = re.compile(r"(-?)([^=~]+)(?:=([^~]+))?(?:~(.+))?")


@dataclass(frozen=True)
class Word:
    """A word of a poem: in kana, as short as may be, what it is taken for; whether a particle."""

    kana: str
    short: str
    other: str
    particle: bool


def _word(written: str) -> Word:
    found = _WORD.fullmatch(written)
    if not found:
        raise ValueError(f"no word: {written}")
    dash, kana, short, other = found.groups()
    return Word(kana, short or kana, other or "", bool(dash))


_LINES = Path(__file__).with_name("texts.txt").read_text("utf-8").splitlines()
POEMS = tuple(tuple(_word(each) for each in line.split()) for line in _LINES)
TITLES = ("春のうた", "題しらず", "山家月", "松上鶴", "雪中の旅", "海辺にて")
