"""The entries of a folder, written as they are made: no more than a few are in memory.

What a record's entry is in a format is kept (``inscribe.keeping``) until the record, the program,
a table, the style or the library changes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import nullcontext
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inscribe.cli.entries import files
from inscribe.errors import InputError, InscribeError, Place, ProblemsError

if TYPE_CHECKING:
    from inscribe.report import Style

Progress = Callable[[int, int], None]


class EntryStream:
    """The entries of the records of a folder, each as a document of its own.

    ``broken`` are the records that could not be used, as far as the stream has been read.
    """

    def __init__(
        self, folder: Path, form: str, style: Style, library: Path, progress: Progress
    ) -> None:
        """Look which records there are.

        Raises:
            InputError: there is no such folder, or no record in it.
        """
        from inscribe.record import survey

        there = survey(folder)
        if not there.records and not there.closed:
            raise InputError("there is no record in the folder", Place(str(folder)))
        self.folder, self.form, self.progress = folder, form, progress
        self.paths = there.records
        self.closed = list(map(str, there.closed))
        self.broken: list[str] = []
        self._make = partial(_entry, form=form, style=style, library=library)
        self._of = f"{style!r} {_mark(library)}"

    def documents(self) -> Iterator[tuple[Path, str]]:
        """Yield each record's file and its entry, in the order of the files."""
        from inscribe.concordance import store_of
        from inscribe.keeping import Work, each_record, names_settled

        self.broken = [*self.closed]
        work = Work((f"entry {self.form}",), self._make, self._of)
        with (
            store_of(self.folder) as store,
            names_settled(self.folder, self.paths, work, store, self.progress) as settled,
        ):
            for path, (made,) in each_record(self.paths, settled, store, self.progress):
                if made["problem"]:
                    self.broken.append(made["problem"])
                else:
                    yield path, made["text"]

    def joined(self) -> Iterator[str]:
        """Yield all entries as one document, a piece at a time.

        Raises:
            ProblemsError: no record can be used; every one is named.
        """
        from inscribe.report import joined_entries

        pieces = joined_entries(self.form, (text for _, text in self.documents()), len(self.paths))
        first = next(pieces, None)
        if first is None:
            raise ProblemsError(_each_line(self.broken))
        yield first
        yield from pieces

    def write_each(self, folder: Path, ending: str, first: str, *, force: bool) -> None:
        """Write each entry to a file in ``folder``, at the place its record has in its own.

        ``first`` is what every file begins with, as a byte-order mark. Nothing is written where a
        file would be lost; what an earlier run has written is left.

        Raises:
            InputError: a file is there that holds something else, or one cannot be written.
            ProblemsError: no record can be used; every one is named.
        """
        records = [(path.relative_to(self.folder), 1) for path in self.paths]
        named = files.file_names(records, ending)
        targets = {path: folder / names[0] for path, names in zip(self.paths, named, strict=True)}
        data = partial(files.encoded, first)
        if not force and any(target.exists() for target in targets.values()):
            others = [
                targets[path]
                for path, text in self.documents()
                if targets[path].exists() and not files.is_written(targets[path], data(text))
            ]
            files.refuse_others(others)
        made = 0
        for path, text in self.documents():
            made += 1
            if force or not targets[path].exists():
                files.write_file(targets[path], data(text), force=force)
        if not made:
            raise ProblemsError(_each_line(self.broken))


def _each_line(broken: list[str]) -> list[InputError]:
    """Return the problems of records, of which one may have several, one a line."""
    return [InputError(line) for said in broken for line in said.splitlines()]


def _mark(library: Path) -> str:
    from inscribe.keeping import mark_of

    return f"{mark_of(library)} {mark_of(library.with_name(f'{library.name}-wal'))}"


def _entry(path: Path, form: str, style: Style, library: Path) -> tuple[dict[str, Any]]:
    """Return the entry of a record in a format, or what is the matter with the record."""
    from inscribe.cli.entries.formats import formats
    from inscribe.entry import entry_of
    from inscribe.record import load
    from inscribe.sources import Library

    try:
        record = load(path)
    except InscribeError as error:
        return ({"text": "", "problem": str(error)},)
    with Library(library) if library.is_file() else nullcontext() as opened:
        try:
            entry = entry_of(record, opened, path.parent)
        except InscribeError as error:
            return ({"text": "", "problem": str(error.in_file(str(path), None))},)
    return ({"text": formats()[form]([entry], style), "problem": ""},)
