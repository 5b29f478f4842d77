"""Names whose readings people settled in one record, read so in every record of the folder.

A record's values then depend on what others settle, so the mark of the settled names belongs to
what its values are kept by (``Work.of``).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from inscribe.keeping.each import Progress, Work, each_record
from inscribe.keeping.marks import mark_of_all
from inscribe.keeping.store import Store
from inscribe.record import SettledName, as_settled, settled_beside, settled_in


def _settled(path: Path) -> tuple[Any]:
    return ([list(name) for name in settled_in(path)],)


def _names(rows: Any, path: Path) -> list[SettledName]:
    """Return the names of rows that were kept; what is damaged is made anew."""
    try:
        return [SettledName(*row) for row in rows]
    except TypeError:
        return settled_in(path)


SETTLED = Work(("settled",), _settled)
_NONE = "[]"  # as it is kept: most records settle no name


@contextmanager
def names_settled(
    place: Path,
    paths: Sequence[Path],
    work: Work,
    store: Store | None,
    progress: Progress = lambda done, count: None,
) -> Iterator[Work]:
    """Read names, within, as they were settled in the records; give the work that depends on it.

    Args:
        place: the folder, or one record: then those count that lie in its folder.
        paths: the records of the folder.
        work: what is to be made of each record.
        store: what is kept of the folder.
        progress: hears, for each record looked through for such names, that none of so many is
            done: it is one with the progress of the work, which comes after.
    """
    if place.is_file():
        names = settled_beside(place)
    else:
        kept = each_record(
            paths,
            SETTLED,
            store,
            lambda _, count: progress(0, count),
            worth=lambda rows: rows != _NONE,
        )
        names = [name for path, (rows,) in kept for name in _names(rows, path)]
    mark = mark_of_all(names) if names else ""
    with as_settled(names):
        yield work._replace(of=f"{work.of} {mark}".strip())
