"""The names that ``inscribe restore`` expects: those read in the other records of the folder."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.cli.giving.library import library_path
from inscribe.cli.giving.piped import STANDARD_INPUT
from inscribe.cli.showing import progress_shown
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.reading import Choice
    from inscribe.signs import Transcription


def expected_names(
    records: str | None,
    alone: bool,
    path: str | None,
    texts: list[Callable[[], Transcription]],
    register: Choice,
    library_file: str | None,
    *,
    quiet: bool,
) -> dict[str, int]:
    """Return the names to be expected, with how often each is read."""
    if alone and records:
        raise InputError("--alone and --records do not go together", hint="leave one of them out")
    library = library_path(library_file)
    if records:
        return _names(records, path, library, beside=False, quiet=quiet)
    folder = None if alone else _folder_of(path, texts, register)
    return _names(folder, path, library, beside=True, quiet=quiet) if folder else {}


def _folder_of(
    path: str | None, texts: list[Callable[[], Transcription]], register: Choice
) -> str | None:
    """Return the folder of a record whose text may be signed: a poem needs no names of carvers."""
    from inscribe import reading

    if path is None or not path.endswith(".toml"):
        return None
    read = (reading.read(text(), register, alternatives=False) for text in texts)
    return str(Path(path).parent) if any(each.register != "verse" for each in read) else None


def _names(
    folder: str, asked: str | None, library: Path, *, beside: bool, quiet: bool
) -> dict[str, int]:
    """Return the names read in the records of a folder, but for the record asked about itself.

    Raises:
        InputError: no record of the folder can be read, and it was named by the user.
    """
    from inscribe.concordance import collection

    with progress_shown("records", quiet=quiet) as progress:
        found = collection(Path(folder), progress, library=library)
    if found.unread and not found.documents and not beside:
        raise InputError(
            f"no record can be read there; the first: {found.unread[0]}",
            hint="--records takes a folder of records",
        )
    return found.names_read(asked if asked != STANDARD_INPUT else None)
