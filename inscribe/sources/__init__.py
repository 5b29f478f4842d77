"""The library of source texts, and which of them an inscription copies.

In reading order: ``texts`` (a source text), ``importers`` and ``tei`` (files to texts), ``starter``
(texts to begin with), ``adding``, ``library`` and ``layout`` (one SQLite file), ``passages`` and
``keys`` (the sounds texts are found by), ``words`` and ``word_keys`` (what the concordance finds
them by), ``index``, ``copied`` (what of an inscription is looked
for), ``query``, ``matching``, ``ranking`` (the way to the texts found),
``recognised`` (a copy read by the text found), ``of_record``, ``ids``.

What a word is found by in each text (``words.py``) is worked out when the text is added, on all
cores, and kept beside it, sealed; measure: ``tests/benchmarks/concord.py --texts 80000``. It makes
adding slower than the figure above: 1.7 ms of processor a text, kana too, and 1.2 KiB.

One SQLite file. ``passages.py`` reads the lines of a text together (a phrase of verse alone has no
metre), and cuts long texts into overlapping passages; when that changes, make a library anew from
its export. ``keys.py`` folds their sounds; ``index.py`` keeps grams (two sounds, three sounds, two
around a worn one, pairs with a Chinese character) as blobs of passage numbers, a segment a
transaction. ``query.py`` makes a lattice of every reading of the inscription; ``matching.py`` fits
it to the best candidates; ``find.py`` ranks them and gives each a probability whose weights come
from ``python tests/benchmarks/find_scores.py --fit``; below 0.7 of the sounds or six letters it
falls off (of the benchmark's queries with less than 0.7, or five letters, none was from the text
found), and texts that differ share 1. Where no fit is convincing it searches once more, four times
as wide. ``of_record.py`` gives the words of the source that a record names.

Measured growth (2 cores, one run, verse of 31 kana): 5,000 texts take 4 MiB and 2-15 ms a query;
1,000,000 take 770 MiB, 76 s to index on a quiet machine, and 14-36 ms a query at the median, 158
ms at worst, in 116 MiB of memory. Of 1,000,000 the right one comes first for 0.993 of the queries
with 60% of the signs unreadable or ten signs long, and for all of those that are clean, lack a
phrase, or have 30% unreadable. A query's cost grows with the passages that share its grams, so
some ten million texts is where one SQLite file with this index ends; beyond it a search engine
with its own posting lists (Lucene by way of OpenSearch, say) would take over ``index.py``, and
nothing else would change.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.sources.adding import add_texts as add_texts, checked as checked
    from inscribe.sources.copied import (
        copied_in as copied_in,
        copied_part as copied_part,
        copied_signs as copied_signs,
    )
    from inscribe.sources.ids import folded as folded, nearest_id as nearest_id, no_text as no_text
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
    from inscribe.sources.of_record import (
        kana_of as kana_of,
        spelling_of as spelling_of,
        text_of as text_of,
        words_of as words_of,
    )
    from inscribe.sources.opening import file_of as file_of, opened as opened
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
    from inscribe.sources.recognised import read_as_recognised as read_as_recognised
    from inscribe.sources.starter import starter_texts as starter_texts
    from inscribe.sources.texts import SourceText as SourceText
    from inscribe.sources.word_keys import (
        said_of_word as said_of_word,
        sound_key as sound_key,
        stem_key as stem_key,
    )
    from inscribe.sources.words import (
        KeptWords as KeptWords,
        found_by_of_row as found_by_of_row,
        words_of_library as words_of_library,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "adding": "add_texts checked",
            "copied": "copied_in copied_part copied_signs",
            "ids": "folded nearest_id no_text",
            "importers": "FORMATS files_in stems_of texts_in texts_of",
            "keys": "UNKNOWN letters run_together",
            "library": "Added Library",
            "of_record": "kana_of spelling_of text_of words_of",
            "opening": "file_of opened",
            "query": "is_romanised kana_of_romanised",
            "ranking": "Hit NO_SOURCE answer find",
            "recognised": "read_as_recognised",
            "starter": "starter_texts",
            "texts": "SourceText",
            "word_keys": "said_of_word sound_key stem_key",
            "words": "KeptWords found_by_of_row words_of_library",
        },
    )
