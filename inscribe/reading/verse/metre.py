"""How well a reading keeps a metre.

Tanka have 5-7-5-7-7,
haiku 5-7-5 morae, each phrase ending with a word; a phrase of one mora too many is common and goes
by almost unheard where the phrase holds a bare vowel (the rule of hypermetre observed by scholars
of verse since the 18th century; common knowledge, no single source).

>>> pattern_of(31).name, pattern_of(18).name, pattern_of(25)
('tanka', 'haiku', None)
"""

from __future__ import annotations

from typing import NamedTuple

# Costs in MeCab's units, set by hand on the development poems (see tests/benchmarks/reading.py).
LONG_WITH_VOWEL = 1500  # one mora too many in a phrase that holds a bare vowel
LONG = 5000  # one mora too many
TWO_LONG = 8000
SHORT = 7000  # one mora too few
ACROSS = 7000  # a word that runs over the end of a phrase
FOREIGN = 6500  # a noun read as Chinese, in a metre of court verse
DEPENDENT = 3000  # a phrase that begins with a word that leans on the one before


class Metre(NamedTuple):
    """A metre: its name and the morae of its phrases."""

    name: str
    phrases: tuple[int, ...]
    foreign: int = 0  # what a noun read as Chinese costs more in it

    @property
    def length(self) -> int:
        """The morae of a whole poem."""
        return sum(self.phrases)


TANKA = Metre("tanka", (5, 7, 5, 7, 7), foreign=FOREIGN)
COMIC = TANKA._replace(foreign=0)  # kyōka: comic verse in the metre of tanka
# What may stand alone on a narrow plate; believed only where kept to the mora.
PARTS = (
    Metre("half of a tanka", (7, 7)),
    Metre("two phrases", (5, 7)),
    Metre("four phrases of a tanka", (5, 7, 5, 7)),
    Metre("four phrases of a tanka", (7, 5, 7, 7)),
    Metre("three phrases of a tanka", (7, 5, 7)),
)
HAIKU = Metre("haiku", (5, 7, 5))
SEDOKA = Metre("sedōka", (5, 7, 7, 5, 7, 7), foreign=FOREIGN)


def pattern_of(count: int) -> Metre | None:
    """Return the metre a text of about ``count`` morae may have."""
    for metre, low, high in ((HAIKU, 15, 20), (TANKA, 28, 35), (SEDOKA, 36, 41)):
        if low <= count <= high:
            return metre
    return None


def phrase_cost(count: int, target: int, *, vowel: bool) -> int | None:
    """Return the cost of ``count`` morae where ``target`` are due; None if impossible."""
    over = count - target
    if over == 0:
        return 0
    if over == 1:
        return LONG_WITH_VOWEL if vowel else LONG
    if over == 2:
        return TWO_LONG
    return SHORT if over == -1 else None
