"""MeCab and its dictionaries: the installed UniDic, and dictionaries compiled into the cache.

In reading order: ``unidic`` (the installed words and their classes), ``entries`` (one entry of a
dictionary), ``places`` (the folders dictionaries may lie in), ``shipped`` (words
gathered before), ``compiling`` (dictionaries built there once), ``compiled`` (what is in one, sign
by sign), ``tagger`` (a text to words).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.mecab.compiled import (
        NOWHERE as NOWHERE,
        CompiledWord as CompiledWord,
        CompiledWords as CompiledWords,
    )
    from inscribe.reading.mecab.compiling import (
        MecabRow as MecabRow,
        dictionary as dictionary,
        dictionary_folder as dictionary_folder,
        keyed as keyed,
        write_rows as write_rows,
    )
    from inscribe.reading.mecab.entries import DictionaryEntry as DictionaryEntry
    from inscribe.reading.mecab.places import cache_folder as cache_folder
    from inscribe.reading.mecab.tagger import (
        LINE as LINE,
        LONGEST_KEPT as LONGEST_KEPT,
        MADE_UP as MADE_UP,
        MOST_KEPT as MOST_KEPT,
        UNKNOWN_MORE as UNKNOWN_MORE,
        kept_piece as kept_piece,
        kept_words as kept_words,
        opened_tagger as opened_tagger,
        unidic_words as unidic_words,
    )
    from inscribe.reading.mecab.unidic import (
        Classes as Classes,
        UnidicEntry as UnidicEntry,
        classes as classes,
        connection_costs as connection_costs,
        folder as folder,
        version_files as version_files,
        words as words,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "compiled": "NOWHERE CompiledWord CompiledWords",
            "compiling": "MecabRow dictionary dictionary_folder keyed write_rows",
            "entries": "DictionaryEntry",
            "places": "cache_folder",
            "tagger": (
                "LINE LONGEST_KEPT MADE_UP MOST_KEPT UNKNOWN_MORE kept_piece kept_words "
                "opened_tagger unidic_words"
            ),
            "unidic": "Classes UnidicEntry classes connection_costs folder version_files words",
        },
    )
