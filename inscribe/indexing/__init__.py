"""Indexes of a collection: persons, places, dates, works, first lines, formulas and hands.

Each heading gives its forms as carved and the records where they stand. Everything is as the
objects have it and as the program reads it: a name in an index is no attribution. In reading order:
``model``, ``entries`` (what of an inscription belongs into which index), ``gathering`` (headings
put together and in order), ``folder`` (those of a folder, kept), ``translations`` (those found
again for the same text or formula).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.indexing.folder import (
        FolderIndexes as FolderIndexes,
        index_folder as index_folder,
    )
    from inscribe.indexing.gathering import index_of as index_of, indexes as indexes
    from inscribe.indexing.model import (
        INDEXES as INDEXES,
        IndexForm as IndexForm,
        IndexHeading as IndexHeading,
        IndexKind as IndexKind,
        Where as Where,
    )
    from inscribe.indexing.translations import (
        TranslatedText as TranslatedText,
        translated_texts as translated_texts,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "folder": "FolderIndexes index_folder",
            "gathering": "index_of indexes",
            "model": "INDEXES IndexForm IndexHeading IndexKind Where",
            "translations": "TranslatedText translated_texts",
        },
    )
