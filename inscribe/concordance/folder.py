"""The documents of a folder or of the library, read on several cores and kept in a cache.

The cache is one file a folder in the user's cache folder. A record is read again when its path,
size or time of change differs; the whole cache is left aside when the program or a glossary table
has changed, when it is damaged, or when it cannot be written.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inscribe import __version__, files, tables
from inscribe.concordance.documents import (
    Document,
    document_of_source,
    documents_of_record,
    of_rows,
    rows_of,
)
from inscribe.errors import InputError, InscribeError
from inscribe.record.loader import load, paths_in

LAYOUT = 2
FEW = 60  # records below which starting workers costs more than it saves
_CHUNK = 50

Stamp = tuple[int, int]  # size, time of change in ns
Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Collection:
    """The documents found, how many records were looked at, and which could not be read."""

    documents: tuple[Document, ...]
    records: int
    unread: tuple[str, ...] = ()


def collection(
    folder: Path,
    progress: Progress = lambda done, count: None,
    *,
    cache: Path | None = None,
    keep: bool = True,
) -> Collection:
    """Return the inscriptions of all records in a folder (or of one record).

    Args:
        folder: the folder, or a record file.
        progress: hears how many of how many records are read.
        cache: the folder of the cache; None for the user's own.
        keep: whether to use a cache at all.

    Raises:
        InputError: there is no such file or folder.
    """
    paths = [folder] if folder.is_file() else paths_in(folder)
    kept_in = _cache_file(folder, cache) if keep else None
    known = _kept(kept_in) if kept_in else {}
    stamps = {str(path): _stamp(path) for path in paths}
    held: dict[str, Any] = {
        name: known[name]
        for name, stamp in stamps.items()
        if known.get(name, [0])[0] == list(stamp)
    }
    wanted = [name for name in stamps if name not in held]
    for done, (name, rows, problem) in enumerate(_read_all(wanted), start=1):
        held[name] = [list(stamps[name]), rows, problem]
        progress(done, len(wanted))
    if kept_in and (wanted or len(held) < len(known)):
        _keep(kept_in, held)
    return _collected(paths, held)


def _collected(paths: Sequence[Path], held: dict[str, Any]) -> Collection:
    documents: list[Document] = []
    unread = []
    for path in paths:
        _, rows, problem = held[str(path)]
        documents += of_rows(rows)
        if problem:
            unread.append(problem)
    return Collection(tuple(documents), len(paths), tuple(unread))


def library_collection(library: Path, progress: Progress = lambda done, count: None) -> Collection:
    """Return the texts of the library as documents.

    Raises:
        InputError: there is no library, or it cannot be used.
    """
    from inscribe.sources.library import Library

    documents = []
    with Library(library) as opened:
        count = len(opened)
        for done, text in enumerate(opened.texts(), start=1):
            documents.append(document_of_source(text, str(library)))
            progress(done, count)
    return Collection(tuple(documents), count)


Read = tuple[str, list[list[object]], str]


def _read_all(names: Sequence[str]) -> Iterator[Read]:
    workers = min(os.cpu_count() or 1, 8)
    if len(names) < FEW or workers == 1:
        yield from map(_read, names)
        return
    from multiprocessing import get_context

    with get_context("fork" if os.name == "posix" else "spawn").Pool(workers) as pool:
        yield from pool.imap(_read, names, chunksize=_CHUNK)


def _read(name: str) -> Read:
    try:
        return name, rows_of(documents_of_record(load(name), name)), ""
    except InscribeError as error:
        return name, [], str(error).split("\n")[0]


def _stamp(path: Path) -> Stamp:
    try:
        found = path.stat()
    except OSError:
        return (-1, -1)
    return found.st_size, found.st_mtime_ns


def _cache_file(folder: Path, cache: Path | None) -> Path | None:
    from platformdirs import user_cache_path

    where = cache or user_cache_path("inscribe", appauthor=False)
    try:
        name = hashlib.sha256(str(folder.resolve()).encode("utf-8", "surrogatepass")).hexdigest()
    except OSError:
        return None
    return where / f"concord-{name[:24]}.json"


def _made_by() -> str:
    """Return a mark of the program and its tables: readings change with either."""
    mark = hashlib.sha256(f"{LAYOUT} {__version__}".encode())
    for folder in tables.folders():
        for path in sorted(folder.glob("*.tsv")):
            mark.update(f"{path} {_stamp(path)}".encode("utf-8", "surrogatepass"))
    return mark.hexdigest()


def _kept(file: Path) -> dict[str, Any]:
    """Return what the cache holds; nothing if it is missing, damaged or out of date."""
    try:
        held = json.loads(file.read_bytes())
        if held["made_by"] != _made_by():
            return {}
        records: dict[str, Any] = held["records"]
        for stamp, rows, problem in records.values():
            if len(stamp) != 2 or not isinstance(problem, str):
                return {}
            of_rows(rows)
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return {}
    return records


def _keep(file: Path, held: dict[str, Any]) -> None:
    """Write the cache whole, or leave it: the concordance does not need it."""
    content = {"made_by": _made_by(), "records": held}
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        text = json.dumps(content, ensure_ascii=False, separators=(",", ":"))
        files.write_bytes(file, text.encode("utf-8", "surrogatepass"), force=True)
    except (OSError, InputError):
        return
