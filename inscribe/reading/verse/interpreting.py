"""From the reading of a poem to its interpretation, with what else its words may be read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from inscribe.reading.verse.alternatives import DOUBTFUL, swaps
from inscribe.reading.verse.reader import VerseReading, path_cost
from inscribe.reading.words import (
    Doubt,
    InscribedText,
    Interpretation,
    Proposal,
    ReadWord,
    interpretation,
    romaji_of,
    tokens_of,
)

MOST_ALTERNATIVES = 5


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
        return found
    return _with_alternatives(found, text, reading)


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


def _with_alternatives(
    found: Interpretation, text: InscribedText, reading: VerseReading
) -> Interpretation:
    if sum(word.length for word in reading.words) != len(text.normal.text):
        return found
    score = -path_cost(reading.words) / 1000
    best = replace(found.proposals[0], score=score)
    others: list[Proposal] = []
    doubts: list[Doubt] = []
    for swap in swaps(reading):
        token = best.tokens[swap.word]
        if swap.cost <= DOUBTFUL:
            why = f"may also be read {swap.piece.romaji}"
            doubts.append(Doubt(token.first, token.last, why))
        if len(others) < MOST_ALTERNATIVES:
            words = list(reading.words)
            words[swap.word] = swap.piece
            why = f"{token.surface} read {swap.piece.romaji}, for {token.romaji}"
            others.append(
                Proposal(
                    tokens_of(words, text),
                    romaji_of(words),
                    score - swap.cost / 1000,
                    (why,),
                    reading.phrases,
                )
            )
    return replace(found, proposals=(best, *others), doubts=(*found.doubts, *doubts))
