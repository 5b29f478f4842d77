"""From the reading of a poem to its interpretation, with what else its words may be read."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import exp

from inscribe.reading.verse.alternatives import Swap, swaps
from inscribe.reading.verse.archaic import ARCHAIC
from inscribe.reading.verse.readings import VerseReading, path_cost
from inscribe.reading.verse.rivals import Rival, rivals, sounds_of
from inscribe.reading.verse.weighing import verse_chances
from inscribe.reading.words import (
    Chances,
    Doubt,
    InscribedText,
    Interpretation,
    Proposal,
    ReadWord,
    Token,
    Weighing,
    interpretation,
    romaji_of,
    tokens_of,
)

MOST_ALTERNATIVES = 5
DOUBTFUL = 0.85  # chance of a word below which it is a doubt
_A_TIME = 700.0  # of MeCab's units make a reading e times less likely
_OF_WHAT_IS_NOT_FOUND = 0.5  # odds of a reading that is none of the alternatives


def verse_interpretation(
    text: InscribedText, reading: VerseReading, reason: str, alternatives: bool | None
) -> Interpretation:
    """Return the interpretation of a poem.

    ``alternatives`` adds other readings of single words; by default only where every word
    MeCab found had to be searched.
    """
    words = reading.words
    reasons = (reason or _metre_reason(reading),)
    found = interpretation(text, "verse", words, reasons, reading.phrases)
    if "々" in text.carved:
        found = replace(found, modern=_modern_with_repeats(words, text))
    if alternatives is False or (alternatives is None and not reading.searched):
        return _with_chances(found, reading)
    return _with_alternatives(found, text, reading, every=bool(alternatives))


def _modern_with_repeats(words: Sequence[ReadWord], text: InscribedText) -> str:
    """Return the words in current spelling, each 々 as carved where the word has kept its signs."""
    carved, origin = text.carved, text.normal.origin
    found: list[str] = []
    position = 0
    for word in words:
        modern = word.modern
        if len(modern) == word.length:
            signs = (carved[sign] for sign in origin[position : position + word.length])
            modern = "".join(
                "々" if sign == "々" and now == written else now
                for sign, now, written in zip(signs, modern, word.written, strict=True)
            )
        found.append(modern)
        position += word.length
    return "".join(found)


def _metre_reason(reading: VerseReading) -> str:
    if reading.metre is None:
        return "no metre was found; read word by word"
    counts = "-".join([str(count) for count, _ in reading.phrases])
    return f"{reading.metre.name} of {counts} morae"


def _with_chances(found: Interpretation, reading: VerseReading) -> Interpretation:
    """Return an interpretation whose reading says its chance when it is asked."""

    def made() -> Chances:
        return verse_chances(reading, swaps(reading))

    return replace(found, proposals=(found.proposals[0].weighed(made),))


def _with_alternatives(
    found: Interpretation, text: InscribedText, reading: VerseReading, *, every: bool
) -> Interpretation:
    if sum(word.length for word in reading.words) != len(text.normal.text):
        return _with_chances(found, reading)
    score = -path_cost(reading.words) / 1000
    swapped = swaps(reading)
    chances = verse_chances(reading, swapped)
    best = replace(found.proposals[0].weighed(chances), score=score)
    others = _others(reading, swapped, rivals(reading) if every else [])
    proposals = [
        _proposed(best, other, share, text)
        for other, share in zip(others, _shares(others, chances.whole), strict=True)
    ]
    doubts = tuple(_doubts(best, swapped))
    return replace(
        found, proposals=(best, *proposals[:MOST_ALTERNATIVES]), doubts=(*found.doubts, *doubts)
    )


def _others(reading: VerseReading, swapped: Sequence[Swap], found: list[Rival]) -> list[Rival]:
    """Return the other readings, the likeliest first, each sound once."""
    words = reading.words
    changed = [
        Rival(reading._replace(words=[*words[:at], piece, *words[at + 1 :]]), cost)
        for at, piece, cost in swapped
    ]
    once: dict[str, Rival] = {}
    for rival in sorted([*found, *changed], key=lambda rival: rival.cost):
        once.setdefault(sounds_of(rival.reading.words), rival)
    once.pop(sounds_of(words), None)
    return list(once.values())


def _shares(others: Sequence[Rival], chance: float) -> list[float]:
    """Return the chances of other readings: what is left of the best's chance."""
    odds = [exp(-other.cost / _A_TIME) for other in others]
    total = sum(odds) + _OF_WHAT_IS_NOT_FOUND
    return [(1 - chance) * each / total for each in odds]


def _proposed(best: Proposal, other: Rival, share: float, text: InscribedText) -> Proposal:
    words = other.reading.words
    tokens = tokens_of(words, text)
    return Proposal(
        tokens,
        romaji_of(words),
        best.score - other.cost / 1000,
        tuple(_changes(best.tokens, tokens)),
        other.reading.phrases,
        Weighing(Chances(share, (share,) * len(words))),
    )


def _changes(best: Sequence[Token], other: Sequence[Token]) -> Iterator[str]:
    """Yield what each stretch is read that is read or divided otherwise."""
    from difflib import SequenceMatcher

    ours, theirs = ([(t.first, t.last, t.romaji) for t in each] for each in (best, other))
    for kind, a, b, c, d in SequenceMatcher(None, ours, theirs, autojunk=False).get_opcodes():
        if kind != "equal":
            surface = "".join(token.surface for token in best[a:b])
            said, instead = (
                " ".join(token.romaji for token in each) for each in (other[c:d], best[a:b])
            )
            old = any(token.reason == ARCHAIC for token in other[c:d])
            yield f"{surface} read {said}, for {instead}" + f" ({ARCHAIC})" * old


def _doubts(best: Proposal, others: Sequence[Swap]) -> Iterator[Doubt]:
    """Yield a doubt for each word that may well be read otherwise, or that is hardly sure."""
    said: dict[int, list[str]] = {}
    for swap in others:
        said.setdefault(swap.word, []).append(swap.piece.romaji)
    for at, (token, sure) in enumerate(zip(best.tokens, best.chances.words, strict=True)):
        if sure >= DOUBTFUL or not token.kana:
            continue
        if at in said:
            yield Doubt(token.first, token.last, f"may also be read {' or '.join(said[at][:2])}")
        else:
            yield Doubt(token.first, token.last, f"read {token.romaji}, which is not sure")
