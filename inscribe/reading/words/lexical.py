"""What a word of signatures is, and what it costs by its length."""

from __future__ import annotations

import re
from typing import NamedTuple

# Long words are seldom there by chance.
_COST_BY_LENGTH = {1: 1.5, 2: 0.7}
_COST_OF_LONG = 0.4


class SignatureWord(NamedTuple):
    """A word of a signature. Kana: a space divides words, ``|`` the parts of one."""

    text: str
    kind: str  # its class: "verb", "place", "opener", ...
    kana: str
    with_object: str = ""  # of a verb after 之, as the table lists them; of an opener before a verb
    alternatives: tuple[str, ...] = ()
    gloss: str = ""
    family: str = ""  # of openers and closers: "place", "patron", "model", ...
    cost: float = 1.0


def cost_by_length(text: str) -> float:
    """Return what a word of the glossary costs for its length alone."""
    return _COST_BY_LENGTH.get(len(text), _COST_OF_LONG)


def without_marks_of_repetition(written: str) -> str:
    """Return a word as current forms have it, in which no 々 stands.

    >>> without_marks_of_repetition("子々孫々")
    '子子孫孫'
    """
    return re.sub("(.)々", r"\1\1", written)
