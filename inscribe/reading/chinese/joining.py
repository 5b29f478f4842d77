"""What two phrases that stand side by side make: subject and verb, noun of noun, clause on clause.

Each rule yields the phrase with the cost of the rule alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.reading.chinese import sign_words
from inscribe.reading.chinese.phrases import (
    ADVERBIAL,
    CLAUSE,
    GENITIVE,
    NOUN,
    PREDICATE,
    Phrase,
    Said,
    followed,
)
from inscribe.reading.chinese.sign_words import IF, TE
from inscribe.reading.chinese.single_words import NUMBERS, SILENT

_FROM = frozenset("出発起来")  # 出於: from


def joined(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    """Yield what two phrases that stand side by side make; the cost of the rule alone."""
    rule = _RULES.get((left.kind, right.kind))
    if rule is not None:
        yield from rule(left, right)


def _noun_noun(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    single = right.is_place and len(right.words) == 1 and len(right.words[0].written) == 1
    cost = 0.2 if single else 1.0
    particle = "の"
    if NUMBERS.issuperset("".join(word.written for word in left.words)):
        cost, particle = 0.3, ""  # 三千 丈
    words = (*followed(left.words, particle), *right.words)
    yield Phrase(NOUN, cost, words, is_place=right.is_place)


def _of_noun(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    yield Phrase(NOUN, 0.1, (*left.words, *right.words), is_place=right.is_place)


def _subject(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    cost = 1.0 if left.is_place else 0.3
    head = right.head if right.words else None
    exists = head is not None and head.written in ("有", "無")
    holds = exists and head is not None and head.word.complement == sign_words.NOUN
    words = (*followed(left.words, "に" if holds else ""), *right.words)
    subject = 0 if holds else len(left.words)
    linked = right.is_linked
    yield Phrase(CLAUSE, cost, words, right.head, subject, is_linked=linked)


def _adverb(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    yield Phrase(right.kind, 0.2, (*left.words, *right.words), right.head)


def _adverbs(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    yield Phrase(ADVERBIAL, 0.4, (*left.words, *right.words))


def _adverb_after(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    """登高 於山: what stands after a verb is said before it."""
    if right.words[-1].kana in ("に", "より"):
        yield Phrase(left.kind, 0.4, (*left.words, *right.words), left.head)
    elif right.words[-1].written in SILENT:
        yield Phrase(left.kind, 0.0, (*left.ending("終止形"), *right.words))


def _chain(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    word = left.head.word if left.head else None
    if word and (word.describes or word.conjugation == "ズ") and right.likens:
        words = (*followed(left.ending("連体形"), "こと"), *right.words)  # 疾如風
        yield Phrase(right.kind, 0.3, words, right.head)
    if _is_condition(left, right):
        yield Phrase(right.kind, 0.7, (*left.ending(IF), *right.words), right.head, is_linked=True)
    bare = word is not None and not left.words and (word.describes or right.kind == CLAUSE)
    denies = word is not None and word.conjugation in ("ズ", "ラ行変格")
    words = (*left.ending("連用形" if denies else TE), *right.words)
    yield Phrase(right.kind, 1.6 if bare else 0.9, words, right.head, is_linked=True)


def _is_condition(left: Phrase, right: Phrase) -> bool:
    """Whether two denials follow each other, the first a condition: 玉不磨無光."""
    if left.head is None or right.head is None or right.subject:
        return False
    return left.head.written == "不" and right.head.written in ("不", "無") and bool(left.words)


def stands_still(phrase: Phrase) -> bool:
    """Whether a clause is joined to the next without て: 山高く, 花有り, 憂えず."""
    if phrase.head is None:
        return False
    word = phrase.head.word
    return word.describes or word.conjugation in ("ズ", "ラ行変格")


def _clauses(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    form = "連用形" if right.is_linked or stands_still(left) else TE
    words = (*left.ending(form), *right.words)
    yield Phrase(CLAUSE, 0.7, words, right.head, is_linked=True)


def _topic_of(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    """天地者 …之逆旅: what is said to be what."""
    if left.words[-1].written == "者":
        yield Phrase(CLAUSE, 0.2, (*left.words, *right.words))


def _described(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    if left.head is not None:
        cost = 0.9 if len(left.words) > 0 else 1.2
        yield Phrase(NOUN, cost, (*left.ending("連体形"), *right.words), is_place=right.is_place)


_RULES = {
    (NOUN, NOUN): _noun_noun,
    (GENITIVE, NOUN): _of_noun,
    (NOUN, PREDICATE): _subject,
    (ADVERBIAL, PREDICATE): _adverb,
    (ADVERBIAL, CLAUSE): _adverb,
    (ADVERBIAL, NOUN): _topic_of,
    (ADVERBIAL, ADVERBIAL): _adverbs,
    (PREDICATE, ADVERBIAL): _adverb_after,
    (PREDICATE, PREDICATE): _chain,
    (PREDICATE, CLAUSE): _chain,
    (CLAUSE, PREDICATE): _chain,
    (CLAUSE, CLAUSE): _clauses,
    (PREDICATE, NOUN): _described,
    (CLAUSE, NOUN): _described,
}


def linked(sign: str, at: int, left: Phrase, right: Phrase) -> Iterator[Phrase]:
    """Yield two phrases with 而 between them, or a verb and what follows 於."""
    if sign == "而":
        if right.kind not in (PREDICATE, CLAUSE):
            return
        if left.head is not None:
            words = _te_written(left, at)
            yield Phrase(right.kind, 0.1, (*words, *right.words), right.head)
        elif left.kind == NOUN:
            words = (*left.words, _said_te(at, "に して"))
            yield Phrase(right.kind, 0.8, (*words, *right.words), right.head)
        return
    if sign == "是":
        if left.kind == right.kind == NOUN:
            yield Phrase(NOUN, 0.3, (*left.words, Said(at, sign, "これ", "副詞"), *right.words))
        return
    if right.kind == NOUN and left.kind in (PREDICATE, CLAUSE) and left.head is not None:
        particle = "より も" if left.head.word.describes else "に"
        particle = "より" if left.head.written in _FROM else particle
        said = Said(at, sign, particle, "助詞-格助詞")
        topic = left.words[: left.subject]
        if topic and left.head.word.describes:
            topic = followed(topic, "は")
        words = (*topic, *left.words[left.subject :], *right.words, said)
        yield Phrase(left.kind, 0.2, words, left.head)


def _te_written(phrase: Phrase, at: int) -> tuple[Said, ...]:
    """Return the words of a predicate that て links to the next, the て written 而."""
    words = phrase.ending("連用形")
    word = phrase.head.word if phrase.head else None
    plain = word is None or not (word.describes or word.conjugation == "ズ")
    if words[-1].kana.endswith("に して"):
        return (*words[:-1], words[-1]._replace(kana=words[-1].kana[:-3]), _said_te(at, "して"))
    return (*words, _said_te(at, TE if plain else "して"))


def _said_te(at: int, kana: str) -> Said:
    return Said(at, "而", kana, "助詞-接続助詞")
