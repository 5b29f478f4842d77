"""What was made of all records of a folder together, kept as long as none of them changes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from inscribe.keeping.each import Work, marks_still_true
from inscribe.keeping.marks import FileMark, mark_of_all
from inscribe.keeping.store import Kept, KeptValue, Store

ALL = ""  # the name under which a value of all records is kept


def made_together(
    what: str, store: Store | None, mark: Callable[[], str], make: Callable[[], Any]
) -> Any:
    """Return what ``make`` makes of all records, from what is kept where ``mark`` is the same.

    Args:
        what: the name under which it is kept.
        store: what is kept of the folder.
        mark: gives what the value depends on; asked again after it was made, for ``make`` may
            have brought what is kept of single records up to date. Nothing is kept under "".
        make: makes it, as plain data.
    """
    if store is None:
        return make()
    now, kept = mark(), store.known(what).get(ALL)
    if now and kept and kept.content == now:
        values = store.values(what, [ALL])
        if ALL in values:  # else the row is damaged
            return values[ALL]
    made = make()
    if now := now or mark():
        store.keep(what, [KeptValue(ALL, Kept(FileMark(0, 0), now, ""), made)])
    return made


def mark_of_every(paths: Sequence[Path], work: Work, store: Store) -> str:
    """Return one mark of what is kept of every record; "" where some must be made anew."""
    kept = marks_still_true(paths, work, store)
    if len(kept) < len(paths):
        return ""
    return mark_of_all(f"{name} {row.content} {row.beside}" for name, row in sorted(kept.items()))
