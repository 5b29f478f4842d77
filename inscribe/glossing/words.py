"""The words of a reading with what each means: classical tables first, then EDICT.

>>> from inscribe.reading import read_text
>>> for word in glossed_words(with_glosses(read_text("春の夜の月"))):
...     print(word.signs, word.kana, word.romaji, word.gloss)
春 はる haru spring
の の no of
夜 よる yoru night
の の no of
月 つき tsuki moon; month
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import takewhile
from typing import NamedTuple

from inscribe import notation
from inscribe.forms import UNREAD
from inscribe.glossing.classical import classical_glosses
from inscribe.glossing.dictionary import dictionary_gloss
from inscribe.reading.spelling import is_kana, is_kanji_only
from inscribe.reading.words import Interpretation, Token, gloss_of_auxiliary, grammar_of
from inscribe.signs import Sign

_LEAST_CHINESE = 3  # signs of a text that is no word
_INFLECTED_SORTS = ("動詞", "形容詞", "形状詞")
_SHORT = 22  # letters of the gloss in an interlinear line


class WordMeaning(NamedTuple):
    """One word of an interlinear line."""

    signs: str  # as carved
    kana: str
    romaji: str
    gloss: str  # short; of a word without one its sort, in brackets
    grammar: str  # in plain words

    @property
    def meaning(self) -> str:
        """The gloss of a word that has one; nothing where only its sort is known."""
        return "" if self.gloss.startswith("[") else self.gloss


def with_glosses(found: Interpretation) -> Interpretation:
    """Return an interpretation with a gloss on each word of its first reading that has one."""
    best, *others = found.proposals
    tokens = tuple(
        token if token.gloss else replace(token, gloss=gloss_of(token)) for token in best.tokens
    )
    return replace(found, proposals=(replace(best, tokens=tokens), *others))


def gloss_of(token: Token) -> str:
    """Return what a word means, in a few English words; nothing where that is not known.

    Of a word with a sign that cannot be read nothing is said.
    """
    part = token.part_of_speech
    if not part or UNREAD in token.normalised or part.isascii() or part.startswith("名詞-固有名詞"):
        return ""
    lemma, _, foreign = token.lemma.partition("-")
    if auxiliary := gloss_of_auxiliary(part, token.lemma):
        return auxiliary
    forms = [token.normalised, lemma]
    if all(map(is_kana, token.normalised)) or part.startswith(("動詞", "形容詞")):
        forms.reverse()
    classical = [g for form in forms for g in classical_glosses(form, token.kana, part)]
    of_edict = [dictionary_gloss(form, token.kana, part) for form in forms]
    sure = classical[:1] if len(set(classical)) == 1 else []
    # UniDic's lemma of a loan says what it is from
    by_sign = _sign_by_sign(token.normalised) or _by_kun(token)
    known = (*sure, *of_edict, "; ".join(classical), foreign, by_sign)
    return next(filter(None, known), "").replace(",", ";")


def _sign_by_sign(text: str) -> str:
    """Return what each sign of a Chinese text means, in their order."""
    from inscribe.forms import character

    if len(text) < _LEAST_CHINESE or not is_kanji_only(text):
        return ""
    senses = [character(sign).senses for sign in text]
    return "-".join(each[0].replace(" ", "_") if each else "?" for each in senses)


def _by_kun(token: Token) -> str:
    """Return what a verb or adjective of Chinese means: 直 as なおく is 直い's or 直す's kun.

    Of the sign's native words the one that sounds most like what is said.
    """
    from inscribe.forms import readings

    sign = token.normalised
    if token.lemma or len(sign) != 1 or not token.part_of_speech.startswith("動詞"):
        return ""
    words = [kun.split(".") for kun in readings(sign).kun if "." in kun]
    fitting = [word for word in words if token.kana.startswith(word[0])]
    alike = sorted(fitting, key=lambda word: _unlikeness("".join(word), token.kana))
    found = (
        dictionary_gloss(sign + ending, token.kana, sort)
        for _, ending in alike
        for sort in _INFLECTED_SORTS
    )
    classical = classical_glosses(f"{sign}い", token.kana, "形容詞")
    return next(filter(None, (*classical, *found)), "")


def _unlikeness(word: str, said: str) -> int:
    """Return how many kana of a word and of what is said differ from where they part."""
    same = takewhile(lambda pair: pair[0] == pair[1], zip(word, said, strict=False))
    return len(word) - 2 * len(list(same))


def glossed_words(found: Interpretation, signs: Sequence[Sign] = ()) -> list[WordMeaning]:
    """Return the words of the first reading as they are read, for an interlinear line.

    Where ``signs``, those of the inscription, are given, what is restored stands in brackets.
    """
    tokens = found.proposals[0].tokens
    return [_word(token, signs) for token in tokens if token.kana or token.romaji]


def _word(token: Token, signs: Sequence[Sign]) -> WordMeaning:
    grammar = grammar_of(token.part_of_speech, token.lemma)
    gloss = shortened(token.gloss) or (f"[{grammar}]" if grammar else "")
    surface = notation.bracketed(token.surface, signs[token.first : token.last + 1])
    return WordMeaning(surface, token.kana, token.romaji, gloss, grammar)


def shortened(gloss: str) -> str:
    """Return as many of the meanings as an interlinear line has room for, at least one.

    >>> shortened("of; subject of a clause"), shortened("has become (completed)")
    ('of', 'has become (completed)')
    """
    meanings: Sequence[str] = gloss.split("; ")
    kept = meanings[0]
    for meaning in meanings[1:]:
        if len(kept) + len(meaning) + 2 > _SHORT:
            break
        kept = f"{kept}; {meaning}"
    return kept
