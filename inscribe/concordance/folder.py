"""The documents of a folder or of the library, read on several cores and kept in a cache.

The cache is one file a folder (``cache.py``). A record is read again when its path, size or time of
change differs; the whole cache is left aside when the program or a glossary table has changed, when
it is damaged, or when it cannot be written.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inscribe.concordance.cache import Stamp, cache_file, keep_in, kept, stamp_of
from inscribe.concordance.documents import (
    Document,
    document_of_source,
    documents_of_record,
    of_rows,
    rows_of,
)
from inscribe.errors import InscribeError
from inscribe.files import StrPath
from inscribe.reading.lexicon import prepare_for
from inscribe.record import Survey, load, survey
from inscribe.workers import mapped

if TYPE_CHECKING:
    from inscribe.sources import SourceText

MOST_KEPT = 100_000  # texts of a library above which its documents are not kept

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Collection:
    """The documents found, how many records were looked at, and why some could not be read."""

    documents: tuple[Document, ...]
    records: int
    unread: tuple[str, ...] = ()

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
    cache: Path | None = None,
    keep: bool = True,
) -> Collection:
    """Return the inscriptions of all records in a folder (or of one record).

    Args:
        folder: the folder, or a record file.
        progress: hears how many of how many records are read.
        cache: the folder of the cache; None for ``INSCRIBE_CACHE`` or the user's own.
        keep: whether to use a cache at all.

    Raises:
        InputError: there is no such file or folder.
    """
    folder = Path(folder)
    there = Survey([folder]) if folder.is_file() else survey(folder)
    paths = there.records
    kept_in = cache_file(folder, cache) if keep else None
    known = kept(kept_in) if kept_in else {}
    stamps = {str(path): stamp_of(path) for path in paths}
    held: dict[str, Any] = {
        name: known[name]
        for name, stamp in stamps.items()
        if known.get(name, [0])[0] == list(stamp)
    }
    wanted = [name for name in stamps if name not in held]
    prepare_for(len(wanted))
    for done, (name, rows, problem) in enumerate(mapped(_read, wanted), start=1):
        held[name] = [list(stamps[name]), rows, problem]
        progress(done, len(wanted))
    if kept_in and (wanted or len(held) < len(known)):
        keep_in(kept_in, held)
    return _collected(there, held)


def _collected(there: Survey, held: dict[str, Any]) -> Collection:
    documents: list[Document] = []
    unread = list(map(str, there.closed))
    for path in there.records:
        _, rows, problem = held[str(path)]
        documents += of_rows(rows)
        if problem:
            unread.append(problem)
    return Collection(tuple(documents), len(there.records), tuple(unread))


def library_collection(
    library: Path,
    progress: Progress = lambda done, count: None,
    *,
    cache: Path | None = None,
    keep: bool = True,
) -> Collection:
    """Return the texts of the library as documents; the other arguments are as for a folder.

    Raises:
        InputError: there is no library, or it cannot be used.
    """
    from inscribe.sources import Library

    kept_in = cache_file(library, cache) if keep else None
    known = kept(kept_in) if kept_in else {}
    name, stamp = str(library), _library_stamp(library)
    if known.get(name, [0])[0] != list(stamp):
        with Library(library) as opened:
            texts = list(opened.texts())
        rows = []
        read = mapped(partial(_read_source, file=name), texts)
        for done, row in enumerate(read, start=1):
            rows.append(row)
            progress(done, len(texts))
        known = {name: [list(stamp), rows, ""]}
        if kept_in and len(rows) <= MOST_KEPT:
            keep_in(kept_in, known)
    documents = of_rows(known[name][1])
    return Collection(tuple(documents), len(documents))


def _library_stamp(library: Path) -> Stamp:
    """Return size and time of the library with what SQLite has yet to write into it."""
    stamps = [stamp_of(library), stamp_of(library.with_name(f"{library.name}-wal"))]
    return sum(size for size, _ in stamps), max(time for _, time in stamps)


def _read_source(text: SourceText, file: str) -> list[object]:
    return rows_of([document_of_source(text, file)])[0]


Read = tuple[str, list[list[object]], str]


def _read(name: str) -> Read:
    try:
        record = load(name)
    except InscribeError as error:
        return name, [], str(error)
    try:
        return name, rows_of(documents_of_record(record, name)), ""
    except InscribeError as error:  # as one inscription that is longer than can be read
        return name, [], str(error.in_file(name, None))
