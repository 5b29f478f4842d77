"""MeCab with the dictionary of verse: the best path, and every word it found.

The best path comes from :func:`verse_words`; :func:`verse_lattice` and, quicker,
:func:`verse_spans` hand back every word MeCab found, for the search that hears the metre.
"""

from __future__ import annotations

import os
import struct
from collections.abc import Callable
from functools import partial
from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING, TypeVar

from inscribe import tables
from inscribe.errors import InputError, Place
from inscribe.reading.lexicon import FEATURES, verse_dictionary
from inscribe.reading.mecab import (
    LONGEST_KEPT,
    MADE_UP,
    MOST_KEPT,
    UNKNOWN_MORE,
    kept_piece,
    opened_tagger,
)
from inscribe.reading.verse.lattice import Homographs, LatticeSpan, Node, homographs, spans_of
from inscribe.reading.words import ReadWord, verse_piece

if TYPE_CHECKING:
    from io import BufferedReader

    from fugashi import GenericTagger

T = TypeVar("T")

# A word with its classes, its cost, and where in the file of features it is told of.
# The cost of the best path comes last.
_WORD_LINE = r"-F '%m\t%phl,%phr,%pw,%H\n' -U '%m\t?%phl,%pw\n' -E '%pc'"


_LATTICE_LINE = r"-a -F '%ps\t%pe\t%m\t%phl,%phr,%pw,%H\n' -U '%ps\t%pe\t%m\t?%phl,%pw\n' -E ''"


_MOST_OF_A_FEATURE = 256  # bytes read at once; few have more
_BYTES = 3  # of a kana or a common kanji in UTF-8


_verse_lines: dict[str, ReadWord] = {}


@tables.cached()
def _verse_folder() -> Path:
    return verse_dictionary()


@tables.cached()
def _verse_taggers() -> dict[tuple[str, bool], GenericTagger]:
    return {}


def _verse_tagger(voiced: bool, line: str = _WORD_LINE) -> GenericTagger:
    found = _verse_taggers().get((line, voiced))
    if found is None:
        found = from_folder(partial(_opened, voiced, line))
        _verse_taggers()[line, voiced] = found
    return found


def _opened(voiced: bool, line: str, folder: Path) -> GenericTagger:
    over = "" if voiced else f" -u {quote(str(folder / 'unvoiced.dic'))}"
    return opened_tagger(folder, line + over)


def from_folder(load: Callable[[Path], T]) -> T:
    """Load something of the dictionary of verse, made anew if it was cleared away meanwhile.

    Raises:
        InputError: it cannot be loaded when it has just been made.
    """
    try:
        return load(_verse_folder())
    except (OSError, RuntimeError):
        tables.forget()
    folder = _verse_folder()
    try:
        return load(folder)
    except (OSError, RuntimeError) as error:
        message = "the dictionary of verse cannot be opened"
        raise InputError(message, Place(str(folder)), "remove the folder and try again") from error


def verse_words(text: str, *, voiced: bool = True) -> list[ReadWord]:
    """Return the words of MeCab's best path through ``text`` as verse.

    With ``voiced`` false, a kana without a voicing mark may stand for the voiced one.
    """
    return verse_path(text, voiced=voiced)[0]


def verse_path(text: str, *, voiced: bool) -> tuple[list[ReadWord], int]:
    """Return the words of MeCab's best path as :func:`verse_words` does, and what it costs."""
    printed = _verse_tagger(voiced).parse(text)
    lines, _, cost = printed.rpartition("\n")
    path_cost = int(cost) + UNKNOWN_MORE * printed.count(MADE_UP)
    if not lines:
        return [], path_cost
    known = _verse_lines
    try:
        return [known[line] for line in lines.split("\n")], path_cost
    except KeyError:
        return [kept_piece(line, known, _piece) for line in lines.split("\n")], path_cost


def _piece(written: str, printed: str) -> ReadWord:
    """Return a word of the dictionary as MeCab prints it; the rest is in the file of features."""
    return verse_piece(written, printed, _feature_at)


def _feature_at(place: int) -> str:
    """Return what the file of features says from an offset on to the end of the line."""
    file, length = _features(), _MOST_OF_A_FEATURE
    while True:
        line, ended, _ = os.pread(file.fileno(), length, place).partition(b"\n")
        if ended:
            return line.decode()
        length *= 2


@tables.cached()
def _features() -> BufferedReader:
    return from_folder(lambda folder: (folder / FEATURES).open("rb"))


def verse_lattice(text: str, *, voiced: bool = True) -> list[Node]:
    """Return every word MeCab found in ``text`` as verse, with its offsets in characters."""
    offsets = _character_offsets(text)
    nodes = []
    for line in _verse_tagger(voiced, _LATTICE_LINE).parse(text).split("\n"):
        start, end, word = [*line.split("\t", 2), "", ""][:3]
        if word:  # of a space at the end of a text MeCab prints the place alone
            piece = _verse_lines.get(word) or kept_piece(word, _verse_lines, _piece)
            nodes.append(Node(offsets[int(start)], offsets[int(end)], piece))
    return nodes


@tables.cached()
def _homographs() -> dict[bool, dict[str, Homographs]]:
    return {True: {}, False: {}}


def verse_spans(text: str, *, voiced: bool = True) -> list[LatticeSpan]:
    """Return where words of verse may stand in ``text``, and which.

    What the dictionary has for the same signs is the same everywhere, so MeCab only has to say
    where they stand. The words it makes up hang on their neighbours.
    """
    printed = _verse_tagger(voiced, _LATTICE_LINE).parse(text)
    known = _homographs()[voiced]
    even = len(text.encode("utf-8", "surrogatepass")) == _BYTES * len(text)
    offsets = {} if even else _character_offsets(text)
    places: dict[str, tuple[int, str]] = {}  # where words stand, and how they are written
    new: dict[str, list[ReadWord]] = {}  # those met for the first time
    made_up: list[Node] = []
    for line in printed.split("\n"):
        cut = line.rfind("\t")
        place = line[:cut]
        if place in places:
            if place in new and line[cut + 1] != "?":
                new[place].append(_piece(places[place][1], line[cut + 1 :]))
            continue
        byte, _, word = line.partition("\t")
        _, _, word = word.partition("\t")
        if not word:
            continue
        start = int(byte) // _BYTES if even else offsets[int(byte)]
        if MADE_UP in word:
            piece = _verse_lines.get(word) or kept_piece(word, _verse_lines, _piece)
            made_up.append(Node(start, start + piece.length, piece))
        else:
            written = word[: word.index("\t")]
            places[place] = start, written
            if written not in known:
                new[place] = [_piece(written, line[cut + 1 :])]
    if len(known) + len(new) > MOST_KEPT:
        known.clear()
        return verse_spans(text, voiced=voiced)
    known.update({places[place][1]: homographs(words) for place, words in new.items()})
    spans = [
        LatticeSpan(start, start + len(written), known[written])
        for start, written in places.values()
    ]
    return _with_made_up(spans, made_up) if made_up else spans


def _with_made_up(spans: list[LatticeSpan], made_up: list[Node]) -> list[LatticeSpan]:
    at = {(span.start, span.end): span.words for span in spans}
    for start, end, words in spans_of(made_up):
        there = at.get((start, end))
        at[start, end] = homographs((*there.every, *words.every)) if there else words
    return [LatticeSpan(start, end, words) for (start, end), words in at.items()]


def _character_offsets(text: str) -> dict[int, int]:
    offsets, byte = {0: 0}, 0
    for index, character in enumerate(text, start=1):
        byte += len(character.encode("utf-8", "surrogatepass"))
        offsets[byte] = index
    return offsets


@tables.cached()
def verse_connections() -> tuple[int, memoryview]:
    """Return the side and the cells of the matrix of connection costs of verse.

    A word of class ``right`` after one of class ``left`` costs ``cells[left + side * right]``.
    """
    data = from_folder(lambda folder: (folder / "matrix.bin").read_bytes())
    return struct.unpack_from("<H", data)[0], memoryview(data)[4:].cast("h")


def homographs_of(written: str, *, voiced: bool = True) -> Homographs:
    """Return the words of verse that are written so."""
    known = _homographs()[voiced]
    found = known.get(written)
    if found is None:
        if len(known) > MOST_KEPT:
            known.clear()
        nodes = verse_lattice(written, voiced=voiced)
        whole = [node.piece for node in nodes if (node.start, node.end) == (0, len(written))]
        found = homographs([word for word in whole if word.known] or whole)
        if len(written) <= LONGEST_KEPT:
            known[written] = found
    return found


def readings_of(written: str, *, voiced: bool = True) -> tuple[ReadWord, ...]:
    """Return the words of verse that are written so, the cheapest of each class and length."""
    return homographs_of(written, voiced=voiced).worth_trying
