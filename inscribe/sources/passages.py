"""Passages: the pieces of a text that are indexed, each short enough to be compared whole.

A short text is one passage. A long one is cut into passages of a few lines that overlap by half,
so that two lines copied out of it lie whole in one of them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inscribe.collate.sounds import is_kana, is_kanji
from inscribe.errors import InscribeError
from inscribe.sources.keys import letters
from inscribe.sources.texts import SourceText

PASSAGE_SOUNDS = 64  # a text of at most twice this many sounds is one passage


@dataclass(frozen=True, slots=True)
class Passage:
    """Lines ``first_line`` to ``last_line`` of a text (from 0), as sounds and as signs.

    ``signs`` is the text in current forms where it holds Chinese characters, else empty.
    """

    sounds: str
    first_line: int = 0
    last_line: int = 0
    signs: str = ""

    @property
    def row(self) -> tuple[int, int, str, str]:
        """The passage as the library keeps it."""
        return self.first_line, self.last_line, self.sounds, self.signs


def passages_of(text: SourceText) -> tuple[Passage, ...]:
    """Return the passages of a text, which between them hold all its lines."""
    lines = [piece for line in text.lines for piece in _pieces(line)]
    numbers = [n for n, line in enumerate(text.lines) for _ in _pieces(line)]
    read = [_heard(line) for line in lines]
    spans = _spans([len(sounds) for sounds, _ in read])
    return tuple(
        Passage(
            "".join(sounds for sounds, _ in read[first:last]),
            numbers[first],
            numbers[last - 1],
            "".join(signs for _, signs in read[first:last]),
        )
        for first, last in spans
    )


def _pieces(line: str) -> Iterator[str]:
    """Yield a line, or its stretches of at most a passage where it is very long."""
    for start in range(0, len(line), PASSAGE_SOUNDS):
        yield line[start : start + PASSAGE_SOUNDS]


def _spans(lengths: Sequence[int]) -> Iterator[tuple[int, int]]:
    if sum(lengths) <= 2 * PASSAGE_SOUNDS:
        yield 0, len(lengths)
        return
    first, last, held = 0, 0, 0
    while last < len(lengths):
        while last < len(lengths) and held < 2 * PASSAGE_SOUNDS:
            held += lengths[last]
            last += 1
        yield first, last
        while first < last - 1 and held > PASSAGE_SOUNDS:
            held -= lengths[first]
            first += 1


def _heard(line: str) -> tuple[str, str]:
    """Return the sound key of a line, and its signs if any is a Chinese character."""
    if all(is_kana(char) for char in line):
        return letters(line), ""
    from inscribe import forms, reading

    normal = forms.normalise_text(line).text
    if not any(map(is_kanji, normal)):
        return letters(normal), ""
    try:
        said = "".join(token.kana for token in reading.read_text(line).proposals[0].tokens)
    except InscribeError:  # print may hold brackets that are no transcriber's: it is found by signs
        said = normal
    return letters(said), "".join(char for char in normal if is_kana(char) or is_kanji(char))
