"""What one sign, or two signs together, may be in a line of Chinese: nouns, verbs, adverbs.

>>> [(phrase.kind, phrase.words[0].kana) for phrase in two_signs("山河", 0)]
[('noun', 'さんが')]
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.reading.chinese import sign_words
from inscribe.reading.chinese.compounds import compound
from inscribe.reading.chinese.phrases import ADVERBIAL, NOUN, PREDICATE, Head, Phrase, Said
from inscribe.reading.chinese.sayings import COMPOUND, known_saying
from inscribe.reading.chinese.sign_words import SignWord, words_of

SILENT = "兮矣"
_NO_WORD = frozenset("而之於于也矣兮乎焉所以勿莫")  # seldom within a word of two signs
_TURNING = frozenset(
    "不未無有如若非可欲当応須将為在自与知見"
)  # more often verbs than within a word
_NO_NOUN = frozenset("而於于也矣兮乎焉以不未")
_TIMES = frozenset("日月年歳夜朝時処歩世家人")  # said twice: each of them
# What it costs to take two signs for one word: one of the dictionary, a number or a place,
# a noun with a word that describes it, anything else.
_KNOWN, _COUNTED, _DESCRIBED, _UNLIKELY = 0.8, 1.4, 1.8, 3.4
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
    if signs[0] == signs[1] or signs[1] == "然":
        yield from _sounding(said)
    else:
        cost = _cost_of_word(signs, place) if not word.known else _KNOWN
        turning = signs[0] in _TURNING and signs[1] != "者"
        cost += 0.9 * turning + 1.0 * (_governs(signs[0]) and _is_named(signs[1]))
        yield Phrase(NOUN, cost, (said,), is_place=place)
    if word.known and word.is_verb:
        verb = SignWord(signs, f"{word.kana} ", "サ行変格")
        yield Phrase(PREDICATE, 2.8, (), Head(at, signs, verb))


def set_phrase(signs: str, at: int) -> Iterator[Phrase]:
    """Yield several signs as the one noun that EDICT has as a set phrase: 嘉辰令月."""
    saying = known_saying(signs)
    if saying and saying.kind == COMPOUND:
        yield Phrase(NOUN, _KNOWN, (Said(at, signs, saying.said),))


def _sounding(said: Said) -> Iterator[Phrase]:
    """Yield a sign said twice (蕭蕭, 年年) or one with 然 (悠然)."""
    if said.written[0] in _TIMES and said.written[1] != "然":
        yield Phrase(NOUN, 1.0, (said,))
        yield Phrase(ADVERBIAL, 0.9, (said,))
        return
    yield Phrase(ADVERBIAL, 1.0, (said.followed_by("と して"),))
    yield Phrase(PREDICATE, 1.4, (), Head(said.first, said.written, _closing(said)))


def _closing(said: Said) -> SignWord:
    return SignWord(said.written, said.kana, "不変")


def _cost_of_word(signs: str, is_place: bool) -> float:
    """Return what it costs to take two signs for a word that no dictionary has."""
    first, second = signs[0], signs[1]
    kinds = {row.conjugation for row in words_of(first)}
    leads = not kinds.isdisjoint((sign_words.ADVERB, sign_words.BEFORE_NOUN))
    unlikely = 1.2 * (leads and first not in NUMBERS)
    if second == "者" or not (_describes(first) and _is_named(second)):
        return _UNLIKELY + unlikely
    return (_COUNTED if is_place or first in NUMBERS else _DESCRIBED) + unlikely


def _describes(sign: str) -> bool:
    """Whether a sign may describe the noun after it, rather than govern it or be an adverb."""
    rows = words_of(sign)
    return (
        sign in NUMBERS
        or any(word.describes for word in rows)
        or not any(word.is_inflected or word.conjugation == sign_words.ADVERB for word in rows)
    )


def _governs(sign: str) -> bool:
    """Whether a sign is first of all a verb with an object."""
    return any(word.particle == "を" and word.is_inflected for word in words_of(sign)[:1])


def _is_named(sign: str) -> bool:
    """Whether a sign is first of all a noun."""
    rows = words_of(sign)
    return any(word.conjugation in (sign_words.NOUN, sign_words.PLACE) for word in rows) or not rows
