"""Laying the words of a reading on a metre: where its phrases fall, and what that costs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from inscribe.reading.verse.metre import ACROSS, DEPENDENT, SHORT, Metre, phrase_cost
from inscribe.reading.words import Beat, ReadWord

Beats = Sequence[ReadWord | Beat]
Phrases = tuple[tuple[int, int], ...]  # (morae, index of the first word) of each phrase

_NONE_DUE = -1  # morae after the last phrase
_MOST_OVER = 5  # morae a phrase may have over its number where a word runs across its end


def regular_phrases(words: Beats, metre: Metre) -> Phrases:
    """Return the phrases if the words keep the metre to the mora, else nothing."""
    phrases: list[tuple[int, int]] = []
    targets = iter(metre.phrases)
    target = next(targets)
    count = first = 0
    for index, word in enumerate(words):
        if not count and phrases and word.dependent:
            return ()
        count += word.morae
        if count < target:
            continue
        if count > target:
            return ()
        phrases.append((count, first))
        count, first, target = 0, index + 1, next(targets, _NONE_DUE)
    return tuple(phrases) if target == _NONE_DUE else ()


def regular_head(words: Beats, phrases: Sequence[int]) -> tuple[int, int]:
    """Return how many words, and how many phrases, keep the metre from the first word on."""
    count = 0
    ends: list[int] = []
    for index, word in enumerate(words):
        if ends and not count and word.dependent:
            ends.pop()  # what looked like a phrase's end was none
            break
        count += word.morae
        if len(ends) == len(phrases) or count > phrases[len(ends)]:
            break
        if count == phrases[len(ends)]:
            ends.append(index + 1)
            count = 0
    return (ends[-1], len(ends)) if ends else (0, 0)


def regular_tail(words: Beats, phrases: Sequence[int]) -> tuple[int, int]:
    """Return how many words, and how many phrases, keep the metre up to the last word."""
    count = held = kept = 0
    for index in range(len(words) - 1, -1, -1):
        count += words[index].morae
        if kept == len(phrases) or count > phrases[-1 - kept]:
            break
        if count == phrases[-1 - kept]:
            if words[index].dependent:
                break
            kept, held, count = kept + 1, len(words) - index, 0
    return held, kept


def nearly_regular(words: Beats, metre: Metre, most: int) -> tuple[int, Phrases] | None:
    """Return cost and phrases of words that keep a metre but for a mora too many here and there.

    None where that would cost more than ``most``. This is quicker than :func:`fitted_phrases`,
    which also allows phrases that are too short, and words that run over the end of a phrase.
    """
    return _nearly_from(words, 0, metre.phrases, most)


def _nearly_from(
    words: Beats, first: int, targets: tuple[int, ...], most: int
) -> tuple[int, Phrases] | None:
    if not targets:
        return (0, ()) if first == len(words) else None
    if first == len(words):
        return None
    cost = DEPENDENT if first and words[first].dependent else 0
    target, count, vowel = targets[0], 0, False
    best: tuple[int, Phrases] | None = None
    for index in range(first, len(words)):
        word = words[index]
        vowel = vowel or word.inner_vowel or (count > 0 and word.starts_with_vowel)
        count += word.morae
        if count < target:
            continue
        over = phrase_cost(count, target, vowel=vowel)
        if over is None or count > target + 1 or cost + over > most:
            break
        rest = _nearly_from(words, index + 1, targets[1:], most - cost - over)
        if rest is not None:
            best = (cost + over + rest[0], ((count, first), *rest[1]))
            most = best[0] - 1
    return best


def fitted_phrases(words: Beats, metre: Metre) -> tuple[int, Phrases]:
    """Return the cost and the phrases that words fall into; no phrases if they cannot fit."""
    if regular := regular_phrases(words, metre):  # what a search found is so more often than not
        return 0, regular
    if nearly := nearly_regular(words, metre, SHORT - 1):  # all other ways to fit cost more
        return nearly
    reached: dict[int, tuple[int, Phrases]] = {0: (0, ())}
    for target in metre.phrases:
        further: dict[int, tuple[int, Phrases]] = {}
        for first, (before, phrases) in reached.items():
            for end, count, cost in _phrases_from(words, first, target):
                there = further.get(end)
                if there is None or before + cost < there[0]:
                    further[end] = (before + cost, (*phrases, (count, first)))
        reached = further
    return reached.get(len(words), (0, ()))


def _phrases_from(words: Beats, first: int, target: int) -> Iterator[tuple[int, int, int]]:
    """Yield where a phrase of about ``target`` morae may end, its morae, and its cost."""
    if first >= len(words):
        return
    leaning = DEPENDENT if first and words[first].dependent else 0
    count, vowel = 0, False
    for end in range(first, len(words)):
        word = words[end]
        vowel = vowel or word.inner_vowel or (count > 0 and word.starts_with_vowel)
        count += word.morae
        if count < target - 1:
            continue
        cost = phrase_cost(count, target, vowel=vowel)
        if cost is not None:
            yield end + 1, count, cost + leaning
        elif count <= target + _MOST_OVER:
            yield end + 1, count, 2 * ACROSS + leaning
        else:
            return
