"""MeCab handing back words that are worked out once: here with the installed UniDic as it is.

The room of verse sets it up with a dictionary of its own.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.reading.words import ReadWord, unidic_piece, unknown_piece

if TYPE_CHECKING:
    from fugashi import GenericTagger

MOST_KEPT = 50_000  # words of each kind, some 1 KiB each
LONGEST_KEPT = 1000  # characters of a line; a run of signs no dictionary has may be far longer
LINE = r"-F '%m\t%H\n' -U '%m\t?%phl,%pw\n' -E ''"
MADE_UP = "\t?"
UNKNOWN_MORE = 3000  # an unknown word costs this much more than MeCab says

_prose_lines: dict[str, ReadWord] = {}


def opened_tagger(folder: Path, options: str) -> GenericTagger:
    """Return MeCab with the dictionary in a folder, printing as its options say."""
    from fugashi import GenericTagger

    return GenericTagger(f"-r '{os.devnull}' -O '' -d {quote(str(folder))} {options}")


@tables.cached()
def _prose_tagger() -> GenericTagger:
    from inscribe.reading.mecab import unidic

    return opened_tagger(unidic.folder(), LINE)


def unidic_words(text: str) -> list[ReadWord]:
    """Return the words of MeCab's best path through ``text`` with UniDic as it is."""
    return kept_words(text, _prose_tagger(), _prose_lines, unidic_piece)


def kept_words(
    text: str,
    tagger: GenericTagger,
    known: dict[str, ReadWord],
    make: Callable[[str, str], ReadWord],
) -> list[ReadWord]:
    """Return the words of the best path, each made once for each line that MeCab prints."""
    lines = tagger.parse(text).split("\n")
    try:
        return [known[line] for line in lines if line]
    except KeyError:
        return [kept_piece(line, known, make) for line in lines if line]


def kept_piece(
    line: str, known: dict[str, ReadWord], make: Callable[[str, str], ReadWord]
) -> ReadWord:
    """Return the word of a line that MeCab printed."""
    found = known.get(line)
    if found is None:
        written, _, feature = line.partition("\t")
        if feature.startswith("?"):
            connection, cost = feature[1:].split(",")
            found = unknown_piece(
                written, connection=int(connection), cost=int(cost) + UNKNOWN_MORE
            )
        else:
            found = make(written, feature)
        if len(known) > MOST_KEPT:
            known.clear()
        if len(line) <= LONGEST_KEPT:
            known[line] = found
    return found
