"""A line of Chinese put into Japanese order: the cheapest parse by the usual rules of kundoku.

Every stretch of the line is read in every way the rules allow, from short stretches to long ones,
and the cheapest of each kind is kept (``phrases``). Words come from ``glossary/chinese_words.tsv``
and from compounds. What stands in the rhythm of verse (2 + 3 signs, 2 + 2 + 3) goes together.

Source: the school rules of kundoku, from memory. The costs are plain guesses at how usual each
rule is; a sign more that must be guessed costs about 1.

>>> parsed = parse("白日依山尽", (2,))
>>> " ".join(word.kana for word in parsed.ending("終止形"))
'はくじつ やま に よりて つく'
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe.reading.chinese import sign_words
from inscribe.reading.chinese.compounds import compound
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
from inscribe.reading.chinese.sign_words import TE, SignWord, words_of

_LONGEST = 24  # signs
_ACROSS_A_BEAT = 0.7  # a phrase is divided elsewhere than at the beat inside it
_WORD_ACROSS_A_BEAT = 2.5
_AFTER_VERBS = "於于乎"  # 紅於二月花
_SILENT = "兮矣"
_NO_WORD = frozenset("而之於于也矣兮乎焉所以勿莫")  # seldom within a word of two signs
_TURNING = frozenset("不未無有如若非可欲当応須将為在自与知見")  # more often verbs than within a word
_NO_NOUN = frozenset("而於于也矣兮乎焉以不未")
_FROM = frozenset("出発起来")  # 出於: from
_TIMES = frozenset("日月年歳夜朝時処歩世家人")  # said twice: each of them
_NUMBERS = frozenset("一二三四五六七八九十百千万数")

Cell = dict[str, Phrase]  # the cheapest phrase of each kind
Chart = dict[tuple[int, int], Cell]


class Line(NamedTuple):
    """A line being read: its signs, its beats, the order its return marks ask for (or none)."""

    text: str
    beats: frozenset[int]
    places: Mapping[int, int] | None

    @property
    def is_verse(self) -> bool:
        """Whether it is as long as a line of verse and has its beats."""
        return len(self.text) in (5, 7) and bool(self.beats)

    def divided(self, start: int, cut: int, end: int) -> float:
        """Return what it costs to divide a stretch at a cut beside its beats."""
        inside = [beat for beat in self.beats if start < beat < end]
        return _ACROSS_A_BEAT if inside and cut not in inside else 0.0

    def allows(self, phrase: Phrase) -> bool:
        """Return whether a phrase says its signs in the order the return marks ask for."""
        if self.places is None:
            return True
        places: list[int] = []
        for word in phrase.said:
            here = [self.places[word.first + n] for n in range(len(word.written))]
            places += sorted(here) if words_of(word.written) else here  # 不㆑如 is one word
        return all(before < after for before, after in pairwise(places))


def parse(
    text: str, beats: Sequence[int] = (), order: Sequence[int] | None = None
) -> Phrase | None:
    """Return a line in Japanese order, its last verb not inflected yet.

    Args:
        text: the signs of the line, kanji in current forms.
        beats: the signs before which the rhythm of verse divides the line.
        order: the indexes of the signs in the order in which they must be said, if it is known.

    Returns:
        None if the line is empty or too long, or the rules do not lead to ``order``.
    """
    if not 0 < len(text) <= _LONGEST:
        return None
    places = None if order is None else {sign: place for place, sign in enumerate(order)}
    line = Line(text, frozenset(beats), places)
    chart: Chart = {}
    for length in range(1, len(text) + 1):
        for start in range(len(text) - length + 1):
            chart[start, start + length] = _cell(line, chart, start, start + length)
    whole = chart[0, len(text)]
    ends = [whole[kind] for kind in (CLAUSE, PREDICATE) if kind in whole]
    if NOUN in whole:
        ends += [_more(whole[NOUN], 0.8), *_side_by_side(line, chart)]
    ends += [phrase for phrase in _place_last(line, chart) if line.allows(phrase)]
    return min(ends, key=lambda phrase: phrase.cost, default=None)


def _side_by_side(line: Line, chart: Chart) -> Iterator[Phrase]:
    """Yield four signs as two words, neither of the other: 巧言令色."""
    if len(line.text) == 4 and 2 in line.beats:
        left, right = chart[0, 2].get(NOUN), chart[2, 4].get(NOUN)
        if left and right and len(left.words) == len(right.words) == 1:
            yield Phrase(NOUN, left.cost + right.cost + 0.9, left.words + right.words)


def _place_last(line: Line, chart: Chart) -> Iterator[Phrase]:
    """Yield verse in the order written, a place after the verb: 復照青苔上 また照らす青苔の上."""
    for cut in range(1, len(line.text) - 2) if line.is_verse else ():
        place = chart[cut, len(line.text)].get(NOUN)
        for kind in (PREDICATE, CLAUSE):
            verb = chart[0, cut].get(kind)
            if place and place.is_place and verb and verb.head and not _stands_still(verb):
                cost = verb.cost + place.cost + 0.3
                yield Phrase(NOUN, cost, (*verb.ending("終止形"), *place.words))


def _more(phrase: Phrase, cost: float) -> Phrase:
    return phrase._replace(cost=phrase.cost + cost)


def _cell(line: Line, chart: Chart, start: int, end: int) -> Cell:
    """Return the cheapest phrase of each kind from one sign of the line to another."""
    found: Cell = {}
    for phrase in _phrases(line, chart, start, end):
        best = found.get(phrase.kind)
        if (best is None or phrase.cost < best.cost) and line.allows(phrase):
            found[phrase.kind] = phrase
    for phrase in list(found.values()):
        for other in _as_other_kinds(phrase):
            best = found.get(other.kind)
            if best is None or other.cost < best.cost:
                found[other.kind] = other
    return found


def _phrases(line: Line, chart: Chart, start: int, end: int) -> Iterator[Phrase]:
    if end - start == 1:
        yield from _signs(line.text[start], start)
    elif end - start == 2:
        crossed = _WORD_ACROSS_A_BEAT if start + 1 in line.beats else 0.0
        for phrase in _pairs(line.text[start:end], start):
            yield _more(phrase, crossed)
    yield from _governed(line, chart, start, end)
    yield from _with_particles(line, chart, start, end)
    for cut in range(start + 1, end):
        cost = line.divided(start, cut, end)
        for left in chart[start, cut].values():
            for right in chart[cut, end].values():
                for phrase in _joined(left, right):
                    yield _more(phrase, left.cost + right.cost + cost)
        if line.text[cut] in "而是" + _AFTER_VERBS and cut + 1 < end:
            for left in chart[start, cut].values():
                for right in chart[cut + 1, end].values():
                    for phrase in _linked(line.text[cut], cut, left, right):
                        yield _more(phrase, left.cost + right.cost + cost)


def _as_other_kinds(phrase: Phrase) -> Iterator[Phrase]:
    """Yield what a phrase may be besides: a noun of place says where something happens."""
    if phrase.kind == NOUN:
        cost = 0.4 if phrase.is_place else 2.0
        yield Phrase(ADVERBIAL, phrase.cost + cost, followed(phrase.words, "に"))


def _signs(sign: str, at: int) -> Iterator[Phrase]:
    """Yield what one sign may be by itself."""
    rows = words_of(sign)
    verbs = [word for word in rows if word.is_inflected]
    listed = any(word.conjugation in (sign_words.NOUN, sign_words.PLACE) for word in rows)
    place = any(word.conjugation == sign_words.PLACE for word in rows)
    guess = (1.2 if sign_words.native_noun(sign) else 2.0) + 1.0 * bool(rows)
    cost = 1.0 + 0.8 * (sign in _NUMBERS) if listed else guess
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
            cost = 0.9 + 0.7 * (sign in _NUMBERS)
            yield Phrase(ADVERBIAL, cost, (Said(at, sign, word.stem, "副詞"),))
    if sign in _SILENT:
        yield Phrase(ADVERBIAL, 0.5, (Said(at, sign, "", "記号-一般"),))



def _pairs(signs: str, at: int) -> Iterator[Phrase]:
    """Yield what two signs may be as one word of Chinese sounds."""
    if not _NO_WORD.isdisjoint(signs):
        return
    word = compound(signs)
    said = Said(at, signs, word.kana)
    place = any(row.conjugation == sign_words.PLACE for row in words_of(signs[1]))
    cost = 0.8 if word.known else 1.8 if _describes(signs[0]) and _is_named(signs[1]) else 3.4
    if not word.known and cost < 2 and (place or signs[0] in _NUMBERS):
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


def _governed(line: Line, chart: Chart, start: int, end: int) -> Iterator[Phrase]:
    """Yield verbs with what they govern, which is said before them: 依山 やまによる."""
    for length in (1, 2):
        after = start + length
        signs = line.text[start:after]
        if after >= end:
            break
        cost = line.divided(start, after, end)
        for rank, word in enumerate(words_of(signs)):
            for phrase in _objects(word, start, chart[after, end], rank):
                yield _more(phrase, cost)


def _objects(word: SignWord, at: int, cell: Cell, rank: int) -> Iterator[Phrase]:
    is_noun = word.complement == sign_words.NOUN
    kinds = () if not word.complement else (NOUN,) if is_noun else (PREDICATE, CLAUSE)
    for kind in kinds:
        object_ = cell.get(kind)
        if object_ is None:
            continue
        words = followed(object_.ending(word.complement), word.particle)
        if not is_noun and word.particle.startswith("ん"):
            words = _joined_closely(object_.ending(word.complement), word.particle)
        cost = object_.cost + (1.0 if is_noun else 0.8) + 0.3 * rank
        if not word.before:
            yield Phrase(PREDICATE, cost, words, Head(at, word.sign, word))
            continue
        before = Said(at, word.sign, word.before, "副詞")
        yield Phrase(PREDICATE, cost, (before, *words), Head(at, "", word))


def _joined_closely(words: tuple[Said, ...], kana: str) -> tuple[Said, ...]:
    return (*words[:-1], words[-1].followed_by(kana, ""))


def _with_particles(line: Line, chart: Chart, start: int, end: int) -> Iterator[Phrase]:
    """Yield phrases around 之, 者, 所 and 也, and nouns after 自, 以 and their like."""
    first, last = line.text[start], line.text[end - 1]
    if end - start == 1:
        return
    before, after = chart[start, end - 1], chart[start + 1, end]
    if last == "之":
        yield from _before_no(before, end - 1)
    elif last == "者":
        yield from _before_mono(before, end - 1)
    elif last == "也":
        yield from _before_nari(before, end - 1)
    if first == "所":
        if verb := after.get(PREDICATE):
            words = (*verb.ending("連体形"), Said(start, first, "ところ"))
            yield Phrase(NOUN, verb.cost + 0.5, words)
    noun = after.get(NOUN)
    for word in words_of(first) if noun else ():
        if word.conjugation == sign_words.AFTER_NOUN and noun:
            said = Said(start, first, word.stem, "助詞-格助詞")
            cost = noun.cost + (0.5 if noun.is_place or first != "自" else 1.2)
            yield Phrase(ADVERBIAL, cost, (*noun.words, said))
        elif word.conjugation == sign_words.BEFORE_NOUN and noun:
            cost, words = noun.cost + 0.8, (Said(start, first, word.stem), *noun.words)
            yield Phrase(NOUN, cost, words, is_place=noun.is_place)


def _before_no(cell: Cell, at: int) -> Iterator[Phrase]:
    if noun := cell.get(NOUN):
        yield Phrase(GENITIVE, noun.cost, (*noun.words, Said(at, "之", "の", "助詞-格助詞")))
    if verb := cell.get(PREDICATE):
        words = verb.ending("連体形")
        yield Phrase(GENITIVE, verb.cost + 0.3, (*words, Said(at, "之", "の", "助詞-格助詞")))


def _before_mono(cell: Cell, at: int) -> Iterator[Phrase]:
    for kind in (PREDICATE, CLAUSE):
        if verb := cell.get(kind):
            words = (*verb.ending("連体形"), Said(at, "者", "もの"))
            yield Phrase(NOUN, verb.cost + 0.4, words)
    if noun := cell.get(NOUN):
        yield Phrase(ADVERBIAL, noun.cost + 0.6, (*noun.words, Said(at, "者", "は", "助詞-係助詞")))


def _before_nari(cell: Cell, at: int) -> Iterator[Phrase]:
    said = Said(at, "也", "なり", "助動詞")
    if noun := cell.get(NOUN):
        verb = SignWord("也", "な", "ラ行変格")
        yield Phrase(PREDICATE, noun.cost + 0.3, noun.words, Head(at, "也", verb))
    for kind in (PREDICATE, CLAUSE):
        if phrase := cell.get(kind):
            fixed = SignWord("也", said.kana, "不変")
            words = phrase.ending("連体形")
            yield Phrase(kind, phrase.cost + 0.2, words, Head(at, "也", fixed))


def _joined(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    """Yield what two phrases that stand side by side make; the cost of the rule alone."""
    rule = _RULES.get((left.kind, right.kind))
    if rule is not None:
        yield from rule(left, right)


def _noun_noun(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    single = right.is_place and len(right.words) == 1 and len(right.words[0].written) == 1
    cost = 0.2 if single else 1.0
    particle = "の"
    if _NUMBERS.issuperset("".join(word.written for word in left.words)):
        cost, particle = 0.3, ""  # 三千 丈
    words = (*followed(left.words, particle), *right.words)
    yield Phrase(NOUN, cost, words, is_place=right.is_place)


def _of_noun(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    yield Phrase(NOUN, 0.1, (*left.words, *right.words), is_place=right.is_place)


def _subject(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    cost = 1.0 if left.is_place else 0.3
    holds = right.head is not None and right.head.written in ("有", "無") and right.words
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
    elif right.words[-1].written in _SILENT:
        yield Phrase(left.kind, 0.0, (*left.ending("終止形"), *right.words))


def _chain(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    word = left.head.word if left.head else None
    if word and (word.describes or word.conjugation == "ズ") and right.likens:
        words = (*followed(left.ending("連体形"), "こと"), *right.words)  # 疾如風
        yield Phrase(right.kind, 0.3, words, right.head)
    bare = word is not None and word.describes and not left.words
    denies = word is not None and word.conjugation in ("ズ", "ラ行変格")
    words = (*left.ending("連用形" if denies else TE), *right.words)
    yield Phrase(right.kind, 1.6 if bare else 0.9, words, right.head, is_linked=True)


def _stands_still(phrase: Phrase) -> bool:
    """Whether a clause is joined to the next without て: 山高く, 花有り, 憂えず."""
    if phrase.head is None:
        return False
    word = phrase.head.word
    return word.describes or word.conjugation in ("ズ", "ラ行変格")


def _clauses(left: Phrase, right: Phrase) -> Iterator[Phrase]:
    form = "連用形" if right.is_linked or _stands_still(left) else TE
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


def _linked(sign: str, at: int, left: Phrase, right: Phrase) -> Iterator[Phrase]:
    """Yield two phrases with 而 between them, or a verb and what follows 於."""
    if sign == "而":
        if left.head is not None and right.kind in (PREDICATE, CLAUSE):
            words = _te_written(left, at)
            yield Phrase(right.kind, 0.1, (*words, *right.words), right.head)
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
