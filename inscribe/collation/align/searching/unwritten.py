"""What only one text writes: の between two nouns, particles and endings in Chinese order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from inscribe.collation.align.searching.costs import prices
from inscribe.collation.align.searching.states import AlignmentMove, State
from inscribe.collation.align.sides import Side

UNWRITTEN = ("の", "か", "つ")  # particles that scribes leave out between two characters
# Particles and ends of words that Chinese order leaves unwritten.
LINKING = frozenset("をにのはもとがかへてでしじすりるれたむん")
LINKING_WORDS = ("こと", "なり", "して", "ば")  # and words
# Signs that are said twice, the second time after what they govern (school grammar of Chinese).
SAID_TWICE = {"未": "ず", "将": "んとす", "且": "んとす"} | dict.fromkeys("当応須宜", "べし")
SILENT = frozenset("而於于乎矣焉也之")  # signs that the Japanese order may leave unsaid
AS_VERB = ("せ", "し", "す", "する")  # what makes a verb of a character read by its sound: 同ぜず


def particle_moves(copy: Side, source: Side, i: int, j: int) -> Iterator[AlignmentMove]:
    """Yield the moves over a particle that only one side writes between two words: 花夢, 花の夢."""
    price = prices()["link"]
    if j < len(source) and source.norm[j] in UNWRITTEN and copy.joins[i]:
        why = f"{source.norm[j]} is read between the two characters"
        yield AlignmentMove(State(i, j + 1), price, "unwritten", why)
    if i < len(copy) and copy.norm[i] in UNWRITTEN and source.joins[j]:
        why = f"{copy.norm[i]} is read between the two characters"
        yield AlignmentMove(State(i + 1, j), price, "unwritten", why)


def linking_words(chinese: Sequence[str]) -> tuple[str, ...]:
    """Return the words that a text in Chinese order, given sign by sign, may leave unwritten."""
    return (*LINKING_WORDS, *(SAID_TWICE[sign] for sign in chinese if sign in SAID_TWICE))


def linking_moves(
    chinese: Side, japanese: Side, i: int, j: int, words: Sequence[str]
) -> Iterator[AlignmentMove]:
    """Yield the moves over what Chinese order leaves unwritten, or Japanese order unsaid."""
    price = prices()["unwritten"]
    if i and j < len(japanese):
        if japanese.norm[j] in LINKING:
            yield AlignmentMove(State(i, j + 1), price, "unwritten")
        for word in words:
            if "".join(japanese.norm[j : j + len(word)]) == word:
                yield AlignmentMove(State(i, j + len(word)), price, "unwritten")
    if i < len(chinese) and chinese.norm[i] in SILENT:
        yield AlignmentMove(State(i + 1, j), price, "unwritten")


def linking_tails(side: Side, at: int) -> Iterator[str]:
    """Yield how the words at a sign may end that are said to be its own: 需 もとめ, め."""
    yield from AS_VERB
    for reading in side.readings_at(at, ""):
        if reading.length == 1 and reading.step == "word":
            yield from (reading.pattern[cut:] for cut in range(1, len(reading.pattern)))
