"""The words of the source that a record names: its own, or those the library keeps under its id."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.sources.opening import opened

if TYPE_CHECKING:
    from inscribe.record import CopiedText
    from inscribe.signs import Transcription
    from inscribe.sources.library import Library
    from inscribe.sources.texts import SourceText


def text_of(source: CopiedText | None, library: Library | Path | None) -> str:
    """Return the words of a record's source as text; nothing where they are not to be had.

    The library, open or its file, is asked only where the record names its source by id alone.
    """
    if source is None or source.text:
        return source.text if source else ""
    kept = _kept(source, library)
    return kept.text if kept else ""


def spelling_of(source: CopiedText | None, library: Library | Path | None) -> str:
    """Return the words of a record's source as a copy is read by them, in kana if it has that."""
    return kana_of(source, library) or text_of(source, library)


def kana_of(source: CopiedText | None, library: Library | Path | None) -> str:
    """Return the kana that the library keeps beside the source of a record; nothing without."""
    kept = _kept(source, library) if source else None
    return kept.spelled if kept and kept.spelled != kept.text else ""


def _kept(source: CopiedText, library: Library | Path | None) -> SourceText | None:
    if not source.id or (isinstance(library, Path) and not library.is_file()):
        return None
    with opened(library) as held:
        return held.text_of_id(source.id) if held else None


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
