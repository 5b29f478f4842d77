"""Words that dictionaries know, found in a text at every place where they could stand.

Not the best division of the text but all of them: collation must know that 今日 can be けふ even
where a reader would prefer another word.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.collation.align.sides.okurigana import spoken_forms
from inscribe.collation.align.sides.readings import table_readings
from inscribe.reading import spelling

if TYPE_CHECKING:
    from inscribe.reading.words import ReadWord


class PossibleWord(NamedTuple):
    """One word that could stand at ``start``..``end`` (characters of the text) and its reading."""

    start: int
    end: int
    spoken: str  # hiragana, spelled as the dictionary does
    plausibility: str  # row of the cost table
    source: str


def table_words(text: str) -> list[PossibleWord]:
    """Return every word of the glossary in ``text`` that is written with Chinese characters."""
    known, beginnings = table_readings(), _beginnings()
    found = []
    for start in range(len(text) - 1):
        longest = beginnings.get(text[start : start + 2], 0)
        for end in range(start + 2, min(len(text), start + longest) + 1):
            if text[start:end] in known:
                found += [
                    PossibleWord(start, end, spoken, "word", table)
                    for spoken, table in _said(text[start:end])
                ]
    return found


@tables.cached(16384)
def _said(written: str) -> tuple[tuple[str, str], ...]:
    """Return how a word of the tables may be said in a text, and the table that has it."""
    known = table_readings()[written]
    return tuple((spoken, table) for reading, table in known for spoken in spoken_forms(reading))


@tables.cached()
def _beginnings() -> dict[str, int]:
    """Return the signs of the longest word of the tables that begins with two given signs."""
    found: dict[str, int] = {}
    for written in table_readings():
        if spelling.is_kanji(written[0]):
            found[written[:2]] = max(found.get(written[:2], 0), len(written))
    return found


def _read_as_a_whole(text: str) -> Iterator[PossibleWord]:
    """Yield every word of two or three signs that is read as a whole: 土筆 つくし."""
    for start, char in enumerate(text):
        for end in (start + 2, start + 3) if spelling.is_kanji(char) else ():
            written = text[start:end]
            if end <= len(text) and spelling.is_kanji(written[-1]):
                for kana in _as_a_whole(written):
                    yield PossibleWord(start, end, kana, "word", "EDICT")


@tables.cached(16384)
def _as_a_whole(written: str) -> tuple[str, ...]:
    row = _jukujikun().first_about(written)
    return (row["kana"], *tables.listed(row["also"])) if row else ()


@tables.cached()
def _jukujikun() -> tables.Sorted:
    return tables.Sorted("jukujikun")


def _is_no_word(piece: ReadWord) -> bool:
    """Whether a character is read by its sound, known already, or with の: 夢 ゆめの."""
    return piece.origin == "漢" or piece.kana.endswith("の")


def dictionary_words(text: str) -> list[PossibleWord]:
    """Return every word of the dictionary of verse in ``text`` that has a Chinese character."""
    from inscribe.reading.verse import verse_spans

    found: dict[PossibleWord, None] = {}
    for start, end, words in verse_spans(text):
        if not any(map(spelling.is_kanji, text[start:end])):
            continue
        for word in words.every:
            if end - start == 1 and _is_no_word(word):
                continue
            if word.kana.endswith("っ") and text[end : end + 1] not in ("て", "た"):
                continue
            if word.known:
                found[PossibleWord(start, end, word.kana, "word", "dictionary")] = None
    return [*found, *_read_as_a_whole(text)]
