"""Readings a person has settled: they stand, whatever the engine proposes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Protocol

from inscribe.reading.spelling import KanaWord, romanise, romanise_word
from inscribe.reading.words.results import Doubt, SignaturePart
from inscribe.reading.words.tokens import Proposal, Token
from inscribe.terms import SignIndex

_NOUN = "名詞-普通名詞-一般"
_NAME = "名詞-固有名詞-人名"


class OverrideLike(Protocol):
    """Signs that are read one way, whatever the engine proposes (``inscribe.record.Override``)."""

    @property
    def first(self) -> int:
        """The index of the first sign."""

    @property
    def last(self) -> int:
        """The index of the last sign."""

    @property
    def kana(self) -> str:
        """How the signs are read."""

    @property
    def of(self) -> str:
        """The signs the reading was settled for; empty where that was not set down."""

    @property
    def kind(self) -> str:
        """Whether it is a "word" or a "name"."""

    @property
    def reason(self) -> str:
        """The reader's reason."""


def applying(
    overrides: Sequence[OverrideLike], carved: Sequence[str]
) -> tuple[list[OverrideLike], list[Doubt]]:
    """Return the overrides that fit the text, and a doubt for each that no longer does."""
    fitting: list[OverrideLike] = []
    doubts: list[Doubt] = []
    taken: set[int] = set()
    for override in sorted(overrides, key=lambda each: each.first):
        first, last = override.first, override.last
        inside = 0 <= first <= last < len(carved)
        if inside and override.of and "".join(carved[first : last + 1]) != override.of:
            inside = False
        if not inside:
            end = len(carved) - 1
            why = f"the settled reading {override.kana} no longer fits what is carved"
            doubts.append(
                Doubt(SignIndex(max(0, min(first, end))), SignIndex(max(0, min(last, end))), why)
            )
        elif taken.isdisjoint(range(first, last + 1)):
            taken.update(range(first, last + 1))
            fitting.append(override)
    return fitting, doubts


def part_of_speech(override: OverrideLike, before: str = "") -> str:
    """Return the part of speech of a settled word.

    If the word it replaces was a name (its Latin letters, ``before``, begin with a capital), the
    settled word is a name too.
    """
    return _NAME if override.kind == "name" or before[:1].isupper() else _NOUN


def span_of(override: OverrideLike, origin: Sequence[int]) -> tuple[int, int]:
    """Return the offsets in the normalised text of the signs an override settles."""
    inside = [i for i, sign in enumerate(origin) if override.first <= sign <= override.last]
    return (inside[0], inside[-1] + 1) if inside else (0, 0)


def settled_signature(proposal: Proposal, overrides: Sequence[OverrideLike]) -> Proposal:
    """Return a reading of a signature with the settled words; the others keep their capitals."""
    settled = settled_proposal(proposal, overrides)
    return replace(settled, romaji=" ".join(t.romaji for t in settled.tokens if t.romaji))


def settled_part(part: SignaturePart, overrides: Sequence[OverrideLike]) -> SignaturePart:
    """Return a part of a signature, read as settled where an override covers just its signs."""
    for override in overrides:
        if (override.first, override.last) == (part.first, part.last):
            romaji = romanise_word(override.kana, part_of_speech(override, part.romaji))
            return part._replace(kana=override.kana, romaji=romaji, alternatives=())
    return part


def still_open(doubts: Sequence[Doubt], overrides: Sequence[OverrideLike]) -> tuple[Doubt, ...]:
    """Return the doubts that no override has settled."""
    return tuple(
        doubt
        for doubt in doubts
        if not any(o.first <= doubt.first and doubt.last <= o.last for o in overrides)
    )


def settled_proposal(proposal: Proposal, overrides: Sequence[OverrideLike]) -> Proposal:
    """Return a proposal in which the words at the settled signs are the settled ones.

    A word that lies only partly at those signs goes, and its other signs are shown by the settled
    word too.
    """
    tokens = list(proposal.tokens)
    gone: set[str] = set()  # what is read otherwise, whose reasons hold no longer
    for override in overrides:
        hit = [
            n
            for n, token in enumerate(tokens)
            if token.first <= override.last and token.last >= override.first
        ]
        if not hit:
            continue
        covered = [tokens[n] for n in hit]
        word = _settled_token(covered, override)
        tokens[hit[0]] = word
        for n in reversed(hit[1:]):
            del tokens[n]
        gone |= {token.normalised for token in covered}
    words = [KanaWord(token.kana, token.part_of_speech) for token in tokens]
    settled = tuple(why_settled(override) for override in overrides)
    reasons = tuple(why for why in proposal.reasons if why.partition(" ")[0] not in gone)
    return replace(
        proposal,
        tokens=tuple(tokens),
        romaji=romanise(words),
        reasons=(*settled, *reasons),
    )


def without_reasons(proposal: Proposal, overrides: Sequence[OverrideLike]) -> Proposal:
    """Return a proposal without the reasons that readers gave for their settled readings.

    They are told once, with the best proposal.
    """
    told = {why_settled(override) for override in overrides}
    return replace(proposal, reasons=tuple(why for why in proposal.reasons if why not in told))


def _settled_token(covered: Sequence[Token], override: OverrideLike) -> Token:
    pos = part_of_speech(override, covered[0].romaji)
    return Token(
        "".join(token.surface for token in covered),
        "".join(token.normalised for token in covered),
        override.kana,
        romanise_word(override.kana, pos),
        min(token.first for token in covered),
        max(token.last for token in covered),
        "".join(token.modern for token in covered),
        pos,
        reason=why_settled(override),
    )


def why_settled(override: OverrideLike) -> str:
    """Return what is said of a settled reading: that it is, and the reader's reason."""
    return f"settled: {override.reason}" if override.reason else "settled by a reader"
