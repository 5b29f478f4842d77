"""Passages: the pieces of a text that are indexed, each short enough to be compared whole.

A short text is one passage. A long one is cut into passages of a few lines that overlap by half,
so that two lines copied out of it lie whole in one of them.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.errors import InscribeError
from inscribe.reading.spelling import is_kana, is_kanji
from inscribe.sources.keys import letters
from inscribe.sources.texts import SourceText

if TYPE_CHECKING:
    from inscribe.reading import Token

QUOTES = "「」『』"  # marks of print that a transcriber uses otherwise
_NO_QUOTES = str.maketrans("", "", QUOTES)
_FEW_TEXTS = 64  # whose words are kept for those who ask for them next
PASSAGE_SOUNDS = 64  # a text of at most twice this many sounds is one passage


@dataclass(frozen=True, slots=True)
class SourcePassage:
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


def passages_of(text: SourceText) -> tuple[SourcePassage, ...]:
    """Return the passages of a text, which between them hold all its lines."""
    numbers = [n for n, line in enumerate(text.lines) for _ in _pieces(line)]
    stretches = map(without_quotes, stretches_of(text))
    read = [heard for stretch in stretches for heard in _heard(stretch)]
    spans = _spans([len(sounds) for sounds, _ in read])
    return tuple(
        SourcePassage(
            "".join(sounds for sounds, _ in read[first:last]),
            numbers[first],
            numbers[last - 1],
            "".join(signs for _, signs in read[first:last]),
        )
        for first, last in spans
    )


def _pieces(line: str) -> Iterator[str]:
    """Yield a line, or its stretches of at most a passage where it is very long.

    A kanji has two sounds and more, so a line in kanji alone is cut at half as many signs.
    """
    longest = PASSAGE_SOUNDS if any(map(is_kana, line)) else PASSAGE_SOUNDS // 2
    for start in range(0, len(line), longest):
        yield line[start : start + longest]


def _spans(lengths: Sequence[int]) -> Iterator[tuple[int, int]]:
    if sum(lengths) <= 2 * PASSAGE_SOUNDS:
        yield 0, len(lengths)
        return
    first, last, held = 0, 0, 0
    while last < len(lengths):
        begun = last  # one line more at least, however long those before
        while last < len(lengths) and (last == begun or held < 2 * PASSAGE_SOUNDS):
            held += lengths[last]
            last += 1
        yield first, last
        while first < last - 1 and held > PASSAGE_SOUNDS:
            held -= lengths[first]
            first += 1


def stretches_of(text: SourceText) -> Iterator[Sequence[str]]:
    """Yield the lines in runs that are read at once, each about as long as a passage."""
    lines = [piece for line in text.lines for piece in _pieces(line)]
    first, held = 0, 0
    for at, line in enumerate(lines):
        if at > first and held + len(line) > 2 * PASSAGE_SOUNDS:
            yield lines[first:at]
            first, held = at, 0
        held += len(line)
    if lines:
        yield lines[first:]


def without_quotes(lines: Sequence[str]) -> list[str]:
    """Return lines without the marks of speech."""
    return [line.translate(_NO_QUOTES) for line in lines]


def _heard(lines: Sequence[str]) -> list[tuple[str, str]]:
    """Return the sound key of each line, and its signs if any is a Chinese character.

    The lines are read together: a phrase of verse by itself (天の香具山) has no metre, and would be
    taken for a name.
    """
    if all(is_kana(char) for line in lines for char in line):
        return [(letters(line), "") for line in lines]
    if len(lines) > 1 and any("。" in line for line in lines[:-1]):  # whole sentences
        return [heard for line in lines for heard in _heard([line])]
    from inscribe import forms

    normal = [forms.normalise_text(line).text for line in lines]
    if not any(map(is_kanji, "".join(normal))):
        return [(letters(line), "") for line in normal]
    signs = ["".join(c for c in line if is_kana(c) or is_kanji(c)) for line in normal]
    return [(letters(said), held) for said, held in zip(_said(lines, normal), signs, strict=True)]


def _said(lines: Sequence[str], normal: Sequence[str]) -> Sequence[str]:
    """Return what each line says in kana; a word over the end of a line counts to its start."""
    try:
        tokens = tokens_of(lines)
    except InscribeError:  # print may hold brackets that are no transcriber's: it is found by signs
        if len(lines) == 1:
            return normal
        return [_said([line], [plain])[0] for line, plain in zip(lines, normal, strict=True)]
    starts = list(accumulate(map(len, lines), initial=0))
    said = [""] * len(lines)
    for token in tokens:
        said[min(bisect_right(starts, token.first), len(lines)) - 1] += token.kana
    return said


def tokens_of(lines: Sequence[str]) -> tuple[Token, ...]:
    """Return the words of lines of verse or prose: nobody signs them, so no division is weighed.

    Of Chinese characters alone it is asked what they are: a saying, a name, a title.

    Raises:
        InscribeError: print holds brackets that are no transcriber's.

    >>> [token.kana for token in tokens_of(["花の色は", "移りにけりな"])]
    ['はな', 'の', 'いろ', 'は', 'うつり', 'に', 'けり', 'な']
    """
    return _tokens("／".join(lines).rstrip("。"))


@tables.cached(_FEW_TEXTS)
def _tokens(text: str) -> tuple[Token, ...]:
    from inscribe.reading import read_text

    if not any(map(is_kana, text)):
        return read_text(text).proposals[0].tokens
    verse = read_text(text, "verse", alternatives=False).proposals[0]
    return verse.tokens if verse.phrases else read_text(text, "prose").proposals[0].tokens
