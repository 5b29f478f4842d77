"""What else the words of prose may be read: UniDic's homographs, and what speaks against them.

人気 is ninki or hitoke, 上手 jōzu, kamite or uwate. Each word of the best path is held against the
other entries for the same signs, its neighbours staying as they are; the cost of the change is the
difference of word and connection costs in MeCab's units.

>>> [(swap.piece.romaji, swap.word) for swap in prose_swaps("人気の無い所")]
[('hitoke', 0), ('jinki', 0)]
"""

from __future__ import annotations

import mmap
import struct
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.reading import mecab
from inscribe.reading.mecab import opened_tagger
from inscribe.reading.prose.reader import groups_of
from inscribe.reading.words import ReadWord, rewritten, unidic_piece

if TYPE_CHECKING:
    from fugashi import GenericTagger

FARTHEST = 5500  # a reading that costs this much more is no alternative
_NAME, _SUFFIX, _SIGN = "名詞-固有名詞", "接尾辞", "記号"
_BEST = r"-F '%m\t%phl,%phr,%pw\t%H\n' -U '%m\t%phl,%phr,%pw\t\n' -E ''"
_ALL = r"-a -F '%ps\t%m\t%phl,%phr,%pw\t%H\n' -U '' -E ''"
_CLEAR = str.maketrans(
    "がぎぐげござじずぜぞだぢづでどばびぶべぼ", "かきくけこさしすせそたちつてとはひふへほ"
)


class ProseSwap(NamedTuple):
    """Another reading of the word of this index, and what it costs more than the best."""

    word: int
    piece: ReadWord
    cost: int


class _Entry(NamedTuple):
    written: str
    left: int
    right: int
    cost: int
    feature: str


def prose_swaps(text: str) -> list[ProseSwap]:
    """Return the other readings of the words of ``prose_words``, the likeliest first."""
    found: list[ProseSwap] = []
    number = 0
    for said, groups in groups_of(text):
        first_of = {group.first: (number + at, group) for at, group in enumerate(groups)}
        number += len(groups)
        for at, piece, cost in _swapped(said):
            if at in first_of:
                word, group = first_of[at]
                if group.words == 1:
                    modern = piece.written if group.modern == piece.written else group.modern
                    found.append(ProseSwap(word, rewritten(piece, group.written, modern), cost))
    return sorted(found, key=lambda swap: swap.cost)


def _swapped(text: str) -> Iterator[tuple[int, ReadWord, int]]:
    """Yield each word's offset with another word for it, and what that costs more."""
    best = list(_entries(_tagger(_BEST).parse(text)))
    there: dict[tuple[int, str], list[_Entry]] = {}
    for line in _tagger(_ALL).parse(text).split("\n"):
        byte, _, rest = line.partition("\t")
        for entry in _entries(rest):
            there.setdefault((int(byte), entry.written), []).append(entry)
    position = byte_at = 0
    for at, word in enumerate(best):
        before = best[at - 1].right if at else 0
        after = best[at + 1].left if at + 1 < len(best) else 0
        while not text.startswith(word.written, position):  # MeCab leaves spaces out
            byte_at += len(text[position].encode())
            position += 1
        if word.feature:
            for piece, cost in _others(word, there.get((byte_at, word.written), []), before, after):
                yield position, piece, cost
        position += len(word.written)
        byte_at += len(word.written.encode())


def _others(
    word: _Entry, entries: list[_Entry], before: int, after: int
) -> Iterator[tuple[ReadWord, int]]:
    own = unidic_piece(word.written, word.feature)
    least = _cost(word, before, after)
    known = {own.romaji.lower(), _clear(own.kana)}
    found = sorted((_cost(entry, before, after) - least, entry) for entry in entries)
    for cost, entry in found:
        piece = unidic_piece(entry.written, entry.feature)
        if cost > FARTHEST or not _may_stand_for(piece, own):
            continue
        if piece.romaji.lower() not in known and _clear(piece.kana) not in known:
            known |= {piece.romaji.lower(), _clear(piece.kana)}
            yield piece, max(0, cost)


def _may_stand_for(piece: ReadWord, own: ReadWord) -> bool:
    """Whether a word is of a kind that may stand there: no name, suffix or letter for a word."""
    of_own = own.part_of_speech
    return not any(
        piece.part_of_speech.startswith(kind) and not of_own.startswith(kind)
        for kind in (_NAME, _SUFFIX, _SIGN)
    )


def _clear(kana: str) -> str:
    """Return kana whose first consonant is clear: only second parts of compounds are voiced."""
    return kana[:1].translate(_CLEAR) + kana[1:]


def _entries(printed: str) -> Iterator[_Entry]:
    for line in printed.split("\n"):
        written, _, rest = line.partition("\t")
        if written:
            numbers, _, feature = rest.partition("\t")
            left, right, cost = map(int, numbers.split(","))
            yield _Entry(written, left, right, cost, feature)


@tables.cached(4)
def _tagger(line: str) -> GenericTagger:
    return opened_tagger(mecab.folder(), line)


def _cost(entry: _Entry, before: int, after: int) -> int:
    side, cells = _connections()
    to_here, from_here = cells[before + side * entry.left], cells[entry.right + side * after]
    return int(entry.cost + to_here + from_here)


@tables.cached()
def _connections() -> tuple[int, memoryview]:
    """Return the side and cells of UniDic's matrix, of which only what is asked for is read."""
    with Path(mecab.folder() / "matrix.bin").open("rb") as file:
        data = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
    return struct.unpack_from("<H", data)[0], memoryview(data)[4:].cast("h")
