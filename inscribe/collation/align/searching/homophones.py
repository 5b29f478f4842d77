"""Words that only sound alike: 世の中 and 夜の中 are two readings, not two spellings.

Where both texts write Chinese characters a common sound is no proof. A single character that stands
by itself must write the other's word in other texts too, whatever the words around are read; two
words that the dictionary of verse keeps apart (露 and 梅雨, 長雨 and 眺め) must have a meaning in
common; and no kana written as its parent answers a part of another character's Chinese reading.
"""

from __future__ import annotations

from itertools import product, starmap

from inscribe import tables
from inscribe.collation.align.searching.states import AlignmentMove, State
from inscribe.collation.align.sides import Side, meanings, shared_word
from inscribe.scripts import is_kanji


def only_sound_alike(
    steps: list[AlignmentMove], ends: tuple[State, State], copy: Side, source: Side
) -> bool:
    """Whether a stretch of the copy sounds like one of the source, and is another word."""
    start, end = ends
    ways = set()
    at = start.i
    for step in steps:
        ways.add((step.step, step.state.i > at))
        at = step.state.i
    if any({("parent", side), ("on", not side)} <= ways for side in (True, False)):
        return True  # しら浪 and 白雲: 浪 ろう, 雲 う
    signs, others = copy.norm[start.i : end.i], source.norm[start.j : end.j]
    for_kana = any(step.step == "parent" for step in steps)  # 隠起 for 沖
    if not for_kana and are_other_words("".join(signs), "".join(others)):
        return True
    if len(signs) != len(others):
        return False
    pairs = zip(range(start.i, end.i), range(start.j, end.j), strict=True)
    unlike = [(i, j) for i, j in pairs if copy.norm[i] != source.norm[j]]
    if len(unlike) != 1:
        return False
    (i, j), *_ = unlike
    first, second = copy.norm[i], source.norm[j]
    if not (_stands_alone(copy, i) and _stands_alone(source, j)):
        return False
    return not (shared_word(first, second) or meanings(first) & meanings(second))


def are_other_words(one: str, other: str) -> bool:
    """Whether two writings that have no character in common are known words, and not the same.

    >>> are_other_words("露", "梅雨"), are_other_words("凩", "木枯"), are_other_words("籬", "間狭")
    (True, False, False)
    """
    return seem_other_words(one, other) and tuple(sorted((one, other))) not in _other_writings()


@tables.cached(4096)
def seem_other_words(one: str, other: str) -> bool:
    """Whether dictionary forms and meanings keep apart two words without a common character."""
    characters = set(filter(is_kanji, one)), set(filter(is_kanji, other))
    if not all(characters) or characters[0] & characters[1]:
        return False
    lemmas = _lemmas(one), _lemmas(other)
    if not all(lemmas) or lemmas[0] & lemmas[1] or _meanings(one) & _meanings(other):
        return False
    return not any(starmap(shared_word, product(*characters)))


@tables.cached()
def _other_writings() -> frozenset[tuple[str, ...]]:
    return frozenset((row["written"], row["other"]) for row in tables.rows("other_writings"))


def _lemmas(written: str) -> frozenset[str]:
    """Return the dictionary forms of the words of verse that are written so."""
    from inscribe.reading.verse import readings_of

    return frozenset(word.lemma for word in readings_of(written) if word.known)


def _meanings(written: str) -> frozenset[str]:
    """Return what a word means, or what its characters mean."""
    return meanings(written).union(*map(meanings, filter(is_kanji, written)))


def _stands_alone(side: Side, at: int) -> bool:
    """Whether the sign is the only Chinese character of its run."""
    around = side.sort[max(0, at - 1) : at + 2]
    return side.sort[at] == "kanji" and around.count("kanji") == 1
