"""What one sign, or two signs together, may be in a line of Chinese: nouns, verbs, adverbs.

>>> [(phrase.kind, phrase.words[0].kana) for phrase in two_signs("山河", 0)]
[('noun', 'さんが')]
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.reading.chinese import sign_words
from inscribe.reading.chinese.compounds import compound
from inscribe.reading.chinese.phrases import ADVERBIAL, NOUN, PREDICATE, Head, Phrase, Said
from inscribe.reading.chinese.sign_words import SignWord, words_of

SILENT = "兮矣"
_NO_WORD = frozenset("而之於于也矣兮乎焉所以勿莫")  # seldom within a word of two signs
_TURNING = frozenset(
    "不未無有如若非可欲当応須将為在自与知見"
)  # more often verbs than within a word
_NO_NOUN = frozenset("而於于也矣兮乎焉以不未")
_TIMES = frozenset("日月年歳夜朝時処歩世家人")  # said twice: each of them
NUMBERS = frozenset("一二三四五六七八九十百千万数")


def sign_alone(sign: str, at: int) -> Iterator[Phrase]:
    """Yield what one sign may be by itself."""
    rows = words_of(sign)
    verbs = [word for word in rows if word.is_inflected]
    listed = any(word.conjugation in (sign_words.NOUN, sign_words.PLACE) for word in rows)
    place = any(word.conjugation == sign_words.PLACE for word in rows)
    guess = (1.2 if sign_words.native_noun(sign) else 2.0) + 1.0 * bool(rows)
    cost = 1.0 + 0.8 * (sign in NUMBERS) if listed else guess
    if sign not in _NO_NOUN:
        yield Phrase(NOUN, cost, (Said(at, sign, sign_words.noun(sign)),), is_place=place)
    for word in verbs:
        if word.describes:
            yield Phrase(NOUN, 1.7, (Said(at, sign, sign_words.inflected(word, "連体形")),))
    for rank, word in enumerate(verbs):
        if word.complement in ("", sign_words.NOUN) and not word.before:
            left_out = 0.5 if word.particle == "を" else 0.2 if word.complement else 0.0
            cost = 1.0 + 0.3 * rank + left_out
            yield Phrase(PREDICATE, cost, (), Head(at, sign, word))
    for word in rows:
        if word.conjugation == sign_words.ADVERB:
            cost = 0.9 + 0.7 * (sign in NUMBERS)
            yield Phrase(ADVERBIAL, cost, (Said(at, sign, word.stem, "副詞"),))
    if sign in SILENT:
        yield Phrase(ADVERBIAL, 0.5, (Said(at, sign, "", "記号-一般"),))


def two_signs(signs: str, at: int) -> Iterator[Phrase]:
    """Yield what two signs may be as one word of Chinese sounds."""
    if not _NO_WORD.isdisjoint(signs):
        return
    word = compound(signs)
    said = Said(at, signs, word.kana)
    place = any(row.conjugation == sign_words.PLACE for row in words_of(signs[1]))
    cost = 0.8 if word.known else 1.8 if _describes(signs[0]) and _is_named(signs[1]) else 3.4
    if not word.known and signs[1] == "者":
        cost = 3.4
    if not word.known and cost < 2 and (place or signs[0] in NUMBERS):
        cost = 1.4
    turning = signs[0] in _TURNING and signs[1] != "者"
    cost += 0.9 * turning + 1.0 * (_governs(signs[0]) and _is_named(signs[1]))
    kinds = {row.conjugation for row in words_of(signs[0])}
    if not word.known and not kinds.isdisjoint((sign_words.ADVERB, sign_words.BEFORE_NOUN)):
        cost += 1.2
    twice = signs[0] == signs[1]
    if signs[1] != "然" and not (twice and signs[0] not in _TIMES):
        yield Phrase(NOUN, cost, (said,), is_place=place)
    if twice and signs[0] in _TIMES:
        yield Phrase(ADVERBIAL, 0.9, (said,))
    elif twice or signs[1] == "然":
        yield Phrase(ADVERBIAL, 0.9 if not twice else 1.3, (said.followed_by("と して"),))
        fixed = SignWord(signs, word.kana, "不変")
        yield Phrase(PREDICATE, 1.4, (), Head(at, signs, fixed))
    if word.known and word.is_verb:
        verb = SignWord(signs, f"{word.kana} ", "サ行変格")
        yield Phrase(PREDICATE, 2.8, (), Head(at, signs, verb))


def _describes(sign: str) -> bool:
    """Whether a sign may describe the noun after it, rather than govern it or be an adverb."""
    rows = words_of(sign)
    return any(word.describes for word in rows) or not any(
        word.is_inflected or word.conjugation == sign_words.ADVERB for word in rows
    )


def _governs(sign: str) -> bool:
    """Whether a sign is first of all a verb with an object."""
    return any(word.particle == "を" and word.is_inflected for word in words_of(sign)[:1])


def _is_named(sign: str) -> bool:
    """Whether a sign is first of all a noun."""
    rows = words_of(sign)
    return any(word.conjugation in (sign_words.NOUN, sign_words.PLACE) for word in rows) or not rows
