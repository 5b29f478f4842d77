"""The entries of a folder of records, made on several cores."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import nullcontext
from functools import partial
from pathlib import Path
from typing import NamedTuple

from inscribe.entry.assemble import entry_of
from inscribe.entry.model import Entry
from inscribe.errors import InputError, InscribeError, Place, ProblemsError
from inscribe.files import StrPath
from inscribe.reading.lexicon import prepare_for
from inscribe.record import Survey, as_settled, load, settled_beside, settled_names, survey
from inscribe.sources import Library, file_of
from inscribe.workers import mapped


class Made(NamedTuple):
    """The entries of the records that can be used, and what is wrong with the others."""

    entries: list[tuple[Path, Entry]]
    broken: list[InscribeError]


def entries_in(
    place: StrPath,
    library: Library | StrPath | None = None,
    progress: Callable[[int, int], None] = lambda done, count: None,
) -> list[tuple[Path, Entry]]:
    """Return the entry of a record, or of every record of a folder, each with its file.

    The arguments are those of :func:`usable_entries`.

    Raises:
        InputError: there is no such file or folder, or no record in it.
        RecordError, ProblemsError: records cannot be used; every one is named.

    >>> [(file.name, entry.record.kind) for file, entry in entries_in("examples")][:2]
    [('DEMO-001.toml', 'kozuka'), ('DEMO-002.toml', 'kozuka')]
    """
    made = usable_entries(place, library, progress)
    if made.broken:
        raise _together(made.broken)
    return made.entries


def usable_entries(
    place: StrPath,
    library: Library | StrPath | None = None,
    progress: Callable[[int, int], None] = lambda done, count: None,
) -> Made:
    """Return the entries of the records that can be used, and all that is wrong with the others.

    Args:
        place: a record, or a folder of records.
        library: where sources named by id are looked up: an open library, or its file; nothing is
            looked up where that file is missing.
        progress: hears how many of how many records are done.

    Raises:
        InputError: there is no such file or folder, or no record in it.
        RecordError, ProblemsError: no record can be used; every one is named.
    """
    place, file = Path(place), file_of(library)
    there = survey(place) if place.is_dir() else Survey([place])
    if not there.records and not there.closed:
        raise InputError("there is no record in the folder", Place(str(place)))
    made = Made([], [*there.closed])
    prepare_for(len(there.records))
    settled = settled_names(place) if place.is_dir() else settled_beside(place)
    with as_settled(settled):
        entries = mapped(partial(_entry, library=file), there.records)
        for done, (path, entry) in enumerate(zip(there.records, entries, strict=True), start=1):
            if isinstance(entry, InscribeError):
                made.broken.append(entry)
            else:
                made.entries.append((path, entry))
            progress(done, len(there.records))
    if not made.entries:
        raise _together(made.broken)
    return made


def _together(errors: list[InscribeError]) -> InscribeError:
    return errors[0] if len(errors) == 1 else ProblemsError(errors)


def _entry(path: Path, library: Path | None) -> Entry | InscribeError:
    with Library(library) if library and library.is_file() else nullcontext() as opened:
        try:
            record = load(path)
        except InscribeError as error:
            return error
        try:
            return entry_of(record, opened, path.parent)
        except InscribeError as error:
            return error.in_file(str(path), None)
