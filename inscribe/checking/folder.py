"""A folder of records, checked on several cores."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path

from inscribe.checking.examine import examine
from inscribe.checking.findings import Checked, Finding, finding
from inscribe.reading.lexicon import prepare_for
from inscribe.record import Survey, survey
from inscribe.workers import mapped

Examined = tuple[str | None, list[Finding]]


def check_folder(
    folder: Path,
    library: Path | None = None,
    progress: Callable[[int, int], None] = lambda done, count: None,
) -> Checked:
    """Return everything found in the records of ``folder`` (or in one record).

    ``library`` is the library file in which sources named by id are looked up; ``progress`` hears
    how many of how many records are done.

    Raises:
        InputError: there is no such file or folder.
    """
    there = Survey([folder]) if folder.is_file() else survey(folder)
    paths = there.records
    found = [*_passed_over(there)]
    first_with: dict[str, Path] = {}
    prepare_for(len(paths))
    examined = mapped(partial(_examine, library=library), paths)
    for done, (path, (identity, findings)) in enumerate(zip(paths, examined, strict=True), 1):
        found += findings
        if identity is not None and identity in first_with:
            said = f"{identity} is also the id of {first_with[identity]}"
            found.append(finding("duplicate-id", str(path), 1, said, identity))
        elif identity is not None:
            first_with[identity] = path
        progress(done, len(paths))
    return Checked(len(paths), tuple(found))


def _passed_over(there: Survey) -> Iterator[Finding]:
    for error in there.closed:
        yield finding("closed", error.place.file or "", None, f"{error.message}; {error.hint}")
    for path in there.linked:
        yield finding("linked", str(path), None, "a link to a folder is not followed")


def _examine(path: Path, library: Path | None) -> Examined:
    return examine(path, partial(_in_library, library=library))


def _in_library(identity: str, library: Path | None) -> bool:
    if library is None or not library.is_file():
        return False
    from inscribe.sources import Library

    with Library(library) as opened:
        return opened.text_of_id(identity) is not None
