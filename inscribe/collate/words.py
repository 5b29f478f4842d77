"""Words that dictionaries know, found in a text at every place where they could stand.

Not the best division of the text but all of them: collation must know that 今日 can be けふ even
where a reader would prefer another word.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.collate import sounds
from inscribe.collate.readings import TABLE, inflected, written

if TYPE_CHECKING:
    from fugashi import GenericTagger

LONGEST = 8  # signs of a word in the glossary tables


class Word(NamedTuple):
    """One word that could stand at ``start``..``end`` (characters of the text) and its reading."""

    start: int
    end: int
    spoken: str  # hiragana, spelled as the dictionary does
    plausibility: str  # row of the cost table
    source: str


def words(text: str) -> list[Word]:
    """Return every known word in ``text`` that is written with a Chinese character."""
    return _from_tables(text) + _from_unidic(text)


def _from_tables(text: str) -> list[Word]:
    known = _table_words()
    found = []
    for start, char in enumerate(text):
        if not (sounds.is_kanji(char) or char in "々〻"):
            continue
        for end in range(start + 1, min(len(text), start + LONGEST) + 1):
            found += [
                Word(start, end, spoken, "word", source)
                for spoken, source in known.get(text[start:end], ())
            ]
    return found


@tables.compiled
def _table_words() -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, list[tuple[str, str]]] = {}
    for (text, reading, _), _place in tables.rows(TABLE, ("text", "reading", "note")):
        if len(text) > 1:
            known = found.setdefault(text, [])
            known += [(form, TABLE) for form in (*written(reading), *inflected(reading))]
    return {text: tuple(readings) for text, readings in found.items()}


def _from_unidic(text: str) -> list[Word]:
    data = text.encode("utf-8")
    character = _character_at_byte(text)
    found: dict[Word, None] = {}
    for entry in _all_words_tagger().parse(text).split(";")[:-1]:
        start, end, kana, kind, detail = entry.split("|")
        if kana and kind != "記号" and not data[int(start) : int(end)].decode() == kana:
            first, last = character[int(start)], character[int(end)]
            if any(map(sounds.is_kanji, text[first:last])):
                name = "name" if detail == "固有名詞" and last - first == 1 else "word"
                found[Word(first, last, sounds.hiragana(kana), name, "UniDic")] = None
    return list(found)


def _character_at_byte(text: str) -> dict[int, int]:
    places, at = {}, 0
    for index, char in enumerate(text):
        places[at] = index
        at += len(char.encode("utf-8"))
    places[at] = len(text)
    return places


@cache
def _all_words_tagger() -> GenericTagger:
    """Return a tagger that lists every dictionary word of the lattice, not one path through it."""
    import fugashi
    import unidic_lite

    folder = unidic_lite.DICDIR
    shape = "%ps|%pe|%f[17]|%f[0]|%f[1];"
    return fugashi.GenericTagger(
        f'-r "{folder}/mecabrc" -d "{folder}" -a -O "" -F "{shape}" -U "" -E "" -B ""'
    )
