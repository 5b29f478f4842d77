"""Words of a text around what is no word: gaps, monograms, seals, repeat marks."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import accumulate

from inscribe.forms import NormalText
from inscribe.reading.words.assembling import WordsOf
from inscribe.reading.words.features import unknown_piece
from inscribe.reading.words.pieces import ReadWord, written_as

_ILLEGIBLE = "□ 　"
MARK = re.compile("［[^］]*］|（花押）|（印(?:「[^」]*」)?）")


def has_legible(text: str) -> bool:
    """Whether a text has a sign that is neither unread nor a space."""
    return bool(text.strip(_ILLEGIBLE))


def words_around_marks(text: str, words_of: WordsOf) -> list[ReadWord]:
    """Return the words of a text, each gap, seal or monogram a word of its own."""
    words: list[ReadWord] = []
    position = 0
    for match in MARK.finditer(text):
        if match.start() > position:
            words += words_of(text[position : match.start()])
        words.append(mark_as_word(match[0]))
        position = match.end()
    return words + words_of(text[position:]) if position < len(text) else words


def words_with_repeats(
    normal: NormalText, carved: Sequence[str], words_of: WordsOf
) -> list[ReadWord]:
    """Return the words of a text, each 々 as carved where a word has it: 人々 is one, 人人 none."""
    if "々" not in carved:
        return words_around_marks(normal.text, words_of)
    signs = zip(normal.text, normal.origin, strict=True)
    printed = ["々" if carved[sign] == "々" else now for now, sign in signs]
    while True:
        words = words_around_marks("".join(printed), words_of)
        ends = list(accumulate(word.length for word in words))
        loose = [
            place
            for word, end in zip(words, ends, strict=True)
            if word.written[0] == "々"
            for place in range(end - word.length, end)
            if printed[place] != normal.text[place]
        ]
        if not loose:
            return written_as(words, normal.text)
        for place in loose:  # no word has it: the sign it repeats is read
            printed[place] = normal.text[place]


def marks_as_words(text: str) -> list[ReadWord]:
    """Return the marks of a text, each as a word of its own."""
    return [mark_as_word(mark) for mark in MARK.findall(text)]


def mark_as_word(mark: str) -> ReadWord:
    """Return a mark as a word of its own.

    A gap is never joined to its neighbours in Latin letters, because words are missing in it.
    """
    if mark.startswith("［"):
        return unknown_piece(mark)
    return unknown_piece(mark, part_of_speech="補助記号")


def signs_alone(text: str) -> list[ReadWord]:
    """Return each sign of a text as a mark that is no word."""
    return [unknown_piece(sign, part_of_speech="補助記号") for sign in text]
