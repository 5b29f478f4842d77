"""What a sign makes of the phrase beside it: a verb of its object, 之 者 也 of what they follow.

What a verb governs follows it in Chinese and is said before it in Japanese.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from inscribe.reading.chinese import sign_words
from inscribe.reading.chinese.phrases import (
    ADVERBIAL,
    CLAUSE,
    GENITIVE,
    NOUN,
    PREDICATE,
    Head,
    Phrase,
    Said,
    followed,
)
from inscribe.reading.chinese.sign_words import SignWord

_NARI, _YA = SignWord("也", "なり", "不変"), SignWord("乎", "や", "不変")
Cell = Mapping[str, Phrase]  # the cheapest phrase of each kind


def with_object(word: SignWord, at: int, cell: Cell, rank: int) -> Iterator[Phrase]:
    """Yield a verb with what it governs; ``rank`` is its place among the ways its sign is said."""
    is_noun = word.complement == sign_words.NOUN
    kinds = () if not word.complement else (NOUN,) if is_noun else (PREDICATE, CLAUSE)
    for kind in kinds:
        object_ = cell.get(kind)
        if object_ is None:
            continue
        words = followed(object_.ending(word.complement), word.particle)
        if not is_noun and word.particle.startswith("ん"):
            words = _joined_closely(object_.ending(word.complement), word.particle)
        closed = object_.head is not None and object_.head.word in (_NARI, _YA)
        cost = object_.cost + (1.0 if is_noun else 0.8) + 0.3 * rank + 0.6 * closed
        if not word.before:
            yield Phrase(PREDICATE, cost, words, Head(at, word.sign, word))
            continue
        before = Said(at, word.sign, word.before, "副詞")
        yield Phrase(PREDICATE, cost, (before, *words), Head(at, "", word))


def _joined_closely(words: tuple[Said, ...], kana: str) -> tuple[Said, ...]:
    return (*words[:-1], words[-1].followed_by(kana, ""))


def before_no(cell: Cell, at: int) -> Iterator[Phrase]:
    """Yield what stands before a 之 at place ``at``, for a noun to follow."""
    if noun := cell.get(NOUN):
        yield Phrase(GENITIVE, noun.cost, (*noun.words, Said(at, "之", "の", "助詞-格助詞")))
    if verb := cell.get(PREDICATE):
        words = verb.ending("連体形")
        yield Phrase(GENITIVE, verb.cost + 0.3, (*words, Said(at, "之", "の", "助詞-格助詞")))


def before_mono(cell: Cell, at: int) -> Iterator[Phrase]:
    """Yield what 者 makes of what stands before it: he who, or a topic."""
    for kind in (PREDICATE, CLAUSE):
        if verb := cell.get(kind):
            words = (*verb.ending("連体形"), Said(at, "者", "もの"))
            yield Phrase(NOUN, verb.cost + 0.4, words)
    if noun := cell.get(NOUN):
        yield Phrase(ADVERBIAL, noun.cost + 0.6, (*noun.words, Said(at, "者", "は", "助詞-係助詞")))


def before_nari(cell: Cell, at: int) -> Iterator[Phrase]:
    """Yield what stands before a 也, said to be so."""
    if noun := cell.get(NOUN):
        verb = SignWord("也", "な", "ラ行変格")
        yield Phrase(PREDICATE, noun.cost + 0.3, noun.words, Head(at, "也", verb))
    for kind in (PREDICATE, CLAUSE):
        if phrase := cell.get(kind):
            words = phrase.ending("連体形")
            yield Phrase(kind, phrase.cost + 0.2, words, Head(at, "也", _NARI))


def before_ya(cell: Cell, sign: str, at: int) -> Iterator[Phrase]:
    """Yield what stands before a 乎 or 哉, asked or exclaimed."""
    for kind in (PREDICATE, CLAUSE):
        if phrase := cell.get(kind):
            words = phrase.ending("終止形")
            yield Phrase(kind, phrase.cost + 0.2, words, Head(at, sign, _YA))
