"""Where words begin in a text that may be written without voicing marks.

The reading stage's dictionary of verse expects かぜ where a manuscript has かせ; here every entry of
it also stands without marks, and so does the text, so that both divide alike. The metre helps: the
same search as in reading prefers words that end where a phrase ends.
"""

from __future__ import annotations

import os
from functools import cache, lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.collate import sounds
from inscribe.collate.sides import Side

if TYPE_CHECKING:
    from fugashi import GenericTagger

    from inscribe.reading.lattice import Node

_LINE = r"-a -F '%ps\t%pe\t%m\t%H\n' -U '%ps\t%pe\t%m\t?\n' -E ''"
_BEST = r"-F '%m\t%H\n' -U '%m\t?\n' -E ''"


def word_starts(side: Side) -> frozenset[int]:
    """Return the signs of ``side`` at which a word begins, the end of the text among them."""
    sign_at: dict[int, int] = {}
    text = ""
    for index, part in enumerate(side.norm):
        sign_at[len(text)] = index
        text += part
    sign_at[len(text)] = len(side)
    places = _word_places("".join(sounds.voiceless(c) if sounds.is_kana(c) else c for c in text))
    return frozenset(sign_at[place] for place in places if place in sign_at) | {0, len(side)}


@lru_cache(maxsize=256)
def _word_places(text: str) -> tuple[int, ...]:
    from inscribe.reading.lattice import best_path
    from inscribe.reading.metre import pattern_of

    words = _best_words(text)
    metre = pattern_of(sum(morae for _, morae in words))
    if metre is not None:
        path = best_path(_lattice(text), len(text), metre, _connections())
        if path is not None:
            return tuple(node.start for node in path.nodes)
    places, at = [], 0
    for length, _ in words:
        places.append(at)
        at += length
    return tuple(places)


def _best_words(text: str) -> list[tuple[int, int]]:
    """Return length and morae of each word of MeCab's best path."""
    lines = (line.partition("\t") for line in _tagger(_BEST).parse(text).split("\n") if line)
    return [(len(word), _piece(word, feature).morae) for word, _, feature in lines]


@lru_cache(maxsize=65536)
def _piece(word: str, feature: str):  # type: ignore[no-untyped-def]
    from inscribe.reading.pieces import unknown_piece, verse_piece

    return unknown_piece(word, connection=0, cost=20000) if feature == "?" else verse_piece(word, feature)


def _lattice(text: str) -> list[Node]:
    from inscribe.reading.lattice import Node

    offsets, byte = {0: 0}, 0
    for index, character in enumerate(text, start=1):
        byte += len(character.encode("utf-8", "surrogatepass"))
        offsets[byte] = index
    nodes = []
    for line in _tagger(_LINE).parse(text).split("\n"):
        if line:
            start, end, word, feature = line.split("\t", 3)
            nodes.append(Node(offsets[int(start)], offsets[int(end)], _piece(word, feature)))
    return nodes


@cache
def _tagger(options: str) -> GenericTagger:
    from fugashi import GenericTagger

    return GenericTagger(f"-r '{os.devnull}' -O '' -d '{_folder()}' {options}")


@cache
def _connections() -> tuple[int, memoryview]:
    import struct

    data = (_folder() / "matrix.bin").read_bytes()
    return struct.unpack_from("<H", data)[0], memoryview(data)[4:].cast("h")


@cache
def _folder() -> Path:
    from inscribe.reading import verse_dictionary as verse
    from inscribe.reading.dictionary import dictionary_folder

    return dictionary_folder("verse-without-marks", [Path(__file__), *verse._sources()], _write_parts)


def _write_parts(folder: Path) -> None:
    """Write the parts of the dictionary of verse, its entries without voicing marks."""
    from inscribe.reading import verse_dictionary as verse

    verse._write_parts(folder)
    entries = folder / "entries.csv"
    best: dict[tuple[str, str], tuple[int, str]] = {}
    for line in entries.read_text(encoding="utf-8").splitlines():
        written, left, right, cost, rest = line.split(",", 4)
        plain = "".join(sounds.voiceless(c) if sounds.is_kana(c) else c for c in written)
        key = (plain, left)
        if key not in best or int(cost) < best[key][0]:
            best[key] = (int(cost), f"{plain},{left},{right},{cost},{rest}\n")
    with entries.open("w", encoding="utf-8", newline="\n") as file:
        file.writelines(line for _, line in best.values())
