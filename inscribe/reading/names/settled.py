"""Names whose readings people settled in records, for as long as they are to be read so.

What is settled is only written down here; what it means is made of it when a name is first read,
so that a text without a name pays nothing for it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from inscribe import tables

# By the name in current forms: each reading in kana, and why it is read so.
_settled: dict[str, tuple[tuple[str, str], ...]] = {}


def settled_readings() -> dict[str, tuple[tuple[str, str], ...]]:
    """Return the settled names with their kana and the reasons."""
    return _settled


def settle(names: Iterable[tuple[str, str, str]]) -> None:
    """Read names so from now on, before all other ways to read them.

    Args:
        names: each name in current forms, its kana, and why it is read so.
    """
    for written, kana, why in names:
        _settled[written] = (*_settled.get(written, ()), (kana, why))
    tables.forget()  # what was made of the signs of these names


@contextmanager
def settling(names: Iterable[tuple[str, str, str]]) -> Iterator[None]:
    """Read names so within, and afterwards as before; the argument is that of :func:`settle`."""
    before = dict(_settled)
    settle(names)
    try:
        yield
    finally:
        _settled.clear()
        _settled.update(before)
        tables.forget()
