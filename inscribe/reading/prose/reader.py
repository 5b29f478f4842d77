"""The words of prose in any spelling, read as the words of today they are.

UniDic's grammar is that of modern prose; so a text in historical spelling is first put into
current spelling (``inscribe.reading.prose.reader.current``), that is read, and every word is
given back the kana it is written with.

>>> [(piece.written, piece.modern, piece.romaji) for piece in prose_words("言ひませう")]
[('言ひ', '言い', 'ii'), ('ませう', 'ましょう', 'mashō')]
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.reading import mecab
from inscribe.reading.prose.current import ModernWord, is_in_katakana, modern_words
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import ReadWord, rewritten

_SPACES = re.compile("([ \t\n\r\x0b\x0c]+)")  # MeCab leaves them out


class WrittenWord(NamedTuple):
    """Words of the current text for which together something is written."""

    first: int  # offset in the current text
    words: int
    written: str
    modern: str
    pieces: tuple[ReadWord, ...]


def prose_words(text: str) -> list[ReadWord]:
    """Return the words of a normalised text as prose; what is written for them tiles the text."""
    if not _SPACES.search(text):
        return _words(text)
    found: list[ReadWord] = []
    for part in filter(None, _SPACES.split(text)):
        found += [ReadWord(part, "", "空白")] if part.isspace() else _words(part)
    return found


def groups_of(text: str) -> Iterator[tuple[str, list[WrittenWord]]]:
    """Yield each stretch of a text without spaces in current spelling, with its words.

    The groups are those of :func:`prose_words`, one for each of its words; a space is a group.
    """
    for part in filter(None, _SPACES.split(text)):
        if part.isspace():
            yield "", [WrittenWord(0, 0, part, part, ())]
        else:
            said, words = _current(part)
            yield said, list(_groups(part, said, words))


def _current(text: str) -> tuple[str, list[ModernWord]]:
    """Return a text in current spelling, in hiragana where katakana stand for it."""
    words = modern_words(text)
    modern = "".join([word.modern for word in words])
    return (hiragana(modern) if is_in_katakana(text) else modern), words


def _words(text: str) -> list[ReadWord]:
    said, words = _current(text)
    if said == text:
        return mecab.unidic_words(said)
    return [_as_written(group) for group in _groups(text, said, words)]


def _groups(text: str, said: str, words: list[ModernWord]) -> Iterator[WrittenWord]:
    modern = "".join([word.modern for word in words])
    where = _written_offsets(words)
    waiting: list[ReadWord] = []
    first = begin = position = 0
    for piece in mecab.unidic_words(said):
        waiting.append(piece)
        position += piece.length
        end = where.get(position)
        if end is not None:
            written = text[first:end]
            yield WrittenWord(begin, len(waiting), written, modern[begin:position], tuple(waiting))
            waiting, first, begin = [], end, position


def _written_offsets(words: list[ModernWord]) -> dict[int, int]:
    """Return, for each offset of the current text where a word ends, the offset as written.

    Inside a word the offsets follow one another sign by sign while nothing changes its length.
    """
    where: dict[int, int] = {}
    position = 0
    for word in words:
        if len(word.modern) == len(word.written):
            for offset in range(1, len(word.modern) + 1):
                where[position + offset] = word.first + offset
        position += len(word.modern)
        where[position] = word.last + 1
    return where


def _as_written(group: WrittenWord) -> ReadWord:
    if len(group.pieces) > 1:
        return _joined(group.pieces, group.written, group.modern)
    piece = group.pieces[0]
    same = piece.written == group.written == group.modern
    return piece if same else rewritten(piece, group.written, group.modern)


@tables.cached(1024)
def _joined(pieces: tuple[ReadWord, ...], written: str, modern: str) -> ReadWord:
    """Return words that only together have something written for them, as one word."""
    first = pieces[0]
    new = ReadWord(
        written,
        "|".join(piece.word.kana for piece in pieces),
        first.part_of_speech,
        conjugation=first.conjugation,
        form=first.form,
        lemma=first.lemma,
        origin=first.origin,
        known=all(piece.known for piece in pieces),
    )
    new.modern = modern
    return new
