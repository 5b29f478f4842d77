"""What is called otherwise than it should be: ids that are nearly the same, sources, links.

>>> folded("ＡＢ-１") == folded("ab-1")
True
"""

from __future__ import annotations

import unicodedata
from collections import defaultdict
from collections.abc import Iterable, Iterator
from pathlib import Path

from inscribe.sources import folded, nearest_id


def nearly_the_same(ids: Iterable[str]) -> Iterator[tuple[str, list[str]]]:
    """Yield each id with those that differ from it only in case, width or normalisation."""
    alike: defaultdict[str, set[str]] = defaultdict(set)
    for identity in ids:
        alike[folded(identity)].add(identity)
    for group in alike.values():
        if len(group) > 1:
            for one in sorted(group):
                yield one, sorted(group - {one})


def how_they_differ(one: str, other: str) -> str:
    """Return in what way two ids are not the same although they look so.

    >>> how_they_differ("A-1", "a-1"), how_they_differ("A-1", "Ａ-1")
    ('capitals', 'width of characters')
    """
    if unicodedata.normalize("NFC", one) == unicodedata.normalize("NFC", other):
        return "how letters are composed"
    if one.strip().casefold() == other.strip().casefold():
        return "spaces" if one.strip() == other.strip() else "capitals"
    if unicodedata.normalize("NFKC", one) == unicodedata.normalize("NFKC", other):
        return "width of characters"
    return "capitals and width of characters"


def missing_sources(wanted: Iterable[str], library: Path | None) -> dict[str, str]:
    """Return those of the ids that the library has no text of, each with one it may mean."""
    asked = set(wanted)
    if not asked:
        return {}
    if library is None or not library.is_file():
        return dict.fromkeys(asked, "")
    from inscribe.sources import Library

    with Library(library) as opened:
        ids = opened.ids()
    held = set(ids)
    return {identity: nearest_id(identity, ids) for identity in asked if identity not in held}


def leads_out(path: Path, folder: Path) -> bool:
    """Whether a record's name is a link to a file that lies outside its folder."""
    if not path.is_symlink():
        return False
    try:
        return not path.resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError):
        return False
