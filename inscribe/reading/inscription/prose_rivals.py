"""What prose may be read otherwise, and the chance of each reading.

Two dictionaries know it: UniDic, which is modern, and that of verse, which is classical. Where
they agree on a word it is hardly wrong; where they differ, both readings are shown. Beside them
stand the homographs of single words.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cached_property, partial
from itertools import accumulate
from math import exp
from typing import NamedTuple

from inscribe.reading.inscription.register import has_modern_grammar
from inscribe.reading.inscription.weighing import shared_out
from inscribe.reading.inscription.wishes import Wishes
from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.words import (
    Chances,
    Doubt,
    InscribedText,
    Interpretation,
    Proposal,
    ReadWord,
    Weighing,
    chance,
    chances_of,
    romaji_of,
    tokens_of,
)

_MOST = 5  # other readings
_THOUSAND, _A_TIME = 1000.0, 900.0
_DOUBTFUL = 0.85  # chance of a word below which it is a doubt
# What a reading by the other dictionary costs more: of a stretch in kanji, in kana, of it all.
_BY_OTHER, _BY_OTHER_IN_KANA, _OF_ALL = 500, 1500, 1000
_KANJI = re.compile("[\u4e00-\u9fff]")
_FAR = 5.5  # margin, in thousands, of a word without homographs
_KANJI_OF_A_COMPOUND = 2
_NO_WORDS = frozenset("□［（、「 　")  # where one of these stands, the two cannot be compared


class WordsFound(NamedTuple):
    """The words of a text, and whether the dictionary of verse has found them."""

    words: list[ReadWord]
    of_verse: bool


class _Swap(NamedTuple):
    word: int
    piece: ReadWord
    cost: int


class _Other(NamedTuple):
    """Another reading, why, and what it costs more, in MeCab's units."""

    words: list[ReadWord]
    why: str
    cost: int


class _Rivals:
    """What the words of a text may be read otherwise, looked up when it is first asked for."""

    def __init__(self, read: WordsFound, text: InscribedText) -> None:
        self.read = read
        self.text = text

    @cached_property
    def swaps(self) -> list[_Swap]:
        """The other readings of single words, the likeliest first."""
        return _swaps(self.read, self.text.normal.text)

    @cached_property
    def other(self) -> list[ReadWord] | None:
        """The words by the other dictionary; none where it has nothing to say."""
        return _by_the_other(self.read, self.text) if self.text.in_order else None

    def said(self, word: int) -> list[str]:
        """Return what else a word may be read, in Latin letters."""
        return [swap.piece.romaji for swap in self.swaps if swap.word == word]


def with_rivals(
    found: Interpretation, read: WordsFound, text: InscribedText, wishes: Wishes
) -> Interpretation:
    """Return an interpretation of prose with the chance of its reading, and with other readings.

    Others are looked for only where ``wishes.alternatives`` asks for them.
    """
    if len(found.proposals) != 1 or sum(w.length for w in read.words) != len(text.normal.text):
        return found
    rivals = _Rivals(read, text)
    best = found.proposals[0].weighed(partial(_chances, rivals))
    if not wishes.alternatives or best.reasons:
        return replace(found, proposals=(best,))
    others = list(_others(best, rivals))[:_MOST]
    doubts = (*found.doubts, *_doubts(best, rivals))
    return replace(found, proposals=(best, *others), doubts=doubts)


def _chances(rivals: _Rivals) -> Chances:
    read, other = rivals.read, rivals.other
    agreed = _agreed(read.words, other) if other else [False] * len(read.words)
    words = [
        _word_chance(word, at, rivals.swaps, agreed[at], read.of_verse)
        for at, word in enumerate(read.words)
    ]
    differ = other is not None and romaji_of(other) != romaji_of(read.words)
    evidence = {
        "two agree": float(other is not None and not differ),
        "two differ": float(differ),
        "of verse": float(read.of_verse),
    }
    return chances_of("prose", words, evidence)


def _word_chance(
    word: ReadWord, at: int, swaps: Sequence[_Swap], agreed: bool, of_verse: bool
) -> float:
    if word.note.startswith("settled"):
        return 1.0
    costs = [swap.cost for swap in swaps if swap.word == at]
    evidence = {
        "margin": min(costs, default=_FAR * _THOUSAND) / _THOUSAND,
        "rivals": sum(exp(-cost / _A_TIME) for cost in costs),
        "alone": float(not costs),
        "agreed": float(agreed),
        "of verse": float(of_verse),
        "kana": float(word.written == word.kana),
        "unknown": float(not word.known),
        "name": float("固有名詞" in word.part_of_speech),
    }
    return chance("prose word", evidence)


def _swaps(read: WordsFound, plain: str) -> list[_Swap]:
    if read.of_verse:
        from inscribe.reading.verse import VerseReading, marks_voicing, swaps

        reading = VerseReading(read.words, None, voiced=marks_voicing(plain))
        return [_Swap(*swap) for swap in swaps(reading)]
    from inscribe.reading.prose import prose_swaps, prose_words

    if [w.written for w in prose_words(plain)] != [w.written for w in read.words]:
        return []  # marks or repeats stand between the words
    return [_Swap(*swap) for swap in prose_swaps(plain)]


def _by_the_other(read: WordsFound, text: InscribedText) -> list[ReadWord] | None:
    """Return the words by the other dictionary; none for modern prose, and where signs are worn."""
    plain = text.normal.text
    if has_modern_grammar(plain) or is_kanji_only(plain) or not _NO_WORDS.isdisjoint(plain):
        return None
    from inscribe.reading.prose import prose_words

    if read.of_verse:
        return prose_words(plain)
    from inscribe.reading.verse import marks_voicing, words_without_metre

    classical = words_without_metre(plain, voiced=marks_voicing(plain))
    return list(with_compounds(classical, read.words))


def with_compounds(classical: Sequence[ReadWord], modern: Sequence[ReadWord]) -> Iterator[ReadWord]:
    """Yield classical words, in their place the compounds read as Chinese that UniDic knows."""
    ends = {0, *accumulate(word.length for word in classical)}
    starts = accumulate((word.length for word in modern), initial=0)
    compounds = {
        start: word
        for start, word in zip(starts, modern, strict=False)
        if _is_compound(word) and {start, start + word.length} <= ends
    }
    position = skipped = 0
    for word in classical:
        if position >= skipped and position in compounds:
            yield compounds[position]
            skipped = position + compounds[position].length
        elif position >= skipped:
            yield word
        position += word.length


def _is_compound(word: ReadWord) -> bool:
    return (
        word.known
        and word.origin == "漢"
        and word.length >= _KANJI_OF_A_COMPOUND
        and is_kanji_only(word.written)
    )


def _agreed(words: Sequence[ReadWord], others: Sequence[ReadWord]) -> list[bool]:
    """Return for each word whether the other reading has the same letters at its signs."""
    theirs = _by_place(others)
    return [theirs.get(place) == said for place, said in _by_place(words).items()]


def _by_place(words: Sequence[ReadWord]) -> dict[tuple[int, int], str]:
    found, position = {}, 0
    for word in words:
        found[position, position + word.length] = word.romaji.lower()
        position += word.length
    return found


def _others(best: Proposal, rivals: _Rivals) -> Iterator[Proposal]:
    """Yield the other readings, the likeliest first, each sound once.

    One stretch read by the other dictionary, one word read otherwise, all by the other dictionary.
    """
    read, other = rivals.read, rivals.other
    found = list(_stretches(read, other)) if other is not None else []
    if other is not None and len(found) > 1:
        why = "in the words of modern prose" if read.of_verse else "in the words of verse"
        found.append(_Other(other, why, _OF_ALL))
    for word, piece, cost in rivals.swaps:
        old = read.words[word]
        words = [*read.words[:word], piece, *read.words[word + 1 :]]
        found.append(_Other(words, f"{old.written} read {piece.romaji}, for {old.romaji}", cost))
    said = {best.romaji.lower()}
    shown: list[tuple[_Other, str]] = []
    for each in sorted(found, key=lambda each: each.cost):
        romaji = romaji_of(each.words)
        if romaji.lower() not in said and len(shown) < _MOST:
            said.add(romaji.lower())
            shown.append((each, romaji))
    shares = shared_out(1 - best.chance, [each.cost for each, _ in shown], _A_TIME)
    for (each, romaji), share in zip(shown, shares, strict=True):
        yield _proposal(each.words, rivals.text, romaji, each.why, share)


def _stretches(read: WordsFound, other: Sequence[ReadWord]) -> Iterator[_Other]:
    """Yield the reading with one stretch, between words that both divide alike, as the other has.

    A stretch in kanji is likelier another word; in kana it is rather divided otherwise.
    """
    ends = [tuple(accumulate(w.length for w in words)) for words in (read.words, other)]
    first = [0, 0]
    for cut in sorted(set(ends[0]) & set(ends[1])):
        last = [each.index(cut) + 1 for each in ends]
        ours, theirs = read.words[first[0] : last[0]], list(other[first[1] : last[1]])
        if romaji_of(ours).lower() != romaji_of(theirs).lower():
            words = [*read.words[: first[0]], *theirs, *read.words[last[0] :]]
            signs = "".join(word.written for word in ours)
            why = f"{signs} read {romaji_of(theirs)}, for {romaji_of(ours)}"
            yield _Other(words, why, _BY_OTHER if _KANJI.search(signs) else _BY_OTHER_IN_KANA)
        first = last


def _proposal(
    words: list[ReadWord], text: InscribedText, romaji: str, why: str, share: float
) -> Proposal:
    weighing = Weighing(Chances(share, (share,) * len(words)))
    return Proposal(tokens_of(words, text), romaji, share, (why,), (), weighing)


def _doubts(best: Proposal, rivals: _Rivals) -> Iterator[Doubt]:
    """Yield a doubt for each word that may well be read otherwise."""
    for at, (token, sure) in enumerate(zip(best.tokens, best.chances.words, strict=True)):
        said = rivals.said(at)[:2]
        if sure < _DOUBTFUL and said and token.kana:
            yield Doubt(token.first, token.last, f"may also be read {' or '.join(said)}")
