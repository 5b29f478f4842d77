"""The library of source texts, and which of them an inscription copies.

In reading order: ``texts`` (a source text), ``importers`` and ``tei`` (files to texts), ``starter``
(texts to begin with), ``adding``, ``library`` (one SQLite file), ``passages`` and ``keys`` (the
sounds texts are found by), ``index``, ``copied`` (what of an inscription is looked for), ``query``,
``matching``, ``ranking`` (the way to the texts found), ``of_record``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.sources.adding import add_texts as add_texts, checked as checked
    from inscribe.sources.copied import copied_signs as copied_signs
    from inscribe.sources.importers import (
        FORMATS as FORMATS,
        files_in as files_in,
        stems_of as stems_of,
        texts_in as texts_in,
        texts_of as texts_of,
    )
    from inscribe.sources.keys import (
        UNKNOWN as UNKNOWN,
        letters as letters,
        run_together as run_together,
    )
    from inscribe.sources.library import Added as Added, Library as Library
    from inscribe.sources.of_record import text_of as text_of, words_of as words_of
    from inscribe.sources.query import (
        is_romanised as is_romanised,
        kana_of_romanised as kana_of_romanised,
    )
    from inscribe.sources.ranking import (
        NO_SOURCE as NO_SOURCE,
        Hit as Hit,
        answer as answer,
        find as find,
    )
    from inscribe.sources.starter import starter_texts as starter_texts
    from inscribe.sources.texts import SourceText as SourceText
else:
    __getattr__ = late.door(
        __name__,
        {
            "adding": "add_texts checked",
            "copied": "copied_signs",
            "importers": "FORMATS files_in stems_of texts_in texts_of",
            "keys": "UNKNOWN letters run_together",
            "library": "Added Library",
            "of_record": "text_of words_of",
            "query": "is_romanised kana_of_romanised",
            "ranking": "Hit NO_SOURCE answer find",
            "starter": "starter_texts",
            "texts": "SourceText",
        },
    )
