"""The indexes of a folder of records; the headings gathered are kept until a record changes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, NamedTuple

from inscribe.concordance import OpenFolder, open_folder
from inscribe.files import StrPath
from inscribe.indexing.gathering import indexes
from inscribe.indexing.model import INDEXES, IndexForm, IndexHeading, IndexKind, Where
from inscribe.keeping import made_together

HEADINGS = "headings"  # under which they are kept


class FolderIndexes(NamedTuple):
    """The headings by index, how many records were looked at, and why some could not be read."""

    headings: dict[IndexKind, list[IndexHeading]]
    records: int
    unread: tuple[str, ...]


def index_folder(
    folder: StrPath,
    wanted: Iterable[IndexKind] = INDEXES,
    progress: Callable[[int, int], None] = lambda done, count: None,
    *,
    library: Path | None = None,
    cache: Path | None = None,
    keep: bool = True,
) -> FolderIndexes:
    """Return the indexes of all records in a folder (or of one record).

    Args:
        folder: the folder, or a record file.
        wanted: which indexes.
        progress: hears how many of how many records are read.
        library: the file that has the words of sources named by their id alone.
        cache: the folder of the cache; None for ``INSCRIBE_CACHE`` or the user's own.
        keep: whether to use a cache at all.

    Raises:
        InputError: there is no such file or folder.
    """
    with open_folder(folder, progress, library=library, cache=cache, keep=keep) as held:
        kept = made_together(HEADINGS, held.store, held.mark, lambda: _as_data(held))
    places = [Where(*each) for each in kept["places"]]
    kinds = set(wanted)
    found = {
        kind: [_heading(kind, each, places) for each in kept["headings"][kind]]
        for kind in INDEXES
        if kind in kinds
    }
    return FolderIndexes(found, kept["records"], tuple(kept["unread"]))


def _as_data(held: OpenFolder) -> dict[str, Any]:
    """Return all indexes as plain data, each place told once and pointed to by its number."""
    places: dict[Where, int] = {}
    headings = {
        kind: [
            [
                each.text,
                each.romaji,
                each.note,
                [
                    [form.text, [places.setdefault(where, len(places)) for where in form.where]]
                    for form in each.forms
                ],
            ]
            for each in found
        ]
        for kind, found in indexes(held.documents()).items()
    }
    return {
        "headings": headings,
        "places": list(places),
        "records": held.records,
        "unread": held.unread,
    }


def _heading(kind: IndexKind, kept: list[Any], places: list[Where]) -> IndexHeading:
    text, romaji, note, forms = kept
    return IndexHeading(
        kind,
        text,
        romaji,
        note,
        tuple(IndexForm(form, tuple(places[at] for at in where)) for form, where in forms),
    )
