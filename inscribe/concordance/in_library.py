"""The texts of the library as documents: a word is looked for in what is kept beside them.

A text is read when it is added, and what a word is found by is kept in the library. A search goes
through these rows as they are kept, and takes those alone apart that may have a place of the word.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.concordance.documents import Document, document_of_source
from inscribe.concordance.finding import ConcordanceQuery, may_be_in, sought_in
from inscribe.concordance.folder import Collection
from inscribe.concordance.passing import may_have

if TYPE_CHECKING:
    from inscribe.sources import KeptWords

Progress = Callable[[int, int], None]


def library_collection(
    library: Path,
    progress: Progress = lambda done, count: None,
    *,
    query: ConcordanceQuery | None = None,
    keep: bool = True,
) -> Collection:
    """Return the texts of the library as documents.

    Args:
        library: the library's file.
        progress: hears how many of how many texts that had to be read are read.
        query: a word that is looked for; texts in which it cannot be are left out, and counted.
        keep: whether to use what is kept of the texts, and to keep what is not.

    Raises:
        InputError: there is no library, or it cannot be used.
    """
    from inscribe.sources import Library, words_of_library

    with Library(library) as opened:
        kept = words_of_library(opened, progress, use_kept=keep)
        documents = tuple(_documents(kept, query, str(library)))
        return Collection(documents, len(opened))


def _documents(
    kept: Iterable[KeptWords], query: ConcordanceQuery | None, file: str
) -> Iterator[Document]:
    """Yield the documents in which a word may be, in the order of the texts."""
    worth = may_have(query, partial(json.dumps, ensure_ascii=False)) if query else None
    for each in kept:
        if worth is None or worth(each.row):
            document = document_of_source(each, file)
            if query is None or may_be_in(sought_in(document), query):
                yield document
