"""The documents of a folder, read on several cores and kept in the cache.

What is kept, and when it is made anew, is the matter of ``inscribe.keeping``.
"""

from __future__ import annotations

import contextlib
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from inscribe import notebook
from inscribe.concordance import passing
from inscribe.concordance.documents import (
    Document,
    documents_of_record,
    of_rows,
    rows_of,
)
from inscribe.concordance.finding import ConcordanceQuery, may_be_in, sought_in
from inscribe.errors import InscribeError
from inscribe.files import StrPath
from inscribe.keeping import (
    Store,
    Work,
    each_record,
    mark_of_all,
    mark_of_every,
    names_settled,
    open_store,
)
from inscribe.record import Survey, load, survey

_WITHOUT_PROBLEM = '"problem":""}'  # how the JSON of a record that could be read ends

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Collection:
    """The documents found, how many records were looked at, and why some could not be read.

    >>> from inscribe import collection
    >>> collection("examples", keep=False)
    <Collection: 15 records, 16 inscriptions>
    """

    documents: tuple[Document, ...]
    records: int
    unread: tuple[str, ...] = ()

    def __repr__(self) -> str:
        records = notebook.counted(self.records, "record")
        documents = notebook.counted(len(self.documents), "inscription")
        return f"<Collection: {records}, {documents}>"

    def names_read(self, but: StrPath | None = None) -> dict[str, int]:
        """Return the carvers' names that are read without a worn sign, with how often each is.

        ``but`` is the file of a record that is left out, as when it is asked about itself.
        """
        itself = Path(but).resolve() if but is not None else None
        return Counter(
            document.carver
            for document in self.documents
            if document.carver and document.carver in document.normal
            if "□" not in document.carver and Path(document.file).resolve() != itself
        )


def collection(
    folder: StrPath,
    progress: Progress = lambda done, count: None,
    *,
    query: ConcordanceQuery | None = None,
    library: Path | None = None,
    cache: Path | None = None,
    keep: bool = True,
) -> Collection:
    """Return the inscriptions of all records in a folder (or of one record).

    Args:
        folder: the folder, or a record file.
        progress: hears how many of how many records are read.
        query: a word that is looked for; inscriptions in which it cannot be are left out.
        library: the file that has the words of sources named by their id alone.
        cache: the folder of the cache; None for ``INSCRIBE_CACHE`` or the user's own.
        keep: whether to use a cache at all.

    Raises:
        InputError: there is no such file or folder.

    >>> held = collection("examples", keep=False)
    >>> held.records, len(held.documents)
    (15, 16)
    """
    with open_folder(folder, progress, library=library, cache=cache, keep=keep) as held:
        documents = tuple(held.documents(query))
        return Collection(documents, held.records, tuple(held.unread))


class OpenFolder:
    """A folder whose inscriptions are read one after the other, as they are asked for.

    ``unread`` says why some records could not be read, as far as they have been asked for.
    """

    def __init__(self, there: Survey, work: Work, store: Store | None, progress: Progress) -> None:
        self._there, self._work, self._progress = there, work, progress
        self.store = store
        self.records = len(there.records)
        self.unread = list(map(str, there.closed))

    def documents(self, query: ConcordanceQuery | None = None) -> Iterator[Document]:
        """Yield the inscriptions of every record, or those in which what is asked for may be.

        Of most records the JSON that is kept tells that it is not there; they are never taken
        apart.
        """
        may_have = passing.may_have(query) if query else None

        def wanted(kept: str) -> bool:
            return may_have is None or not kept.endswith(_WITHOUT_PROBLEM) or may_have(kept)

        records = each_record(
            self._there.records, self._work, self.store, self._progress, worth=wanted
        )
        for path, (found,) in records:
            read, problem = _as_kept(found, path, self._work.library)
            yield from (each for each in read if not query or may_be_in(sought_in(each), query))
            if problem:
                self.unread.append(problem)

    def mark(self) -> str:
        """Return a mark of all that is kept of the records; "" where some must be read anew."""
        if self.store is None:
            return ""
        every = mark_of_every(self._there.records, self._work, self.store)
        return mark_of_all([every, *self._there.closed]) if every else ""


@contextlib.contextmanager
def open_folder(
    folder: StrPath,
    progress: Progress = lambda done, count: None,
    *,
    library: Path | None = None,
    cache: Path | None = None,
    keep: bool = True,
) -> Iterator[OpenFolder]:
    """Give the records of a folder, read as they are asked for; arguments as for `collection`.

    Raises:
        InputError: there is no such file or folder.
    """
    folder = Path(folder)
    there = Survey([folder]) if folder.is_file() else survey(folder)
    with (
        store_of(folder, cache, keep=keep) as store,
        names_settled(folder, there.records, documents_read(library), store, progress) as work,
    ):
        yield OpenFolder(there, work, store, progress)


def _as_kept(found: Any, path: Path, library: Path | None) -> tuple[list[Document], str]:
    """Return the documents kept of a record and its problem; what is damaged is made anew."""
    with contextlib.suppress(ValueError, TypeError, KeyError, AttributeError):
        return of_rows(found["rows"]), found["problem"]
    (made,) = _read(path, library)
    return of_rows(made["rows"]), made["problem"]


def store_of(
    folder: Path, cache: Path | None = None, *, keep: bool = True
) -> AbstractContextManager[Store | None]:
    """Open what is kept of a folder; None where nothing is to be kept, or can be."""
    return (open_store(folder, cache) if keep else None) or nullcontext()


def _read(path: Path, library: Path | None) -> tuple[dict[str, Any]]:
    """Return the documents of a record as rows, or what is the matter with it."""
    try:
        record = load(path)
    except InscribeError as error:
        return ({"rows": [], "problem": str(error)},)
    try:
        rows = rows_of(documents_of_record(record, str(path), library))
        return ({"rows": rows, "problem": ""},)
    except InscribeError as error:  # as one inscription that is longer than can be read
        return ({"rows": [], "problem": str(error.in_file(str(path), None))},)


def documents_read(library: Path | None) -> Work:
    """Return the work of reading records; ``library`` has the words of sources named by id."""
    return Work(("documents",), partial(_read, library=library), library=library)
