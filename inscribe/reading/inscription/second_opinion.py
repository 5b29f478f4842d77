"""A second opinion from pykakasi, a dictionary of its own kind, taken only when asked for.

It takes more than half a second to load and knows little of verse, so it never chooses a
reading; where it reads otherwise, a person is told.
"""

from __future__ import annotations

from typing import Any

from inscribe import tables
from inscribe.reading.spelling import hepburn, modern_kana, morae
from inscribe.reading.words import Doubt, Interpretation, Token


def with_second_opinion(interpretation: Interpretation) -> Interpretation:
    """Return the interpretation with a doubt wherever pykakasi reads otherwise."""
    if not interpretation.proposals:
        return interpretation
    tokens = interpretation.proposals[0].tokens
    doubts = tuple(_disagreements(tokens, _spans(interpretation.normalised)))
    return interpretation._replace(doubts=(*interpretation.doubts, *doubts))


@tables.cached()
def _converter() -> Any:
    import pykakasi

    converter: Any = pykakasi.kakasi
    return converter()


def _spans(text: str) -> list[tuple[int, int, str]]:
    """Return what pykakasi makes of ``text``: offsets and hiragana of each of its words."""
    spans, position = [], 0
    for word in _converter().convert(text):
        end = position + len(word["orig"])
        spans.append((position, end, word["hira"]))
        position = end
    return spans


def _disagreements(tokens: tuple[Token, ...], spans: list[tuple[int, int, str]]) -> list[Doubt]:
    """Compare the two readings between the places where both end a word."""
    doubts: list[Doubt] = []
    ours, theirs, group = "", "", list[Token]()
    position, other = 0, 0
    remaining = iter(spans)
    for token in tokens:
        group.append(token)
        ours += token.kana
        position += len(token.normalised)
        while other < position:
            span = next(remaining, None)
            if span is None:
                return doubts
            other, theirs = span[1], theirs + span[2]
        if other == position:
            if not _same_sound(ours, theirs):
                why = f"pykakasi reads {theirs}, a second opinion that knows little of verse"
                doubts.append(Doubt(group[0].first, group[-1].last, why))
            ours, theirs, group = "", "", []
    return doubts


def _same_sound(ours: str, theirs: str) -> bool:
    if hepburn(ours) == hepburn(theirs) or not morae(theirs):
        return True
    return hepburn(ours) == hepburn(modern_kana(theirs))
