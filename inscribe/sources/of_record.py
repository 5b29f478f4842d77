"""The words of the source that a record names: its own, or those the library keeps under its id."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import notation

if TYPE_CHECKING:
    from inscribe.record import CopiedText
    from inscribe.signs import Transcription
    from inscribe.sources.library import Library


def text_of(source: CopiedText | None, library_file: Path | None) -> str:
    """Return the words of a record's source as text; nothing where they are not to be had.

    The library is opened only where the record names its source by id alone.
    """
    if source is None:
        return ""
    if source.text or not source.id or library_file is None or not library_file.is_file():
        return source.text
    from inscribe.sources.library import Library

    with Library(library_file) as library:
        found = library.text_of_id(source.id)
    return found.text if found else ""


def words_of(source: CopiedText, library: Library | None) -> Transcription | None:
    """Return the words of a record's source, in the notation that the record gives for them.

    None, if the source is named by its id only and the library does not have it.

    Raises:
        InscribeError: the words do not parse in that notation.
    """
    if source.text or not source.id:
        return source.transcription
    found = library.text_of_id(source.id) if library else None
    return notation.parse(found.text, source.notation) if found else None
