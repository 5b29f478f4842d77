"""The entries of a folder of records, made on several cores."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import nullcontext
from functools import partial
from pathlib import Path

from inscribe.entry.assemble import entry_of
from inscribe.entry.model import Entry
from inscribe.errors import InputError, NotationError, Place
from inscribe.reading.verse_dictionary import prepare_for
from inscribe.record.loader import load, paths_in
from inscribe.workers import mapped


def entries_in(
    place: Path,
    library: Path | None = None,
    progress: Callable[[int, int], None] = lambda done, count: None,
) -> list[tuple[Path, Entry]]:
    """Return the entry of a record, or of every record of a folder, each with its file.

    ``library`` is the library file in which sources named by id are looked up; ``progress`` hears
    how many of how many entries are made.

    Raises:
        InputError: there is no such file or folder, or no record in it.
        RecordError, ProblemsError: a record cannot be used.
    """
    paths = paths_in(place) if place.is_dir() else [place]
    if not paths:
        raise InputError("there is no record in the folder", Place(str(place)))
    prepare_for(len(paths))
    found: list[tuple[Path, Entry]] = []
    for entry in mapped(partial(_entry, library=library), paths):
        found.append((paths[len(found)], entry))
        progress(len(found), len(paths))
    return found


def _entry(path: Path, library: Path | None) -> Entry:
    from inscribe.sources.library import Library

    with Library(library) if library and library.is_file() else nullcontext() as opened:
        record = load(path)
        try:
            return entry_of(record, opened)
        except NotationError as error:
            raise error.in_file(str(path), None) from error
