"""The texts of the library as documents: each is read once, and a word looked for in little.

A text is read in milliseconds, eighty thousand in minutes; so what was read is kept in the cache,
text by text, and read again only where the text, the program or a table has changed. Beside each
document lies what a word can be found by (:class:`SoughtIn`), some 200 bytes: a search goes through
these, and takes up the documents alone that may have a place of the word. Why it is kept in the
cache and not in the library: it follows from the tables and the program, the library does not.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inscribe.concordance.documents import Document, document_of_source, of_rows, rows_of
from inscribe.concordance.finding import ConcordanceQuery, SoughtIn, may_be_in, sought_in
from inscribe.concordance.folder import Collection, store_of
from inscribe.keeping import FileMark, Kept, KeptValue, Store

if TYPE_CHECKING:
    from inscribe.sources import Library, SourceText

TEXTS = "texts"  # under which the documents of a library are kept ...
SOUGHT = "texts sought in"  # ... and what a word is found by in each
MOST_KEPT = 400_000  # texts of a library above which nothing is kept, some 2 KiB a text
BATCH = 400  # texts taken up or kept at a time
CHUNK = 40  # texts handed to a worker at a time
_NO_FILE = FileMark(0, 0)

Progress = Callable[[int, int], None]


def library_collection(
    library: Path,
    progress: Progress = lambda done, count: None,
    *,
    query: ConcordanceQuery | None = None,
    cache: Path | None = None,
    keep: bool = True,
) -> Collection:
    """Return the texts of the library as documents.

    Args:
        library: the library's file.
        progress: hears how many of how many texts that had to be read are read.
        query: a word that is looked for; texts in which it cannot be are left out, and counted.
        cache: the folder of the cache; None for ``INSCRIBE_CACHE`` or the user's own.
        keep: whether to use a cache at all.

    Raises:
        InputError: there is no library, or it cannot be used.
    """
    from inscribe.sources import Library

    with Library(library) as opened, store_of(library, cache, keep=keep) as store:
        digests = opened.digests()
        kept = store if len(digests) <= MOST_KEPT else None
        documents = tuple(_documents(opened, digests, kept, query, progress))
    return Collection(documents, len(digests))


def _documents(
    library: Library,
    digests: dict[str, bytes],
    store: Store | None,
    query: ConcordanceQuery | None,
    progress: Progress,
) -> Iterator[Document]:
    """Yield the documents in which a word may be, in the order of the texts, a batch at a time."""
    known = _still_true(store, digests)
    stale = [name for name in digests if name not in known]
    fresh = _read(library, stale, str(library.path))
    done, names = 0, iter(digests)
    while batch := list(islice(names, BATCH)):
        held = _held(store, [name for name in batch if name in known], query)
        lost = [name for name in batch if name in known and name not in held]  # damaged rows
        made = dict(zip(lost, _read(library, lost, str(library.path)), strict=True))
        for name in batch:
            if name not in known:
                made[name] = next(fresh)
                done += 1
                progress(done, len(stale))
        if store and made:
            _keep(store, made, digests)
        for name in batch:
            document = made[name] if name in made else held[name]
            if document and (query is None or may_be_in(sought_in(document), query)):
                yield document


def _still_true(store: Store | None, digests: dict[str, bytes]) -> set[str]:
    """Return the ids of texts that are kept as they stand, and forget what is kept of others."""
    if store is None:
        return set()
    found = set(digests)
    for what in (TEXTS, SOUGHT):
        known = store.known(what)
        store.forget(what, known.keys() - digests.keys())
        found &= {
            name
            for name, kept in known.items()
            if name in digests and kept.content == digests[name].hex()
        }
    return found


def _held(
    store: Store | None, names: Sequence[str], query: ConcordanceQuery | None
) -> dict[str, Document | None]:
    """Return what is kept of texts: None for those in which the word cannot be."""
    if store is None or not names:
        return {}
    found: dict[str, Document | None] = {}
    wanted = list(names)
    if query is not None:
        sought = store.values(SOUGHT, names)
        wanted = []
        for name, row in sought.items():
            with contextlib.suppress(ValueError, TypeError):
                if may_be_in(SoughtIn(*row), query):
                    wanted.append(name)
                else:
                    found[name] = None
    for name, row in store.values(TEXTS, wanted).items() if wanted else ():
        with contextlib.suppress(ValueError, TypeError, KeyError, AttributeError):
            (found[name],) = of_rows([row])
    return found


def _keep(store: Store, made: dict[str, Document], digests: dict[str, bytes]) -> None:
    def rows(value: Callable[[Document], Any]) -> list[KeptValue]:
        return [
            KeptValue(name, Kept(_NO_FILE, digests[name].hex(), ""), value(document))
            for name, document in made.items()
        ]

    store.keep(TEXTS, rows(lambda document: rows_of([document])[0]))
    store.keep(SOUGHT, rows(sought_in))


def _read(library: Library, names: Sequence[str], file: str) -> Iterator[Document]:
    """Yield the texts of these ids, read, on all cores where there are many."""
    from inscribe import workers

    work, texts = partial(_document, file=file), library.texts(names)
    if len(names) < workers.FEW or workers.count() == 1:
        yield from map(work, texts)
    else:
        yield from workers.on_all_cores(work, texts, CHUNK)


def _document(text: SourceText, file: str) -> Document:
    return document_of_source(text, file)
