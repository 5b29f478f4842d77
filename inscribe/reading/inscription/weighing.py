"""The chances of readings that are not verse: of signatures, Chinese, prose, and of what is joined.

Where several readings are ranked by weight, a word is as sure as the share of the weight of those
that read it so; prose is as sure as its homographs are dear.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from math import exp, log, prod

from inscribe.reading.words import Chances, Doubt, Interpretation, Proposal, chance, chances_of

SURE = 0.94  # chance of a whole reading from which on it needs no warning
_LEAST, _MOST = 0.002, 0.998
_NAMES = ("name", "art_name", "common_name", "surname", "unlisted_place")
_TOLD = ("surname", "art_name", "name", "verb")  # words that are less or more sure than others
_USUAL = "every word is a usual one"


def by_weight(register: str, found: Interpretation) -> Interpretation:
    """Return an interpretation with the chances of its readings, by their weights."""
    first, *others = found.proposals
    weights = [max(_LEAST, proposal.score) for proposal in found.proposals]
    words = partial(_words_weighed, register, found.proposals, weights)
    best = first.weighed(lambda: chances_of(register, words(first), dict(_of_all(first, weights))))
    rivals = [
        other.weighed(partial(_of_rival, best, words, other, weights, at))
        for at, other in enumerate(others, start=1)
    ]
    return replace(found, proposals=(best, *rivals))


def _words_weighed(
    register: str, proposals: Sequence[Proposal], weights: Sequence[float], of: Proposal
) -> tuple[float, ...]:
    """Return the chance of each word of a reading: the share of those that read it so."""
    words = []
    for token in of.tokens:
        same = (token.first, token.last, token.romaji)
        agreeing = sum(
            weight
            for weight, proposal in zip(weights, proposals, strict=True)
            if any((t.first, t.last, t.romaji) == same for t in proposal.tokens)
        )
        evidence = {"share": log_odds(agreeing / sum(weights))}
        if token.part_of_speech in _TOLD:
            evidence[token.part_of_speech] = 1.0
        words.append(chance(f"{register} word", evidence))
    return tuple(words)


def _of_rival(
    best: Proposal,
    words: Callable[[Proposal], tuple[float, ...]],
    rival: Proposal,
    weights: Sequence[float],
    at: int,
) -> Chances:
    """Return the chances of a reading that is not the best: its share of what that one leaves."""
    left = (1 - best.chance) * weights[at] / sum(weights[1:])
    whole = min(best.chance * weights[at] / weights[0], left)
    return Chances(whole, tuple(max(whole, word) for word in words(rival)))


def _of_all(best: Proposal, weights: Sequence[float]) -> Iterator[tuple[str, float]]:
    """Yield what speaks for the best of ranked readings."""
    yield "share", log_odds(weights[0] / sum(weights))
    yield "weight", log_odds(weights[0])
    yield "names", float(sum(token.part_of_speech in _NAMES for token in best.tokens))
    yield "usual", float(any(reason.startswith(_USUAL) for reason in best.reasons))
    yield "signs", float(sum(token.last - token.first + 1 for token in best.tokens))


def warned(found: Interpretation) -> Interpretation:
    """Return an interpretation in which no reading that is not sure stands without a warning.

    Where nothing else is doubted and no other reading is shown, the least sure word is named.
    """
    best = found.proposals[0]
    if found.doubts or len(found.proposals) > 1 or best.chance >= SURE:
        return found
    said = [at for at, token in enumerate(best.tokens) if token.kana]
    words = best.chances.words
    if not said or len(words) != len(best.tokens):
        return found
    token = best.tokens[min(said, key=lambda at: words[at])]
    why = f"{token.romaji} is the least sure word; the whole is right with {best.chance:.0%}"
    return replace(found, doubts=(Doubt(token.first, token.last, why),))


def log_odds(share: float) -> float:
    """Return the logarithm of the odds of a share, held within bounds.

    >>> round(log_odds(0.5), 2), log_odds(1.0) < 10
    (0.0, True)
    """
    held = max(_LEAST, min(_MOST, share))
    return log(held / (1 - held))


def together(proposals: Sequence[Proposal], divided: float = 1.0) -> Chances:
    """Return the chances of readings of passages, one after the other, rightly divided."""
    words = tuple(word for proposal in proposals for word in proposal.chances.words)
    return Chances(divided * prod(proposal.chance for proposal in proposals), words)


def shared_out(rest: float, costs: Sequence[int], a_time: float) -> list[float]:
    """Return a chance shared out among rivals by what each costs."""
    odds = [exp(-cost / a_time) for cost in costs]
    return [rest * each / (sum(odds) or 1.0) for each in odds]
