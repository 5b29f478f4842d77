"""The words of prose in any spelling, read as the words of today they are.

UniDic's grammar is that of modern prose; so a text in historical spelling is first put into
current spelling (``inscribe.reading.prose.reader.current``), that is read, and every word is
given back the kana it is written with.

>>> [(piece.written, piece.modern, piece.romaji) for piece in prose_words("言ひませう")]
[('言ひ', '言い', 'ii'), ('ませう', 'ましょう', 'mashō')]
"""

from __future__ import annotations

import re

from inscribe import tables
from inscribe.reading import mecab
from inscribe.reading.prose.current import ModernWord, is_in_katakana, modern_words
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import ReadWord, rewritten

_SPACES = re.compile("([ \t\n\r\x0b\x0c]+)")  # MeCab leaves them out


def prose_words(text: str) -> list[ReadWord]:
    """Return the words of a normalised text as prose; what is written for them tiles the text."""
    if not _SPACES.search(text):
        return _words(text)
    found: list[ReadWord] = []
    for part in filter(None, _SPACES.split(text)):
        found += [ReadWord(part, "", "空白")] if part.isspace() else _words(part)
    return found


def _words(text: str) -> list[ReadWord]:
    words = modern_words(text)
    modern = "".join([word.modern for word in words])
    said = hiragana(modern) if is_in_katakana(text) else modern
    pieces = mecab.unidic_words(said)
    if said == text:
        return pieces
    where = _written_offsets(words)
    found: list[ReadWord] = []
    waiting: list[ReadWord] = []
    first = begin = position = 0
    for piece in pieces:
        waiting.append(piece)
        position += piece.length
        end = where.get(position)
        if end is not None:
            found.append(_as_written(waiting, text[first:end], modern[begin:position]))
            waiting, first, begin = [], end, position
    return found


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


def _as_written(pieces: list[ReadWord], written: str, modern: str) -> ReadWord:
    if len(pieces) > 1:
        return _joined(tuple(pieces), written, modern)
    piece = pieces[0]
    return piece if piece.written == written == modern else rewritten(piece, written, modern)


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
