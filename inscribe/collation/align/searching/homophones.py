"""Words that only sound alike: 世の中 and 夜の中 are two readings, not two spellings.

Where both texts write Chinese characters a common sound is no proof. A single character that stands
by itself must write the other's word in other texts too, whatever the words around are read; and no
kana written as its parent answers a part of another character's Sino-Japanese reading.
"""

from __future__ import annotations

from inscribe.collation.align.searching.states import AlignmentMove
from inscribe.collation.align.sides import Side, meanings, shared_word
from inscribe.collation.parts import Span


def only_sound_alike(
    steps: list[AlignmentMove], one: Span, other: Span, copy: Side, source: Side
) -> bool:
    """Whether a stretch of the copy sounds like one of the source, and is another word."""
    ways = set()
    at = one.start
    for step in steps:
        ways.add((step.step, step.state.i > at))
        at = step.state.i
    if any({("parent", side), ("on", not side)} <= ways for side in (True, False)):
        return True  # しら浪 and 白雲: 浪 ろう, 雲 う
    if len(one) != len(other):
        return False
    pairs = zip(range(one.start, one.end), range(other.start, other.end), strict=True)
    unlike = [(i, j) for i, j in pairs if copy.norm[i] != source.norm[j]]
    if len(unlike) != 1:
        return False
    (i, j), *_ = unlike
    first, second = copy.norm[i], source.norm[j]
    if not (_stands_alone(copy, i) and _stands_alone(source, j)):
        return False
    return not (shared_word(first, second) or meanings(first) & meanings(second))


def _stands_alone(side: Side, at: int) -> bool:
    """Whether the sign is the only Chinese character of its run."""
    around = side.sort[max(0, at - 1) : at + 2]
    return side.sort[at] == "kanji" and around.count("kanji") == 1
