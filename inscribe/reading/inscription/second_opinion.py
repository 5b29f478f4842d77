"""A second opinion from pykakasi, a dictionary of its own kind, taken only when asked for.

It takes more than half a second to load and knows little of verse, so it never chooses a
reading; where it reads otherwise, a person is told. It reads the signs in the order in which they
stand, so the two readings are compared in that order, whatever the order of reading.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any, NamedTuple

from inscribe import tables
from inscribe.reading.spelling import hepburn, modern_kana, morae
from inscribe.reading.words import Doubt, Interpretation, Token


def with_second_opinion(interpretation: Interpretation) -> Interpretation:
    """Return the interpretation with a doubt wherever pykakasi reads otherwise."""
    if not interpretation.proposals:
        return interpretation
    words = _words(interpretation)
    doubts = tuple(_disagreements(words, _spans(interpretation.normalised)))
    return replace(interpretation, doubts=(*interpretation.doubts, *doubts))


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


class _Word(NamedTuple):
    """A token, where it stands in the normalised text, and its place in the order of reading."""

    start: int
    end: int
    order: int
    token: Token


def _words(interpretation: Interpretation) -> list[_Word]:
    """Return the tokens in the order of their signs, which Chinese word order is not read in."""
    tokens = enumerate(interpretation.proposals[0].tokens)
    found: list[_Word] = []
    end = 0
    for order, token in sorted(tokens, key=lambda each: (each[1].first, each[1].last, each[0])):
        start = interpretation.normalised.find(token.normalised, end)
        if start >= 0:  # not there only where the reading joins signs that stand apart
            end = start + len(token.normalised)
            found.append(_Word(start, end, order, token))
    return found


def _disagreements(words: list[_Word], spans: list[tuple[int, int, str]]) -> Iterator[Doubt]:
    """Compare the two readings between the places where both end a word."""
    group: list[_Word] = []
    theirs, other, start = "", 0, 0
    remaining = iter(spans)
    for word in words:
        group.append(word)
        while other < word.end:
            span = next(remaining, None)
            if span is None:
                return
            other, theirs = span[1], theirs + span[2]
        if other == word.end:
            whole = sum(each.end - each.start for each in group) == other - start
            if whole and not any(map(_is_mark, group)) and not _same_sound(_said(group), theirs):
                why = f"pykakasi reads {theirs}, a second opinion that knows little of verse"
                yield Doubt(group[0].token.first, max(each.token.last for each in group), why)
            group, theirs, start = [], "", other


def _is_mark(word: _Word) -> bool:
    """Whether a word is a kao, a seal, a gap or an unread sign, which no dictionary can read."""
    return word.token.normalised[0] in "（［□"


def _said(group: list[_Word]) -> str:
    """Return how we read some words, in the order in which they are said."""
    ordered = sorted(group, key=lambda word: word.order)
    return "".join(word.token.kana for word in ordered).replace(" ", "")


def _same_sound(ours: str, theirs: str) -> bool:
    if hepburn(ours) == hepburn(theirs) or not morae(theirs):
        return True
    return hepburn(ours) == hepburn(modern_kana(theirs))
